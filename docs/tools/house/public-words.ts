import { existsSync, readdirSync } from 'node:fs'
import ts from 'typescript'
import { root } from './source-files.js'

/** A word that a caller writes or reads: one of the words of a type, or the name of a property. */
export interface PublicWord {
  readonly word: string
  /** Entry point, exported name and the properties that lead to it. */
  readonly where: string
  readonly isProperty: boolean
  /** Whether it is a row of a table that is exported as a constant: `lightSources['sun-and-sky']`. */
  readonly isRow?: true
}

/** The indexes of the public entries. */
export function publicIndexes(): string[] {
  return readdirSync(`${root}src`)
    .filter((topic) => topic !== 'repl' && existsSync(`${root}src/${topic}/index.ts`))
    .map((topic) => `${root}src/${topic}/index.ts`)
}

/** Every word in the types of what some modules export, and of everything that these types hold; each is told where it stands first. */
export function publicWords(indexes: readonly string[]): PublicWord[] {
  const config = ts.readConfigFile(`${root}tsconfig.json`, ts.sys.readFile)
  const { options } = ts.parseJsonConfigFileContent(config.config, ts.sys, root)
  const program = ts.createProgram([...indexes], options)
  const checker = program.getTypeChecker()
  const found = new Map<string, PublicWord>()
  const seen = new Set<ts.Type>()
  const isOurs = (symbol: ts.Symbol | undefined) =>
    symbol?.declarations?.some((node) => !/\/node_modules\//.test(node.getSourceFile().fileName)) ?? true
  const tables = new Set<ts.Type>()
  const add = (word: string, where: string, isProperty: boolean, isRow = false) => {
    const key = `${word} ${isProperty} ${isRow}`
    if (!found.has(key)) found.set(key, { word, where, isProperty, ...(isRow && { isRow }) })
  }
  const look = (type: ts.Type, where: string): void => {
    if (type.isStringLiteral()) add(type.value, where, false)
    if (seen.has(type)) return
    seen.add(type)
    // The text of a quantity's mark is no word: it tells the compiler what to say.
    if (type.symbol?.name === 'Kind') return
    if (type.isUnionOrIntersection()) for (const part of type.types) look(part, where)
    for (const given of [...(type.aliasTypeArguments ?? []), ...checker.getTypeArguments(type as ts.TypeReference)])
      look(given, where)
    if (!(type.flags & ts.TypeFlags.Object) || !isOurs(type.symbol)) return
    for (const property of type.getProperties()) {
      if (property.name.startsWith('__') || !isOurs(property)) continue
      add(property.name, where, true, tables.has(type))
      look(checker.getTypeOfSymbol(property), `${where}.${property.name}`)
    }
    for (const signature of type.getCallSignatures()) {
      for (const parameter of signature.parameters)
        look(checker.getTypeOfSymbol(parameter), `${where}(${parameter.name})`)
      look(signature.getReturnType(), `${where}()`)
    }
    for (const { type: each } of checker.getIndexInfosOfType(type)) look(each, `${where}[]`)
  }
  for (const path of indexes) {
    const index = program.getSourceFile(path)
    const module = index && checker.getSymbolAtLocation(index)
    if (module === undefined) throw new Error(`${path} is not a module`)
    const entry = path.replace(root, '').replace(/^src\/|\/index\.ts$/g, '')
    for (const exported of checker.getExportsOfModule(module)) {
      const symbol = exported.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(exported) : exported
      // Kinds and errors are words of their own where an error or a document names one.
      add(exported.name, entry, true)
      const isType = (symbol.flags & ts.SymbolFlags.Value) === 0
      const type = isType ? checker.getDeclaredTypeOfSymbol(symbol) : checker.getTypeOfSymbol(symbol)
      if (!isType && type.getCallSignatures().length === 0) tables.add(type)
      look(type, `${entry} ${exported.name}`)
    }
  }
  return [...found.values()]
}
