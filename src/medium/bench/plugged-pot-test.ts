import { answersOf } from '../../quantity/answer.js'
import { WATER_CONTENT } from '../../quantity/domains.js'
import type { AirFilledPorosity, Porosity, Volume, WaterContent } from '../../quantity/generated/kinds.js'
import { optionOr, optionsOf } from '../../quantity/guard.js'
import { namedIn } from '../../quantity/named-in.js'
import { FILLED_VOLUME, READ_WATER } from '../domains.js'
import type { MediumVolume } from '../terms.js'
import { type BenchUncertainty, budgetsOf, checkUncertainty, findingsOfShares, refuseRise } from './bench-readings.js'
import type { BenchShares } from './weighed-pot-test.js'

/** The readings of a pot whose holes are plugged while water is poured in, then opened. */
export interface PluggedPotReadings extends MediumVolume {
  /** Water poured in until a film stands on the surface. Unit: L. Range: [0, ∞). */
  readonly volumeToSaturate: Volume
  /** Water that ran out after the plugs were pulled. Unit: L. Range: [0, ∞). */
  readonly drainedVolume: Volume
  /** Water content before pouring; zero, and left out, for dry medium. Unit: m³/m³. Range: [0, 1]. */
  readonly startingWaterContent?: WaterContent
  /** How well the volumes are known; with it the result has error budgets. */
  readonly uncertainty?: BenchUncertainty
}

/**
 * Porosity, air space and container capacity from pouring water into a plugged pot and letting it drain: no balance and no oven.
 *
 * A medium that was moist at the start takes less water: without its starting content porosity and capacity come out too low.
 *
 * @equation `\phi = \theta_0 + \frac{V_{in}}{V}, \quad \varepsilon_a = \frac{V_{out}}{V}, \quad \theta_{CC} = \phi - \varepsilon_a`
 * @param readings - The volume of medium and both volumes of water.
 * @returns The shares, budgets and findings.
 * @throws `DomainError` outside the ranges; `InputError` when more water ran out than there was.
 * @source fonteno-1995, definitions
 * @example
 * const poured = pluggedPotTest({
 *   substrateVolume: millilitres(1500),
 *   volumeToSaturate: millilitres(1080),
 *   drainedVolume: millilitres(240),
 * })
 * poured // => { airSpace: 0.16, containerCapacity: 0.56, totalPorosity: 0.72 }
 */
export function pluggedPotTest(readings: PluggedPotReadings): BenchShares {
  const volume = namedIn(optionsOf(readings).substrateVolume, FILLED_VOLUME, 'substrateVolume')
  const poured = namedIn(readings.volumeToSaturate, READ_WATER, 'volumeToSaturate')
  const drained = namedIn(readings.drainedVolume, READ_WATER, 'drainedVolume')
  const start = namedIn(optionOr(readings.startingWaterContent, 0), WATER_CONTENT, 'startingWaterContent')
  refuseRise(['volumeToSaturate', 'drainedVolume'], [poured + start * volume, drained])
  const air = (v: { drained: number; volume: number }) => v.drained / v.volume
  const capacity = (v: { poured: number; drained: number; volume: number }) => start + (v.poured - v.drained) / v.volume
  const values = { poured, drained, volume }
  const totalPorosity = air(values) + capacity(values)
  const given = readings.uncertainty === undefined ? undefined : checkUncertainty(readings.uncertainty, volume)
  return answersOf(
    {
      airSpace: air(values) as AirFilledPorosity,
      containerCapacity: capacity(values) as WaterContent,
      totalPorosity: totalPorosity as Porosity,
      ...(given && {
        budgets: budgetsOf(
          {
            poured: { value: poured, uncertainty: given.waterVolume },
            drained: { value: drained, uncertainty: given.waterVolume },
            volume: { value: volume, uncertainty: given.substrateVolume },
          },
          air,
          capacity,
        ),
      }),
      findings: findingsOfShares(totalPorosity),
    },
    'substrateVolume',
  )
}
