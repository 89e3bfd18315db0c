import { existsSync } from 'node:fs'
import ts from 'typescript'
import { describe, expect, it } from 'vitest'
import { folderOf, importsOf, parse, root, sourceFiles } from '../../docs/tools/house/source-files.js'

interface Exported {
  readonly path: string
  readonly name: string
  /** Public functions are those with an example; all others serve inside the house. */
  readonly hasExample: boolean
}

/** The functions that a file exports. */
function exportedFunctions(path: string, code: string): Exported[] {
  const seen = new Set<string>()
  return parse(path, code).statements.flatMap((statement) => {
    if (!ts.isFunctionDeclaration(statement) || statement.name === undefined) return []
    if (!statement.modifiers?.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword)) return []
    // The first declaration of an overloaded function carries the documentation, the others the same name.
    if (seen.has(statement.name.text)) return []
    seen.add(statement.name.text)
    const hasExample = ts.getJSDocTags(statement).some(({ tagName }) => tagName.text === 'example')
    return [{ path, name: statement.name.text, hasExample }]
  })
}

/** Functions with an example that no index lists, and functions without one that an index lists or no other file imports. */
function wrongExports(files: readonly { readonly path: string; readonly code: string }[], users = files): string[] {
  const listed = new Set<string>()
  const used = new Set<string>()
  for (const { path, code } of users)
    for (const { from, names } of importsOf(path, code))
      for (const name of names) (path.endsWith('/index.ts') ? listed : used).add(`${from} ${name}`)
  return files
    .flatMap(({ path, code }) => exportedFunctions(path, code))
    .flatMap(({ path, name, hasExample }) => {
      const key = `${path} ${name}`
      if (hasExample) return listed.has(key) ? [] : [`${key}: has an example, but no index lists it`]
      if (listed.has(key)) return [`${key}: is listed in an index without an example`]
      return used.has(key) || used.has(`${path} *`) ? [] : [`${key}: nobody imports it`]
    })
}

const topics = sourceFiles().filter(
  ({ path }) => path !== 'src/index.ts' && existsSync(`${root}src/${folderOf(path)}/index.ts`),
)
const faulty = (code: string, index: string) =>
  wrongExports([
    { path: 'src/x/y.ts', code },
    { path: 'src/x/index.ts', code: index },
  ])

describe('what files export', () => {
  it('is public and listed in an index, or inner and used by another file', () => {
    expect(topics.length).toBeGreaterThan(400)
    expect(wrongExports(sourceFiles(), [...sourceFiles(), ...sourceFiles('tests')])).toEqual([])
  })
  it('would be refused when a public function is left out of its index', () => {
    const code = '/**\n * One.\n * @example\n * x\n */\nexport function one(): number {\n  return 1\n}\n'
    expect(faulty(code, "export {} from './y.js'")).toHaveLength(1)
    expect(faulty(code, "export { one } from './y.js'")).toEqual([])
  })
  it('would be refused when an inner function is used by nobody', () => {
    expect(faulty('export function one(): number {\n  return 1\n}\n', "export {} from './y.js'")).toHaveLength(1)
  })
})
