import type { Domain } from '../quantity/domain.js'

/** One unit that text may use for a kind. */
export interface TextUnit {
  /** Symbol, as it is written. */
  readonly shown: string
  /** UCUM code. */
  readonly ucum: string
  /** The form that all its spellings share. */
  readonly form: string
  /** What leads from a number in this unit to the one that is kept: (number − minus) × times ÷ over. */
  readonly minus: number
  readonly times: number
  readonly over: number
}

/** The units of a kind. The first is the one that text is written in. */
export type UnitList = readonly [TextUnit, ...TextUnit[]]

/** A kind of quantity as text sees it. */
export interface TextKind {
  /** What its numbers may be, in the unit in which they are kept. */
  readonly domain: Domain
  /** Checks a number in the unit in which numbers are kept, as the kind's constructor does. */
  readonly make: (value: number) => number
  readonly units: UnitList
  /** Unit in which numbers are kept; that of text is the first of the list. */
  readonly kept: string
  /** Whether a number without a unit is read. */
  readonly bare: boolean
  /** Whether text of two units is read, as in `1 h 30 min`. */
  readonly compound: boolean
}

/** The number that is kept for a number in a unit. */
export function keptNumber(value: number, { minus, times, over }: TextUnit): number {
  return ((value - minus) * times) / over
}

/** The number in a unit for a number that is kept. */
export function shownNumber(kept: number, { minus, times, over }: TextUnit): number {
  return (kept * over) / times + minus
}

/** The UCUM code of a symbol, where it follows from the symbol: `µmol/m²/s` is `umol/(m2.s)`. */
export function codeOf(symbol: string): string {
  const [over = '', ...under] = symbol
    .replace(/µ/g, 'u')
    .replace(/[²³]/g, (digit) => (digit === '²' ? '2' : '3'))
    .replace('·', '.')
    .split('/')
  const divisor = under.length > 1 ? `(${under.join('.')})` : under[0]
  return divisor === undefined ? over : `${over === '1' ? '' : over}/${divisor}`
}

/** The words of a kind's name: `WaterDepth` is `water depth`. */
export function wordsOf(name: string): string {
  return name.replace(/\B[A-Z]/g, ' $&').toLowerCase()
}

/** What to do about most numbers outside of a range that is written as in the table. */
export function usualHint(quantity: string, range: string): string {
  if (range === '(,)') return `give a finite ${quantity}`
  const wanted = range === '(0,)' ? 'above zero' : 'of zero or more'
  return `give a${/^[aeiou]/.test(quantity) ? 'n' : ''} ${quantity} ${wanted}`
}
