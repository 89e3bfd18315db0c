import { formOf, rootOf } from '../../../src/text/unit-form.js'
import type { Family } from './table.js'

/**
 * Other spellings, each with the symbol it stands for. One that is made of several units (`meq/L`) is kept in the form that the parser
 * brings it into.
 */
export function spellingsOf(families: readonly Family[]): {
  letters: Record<string, string>
  words: Record<string, string>
} {
  const units = families.filter((family) => family.row.noText === undefined).flatMap((family) => family.units)
  const words: Record<string, string> = Object.create(null)
  const letters: Record<string, string> = Object.create(null)
  for (const { symbol, words: own = [], also = [] } of units) {
    for (const spelling of own) add(words, rootOf(spelling), symbol)
    for (const spelling of also.filter((one) => !one.includes('/'))) add(letters, spelling, symbol)
  }
  const large = units.flatMap((unit) => unit.words ?? []).find((spelling) => spelling !== spelling.toLowerCase())
  if (large !== undefined) throw new Error(`the word "${large}" has capitals: write it in small letters`)
  const single = { letters: Object.assign(Object.create(null), letters), words }
  for (const { symbol, also = [] } of units) {
    for (const spelling of also.filter((one) => one.includes('/'))) {
      const form = formOf(spelling, single)
      if (form !== formOf(symbol, single)) add(letters, form, symbol)
    }
  }
  return { letters, words }
}

function add(spellings: Record<string, string>, spelling: string, symbol: string): void {
  const other = spellings[spelling]
  if (other !== undefined && other !== symbol)
    throw new Error(`"${spelling}" is a spelling of ${other} and of ${symbol}`)
  spellings[spelling] = symbol
}
