import { answerOf } from '../../quantity/answer.js'
import { DRAINED } from '../../quantity/domains.js'
import { InputError } from '../../quantity/errors.js'
import type { DrainEC, DrainFraction, Volume } from '../../quantity/generated/kinds.js'
import { numberIn, optionOr, requireList, requireObject } from '../../quantity/guard.js'
import { DRAIN_EC, FEED_EC, STORE_WATER, UPTAKE_EC } from '../domains.js'
import type { FeedSalts, SaltFlows } from '../terms.js'
import { type DrainFractionInput, drainFraction } from './drain-fraction.js'
import { ecDoubt, PURE, SEA } from './ec-doubt.js'
import type { SaltFinding } from './salt-finding.js'

/** A day, or any whole number of days, of drain records. Volumes are for the same plants. */
export interface SaltBalanceInput extends DrainFractionInput, FeedSalts {
  /** EC of the drain, the mean by volume. Unit: dS/m. Range: [0, 200]. */
  readonly drainEC: DrainEC
  /** Water in the root zone. Unit: L. Range: (0, ∞). */
  readonly rootZoneWater: Volume
}

/** What became of the salts. Amounts of salt are EC times volume, which is proportional to mass. */
export interface SaltBalance extends SaltFlows {
  /** Measured drain fraction. Unit: 1. */
  readonly drainFraction: DrainFraction
  /** Drain fraction that the ECs would mean at a steady state; left out where there is none. Unit: 1. */
  readonly steadyFraction: DrainFraction | undefined
  /** EC towards which the drain tends if nothing changes; left out without drain. Unit: dS/m. */
  readonly headingFor: DrainEC | undefined
  /** Salt that stayed; negative when the root zone lost some. Unit: dS/m·L. */
  readonly saltStored: number
  /** By how much the EC of the root zone rose in that time. Unit: dS/m. */
  readonly rise: number
  /** Whether in, out and taken agree within a tenth of what came in. */
  readonly steady: boolean
  /** What a person should know; `explainIrrigationFinding` has the words. */
  readonly findings: readonly SaltFinding[]
}

/**
 * Balances the salts of a root zone from drain records, and says whether the ratio of feed EC to drain EC may be read as a drain
 * fraction.
 *
 * Without an uptake the stored salt is an upper bound, because plants take some. Where water drained and the EC of drain or feed is less than rain has, as
 * of a dead sensor, that is told in place of what becomes of the salts.
 *
 * @equation `S = EC_{in} I - EC_{drain} D - EC_{up} (I - D), \quad \Delta EC = S / W`
 * @param input - Volumes and ECs of the same time.
 * @returns Fractions, salts, where the EC is heading, and findings.
 * @throws `DomainError` outside the ranges, `InputError` when more drained than was applied.
 * @source definition: salt balance of the root zone
 * @example
 * const day = {
 *   applied: litres(3.2),
 *   drained: litres(0.38),
 *   feedEC: decisiemensPerMetre<SolutionEC>(2.6),
 *   drainEC: decisiemensPerMetre<DrainEC>(4.9),
 *   rootZoneWater: litres(7),
 * }
 * checkSaltBalance(day) // => { drainFraction: 0.11875, steadyFraction: 0.53061, saltStored: 6.458, rise: 0.92257, steady: false }
 */
export function checkSaltBalance(input: SaltBalanceInput): SaltBalance {
  requireObject(input, 'input')
  const share = drainFraction(input)
  const feed = numberIn(input.feedEC, FEED_EC, 'feedEC')
  const drain = numberIn(input.drainEC, DRAIN_EC, 'drainEC')
  const uptake = numberIn(optionOr(input.uptakeEC, 0), UPTAKE_EC, 'uptakeEC')
  const water = numberIn(input.rootZoneWater, STORE_WATER, 'rootZoneWater')
  const saltIn = feed * input.applied
  const saltOut = drain * input.drained
  const saltTaken = uptake * (input.applied - input.drained)
  const saltStored = answerOf(saltIn - saltOut - saltTaken, 'applied')
  const rise = answerOf(saltStored / water, 'rootZoneWater')
  const implied = (feed - uptake) / (drain - uptake)
  const steadyFraction = feed >= uptake && drain > uptake && implied <= 1 ? (implied as DrainFraction) : undefined
  const heading = share > 0 ? answerOf((feed - (1 - share) * uptake) / share, 'drained') : -1
  const headingFor = heading >= 0 ? (heading as DrainEC) : undefined
  const steady = Math.abs(saltStored) <= 0.1 * saltIn
  // What nothing drained of has no EC.
  const doubt = share > 0 ? ecDoubt(feed, drain) : undefined
  return {
    drainFraction: share,
    steadyFraction,
    headingFor,
    saltIn,
    saltOut,
    saltTaken,
    saltStored,
    rise,
    steady,
    findings:
      doubt !== undefined
        ? [doubt]
        : steady
          ? []
          : [{ code: 'not-steady', level: 'caution', rise, drainFraction: share, steadyFraction, headingFor }],
  }
}

/** Portions of drain and the EC of each. */
export interface MeanDrainECInput {
  /** Volume of each portion. Unit: L. Range: each in [0, ∞). */
  readonly volumes: ArrayLike<number>
  /** EC of each portion. Unit: dS/m. Range: each in [0, 200]. */
  readonly conductivities: ArrayLike<number>
}

/**
 * EC of several portions of drain together, weighted by volume. EC is only nearly additive when waters are mixed.
 *
 * @equation `\overline{EC} = \frac{\sum_i V_i \, EC_i}{\sum_i V_i}`
 * @param input - Volumes and ECs, in the same order.
 * @returns Mean EC of the drain. Unit: dS/m.
 * @throws `DomainError` outside the ranges, `InputError` when the lists differ in length, there is no water, or a portion of it has less EC than
 * rain (a dead sensor's 0.0 would thin the mean) or more than sea water.
 * @source definition: salt balance of the mixture
 * @example
 * meanDrainEC({ volumes: [0.2, 0.1], conductivities: [4.2, 5.1] }) // => 4.5
 */
export function meanDrainEC(input: MeanDrainECInput): DrainEC {
  requireObject(input, 'input')
  requireList(input.conductivities, 'conductivities')
  requireList(input.volumes, 'volumes')
  const { volumes, conductivities } = input
  if (volumes.length !== conductivities.length)
    throw new InputError(
      'volumes',
      `${volumes.length} volumes for ${conductivities.length} ECs`,
      'give one EC a volume',
    )
  let water = 0
  let salt = 0
  for (let i = 0; i < volumes.length; i++) {
    const volume = numberIn(volumes[i]!, DRAINED, 'volumes')
    const ec = numberIn(conductivities[i]!, DRAIN_EC, 'conductivities')
    if (volume > 0 && (ec < PURE || ec > SEA))
      throw new InputError(
        'conductivities',
        `entry ${i} is ${ec} dS/m, ${ec < PURE ? 'less than rain has: the sensor was dead or dry' : 'more than sea water has: mS/m?'}`,
        'leave that portion out, or measure it by hand, and give dS/m',
      )
    water += volume
    salt += volume * ec
  }
  if (water === 0) throw new InputError('volumes', 'hold no water', 'an EC needs some drain')
  return (salt / water) as DrainEC
}
