import { answersOf } from '../../quantity/answer.js'
import { DRAINED } from '../../quantity/domains.js'
import type { Area, DissolvedSolids, Mass, Volume, WaterDepth } from '../../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../../quantity/guard.js'
import { DRAIN_CONCENTRATION, WETTED_AREA } from '../domains.js'

/** Drain of a time and what is in it. */
export interface DischargeLoadInput {
  /** Drain that leaves the site. Unit: L. Range: [0, ∞). */
  readonly drained: Volume
  /** Area from which it comes. Unit: m². Range: (0, ∞). */
  readonly area: Area
  /** What is to be recorded, in the drain: nitrogen, phosphorus, all dissolved solids. Unit: mg/L. Range: [0, ∞). */
  readonly concentration: DissolvedSolids
}

/** What leaves with the drain. */
export interface DischargeLoad {
  /** Drain as a depth over the area. Unit: mm. */
  readonly depth: WaterDepth
  /** Mass that leaves. Unit: g. */
  readonly mass: Mass
  /** Mass from a hectare. Unit: kg/ha. */
  readonly perHectare: number
}

/**
 * What leaves a site with its drain, for records of discharge: depth of water, mass, and mass from a hectare.
 *
 * Say in the record what was measured: nitrate as nitrogen is not nitrate. Solids from an EC are an estimate. Whether drain may be
 * discharged at all, and what must be recorded, is a matter of the local water authority.
 *
 * @equation `m = V c, \quad m_{ha} = 10^4 \frac{m}{A}`
 * @returns Depth and masses.
 * @source definition
 * @example
 * dischargeLoad({
 *   drained: cubicMetres(12),
 *   area: hectares(0.5),
 *   concentration: milligramsPerLitreOfSolids(250),
 * }) // => { depth: 2.4, mass: 3000, perHectare: 6 }
 */
export function dischargeLoad(input: DischargeLoadInput): DischargeLoad {
  requireObject(input, 'input')
  const drained = numberIn(input.drained, DRAINED, 'drained')
  const area = numberIn(input.area, WETTED_AREA, 'area')
  const mass = (drained * numberIn(input.concentration, DRAIN_CONCENTRATION, 'concentration')) / 1000
  return answersOf(
    { depth: (drained / area) as WaterDepth, mass: mass as Mass, perHectare: (mass / 1000 / area) * 1e4 },
    'area',
  )
}
