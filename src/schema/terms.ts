import type { KindName } from '../text/generated/kind-types.js'

/** How much is read. */
export interface ReadingLimit {
  /** Longest text that is looked at; eight million by default. Unit: 1. Range: integers [1, ∞). */
  readonly maxCharacters?: number
}

/** What a record of SenML says: one value with its unit. */
export interface SenmlUnitAndValue {
  /** Unit, a symbol of the SenML registry. */
  readonly u?: string
  /** Value that is a number. Unit: that of the record. Range: any. */
  readonly v?: number
  /** Value that is text. */
  readonly vs?: string
  /** Value that is true or false. */
  readonly vb?: boolean
  /** Value that is binary, in base 64 with a URL-safe alphabet. */
  readonly vd?: string
  /** Sum of the values over time. Unit: that of the record times s. Range: any. */
  readonly s?: number
  /** Longest time until the next reading. Unit: s. Range: any. */
  readonly ut?: number
}

/** What a reading can be of: a kind of quantity, or the number that a probe reports before calibration. */
export type ReadingKind = KindName | 'RawReading'

/** Where a reading comes from. */
export interface ReadingOrigin {
  /** Which probe. */
  readonly source: string
  /** Of what. */
  readonly kind: ReadingKind
}
