import { answersOf } from '../../quantity/answer.js'
import { InputError } from '../../quantity/errors.js'
import type {
  AirFilledPorosity,
  BulkDensity,
  GravimetricWaterContent,
  Mass,
  Porosity,
  WaterContent,
} from '../../quantity/generated/kinds.js'
import { optionsOf } from '../../quantity/guard.js'
import { namedIn } from '../../quantity/named-in.js'
import { FILLED_VOLUME, READ_MASS } from '../domains.js'
import type { MediumFinding } from '../medium-finding.js'
import type { MediumVolume, OvenDryMass, WaterDensityTerm } from '../terms.js'
import {
  type BenchBudgets,
  type BenchUncertainty,
  budgetsOf,
  checkUncertainty,
  findingsOfShares,
  refuseRise,
} from './bench-readings.js'
import { densityOf } from './gravimetric-water-content.js'

/** The readings of a pot that is saturated, drained, weighed and dried. All masses include the pot. */
export interface WeighedPotReadings extends WaterDensityTerm, MediumVolume, OvenDryMass {
  /** Mass when saturated, holes still closed. Unit: g. Range: [0, ∞). */
  readonly saturatedMass: Mass
  /** Mass when it has stopped dripping. Unit: g. Range: [0, ∞). */
  readonly drainedMass: Mass
  /** Mass of the empty pot. Unit: g. Range: [0, ∞). */
  readonly potMass: Mass
  /** How well balance and volume are known; with it the result has error budgets. */
  readonly uncertainty?: BenchUncertainty
}

/** What a bench test tells of a medium in its pot. */
export interface BenchShares {
  /** Volume of air after draining per volume of medium. Unit: 1. */
  readonly airSpace: AirFilledPorosity
  /** Volume of water after draining per volume of medium. Unit: m³/m³. */
  readonly containerCapacity: WaterContent
  /** Both together. Unit: 1. */
  readonly totalPorosity: Porosity
  /** Where the uncertainty comes from, if that of the readings was given. */
  readonly budgets?: BenchBudgets
  /** What does not fit together. */
  readonly findings: readonly MediumFinding[]
}

/** The same with what the dry mass tells. */
export interface WeighedShares extends BenchShares {
  /** Dry mass per volume of medium. Unit: g/cm³. */
  readonly bulkDensity: BulkDensity
  /** Water after draining per dry mass. Unit: g/g. */
  readonly gravimetricCapacity: GravimetricWaterContent
}

/**
 * Air space, container capacity, porosity and bulk density from weighing one pot four times: saturated, drained, oven-dry, empty.
 *
 * Saturate slowly from below, or air stays in and the porosity comes out too low. The result belongs to the height of this pot.
 * An oven at 105 °C with peat or wood needs a watchful eye: dry organic matter can smoulder.
 *
 * @equation `\varepsilon_a = \frac{m_{sat} - m_{drained}}{\rho_w V}, \quad \theta_{CC} = \frac{m_{drained} - m_{dry}}{\rho_w V}, \quad
 * \rho_b = \frac{m_{dry} - m_{pot}}{V}`
 * @param readings - The four masses and the volume of medium.
 * @returns The shares, bulk density, budgets and findings.
 * @throws `DomainError` outside the ranges; `InputError` when a mass is above the one before it, or nothing but the pot was dried.
 * @source fonteno-1995, definitions
 * @example
 * const pot = weighedPotTest({
 *   saturatedMass: grams(2450),
 *   drainedMass: grams(2210),
 *   dryMass: grams(480),
 *   potMass: grams(95),
 *   substrateVolume: litres(2.2),
 * })
 * pot // => { airSpace: 0.10909091, containerCapacity: 0.78636364, totalPorosity: 0.89545455, bulkDensity: 0.175 }
 */
export function weighedPotTest(readings: WeighedPotReadings): WeighedShares {
  const saturated = namedIn(optionsOf(readings).saturatedMass, READ_MASS, 'saturatedMass')
  const drained = namedIn(readings.drainedMass, READ_MASS, 'drainedMass')
  const dry = namedIn(readings.dryMass, READ_MASS, 'dryMass')
  const pot = namedIn(readings.potMass, READ_MASS, 'potMass')
  const volume = namedIn(readings.substrateVolume, FILLED_VOLUME, 'substrateVolume')
  refuseRise(['saturatedMass', 'drainedMass', 'dryMass', 'potMass'], [saturated, drained, dry, pot])
  if (dry === pot) throw new InputError('dryMass', 'it is that of the empty pot', 'weigh the pot with the dry medium')
  const water = densityOf(readings.waterDensity)
  // A gram in a litre is a thousandth of a g/cm³.
  const air = (v: { saturated: number; drained: number; volume: number }) =>
    (v.saturated - v.drained) / (1000 * v.volume * water)
  const capacity = (v: { drained: number; dry: number; volume: number }) =>
    (v.drained - v.dry) / (1000 * v.volume * water)
  const values = { saturated, drained, dry, volume }
  const bulkDensity = (dry - pot) / (1000 * volume)
  const totalPorosity = air(values) + capacity(values)
  return answersOf(
    {
      airSpace: air(values) as AirFilledPorosity,
      containerCapacity: capacity(values) as WaterContent,
      totalPorosity: totalPorosity as Porosity,
      bulkDensity: bulkDensity as BulkDensity,
      gravimetricCapacity: ((drained - dry) / (dry - pot)) as GravimetricWaterContent,
      ...(readings.uncertainty !== undefined && { budgets: budgets(readings.uncertainty) }),
      findings: findingsOfShares(totalPorosity, bulkDensity),
    },
    'substrateVolume',
  )

  function budgets(given: BenchUncertainty): BenchBudgets {
    const { mass, substrateVolume } = checkUncertainty(given, volume)
    const weighed = (value: number) => ({ value, uncertainty: mass })
    const masses = { saturated: weighed(saturated), drained: weighed(drained), dry: weighed(dry) }
    return budgetsOf({ ...masses, volume: { value: volume, uncertainty: substrateVolume } }, air, capacity)
  }
}
