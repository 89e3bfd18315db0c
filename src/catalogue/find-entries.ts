import { InputError } from '../quantity/errors.js'
import { catalogue } from './catalogue.js'
import type { CatalogueEntry } from './entry.js'
import { sourceInFull } from './source-in-full.js'

/** What is looked for; what is given must all be true of an entry. */
export interface CatalogueQuery {
  /** Beginnings of words that must all occur, in any case and order: in the name, the summary, the arguments or the rest of the description. */
  readonly words?: string | undefined
  /** Unit of the result or of a number in it: `L`, `m³/m³`, also written `m3/m3`. */
  readonly gives?: string | undefined
  /** Unit of an argument or of a number in one. */
  readonly takes?: string | undefined
  /** Words that must all occur in one source, in its key or the full citation: `Topp 1980`, `Water Resources Research`. */
  readonly source?: string | undefined
  /** Folder of the function: `irrigation`. */
  readonly topic?: string | undefined
}

const KEYS: readonly string[] = ['words', 'gives', 'takes', 'source', 'topic']

/**
 * The functions that fit a search, the best first.
 *
 * @param wanted - What is looked for: words, units, source, topic.
 * @procedure Keeps the entries for which all that is asked is true. A word counts most in the name, then in the summary, then in the arguments and the result, least in the rest; equals stay in alphabetical order.
 * @returns Entries of the catalogue; all of them for an empty query, none where nothing fits.
 * @throws `InputError` for a query that is not text, or a key that is not one of the five.
 * @source definition
 * @example
 * findEntries({ words: 'shot volume' })[0].name // => 'shotVolume'
 * findEntries({ source: 'Topp 1980', gives: 'm3/m3' })[0].name // => 'waterContentTopp1980'
 * findEntries({ words: 'violin' }) // => []
 */
export function findEntries(wanted: CatalogueQuery): readonly CatalogueEntry[] {
  checkQuery(wanted)
  const words = wordsOf(wanted.words)
  const sourceWords = wordsOf(wanted.source)
  return catalogue
    .filter((entry) => wanted.topic === undefined || entry.topic === wanted.topic)
    .filter((entry) => wanted.gives === undefined || givesUnit(entry, plainUnit(wanted.gives)))
    .filter((entry) => wanted.takes === undefined || takesUnit(entry, plainUnit(wanted.takes)))
    .filter((entry) => sourceWords.length === 0 || entry.sources.some((source) => citesAll(source, sourceWords)))
    .map((entry) => ({ entry, weight: weightOf(entry, words) }))
    .filter(({ weight }) => weight > 0)
    .sort((a, b) => b.weight - a.weight || (a.entry.name < b.entry.name ? -1 : 1))
    .map(({ entry }) => entry)
}

function checkQuery(wanted: CatalogueQuery): void {
  const given = typeof wanted === 'object' && wanted !== null ? Object.entries(wanted) : [['query', wanted] as const]
  for (const [key, value] of given) {
    if (!KEYS.includes(key)) throw new InputError(key, 'is not something to look for', `use ${KEYS.join(', ')}`)
    if (value !== undefined && typeof value !== 'string')
      throw new InputError(key, `is of type ${typeof value}`, 'give text')
  }
}

/** How well the words fit: zero when one is missing. */
function weightOf(entry: CatalogueEntry, words: readonly string[]): number {
  const places: readonly (readonly [number, string])[] = [
    [8, nameInWords(entry.name)],
    [8, ` ${entry.name.toLowerCase()}`],
    [4, entry.summary.toLowerCase()],
    [
      2,
      [...entry.arguments, ...entry.result.fields]
        .map((field) => `${field.path} ${field.text}`)
        .join(' ')
        .toLowerCase(),
    ],
    [2, entry.result.text.toLowerCase()],
    [
      1,
      [entry.description, entry.procedure, entry.validity, ...entry.sources.map(sourceInFull)].join(' ').toLowerCase(),
    ],
  ]
  let weight = 1
  for (const word of words) {
    const best = Math.max(0, ...places.filter(([, text]) => beginsWord(text, word)).map(([worth]) => worth))
    if (best === 0) return 0
    weight += best
  }
  // The shorter of two names that fit is the nearer one.
  return weight + 1 / (1 + entry.name.length)
}

/** Whether a word of the text begins so: `drain` finds `drainage`, but `peat` does not find `repeats`. */
function beginsWord(text: string, start: string): boolean {
  for (let at = text.indexOf(start); at >= 0; at = text.indexOf(start, at + 1)) {
    if (at === 0 || !/[\p{L}\p{N}]/u.test(text[at - 1]!)) return true
  }
  return false
}

/** `waterContentTopp1980` as `water content topp 1980`. */
function nameInWords(name: string): string {
  return name
    .replace(/([a-z])([A-Z0-9])/g, '$1 $2')
    .replace(/([0-9])([A-Z])/g, '$1 $2')
    .toLowerCase()
}

function wordsOf(text: string | undefined): string[] {
  return (text ?? '')
    .toLowerCase()
    .split(/[\s,]+/)
    .filter(Boolean)
}

/** Whether the words all occur in a source, its keys or the citations that they stand for. */
function citesAll(source: string, words: readonly string[]): boolean {
  const lower = `${source} ${sourceInFull(source)}`.toLowerCase()
  return words.every((word) => lower.includes(word))
}

function givesUnit(entry: CatalogueEntry, unit: string): boolean {
  return [entry.result, ...entry.result.fields].some(
    (field) => field.unit !== undefined && plainUnit(field.unit) === unit,
  )
}

function takesUnit(entry: CatalogueEntry, unit: string): boolean {
  return entry.arguments.some((field) => field.unit !== undefined && plainUnit(field.unit) === unit)
}

const TYPED: Readonly<Record<string, string>> = {
  '²': '2',
  '³': '3',
  '⁻': '-',
  '¹': '1',
  µ: 'u',
  μ: 'u',
  '·': ' ',
  '⋅': ' ',
}

/** A unit as it can be typed on any keyboard: `m³/m³` as `m3/m3`. */
function plainUnit(unit: string): string {
  return [...unit.trim()]
    .map((sign) => TYPED[sign] ?? sign)
    .join('')
    .replace(/\^/g, '')
}
