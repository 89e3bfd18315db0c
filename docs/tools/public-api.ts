/**
 * Writes docs/public-api.txt: every public name by entry point with its declaration, comments aside, so that a change of the
 * public face is a line in a diff. `npm run api` writes it, `npm run api -- --check` only compares.
 */
import { readFileSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import ts from 'typescript'
import { topics } from './topics.js'

const root = fileURLToPath(new URL('../../', import.meta.url))
const target = `${root}docs/public-api.txt`

/** The report as text: a heading for each topic, then its declarations in the order of their names. */
export function publicApi(): string {
  const program = programOf(topics().map((topic) => `${root}src/${topic}/index.ts`))
  const checker = program.getTypeChecker()
  const declarations = declarationsOf(program)
  const reports = topics().map((topic) => {
    const index = program.getSourceFile(`${root}src/${topic}/index.ts`)
    const symbol = index && checker.getSymbolAtLocation(index)
    if (symbol === undefined) throw new Error(`src/${topic}/index.ts is not a module`)
    const lines = checker.getExportsOfModule(symbol).map((name) => reportOf(name, checker, declarations))
    return `# porewater/${topic}\n\n${lines.sort().join('\n')}\n`
  })
  return reports.join('\n')
}

function programOf(files: readonly string[]): ts.Program {
  const config = ts.readConfigFile(`${root}tsconfig.json`, ts.sys.readFile)
  const { options } = ts.parseJsonConfigFileContent(config.config, ts.sys, root)
  return ts.createProgram([...files], {
    ...options,
    noEmit: false,
    // Types are written, not checked: that is `npm run types`, and takes as long again.
    noCheck: true,
    declaration: true,
    emitDeclarationOnly: true,
    removeComments: true,
  })
}

/** Text of each declared name by file: `file#name`. A name with several declarations (overloads) keeps all. */
function declarationsOf(program: ts.Program): Map<string, string> {
  const found = new Map<string, string>()
  program.emit(undefined, (_path, text, _mark, _error, sources) => {
    const source = sources?.[0]
    if (source === undefined) return
    for (const statement of ts.createSourceFile('emitted.d.ts', text, ts.ScriptTarget.ES2022).statements)
      for (const name of namesOf(statement)) {
        const key = `${source.fileName}#${name}`
        const words = text.slice(statement.pos, statement.end).trim().replace(/\s+/g, ' ')
        const before = found.get(key)
        found.set(key, before === undefined ? words : `${before}\n${words}`)
      }
  })
  return found
}

function namesOf(statement: ts.Statement): string[] {
  if (ts.isVariableStatement(statement))
    return statement.declarationList.declarations.flatMap(({ name }) => (ts.isIdentifier(name) ? [name.text] : []))
  const named = statement as ts.Statement & { name?: ts.Node }
  return named.name !== undefined && ts.isIdentifier(named.name) ? [named.name.text] : []
}

function reportOf(exported: ts.Symbol, checker: ts.TypeChecker, declarations: Map<string, string>): string {
  const symbol = exported.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(exported) : exported
  const [declaration] = symbol.declarations ?? []
  const words = declaration && declarations.get(`${declaration.getSourceFile().fileName}#${symbol.name}`)
  if (words === undefined) throw new Error(`no declaration of ${exported.name} was found`)
  const plain = words.replaceAll('export declare ', '').replaceAll('export ', '')
  return exported.name === symbol.name ? plain : `${plain} // as ${exported.name}`
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const report = publicApi()
  if (!process.argv.includes('--check')) writeFileSync(target, report)
  else if (readFileSync(target, 'utf8') !== report) {
    console.error('docs/public-api.txt differs from the sources: run `npm run api` and look at what changed')
    process.exit(1)
  }
}
