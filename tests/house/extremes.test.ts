import ts from 'typescript'
import { describe, expect, it } from 'vitest'
import { parse, sourceFiles } from '../../docs/tools/house/source-files.js'

const WORDS = 'most|least|highest|lowest|longest|shortest|greatest|largest|smallest'
const CAPITAL = WORDS.replace(/\b\w/g, (c) => c.toUpperCase())
const EXTREME = new RegExp(`^(${WORDS})([A-Z]|$)|(${CAPITAL})([A-Z]|$)|(^|_)(${WORDS.toUpperCase()})(_|$)`)

/** The method of least squares is no end of a range. */
const METHOD = /(least|Least)Squares/

/** What keeps such a name, with the reason. */
const NAMED_SO: Record<string, string> = {
  least: 'the code of a band of root-zone temperatures, by the disease in it',
  longestShotFree: 'a stretch of a night, not a number',
  shortest: 'the shortest coverage interval of JCGM 101',
}

/** Names that a file declares: functions, constants, variables, arguments, properties, and those of objects that it makes. */
function extremesIn(path: string, code: string): string[] {
  const found: string[] = []
  const within = (node: ts.Node): void => {
    const name = ts.isImportSpecifier(node) ? undefined : (node as { readonly name?: ts.Node }).name
    if (
      name !== undefined &&
      ts.isIdentifier(name) &&
      !ts.isPropertyAccessExpression(node) &&
      EXTREME.test(name.text.replace(METHOD, ''))
    )
      found.push(name.text)
    node.forEachChild(within)
  }
  within(parse(path, code))
  return found
}

describe('the ends of a range', () => {
  it('are max and min in every name, of arguments and variables too', () => {
    const files = sourceFiles()
    const found = new Set(files.flatMap(({ path, code }) => extremesIn(path, code)))
    expect([...found].sort()).toEqual(Object.keys(NAMED_SO))
  })
  it('would be found', () => {
    const found = (code: string) => extremesIn('src/x/y.ts', code)
    expect(found('interface Limits { readonly mostWater: number; readonly maxRest: number }')).toEqual(['mostWater'])
    expect(found("type Shape = { readonly role: 'a'; readonly least: number }")).toEqual(['least'])
    expect(found('function greatestRise(lowest: number): number {}')).toEqual(['greatestRise', 'lowest'])
    expect(found('const [highest, mean] = ends(); const MOST_ROWS = 4')).toEqual(['highest', 'MOST_ROWS'])
    expect(found('const { max: longest } = { least: 1 }')).toEqual(['longest', 'least'])
    expect(found('limits.most + limits.maxLowest')).toEqual([])
    expect(found('export function almost(): number {}')).toEqual([])
  })
})
