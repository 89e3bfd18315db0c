import { InputError } from '../../quantity/errors.js'
import type { AirFilledPorosity, Mass, Porosity, Volume, WaterContent } from '../../quantity/generated/kinds.js'
import { optionsOf } from '../../quantity/guard.js'
import { namedIn } from '../../quantity/named-in.js'
import { findingsOfShares, refuseRise } from '../bench/bench-readings.js'
import type { BenchShares } from '../bench/weighed-pot-test.js'
import { FILLED_VOLUME, READ_MASS } from '../domains.js'
import type { OvenDryMass } from '../terms.js'

/** The three readings of a drained medium. Masses are those of the medium, without the container. */
export interface DrainedMedium extends OvenDryMass {
  /** Volume after draining. Unit: L. Range: (0, ∞). */
  readonly drainedVolume: Volume
  /** Mass after draining. Unit: g. Range: [0, ∞). */
  readonly drainedMass: Mass
}

/**
 * Pore space, air and water of a drained medium from its volume and its wet and dry mass, without a particle density: a
 * regression on 238 substrates.
 *
 * W is dry mass over drained volume in g/L, D is wet mass over drained volume in g/mL. The difference of the two is exactly the
 * volume of water.
 *
 * @equation `100\,\phi = 96.72 - 0.038\,W, \quad 100\,\varepsilon_a = 96.72 + 0.062\,W - 100\,D`
 * @param medium - Volume after draining, wet and dry mass.
 * @returns The shares and findings.
 * @throws `DomainError` outside the ranges; `InputError` when the dry mass is zero or above the wet one, or when the regression
 * leaves no pores or no room for the air.
 * @validity Not for media with many closed pores, such as expanded polystyrene.
 * @source acta-294-1991, abstract; its authors are not named there
 * @example
 * const drained = drainedMediumRegression1991({
 *   drainedVolume: litres(1),
 *   drainedMass: grams(750),
 *   dryMass: grams(100),
 * })
 * drained // => { airSpace: 0.2792, containerCapacity: 0.65, totalPorosity: 0.9292 }
 */
export function drainedMediumRegression1991(medium: DrainedMedium): BenchShares {
  const { drainedVolume, drainedMass, dryMass } = optionsOf(medium)
  const millilitres = 1000 * namedIn(drainedVolume, FILLED_VOLUME, 'drainedVolume')
  const wet = namedIn(drainedMass, READ_MASS, 'drainedMass')
  const dry = namedIn(dryMass, READ_MASS, 'dryMass')
  refuseRise(['drainedMass', 'dryMass'], [wet, dry])
  const volumeWeight = (1000 * dry) / millilitres
  const pores = (96.72 - 0.038 * volumeWeight) / 100
  const air = (96.72 + 0.062 * volumeWeight - (100 * wet) / millilitres) / 100
  if (dry === 0 || !(pores > 0) || air < 0) {
    throw new InputError(
      'drainedMass',
      `${dry} g dry and ${wet} g wet in ${millilitres} mL give ${pores} of pores and ${air} of air`,
      'check the readings and units; a medium this dense or wet is not one of those that were measured',
    )
  }
  return {
    airSpace: air as AirFilledPorosity,
    containerCapacity: (pores - air) as WaterContent,
    totalPorosity: pores as Porosity,
    findings: findingsOfShares(pores, volumeWeight / 1000),
  }
}
