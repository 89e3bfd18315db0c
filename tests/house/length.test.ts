import ts from 'typescript'
import { describe, expect, it } from 'vitest'
import { folderOf, parse, sourceFiles } from '../../docs/tools/house/source-files.js'

const LONG_FUNCTION = 40
const LONG_FILE = 150

/**
 * How many functions of more than 40 lines and files of more than 150 each folder has at most: numbers that only fall. Lists of names,
 * tables and indexes are no code to read through, and do not count.
 */
const HELD: Record<string, { readonly functions: number; readonly files: number }> = {
  air: { functions: 1, files: 0 },
  chart: { functions: 8, files: 4 },
  control: { functions: 4, files: 13 },
  demand: { functions: 1, files: 7 },
  dielectric: { functions: 0, files: 0 },
  flow: { functions: 5, files: 3 },
  irrigation: { functions: 0, files: 2 },
  medium: { functions: 2, files: 1 },
  numerics: { functions: 1, files: 1 },
  probe: { functions: 0, files: 1 },
  quantity: { functions: 0, files: 0 },
  record: { functions: 1, files: 4 },
  rehearsal: { functions: 7, files: 2 },
  repl: { functions: 0, files: 3 },
  schema: { functions: 2, files: 8 },
  uncertainty: { functions: 0, files: 1 },
  zone: { functions: 0, files: 7 },
}

/** Functions of a file that are longer than they should be, by name; a function without one has that of what holds it. */
function longFunctions(path: string, code: string): string[] {
  const source = parse(path, code)
  const lineOf = (at: number) => source.getLineAndCharacterOfPosition(at).line
  const found: string[] = []
  const visit = (node: ts.Node, holder: string) => {
    const name = nameOf(node) ?? holder
    if (ts.isFunctionLike(node) && 'body' in node && node.body !== undefined) {
      const lines = lineOf(node.end) - lineOf(node.getStart()) + 1
      if (lines > LONG_FUNCTION) found.push(`${path} ${name}: ${lines} lines`)
    }
    node.forEachChild((child) => visit(child, name))
  }
  visit(source, '')
  return found
}

function nameOf(node: ts.Node): string | undefined {
  const named = ts.isFunctionDeclaration(node) || ts.isVariableDeclaration(node) || ts.isPropertyAssignment(node)
  return named && node.name !== undefined && ts.isIdentifier(node.name) ? node.name.text : undefined
}

const isList = (path: string) => /\/index\.ts$|table\.ts$|\/generated\//.test(path)
const files = sourceFiles().filter(({ path }) => path.split('/').length > 2 && !isList(path))

describe('what is long', () => {
  it.each([...new Set(files.map(({ path }) => folderOf(path)))].sort())('in %s becomes no more', (folder) => {
    const own = files.filter(({ path }) => folderOf(path) === folder)
    const functions = own.flatMap(({ path, code }) => longFunctions(path, code))
    const long = own.filter(({ code }) => code.split('\n').length - 1 > LONG_FILE).map(({ path }) => path)
    const held = HELD[folder] ?? { functions: 0, files: 0 }
    expect(functions.length, functions.join('\n')).toBeLessThanOrEqual(held.functions)
    expect(long.length, long.join('\n')).toBeLessThanOrEqual(held.files)
  })
  it('is found, also inside another function and without a name', () => {
    const body = 'a()\n'.repeat(41)
    expect(longFunctions('x.ts', `function outer() {\n${body}}`)).toEqual(['x.ts outer: 43 lines'])
    expect(longFunctions('x.ts', `const made = () => ({ inner: () => {\n${body}} })`)).toHaveLength(2)
    expect(longFunctions('x.ts', `function short() {\n${'a()\n'.repeat(38)}}`)).toEqual([])
  })
})
