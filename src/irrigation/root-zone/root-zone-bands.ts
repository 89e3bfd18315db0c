import type { HowSerious } from '../terms.js'

/** Bands of root temperature for a crop, and for the water moulds in its root zone. */
export type RootTemperatureBandName =
  | 'cold'
  | 'cool'
  | 'target'
  | 'warm'
  | 'hot'
  | 'not-studied'
  | 'pythium-dissotocum'
  | 'either'
  | 'pythium-aphanidermatum'
  | 'least'
  | 'favoured'
  | 'zoospores'
  | 'between'
  | 'growth'
  | 'declining'
  | 'no-zoospores'
  | 'nearly-stopped'
  | 'slow'
  | 'best'

/** Names of all bands of the root zone. */
export type RootZoneBandName =
  | RootTemperatureBandName
  | 'very-low'
  | 'low'
  | 'accepted'
  | 'normal'
  | 'watch'
  | 'enough'
  | 'high'
  | 'very-high'
  | 'extreme'

/** In which band a number of the root zone lies, without words; `explainIrrigationFinding` has them. */
export interface BandFinding extends HowSerious {
  /** What was judged. */
  readonly code: 'air-space' | 'root-oxygen' | 'root-temperature' | 'media-salts'
  /** Whose table it was, where there are several: the organism, or the method of the extract. */
  readonly about?: string
  /** Name of the band. */
  readonly band: RootZoneBandName
  /** The number that was judged. Unit: that of `unit`. Range: any. */
  readonly value: number
  /** Unit of the value. */
  readonly unit: string
  /** Where the band comes from, works by their keys. */
  readonly source: string
}

/** Where a number of the root zone lies among published bands. */
export interface RootZoneBand<Name extends RootZoneBandName = RootZoneBandName> {
  /** Name of the band. */
  readonly band: Name
  /** The number that was judged. Unit: that of the argument. */
  readonly value: number
  /** What it means, with its level, number and source: one finding. */
  readonly findings: readonly BandFinding[]
  /** What the band does not say. */
  readonly caution: string
}

/** A band up to a limit. */
export interface Band<Name extends RootZoneBandName = RootZoneBandName> extends HowSerious {
  /** Upper limit. */
  readonly upTo: number
  /** Whether a number at the limit belongs to the next band instead. */
  readonly below?: true
  readonly band: Name
}

/** The band of a value as a result. */
export function inBands<Name extends RootZoneBandName>(
  value: number,
  bands: readonly Band<Name>[],
  { caution, ...about }: Omit<BandFinding, 'level' | 'band' | 'value'> & { readonly caution: string },
): RootZoneBand<Name> {
  const { band, level } =
    bands.find(({ upTo, below }) => (below ? value < upTo : value <= upTo)) ?? bands[bands.length - 1]!
  return { band, value, findings: [{ ...about, level, band, value }], caution }
}
