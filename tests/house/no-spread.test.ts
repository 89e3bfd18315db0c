import { catchTest, flowVariation, minutes } from 'porewater'
import ts from 'typescript'
import { describe, expect, it } from 'vitest'
import { parse, sourceFiles } from '../../docs/tools/house/source-files.js'

/** Calls of `Math.min` and `Math.max` over a spread list: from about 125,000 entries the engine has no room for the arguments. */
function spreadExtremes(path: string, code: string): string[] {
  const found: string[] = []
  const visit = (node: ts.Node): void => {
    if (
      ts.isCallExpression(node) &&
      /^Math\.(min|max|hypot)$/.test(node.expression.getText()) &&
      node.arguments.some(ts.isSpreadElement)
    )
      found.push(`${path}: ${node.getText()}`)
    ts.forEachChild(node, visit)
  }
  visit(parse(path, code))
  return found
}

/** Files whose lists are short by their making: coordinates, the ends of a rod, the places of a word, changes of the clock. */
const SHORT = [
  'src/probe/placement-shapes.ts',
  'src/probe/check-placement.ts',
  'src/catalogue/find-entries.ts',
  'src/zone/local-day.ts',
]

describe('a list of the caller', () => {
  it('is nowhere spread into a call of Math', () => {
    expect(sourceFiles().length).toBeGreaterThan(400)
    const files = sourceFiles().filter(({ path }) => !SHORT.includes(path))
    expect(files.flatMap(({ path, code }) => spreadExtremes(path, code))).toEqual([])
  })
  it('would be refused', () => {
    expect(spreadExtremes('src/x/y.ts', 'export const most = (x: number[]) => Math.max(...x)')).toHaveLength(1)
  })
  it('may be longer than a call has room for', () => {
    const flows = Float64Array.from({ length: 300_000 }, (_, i) => 1 + (i % 2))
    expect(flowVariation(flows)).toBe(0.5)
    expect(catchTest({ catches: flows, duration: minutes(10) }).christiansen).toBeCloseTo(2 / 3, 9)
  })
})
