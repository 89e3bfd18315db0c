import type ts from 'typescript'
import { visitPublicTypes } from './public-types.js'

/** A word that a caller writes or reads: one of the words of a type, or the name of a property. */
export interface PublicWord {
  readonly word: string
  /** Entry point, exported name and the properties that lead to it. */
  readonly where: string
  readonly isProperty: boolean
  /** Whether it is a row of a table that is exported as a constant: `lightSources['sun-and-sky']`. */
  readonly isRow?: true
}

/** Every word in the types of what some modules export, and of everything that these types hold; each is told where it stands first. */
export function publicWords(indexes: readonly string[]): PublicWord[] {
  const found = new Map<string, PublicWord>()
  const tables = new Set<ts.Type>()
  const add = (word: string, where: string, isProperty: boolean, isRow = false) => {
    const key = `${word} ${isProperty} ${isRow}`
    if (!found.has(key)) found.set(key, { word, where, isProperty, ...(isRow && { isRow }) })
  }
  visitPublicTypes(indexes, () => ({
    exported: ({ name, entry, type, isType }) => {
      // Kinds and errors are words of their own where an error or a document names one.
      add(name, entry, true)
      if (!isType && type.getCallSignatures().length === 0) tables.add(type)
    },
    type: (type, where) => {
      if (type.isStringLiteral()) add(type.value, where, false)
    },
    object: (type, properties, where) => {
      for (const { name } of properties) add(name, where, true, tables.has(type))
    },
  }))
  return [...found.values()]
}
