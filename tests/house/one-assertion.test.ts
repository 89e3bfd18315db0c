import ts from 'typescript'
import { describe, expect, it } from 'vitest'
import { sourceFiles } from '../../docs/tools/house/source-files.js'

const kinds = new Set(
  sourceFiles()
    .filter(({ path }) => path.startsWith('src/quantity/generated/'))
    .flatMap(({ code }) => [...code.matchAll(/^export type (\w+) =/gm)].map((match) => match[1])),
)

/** Entries of a list that are asserted to be there with `as` and a type that is no kind of quantity. */
function assertedByType(path: string, code: string): string[] {
  const source = ts.createSourceFile(path, code, ts.ScriptTarget.ES2022, true)
  const found: string[] = []
  const look = (node: ts.Node): void => {
    if (ts.isAsExpression(node)) {
      let entry: ts.Node = node.expression
      while (ts.isParenthesizedExpression(entry)) entry = entry.expression
      const type = node.type.getText()
      const fromUnknown = type === 'never' || /^\(/.test(type) || type === 'Q'
      if (ts.isElementAccessExpression(entry) && !kinds.has(type) && !fromUnknown) {
        const { line } = source.getLineAndCharacterOfPosition(node.getStart())
        found.push(`${path}:${line + 1} ${node.getText()}`)
      }
    }
    node.forEachChild(look)
  }
  look(source)
  return found
}

describe('an entry of a list', () => {
  it('that is known to be there is `x[i]!`: `as` is only for giving it a kind', () => {
    expect(kinds.size).toBeGreaterThan(80)
    expect(sourceFiles().flatMap(({ path, code }) => assertedByType(path, code))).toEqual([])
  })
  it('is `x[i]!` in tests, tools and benchmarks too, where it is a number, a text or a truth', () => {
    const files = ['tests', 'docs', 'benchmarks'].flatMap((folder) => sourceFiles(folder))
    const asserted = files.flatMap(({ path, code }) => assertedByType(path, code))
    expect(files.length).toBeGreaterThan(400)
    expect(asserted.filter((one) => / as (number|string|boolean)$/.test(one))).toEqual([])
  })
  it('is found where a fault is put in', () => {
    expect(assertedByType('x.ts', 'const a = (list[0] as number) + 1')).toHaveLength(1)
    expect(assertedByType('x.ts', 'const a = list[0]!, b = list[0] as Length')).toEqual([])
  })
})
