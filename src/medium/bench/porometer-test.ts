import { answersOf } from '../../quantity/answer.js'
import { InputError } from '../../quantity/errors.js'
import type {
  AirFilledPorosity,
  BulkDensity,
  GravimetricWaterContent,
  Mass,
  Porosity,
  Volume,
  WaterContent,
} from '../../quantity/generated/kinds.js'
import { optionsOf } from '../../quantity/guard.js'
import { namedIn } from '../../quantity/named-in.js'
import { FILLED_VOLUME, READ_MASS, READ_WATER } from '../domains.js'
import { type BenchUncertainty, budgetsOf, checkUncertainty, findingsOfShares, refuseRise } from './bench-readings.js'
import type { WeighedShares } from './weighed-pot-test.js'

/** The readings of a core in a porometer. Masses are those of the medium, without the ring. */
export interface PorometerReadings {
  /** Volume of the core. Unit: L. Range: (0, ∞). */
  readonly coreVolume: Volume
  /** Water that ran out of the saturated core. Unit: L. Range: [0, ∞). */
  readonly drainedVolume: Volume
  /** Mass of the drained medium. Unit: g. Range: [0, ∞). */
  readonly drainedMass: Mass
  /** Mass of the oven-dry medium. Unit: g. Range: [0, ∞). */
  readonly dryMass: Mass
  /** How well volumes and masses are known; with it the result has error budgets. */
  readonly uncertainty?: BenchUncertainty
}

/**
 * Air space, container capacity and total porosity of a core that was saturated and drained in a porometer; water counts as 1 g/cm³.
 *
 * @equation `\varepsilon_a = \frac{V_{drained}}{V}, \quad \theta_{CC} = \frac{m_{drained} - m_{dry}}{\rho_w V}, \quad \phi = \varepsilon_a + \theta_{CC}`
 * @returns The shares, bulk density, budgets and findings.
 * @throws `DomainError` outside the ranges; `InputError` when the dry mass is zero or above the drained one.
 * @validity The result belongs to a drained column of the height of the core, about 7.6 cm.
 * @source fonteno-1995, definitions
 * @example
 * const core = porometerTest({
 *   coreVolume: millilitres(347.5),
 *   drainedVolume: millilitres(40),
 *   drainedMass: grams(310),
 *   dryMass: grams(62),
 * })
 * core // => { airSpace: 0.11510791, containerCapacity: 0.71366906, totalPorosity: 0.82877698 }
 */
export function porometerTest(readings: PorometerReadings): WeighedShares {
  const volume = namedIn(optionsOf(readings).coreVolume, FILLED_VOLUME, 'coreVolume')
  const drained = namedIn(readings.drainedVolume, READ_WATER, 'drainedVolume')
  const wet = namedIn(readings.drainedMass, READ_MASS, 'drainedMass')
  const dry = namedIn(readings.dryMass, READ_MASS, 'dryMass')
  refuseRise(['drainedMass', 'dryMass'], [wet, dry])
  if (dry === 0) throw new InputError('dryMass', 'it is zero', 'weigh the medium after drying')
  const air = (v: { drained: number; volume: number }) => v.drained / v.volume
  const capacity = (v: { wet: number; dry: number; volume: number }) => (v.wet - v.dry) / (1000 * v.volume)
  const values = { drained, wet, dry, volume }
  const totalPorosity = air(values) + capacity(values)
  const bulkDensity = dry / (1000 * volume)
  const given = readings.uncertainty === undefined ? undefined : checkUncertainty(readings.uncertainty, volume)
  return answersOf(
    {
      airSpace: air(values) as AirFilledPorosity,
      containerCapacity: capacity(values) as WaterContent,
      totalPorosity: totalPorosity as Porosity,
      bulkDensity: bulkDensity as BulkDensity,
      gravimetricCapacity: ((wet - dry) / dry) as GravimetricWaterContent,
      ...(given && {
        budgets: budgetsOf(
          {
            drained: { value: drained, uncertainty: given.waterVolume },
            wet: { value: wet, uncertainty: given.mass },
            dry: { value: dry, uncertainty: given.mass },
            volume: { value: volume, uncertainty: given.substrateVolume },
          },
          air,
          capacity,
        ),
      }),
      findings: findingsOfShares(totalPorosity, bulkDensity),
    },
    'coreVolume',
  )
}
