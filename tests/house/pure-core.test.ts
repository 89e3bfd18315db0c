import ts from 'typescript'
import { describe, expect, it } from 'vitest'
import { BORDERS, folderOf, parse, sourceFiles } from '../../docs/tools/house/source-files.js'

const FORBIDDEN = new Set([
  'Date',
  'Intl',
  'console',
  'process',
  'performance',
  'globalThis',
  'crypto',
  'setTimeout',
  'setInterval',
  'queueMicrotask',
  'eval',
  'Function',
])
const LOCALE = new Set(['toLocaleString', 'toLocaleUpperCase', 'toLocaleLowerCase', 'localeCompare'])

/** Where code reads a clock, a locale, the surroundings, or chance without a seed. */
function impurities(path: string, code: string): string[] {
  const source = parse(path, code)
  const found: string[] = []
  const say = (node: ts.Node) => {
    const { line } = source.getLineAndCharacterOfPosition(node.getStart())
    found.push(`${path}:${line + 1} ${node.getText()}`)
  }
  const look = (node: ts.Node): void => {
    if (ts.isTypeNode(node) && !ts.isExpressionWithTypeArguments(node)) return
    if (ts.isPropertyAccessExpression(node)) {
      if (node.getText() === 'Math.random' || LOCALE.has(node.name.text)) say(node)
      look(node.expression)
      return
    }
    if (ts.isPropertyAssignment(node)) {
      look(node.initializer)
      return
    }
    if (ts.isIdentifier(node) && FORBIDDEN.has(node.text)) say(node)
    node.forEachChild(look)
  }
  source.statements.forEach(look)
  return found
}

describe('the core', () => {
  it('has no clock, locale, surroundings, output or unseeded chance', () => {
    const core = sourceFiles().filter(({ path }) => !BORDERS.includes(folderOf(path)))
    expect(core.length).toBeGreaterThan(300)
    expect(core.flatMap(({ path, code }) => impurities(path, code))).toEqual([])
  })
  it.each([
    'console.log(1)',
    'const t = Date.now()',
    'const t = new Date(0)',
    'const r = Math.random()',
    'const p = process.env.HOME',
    'const t = performance.now()',
    "const s = 'a'.localeCompare('b')",
    'const s = (3).toLocaleString()',
    "const f = new Intl.NumberFormat('en')",
    'const { random } = globalThis.Math',
  ])('would be refused with %s', (fault) => {
    expect(impurities('src/x/y.ts', `export function f(): void {\n  ${fault}\n}\n`)).toHaveLength(1)
  })
  it('may use such words as names of properties', () => {
    expect(impurities('src/x/y.ts', 'export const a = { process: 1, Date: 2 }\nexport const b = a.process\n')).toEqual(
      [],
    )
  })
})
