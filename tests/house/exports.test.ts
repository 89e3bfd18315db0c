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

/** Types for the compiler alone, which say what a constructor makes and are never written by hand. */
const FOR_COMPILER = ['Made', 'IsUnion']
/** What a reducer remembers is written down and handed back, not read: the parts of a state need no name outside. */
const OPAQUE = /State$|Counters$|^HeldEntry$|^KeptRows$/

/** Exported constants that no index lists and no other file imports, and types without a name in an index that public ones are made of. */
function unlisted(files: readonly { readonly path: string; readonly code: string }[], users = files): string[] {
  const taken = (isIndex: boolean) =>
    new Set(
      users
        .filter(({ path }) => path.endsWith('/index.ts') === isIndex)
        .flatMap(({ path, code }) =>
          importsOf(path, code).flatMap(({ from, names }) => names.map((n) => `${from} ${n}`)),
        ),
    )
  const [listed, used] = [taken(true), taken(false)]
  // A file that only passes a name on is not where the name lives.
  const passedOn = new Map<string, string>()
  for (const { path, code } of users)
    for (const one of parse(path, code).statements)
      if (ts.isExportDeclaration(one) && !path.endsWith('/index.ts'))
        for (const { from, names } of importsOf(path, one.getText()))
          for (const name of names) passedOn.set(`${path} ${name}`, `${from} ${name}`)
  return files
    .filter(({ path }) => !path.endsWith('/index.ts'))
    .flatMap(({ path, code }) => {
      const source = parse(path, code)
      const origins = new Map<string, string>(
        importsOf(path, code).flatMap(({ from, names }) => names.map((name) => [name, `${from} ${name}`] as const)),
      )
      for (const one of source.statements)
        if (ts.isInterfaceDeclaration(one) || ts.isTypeAliasDeclaration(one))
          origins.set(one.name.text, `${path} ${one.name.text}`)
      return source.statements.filter(isExported).flatMap((one) => {
        if (ts.isVariableStatement(one))
          return one.declarationList.declarations
            .flatMap(({ name }) => name.getText().match(/\w+/g) ?? [])
            .map((name) => `${path} ${name}`)
            .filter((key) => !listed.has(key) && !used.has(key) && !used.has(`${path} *`))
            .map((key) => `${key}: nobody imports it`)
        const name = (one as ts.FunctionDeclaration).name?.text ?? ''
        // Errors are made inside: what their constructors take needs no name outside.
        if (ts.isClassDeclaration(one) || !listed.has(`${path} ${name}`) || OPAQUE.test(name)) return []
        return typesIn(one)
          .filter((type) => !FOR_COMPILER.includes(type))
          .flatMap((type) => origins.get(type) ?? [])
          .map((key) => passedOn.get(key) ?? key)
          .filter((key) => !listed.has(key))
          .map((key) => `${key}: is part of ${name}, but no index lists it`)
      })
    })
}

const isExported = (one: ts.Statement) =>
  ts.canHaveModifiers(one) && ts.getModifiers(one)?.some(({ kind }) => kind === ts.SyntaxKind.ExportKeyword)

/** The types that a declaration names, apart from what it extends and from the code inside. */
function typesIn(node: ts.Node): string[] {
  if (ts.isBlock(node) || ts.isHeritageClause(node)) return []
  const own = ts.isTypeReferenceNode(node) && ts.isIdentifier(node.typeName) ? [node.typeName.text] : []
  const found = [...own]
  node.forEachChild((child) => {
    found.push(...typesIn(child))
  })
  return found
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
  it('is used, where it is a constant, and listed, where a public function or type is made of it', () => {
    const users = ['src', 'tests', 'docs', 'benchmarks'].flatMap(sourceFiles)
    expect(unlisted(sourceFiles(), users)).toEqual([])
  })
  it('would be refused as a constant that nobody uses, or as the input of a public function without a name outside', () => {
    const code =
      "import type { Depth } from './z.js'\nexport const LIMIT = 1\nexport interface Input {\n  readonly depth: Depth\n}\nexport function one(input: Input): void {}\n"
    const found = (index: string) =>
      unlisted([
        { path: 'src/x/y.ts', code },
        { path: 'src/x/index.ts', code: index },
      ])
    expect(found("export { one } from './y.js'")).toEqual([
      'src/x/y.ts LIMIT: nobody imports it',
      'src/x/y.ts Input: is part of one, but no index lists it',
    ])
    expect(found("export { type Input, LIMIT, one } from './y.js'")).toEqual([
      'src/x/z.ts Depth: is part of Input, but no index lists it',
    ])
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
