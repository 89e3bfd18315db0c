import { existsSync, readdirSync } from 'node:fs'
import ts from 'typescript'
import { root } from './source-files.js'

/** The indexes of the public entries. */
export function publicIndexes(): string[] {
  return readdirSync(`${root}src`)
    .filter((topic) => topic !== 'repl' && existsSync(`${root}src/${topic}/index.ts`))
    .map((topic) => `${root}src/${topic}/index.ts`)
}

/** What somebody wants to see of the types of what some modules export, and of everything that these types hold. */
export interface Visitor {
  /** Something that is exported, before its type. `entry` is the name of its topic. */
  readonly exported?: (exported: {
    name: string
    entry: string
    symbol: ts.Symbol
    type: ts.Type
    isType: boolean
  }) => void
  /** A type of any sort, told where it stands first. */
  readonly type?: (type: ts.Type, where: string) => void
  /** The properties of an object that this package declares. */
  readonly object?: (type: ts.Type, properties: readonly ts.Symbol[], where: string) => void
}

/** The sources behind the public entries, read once: to read them takes most of the time of whoever asks. */
let whole: ts.Program | undefined

/** What the compiler makes of some modules. Those outside src, which tests plant, are read anew. */
export function programOf(indexes: readonly string[]): ts.Program {
  const read = () => {
    const config = ts.readConfigFile(`${root}tsconfig.json`, ts.sys.readFile)
    return ts.createProgram([...indexes], ts.parseJsonConfigFileContent(config.config, ts.sys, root).options)
  }
  if (indexes.join() !== publicIndexes().join()) return read()
  whole ??= read()
  return whole
}

/** Walks over the types of what some modules export, each once. */
export function visitPublicTypes(indexes: readonly string[], visitorOf: (checker: ts.TypeChecker) => Visitor): void {
  const program = programOf(indexes)
  const checker = program.getTypeChecker()
  const visitor = visitorOf(checker)
  const look = walk(checker, visitor)
  for (const path of indexes) {
    const index = program.getSourceFile(path)
    const module = index && checker.getSymbolAtLocation(index)
    if (module === undefined) throw new Error(`${path} is not a module`)
    const entry = path.replace(root, '').replace(/^src\/|\/index\.ts$/g, '')
    for (const exported of checker.getExportsOfModule(module)) {
      const symbol = exported.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(exported) : exported
      const isType = (symbol.flags & ts.SymbolFlags.Value) === 0
      const type = isType ? checker.getDeclaredTypeOfSymbol(symbol) : checker.getTypeOfSymbol(symbol)
      visitor.exported?.({ name: exported.name, entry, symbol, type, isType })
      look(type, `${entry} ${exported.name}`)
    }
  }
}

function walk(checker: ts.TypeChecker, visitor: Visitor): (type: ts.Type, where: string) => void {
  const seen = new Set<ts.Type>()
  const look = (type: ts.Type, where: string): void => {
    if (seen.has(type)) return
    seen.add(type)
    visitor.type?.(type, where)
    // The text of a quantity's mark is no word: it tells the compiler what to say.
    if (type.symbol?.name === 'Kind') return
    if (type.isUnionOrIntersection()) for (const part of type.types) look(part, where)
    for (const given of [...(type.aliasTypeArguments ?? []), ...checker.getTypeArguments(type as ts.TypeReference)])
      look(given, where)
    const isObject = type.isIntersection() ? type.getProperties().length > 0 : type.flags & ts.TypeFlags.Object
    if (!isObject || !isOurs(type.symbol)) return
    const properties = type.getProperties().filter((one) => !one.name.startsWith('__') && isOurs(one))
    visitor.object?.(type, properties, where)
    for (const property of properties) look(checker.getTypeOfSymbol(property), `${where}.${property.name}`)
    for (const signature of type.getCallSignatures()) {
      for (const parameter of signature.parameters)
        look(checker.getTypeOfSymbol(parameter), `${where}(${parameter.name})`)
      look(signature.getReturnType(), `${where}()`)
    }
    for (const { type: each } of checker.getIndexInfosOfType(type)) look(each, `${where}[]`)
  }
  return look
}

function isOurs(symbol: ts.Symbol | undefined): boolean {
  return symbol?.declarations?.some((node) => !/\/node_modules\//.test(node.getSourceFile().fileName)) ?? true
}
