import { answersOf } from '../../quantity/answer.js'
import { SCALE_MASS, SUBSTRATE } from '../../quantity/domains.js'
import type { Mass, Volume, WaterContent, WaterContentChange } from '../../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../../quantity/guard.js'
import { PROBE_CONTENT } from '../domains.js'

/** A container that was weighed twice, with the readings of its probe at both times. */
export interface ProbeAgainstScaleInput {
  /** Mass at the first weighing. Unit: g. Range: [0, ∞). */
  readonly massBefore: Mass
  /** Mass at the second weighing. Unit: g. Range: [0, ∞). */
  readonly massAfter: Mass
  /** Water content at the first weighing. Unit: m³/m³. Range: [-1, 2]. */
  readonly waterContentBefore: WaterContent
  /** Water content at the second weighing. Unit: m³/m³. Range: [-1, 2]. */
  readonly waterContentAfter: WaterContent
  /** Volume of medium on the scale. Unit: L. Range: (0, ∞). */
  readonly substrateVolume: Volume
}

/** Two measurements of one change of storage. */
export interface ProbeAgainstScale {
  /** Change of water by the scale, 1 kg taken as 1 L. Unit: L. */
  readonly weighed: number
  /** Change of water by the probe. Unit: L. */
  readonly seen: number
  /** Probe less scale. Unit: L. */
  readonly difference: number
  /** The same as a water content. Unit: m³/m³. */
  readonly waterContentDifference: WaterContentChange
}

/**
 * Change of the water in a container by its probe and by a scale. The scale weighs the whole; the probe sees its surroundings.
 *
 * @equation `\Delta S_{scale} = \frac{m_1 - m_0}{\rho_w}, \qquad \Delta S_{probe} = (\theta_1 - \theta_0) \, V_s`
 * @param input - Masses, readings and volume of medium.
 * @returns Both changes and their difference.
 * @validity Growth of the plant and fruit that was picked change the mass as well and are not known here.
 * @source definition: water balance of a weighed container, water of 1 kg/L
 * @example
 * probeAgainstScale({
 *   massBefore: kilograms(14.2), massAfter: kilograms(14.62), waterContentBefore: waterContent(0.52), waterContentAfter: waterContent(0.532),
 *   substrateVolume: litres(12),
 * }) // => { weighed: 0.42, seen: 0.144, difference: -0.276, waterContentDifference: -0.023 }
 */
export function probeAgainstScale(input: ProbeAgainstScaleInput): ProbeAgainstScale {
  requireObject(input, 'input')
  const volume = numberIn(input.substrateVolume, SUBSTRATE, 'substrateVolume')
  const weighed =
    (numberIn(input.massAfter, SCALE_MASS, 'massAfter') - numberIn(input.massBefore, SCALE_MASS, 'massBefore')) / 1000
  const seen =
    (numberIn(input.waterContentAfter, PROBE_CONTENT, 'waterContentAfter') -
      numberIn(input.waterContentBefore, PROBE_CONTENT, 'waterContentBefore')) *
    volume
  const difference = seen - weighed
  return answersOf(
    { weighed, seen, difference, waterContentDifference: (difference / volume) as WaterContentChange },
    'substrateVolume',
  )
}
