import { answerOf } from '../../quantity/answer.js'
import type { AnyEC, DissolvedSolids, UnnamedEC } from '../../quantity/generated/kinds.js'
import { numberIn, optionsOf } from '../../quantity/guard.js'
import { CONDUCTIVITY, DISSOLVED_SOLIDS, SOLIDS_PER_CONDUCTIVITY } from '../domains.js'
import type { SolidsScale, SolidsShown } from '../terms.js'

/**
 * The scales in use, each named after its factor in mg/L per dS/m: 500 for sodium chloride, 535 for potassium chloride, 640 of
 * Agriculture Handbook 60 for irrigation water below 5 dS/m, 700 for a mixture of sulphate, bicarbonate and chloride.
 */
export const DISSOLVED_SOLIDS_SCALES = { scale500: 500, scale535: 535, scale640: 640, scale700: 700 } as const

/** A conductivity and the scale on which solids are shown. */
export interface ConductivityOnScale extends SolidsScale {
  /** Conductivity at 25 °C. Unit: dS/m. Range: [0, ∞). */
  readonly conductivity: AnyEC | UnnamedEC
}

/** Solids as shown and the scale on which they were. */
export interface SolidsOnScale extends SolidsScale, SolidsShown {}

/** Solids as shown on one scale, for another. */
export interface SolidsBetweenScales extends SolidsShown {
  /** Factor of the scale they were shown on. Unit: mg/L per dS/m. Range: [300, 1200]. */
  readonly from: number
  /** Factor of the scale wanted. Unit: mg/L per dS/m. Range: [300, 1200]. */
  readonly to: number
}

/**
 * Dissolved solids that a meter of a given scale shows at an electrical conductivity.
 *
 * A meter measures conductivity only; "ppm" without its scale is ambiguous by 40 %. Store and compare conductivity.
 *
 * @equation `TDS = k\,\sigma_{25}`
 * @returns Dissolved solids. Unit: mg/L.
 * @source us-salinity-laboratory-1954 (factor 640); 500 and 700 are conventions of meters, common practice, no source
 * @example
 * dissolvedSolids({ conductivity: decisiemensPerMetre(1.5), factor: DISSOLVED_SOLIDS_SCALES.scale640 }) // => 960
 */
export function dissolvedSolids(sample: ConductivityOnScale): DissolvedSolids {
  return answerOf(
    numberIn(optionsOf(sample).conductivity, CONDUCTIVITY, 'conductivity') *
      numberIn(sample.factor, SOLIDS_PER_CONDUCTIVITY, 'factor'),
    'conductivity',
  ) as DissolvedSolids
}

/**
 * Electrical conductivity behind the dissolved solids that a meter of a given scale shows; its kind is that of the place where it is used.
 *
 * @equation `\sigma_{25} = \frac{TDS}{k}`
 * @returns Conductivity at 25 °C. Unit: dS/m.
 * @source us-salinity-laboratory-1954 (factor 640); 500 and 700 are conventions of meters, common practice, no source
 * @example
 * conductivityOfDissolvedSolids({ solids: milligramsPerLitreOfSolids(2800), factor: 700 }) // => 4
 */
export function conductivityOfDissolvedSolids<Q extends AnyEC | UnnamedEC = UnnamedEC>(sample: SolidsOnScale): Q {
  return (numberIn(optionsOf(sample).solids, DISSOLVED_SOLIDS, 'solids') /
    numberIn(sample.factor, SOLIDS_PER_CONDUCTIVITY, 'factor')) as Q
}

/**
 * Dissolved solids of one scale on another.
 *
 * @equation `TDS_2 = TDS_1\,\frac{k_2}{k_1}`
 * @param sample - Dissolved solids and the factors of both scales.
 * @returns Dissolved solids on the wanted scale. Unit: mg/L.
 * @source definition
 * @example
 * dissolvedSolidsOnScale({ solids: milligramsPerLitreOfSolids(1000), from: 500, to: 700 }) // => 1400
 */
export function dissolvedSolidsOnScale(sample: SolidsBetweenScales): DissolvedSolids {
  const solids = numberIn(optionsOf(sample).solids, DISSOLVED_SOLIDS, 'solids')
  return answerOf(
    solids *
      (numberIn(sample.to, SOLIDS_PER_CONDUCTIVITY, 'to') / numberIn(sample.from, SOLIDS_PER_CONDUCTIVITY, 'from')),
    'solids',
  ) as DissolvedSolids
}
