import ts from 'typescript'
import { programOf, publicIndexes } from './public-types.js'

/** A place in the arguments of a public function that takes words: a union of string literals, alone or beside something else. */
export interface WordPlace {
  readonly name: string
  /** The position of the argument, then properties; `0` for the entries of a list. */
  readonly path: readonly string[]
  /** The same with the name of the argument. */
  readonly shown: string
  readonly words: readonly string[]
}

/** Every such place of every public function at any depth: aliases and unions resolved by the compiler, lists entered. */
export function wordPlaces(indexes: readonly string[] = publicIndexes()): WordPlace[] {
  const program = programOf(indexes)
  const checker = program.getTypeChecker()
  const places = new Map<string, WordPlace>()
  for (const index of indexes) {
    const source = program.getSourceFile(index)
    const module = source && checker.getSymbolAtLocation(source)
    if (module === undefined) throw new Error(`${index} is not a module`)
    for (const exported of checker.getExportsOfModule(module)) {
      const symbol = exported.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(exported) : exported
      if ((symbol.flags & ts.SymbolFlags.Value) === 0) continue
      for (const signature of checker.getTypeOfSymbol(symbol).getCallSignatures())
        signature.parameters.forEach((parameter, i) => {
          for (const { path, words } of wordsIn(checker, checker.getTypeOfSymbol(parameter))) {
            const shown = [exported.name, [parameter.name, ...path].join('.')].join(' ')
            const before = places.get(shown)?.words ?? []
            const all = [...new Set([...before, ...words])].sort()
            places.set(shown, { name: exported.name, path: [String(i), ...path], shown, words: all })
          }
        })
    }
  }
  return [...places.values()]
}

interface Found {
  readonly path: readonly string[]
  readonly words: readonly string[]
}

/** The unions inside one type. A type inside itself is entered once; functions, and what is not ours, are not entered. */
function* wordsIn(
  checker: ts.TypeChecker,
  given: ts.Type,
  path: readonly string[] = [],
  above: readonly ts.Type[] = [],
): Generator<Found> {
  const type = checker.getBaseConstraintOfType(given) ?? given
  if (above.includes(type)) return
  const parts = type.isUnion() ? type.types : [type]
  const words = parts.flatMap((part) => (part.isStringLiteral() ? [part.value] : []))
  if (words.length > 0) yield { path, words }
  for (const part of parts) {
    if (part.flags & (ts.TypeFlags.StringLike | ts.TypeFlags.NumberLike) || isMark(part)) continue
    const inside = [...above, type, part]
    const each = entryOf(checker, part)
    if (each !== undefined) yield* wordsIn(checker, each, [...path, '0'], inside)
    else if (part.getCallSignatures().length === 0)
      for (const property of part.getProperties())
        if (isOurs(property))
          yield* wordsIn(checker, checker.getTypeOfSymbol(property), [...path, property.name], inside)
  }
}

/** What a list holds: of an array, a tuple, or anything that is counted. */
function entryOf(checker: ts.TypeChecker, type: ts.Type): ts.Type | undefined {
  return checker.getIndexInfosOfType(type).find(({ keyType }) => keyType.flags & ts.TypeFlags.Number)?.type
}

/** A quantity: a number with a mark for the compiler. */
const isMark = (type: ts.Type) =>
  type.isIntersection() && type.types.some((part) => part.flags & (ts.TypeFlags.NumberLike | ts.TypeFlags.StringLike))

const isOurs = (symbol: ts.Symbol) =>
  !symbol.name.startsWith('__') &&
  (symbol.declarations?.some((node) => !/\/node_modules\//.test(node.getSourceFile().fileName)) ?? true)
