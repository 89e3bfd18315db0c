import type { Finding } from '../../quantity/finding.js'

/** Where a number of the root zone lies among published bands. */
export interface RootZoneBand<Name extends string = string> {
  /** Name of the band. */
  readonly band: Name
  /** The number that was judged. Unit: that of the argument. */
  readonly value: number
  /** What it means, with its level, number and source: one finding. */
  readonly findings: readonly Finding[]
  /** What the band does not say. */
  readonly caution: string
}

/** A band up to a limit, with what to say about it. */
export interface Band<Name extends string = string> {
  /** Upper limit. */
  readonly upTo: number
  /** Whether a number at the limit belongs to the next band instead. */
  readonly below?: true
  readonly band: Name
  readonly level: Finding['level']
  readonly says: string
}

/** The band of a value as a result. */
export function inBands<Name extends string>(
  value: number,
  bands: readonly Band<Name>[],
  about: { readonly code: string; readonly unit: string; readonly source: string; readonly caution: string },
): RootZoneBand<Name> {
  const found = bands.find(({ upTo, below }) => (below ? value < upTo : value <= upTo)) ?? bands[bands.length - 1]!
  return {
    band: found.band,
    value,
    findings: [
      {
        code: about.code,
        level: found.level,
        message: `${Number(value.toPrecision(4))} ${about.unit}: ${found.says}`,
        value,
        unit: about.unit,
        source: about.source,
      },
    ],
    caution: about.caution,
  }
}
