import ts from 'typescript'
import { describe, expect, it } from 'vitest'
import { folderOf, parse, sourceFiles } from '../../docs/tools/house/source-files.js'

/** Documented properties that stand word for word in two interfaces of one topic, as lines that name both. */
function copiesIn(files: readonly { readonly path: string; readonly code: string }[]): string[] {
  const seen = new Map<string, string>()
  return files.flatMap(({ path, code }) =>
    parse(path, code).statements.flatMap((statement) => {
      if (!ts.isInterfaceDeclaration(statement)) return []
      return statement.members.flatMap((member) => {
        const words = ts.getJSDocCommentsAndTags(member).map((part) => part.getText())
        if (words.length === 0) return []
        const key = [folderOf(path), ...words, member.getText()].join(' ').replace(/[\s*]+/g, ' ')
        const place = `${statement.name.text}.${member.name?.getText()}`
        const before = seen.get(key)
        seen.set(key, before ?? place)
        return before === undefined ? [] : [`${before} and ${place}`]
      })
    }),
  )
}

describe('a share that is told to people', () => {
  const PER_CENT = /(100 \* [\w.]+|[\w.]+ \* 100)\)*\.toFixed\(/
  it('is put into per cent or points in one file', () => {
    const telling = sourceFiles().filter(({ code }) => PER_CENT.test(code))
    expect(telling.map(({ path }) => path)).toEqual([])
  })
  it('would be found elsewhere', () => expect(PER_CENT.test('(share * 100).toFixed(1)')).toBe(true))
})

describe('a property that several interfaces of a topic have', () => {
  it('stands once, as a term that they extend', () => {
    const files = sourceFiles()
    expect(files.length).toBeGreaterThan(900)
    expect(copiesIn(files)).toEqual([])
  })
  it('would be told by both places', () => {
    const code = (name: string) => `export interface ${name} {\n  /** Flow. Unit: L/h. */\n  readonly flow: number\n}\n`
    const files = ['One', 'Two'].map((name) => ({ path: `src/air/${name}.ts`, code: code(name) }))
    expect(copiesIn(files)).toEqual(['One.flow and Two.flow'])
  })
})
