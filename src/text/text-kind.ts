/** One unit that text may use for a kind. */
export interface TextUnit {
  /** Symbol, as it is written. */
  readonly shown: string
  /** UCUM code. */
  readonly ucum: string
  /** What leads from a number in this unit to the one that is kept: (number − minus) × times ÷ over. */
  readonly minus?: number
  readonly times?: number
  readonly over?: number
}

/** The units of a kind. The first is the one that text is written in. */
export type UnitList = readonly [TextUnit, ...TextUnit[]]

/** A kind of quantity as text sees it. */
export interface TextKind {
  /** The constructor that checks a number in the unit in which numbers are kept. */
  readonly make: (value: number) => number
  readonly units: UnitList
  /** Unit in which numbers are kept, if it is not the first one. */
  readonly kept?: string
  /** Whether a number without a unit is read. */
  readonly bare?: true
  /** Whether text of two units is read, as in `1 h 30 min`. */
  readonly compound?: true
}

/** The number that is kept for a number in a unit. */
export function keptNumber(value: number, { minus = 0, times = 1, over = 1 }: TextUnit): number {
  return ((value - minus) * times) / over
}

/** The number in a unit for a number that is kept. */
export function shownNumber(kept: number, { minus = 0, times = 1, over = 1 }: TextUnit): number {
  return (kept * over) / times + minus
}

/** The unit in which plain numbers of a kind are meant. */
export function keptUnit({ units, kept }: TextKind): string {
  return kept ?? units[0].shown
}
