import { answerOf } from '../quantity/answer.js'
import { ROD_LENGTH } from '../quantity/domains.js'
import type { Area, Length, Volume } from '../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../quantity/guard.js'
import { SAMPLED_AREA } from './domains.js'

/** The rods of a probe and how far they feel. */
export interface SampledRods {
  /** Length of the rods in the medium. Unit: cm. Range: (0, 500]. */
  readonly rodLength: Length
  /** Area around the rods, across them, that the reading stands for. Unit: m². Range: (0, ∞). */
  readonly sampledArea: Area
}

/**
 * Volume of medium that a reading of parallel rods stands for.
 *
 * Baker and Lascano found most of the response of two rods within about 1000 mm², all of it within 3500 to 4000 mm², and readings
 * usable from 20 mm below the surface. A vessel for calibration must be larger than the whole.
 *
 * @equation `V = A L`
 * @returns Sampled volume. Unit: L.
 * @source baker-1989, abstract (areas); definition
 * @example
 * sampledVolume({ rodLength: centimetres(20), sampledArea: squareCentimetres(10) }) // => 0.2
 */
export function sampledVolume(rods: SampledRods): Volume {
  requireObject(rods, 'rods')
  const { rodLength, sampledArea } = rods
  return answerOf(
    10 * numberIn(rodLength, ROD_LENGTH, 'rodLength') * numberIn(sampledArea, SAMPLED_AREA, 'sampledArea'),
    'rodLength',
  ) as Volume
}
