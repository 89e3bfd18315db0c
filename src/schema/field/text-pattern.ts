import { allSpellings } from '../../text/all-spellings.js'
import type { KindName } from '../../text/generated/kind-types.js'
import { kindNamed } from '../../text/kind-named.js'

const SPACE = '[\\s\\u00a0\\u2007\\u202f]'
// A digit must follow: every other part may be missing.
const NUMBER = `(?=[+\\-−]?\\.?\\d)[+\\-−]?(?:\\d{1,3}(?:${SPACE}\\d{3})+|\\d+)?(?:\\.\\d*)?(?:[eE][+\\-]?\\d+)?`

/**
 * What text of a kind may look like, for JSON Schema: a number and one of the spellings of its units. Units made of several, such as L/h,
 * are written in more ways than a pattern can list; there only the number is asked for.
 */
export function textPattern(kind: KindName): string {
  const { units, bare, compound } = kindNamed(kind)
  const withNumber = `${SPACE}*${NUMBER}${SPACE}*`
  if (!units.every((unit) => unit.shown === '1' || isSimple(unit.shown))) return `^${withNumber}.*$`
  const symbols = units.filter((unit) => unit.shown !== '1')
  const alternatives = new Set(symbols.flatMap((unit) => [...spellingsOf(unit.shown), quoted(unit.ucum)]))
  const named = [...alternatives].sort((a, b) => b.length - a.length).join('|')
  const optional = bare || symbols.length < units.length ? '?' : ''
  const one = `${withNumber}(?:${named})${optional}`
  const pF = kind === 'SuctionHead' ? `|pF${SPACE}*[+\\-]?(?:\\d+\\.?\\d*|\\.\\d+)` : ''
  return `^(?:${compound ? `(?:${one})+` : one}${pF})${SPACE}*$`
}

/** A unit that is not made of others: no division, product or negative power. */
function isSimple(unit: string): boolean {
  return !/[/·*⁻]/.test(unit)
}

/** All that stands for a symbol: itself, its spellings, and names in any case. */
function spellingsOf(symbol: string): string[] {
  const { letters, words } = allSpellings()
  const of = (table: Readonly<Record<string, string | undefined>>) =>
    Object.keys(table).filter((word) => table[word] === symbol)
  return [...[symbol, ...of(letters)].map(quoted), ...of(words).map(anyCase)]
}

/** A spelling as a pattern: powers in three ways, both signs of micro, and any number of spaces. */
function quoted(text: string): string {
  return text
    .replace(/[.*+?^${}()|[\]\\]/g, '\\$&')
    .replace(/ /g, `${SPACE}+`)
    .replace(/[µμ]/g, '[µμu]')
    .replace(/[²³]/g, (power) => `(?:${power}|\\^?${power === '²' ? 2 : 3})`)
    .replace(/^°(?=[CF])/, `°${SPACE}?`)
}

/** A word in capitals and small letters, in the plural too, and in both spellings of metre and litre. */
function anyCase(word: string): string {
  const letters = quoted(word).replace(/(?<!\\)[a-z](?![^[]*\])/g, (letter) => `[${letter.toUpperCase()}${letter}]`)
  return `${letters.replace(/((?:\[Mm\]\[Ee\]|\[Ll\]\[Ii\])\[Tt\])\[Rr\]\[Ee\]/, '$1(?:[Rr][Ee]|[Ee][Rr])')}[Ss]?`
}
