import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import ts from 'typescript'
import { describe, expect, it } from 'vitest'
import { fencesOf } from '../support/fences.js'

const root = fileURLToPath(new URL('../../', import.meta.url))
const entries = ['porewater', 'porewater/text', 'porewater/chart', 'porewater/schema', 'porewater/catalogue']
const options: ts.CompilerOptions = {
  strict: true,
  noEmit: true,
  target: ts.ScriptTarget.ES2022,
  module: ts.ModuleKind.ESNext,
  moduleResolution: ts.ModuleResolutionKind.Bundler,
  resolveJsonModule: true,
  skipLibCheck: true,
  types: ['node'],
  paths: { porewater: [`${root}src/index.ts`], 'porewater/*': [`${root}src/*/index.ts`] },
}

/** The library and the compiler's own typings, which both programs read. */
const parsed = new Map<string, ts.SourceFile | undefined>()

/** A program over pages of code that exist only here. */
function programOf(pages: ReadonlyMap<string, string>): ts.Program {
  const host = ts.createCompilerHost(options)
  const { getSourceFile, fileExists } = host
  host.getSourceFile = (name, ...rest) => {
    const code = pages.get(name)
    if (code !== undefined) return ts.createSourceFile(name, code, ts.ScriptTarget.ES2022, true)
    if (!parsed.has(name)) parsed.set(name, getSourceFile.call(host, name, ...rest))
    return parsed.get(name)
  }
  host.fileExists = (name) => pages.has(name) || fileExists.call(host, name)
  return ts.createProgram([...pages.keys()], options, host)
}

/** Every public name with its entry, and whether it is a value or only a type. */
function publicExports(): Map<string, { entry: string; type: boolean }> {
  const file = `${root}tests/types/names.virtual.ts`
  const program = programOf(
    new Map([[file, entries.map((entry, i) => `import * as m${i} from '${entry}'`).join('\n')]]),
  )
  const checker = program.getTypeChecker()
  const found = new Map<string, { entry: string; type: boolean }>()
  for (const statement of program.getSourceFile(file)?.statements ?? []) {
    if (!ts.isImportDeclaration(statement)) continue
    const module = checker.getSymbolAtLocation(statement.moduleSpecifier)
    for (const symbol of module ? checker.getExportsOfModule(module) : []) {
      const target = symbol.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(symbol) : symbol
      const entry = (statement.moduleSpecifier as ts.StringLiteral).text
      if (!found.has(symbol.name)) found.set(symbol.name, { entry, type: !(target.flags & ts.SymbolFlags.Value) })
    }
  }
  return found
}

/** The fences of a page as one module, with line numbers kept and the names it uses imported in its first line. */
function moduleOf(path: string, names: ReturnType<typeof publicExports>): string {
  const code = fencesOf(readFileSync(`${root}${path}`, 'utf8')).replace(/import \{[\s\S]*?\} from '[^']+'/g, (words) =>
    words.replace(/[^\n]/g, ' '),
  )
  const own = new Set([...code.matchAll(/\b(?:const|let|function)\s+(\w+)/g)].map((match) => match[1]!))
  for (const [, list = '', fields = ''] of code.matchAll(/const (?:\[([^\]]+)\]|\{([^}]+)\})/g)) {
    for (const part of `${list},${fields}`.split(',')) own.add((part.split(':').at(-1) as string).trim())
  }
  const used = [...new Set(code.match(/\b[a-zA-Z_]\w*\b/g))].filter((name) => names.has(name) && !own.has(name))
  const imports = used.map(
    (name) => `import ${names.get(name)?.type ? 'type ' : ''}{ ${name} } from '${names.get(name)?.entry}'`,
  )
  return `${imports.join(';')};export {};${code}`
}

describe('the code in the documents compiles, strictly', () => {
  const guides = readdirSync(`${root}docs/guides`).filter((name) => name.endsWith('.md') && name !== 'formula-sheet.md')
  it('README.md and every guide', () => {
    const names = publicExports()
    const pages = new Map(
      ['README.md', ...guides.map((name) => `docs/guides/${name}`)].map((path) => [
        `${root}${path}.virtual.ts`,
        moduleOf(path, names),
      ]),
    )
    const program = programOf(pages)
    const complaints = [...pages.keys()].flatMap((file) => {
      const source = program.getSourceFile(file)
      return [...program.getSyntacticDiagnostics(source), ...program.getSemanticDiagnostics(source)].map(
        ({ start = 0, messageText }) =>
          `${file.slice(root.length)}:${(source?.getLineAndCharacterOfPosition(start).line ?? 0) + 1} ${ts.flattenDiagnosticMessageText(messageText, ' ').slice(0, 200)}`,
      )
    })
    expect(complaints).toEqual([])
  }, 120_000)
})
