import { execFileSync } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { posix } from 'node:path'
import { fileURLToPath } from 'node:url'
import ts from 'typescript'

export const root = fileURLToPath(new URL('../../../', import.meta.url))

/** The folders whose code may use a library, a clock or the terminal. All others are the core. */
export const BORDERS = ['schema', 'text', 'chart', 'catalogue', 'repl']

/** Every source file that is tracked, or will be: its path and its text. */
export function sourceFiles(folder = 'src'): { readonly path: string; readonly code: string }[] {
  const listed = execFileSync('git', ['ls-files', '-co', '--exclude-standard', folder], { cwd: root, encoding: 'utf8' })
  return listed
    .trim()
    .split('\n')
    .filter((path) => path.endsWith('.ts'))
    .map((path) => ({ path, code: readFileSync(`${root}${path}`, 'utf8') }))
}

export function parse(path: string, code: string): ts.SourceFile {
  return ts.createSourceFile(path, code, ts.ScriptTarget.ES2022, true)
}

export const folderOf = (path: string): string => path.split('/')[1]!

/** What a file imports or exports again from files beside it: `src/...` paths, with the names that it takes. */
export function importsOf(path: string, code: string): { readonly from: string; readonly names: readonly string[] }[] {
  const found: { from: string; names: string[] }[] = []
  for (const statement of parse(path, code).statements) {
    if (!ts.isImportDeclaration(statement) && !ts.isExportDeclaration(statement)) continue
    const specifier = statement.moduleSpecifier
    if (specifier === undefined || !ts.isStringLiteral(specifier) || !specifier.text.startsWith('.')) continue
    const bound = ts.isImportDeclaration(statement) ? statement.importClause?.namedBindings : statement.exportClause
    const names =
      bound !== undefined && (ts.isNamedImports(bound) || ts.isNamedExports(bound))
        ? bound.elements.map((element) => (element.propertyName ?? element.name).text)
        : ['*']
    found.push({ from: posix.join(posix.dirname(path), specifier.text).replace(/\.js$/, '.ts'), names })
  }
  // An import at run time may take any name.
  for (const [, specifier] of code.matchAll(/\bimport\('(\.[^']+)'\)/g))
    found.push({ from: posix.join(posix.dirname(path), specifier!).replace(/\.js$/, '.ts'), names: ['*'] })
  return found
}
