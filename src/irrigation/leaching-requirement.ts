import type { Duration } from '../quantity/duration.js'
import type { SaturatedExtractEC, SolutionEC } from '../quantity/electrical-conductivity.js'
import { InputError } from '../quantity/errors.js'
import type { ApplicationRate } from '../quantity/evapotranspiration-hourly.js'
import { within } from '../quantity/guard.js'
import type { DrainFraction } from '../quantity/share.js'
import type { Volume } from '../quantity/volume.js'
import type { WaterDepth } from '../quantity/water-depth.js'
import { EXTRACT_EC, SOME_LEACHING, WATER_EC } from './salt-spans.js'
import { DEPTH_USE, DRAIN_FRACTION, INFILTRATION, NET, ON_TIME } from './spans.js'

/** Water and what the crop stands. */
export interface LeachingRequirementInput {
  /** EC of the irrigation water. Unit: dS/m. Range: [0, ∞). */
  readonly waterEC: SolutionEC
  /** EC of the saturated soil extract that the crop tolerates. Unit: dS/m. Range: (0, ∞). */
  readonly toleratedEC: SaturatedExtractEC
}

/**
 * Leaching requirement of a field soil under ordinary irrigation: the share of the water that must drain so that the mean salinity of
 * the root zone stays within what the crop tolerates.
 *
 * ```math
 * LR = \frac{EC_w}{5 \, EC_e - EC_w}
 * ```
 *
 * A tool for mineral soils with 40-30-20-10 % of the uptake in the quarters of the root zone from the top. In containers it is a
 * guide at most; use `steadyDrainFraction`. From a water EC of 2.5 times the tolerated EC on, no leaching is enough.
 *
 * @param input - Water and tolerance.
 * @returns Leaching requirement. Unit: 1.
 * @throws `DomainError` outside the ranges; `InputError` when it cannot be attained (water EC of 2.5 times the tolerated EC or more).
 * @validity Mineral soils in the field, surface irrigation or sprinklers; not containers.
 * @source Ayers, R. S. and Westcot, D. W. (1985), FAO Irrigation and Drainage Paper 29 Rev. 1, section 2.4.2; quoted in FAO-56 (1998)
 * @example
 * ```ts
 * leachingRequirementFao29({ waterEC: decisiemensPerMetre(1.5), toleratedEC: decisiemensPerMetre(6) }) // => 0.05263
 * ```
 */
export function leachingRequirementFao29({ waterEC, toleratedEC }: LeachingRequirementInput): DrainFraction {
  const water = within(waterEC, WATER_EC)
  const tolerated = within(toleratedEC, EXTRACT_EC)
  if (water >= 2.5 * tolerated) throw notAttainable(water, tolerated)
  return (water / (5 * tolerated - water)) as DrainFraction
}

/** Water and the salinity at which the crop yields nothing. */
export interface FrequentLeachingInput {
  /** EC of the irrigation water. Unit: dS/m. Range: [0, ∞). */
  readonly waterEC: SolutionEC
  /** EC of the saturated soil extract at which the yield is zero, see `zeroYieldEC`. Unit: dS/m. Range: (0, ∞). */
  readonly zeroYieldEC: SaturatedExtractEC
}

/**
 * Leaching requirement of a field soil under drip or other irrigation every day or two.
 *
 * ```math
 * LR = \frac{EC_w}{2 \, EC_{e,max}}
 * ```
 *
 * @param input - Water and salinity of zero yield.
 * @returns Leaching requirement. Unit: 1.
 * @throws `DomainError` outside the ranges; `InputError` when it cannot be attained (water EC of twice the zero-yield EC or more).
 * @validity Mineral soils in the field; not containers.
 * @source Keller, J. and Bliesner, R. D. (1990), Sprinkle and Trickle Irrigation, trickle design chapters
 * @example
 * ```ts
 * leachingRequirementFrequent({ waterEC: decisiemensPerMetre(1), zeroYieldEC: decisiemensPerMetre(13) }) // => 0.03846
 * ```
 */
export function leachingRequirementFrequent({ waterEC, zeroYieldEC }: FrequentLeachingInput): DrainFraction {
  const water = within(waterEC, WATER_EC)
  const most = within(zeroYieldEC, EXTRACT_EC)
  if (water >= 2 * most) throw notAttainable(water, most)
  return (water / (2 * most)) as DrainFraction
}

/** Water and the share of it that leaches. */
export interface ExtractECInput {
  /** EC of the irrigation water. Unit: dS/m. Range: [0, ∞). */
  readonly waterEC: SolutionEC
  /** Leaching fraction. Unit: 1. Range: (0, 1]. */
  readonly leachingFraction: DrainFraction
}

/**
 * EC of the saturated soil extract to be expected in the long run from a water and a leaching fraction: the leaching requirement of
 * FAO-29 solved for the soil.
 *
 * ```math
 * EC_e = EC_w \frac{1 + LF}{5 \, LF}
 * ```
 *
 * @param input - Water and leaching fraction.
 * @returns Mean EC of the saturated extract in the root zone. Unit: dS/m.
 * @throws `DomainError` outside the ranges.
 * @validity Mineral soils in the field; not containers.
 * @source Allen, R. G., Pereira, L. S., Raes, D. and Smith, M. (1998), FAO Irrigation and Drainage Paper 56, Eq. 93
 * @example
 * ```ts
 * extractECOfLeachingFao56({ waterEC: decisiemensPerMetre(2), leachingFraction: percent(20) }) // => 2.4
 * ```
 */
export function extractECOfLeachingFao56({ waterEC, leachingFraction }: ExtractECInput): SaturatedExtractEC {
  const share = within(leachingFraction, SOME_LEACHING)
  return ((within(waterEC, WATER_EC) * (1 + share)) / (5 * share)) as SaturatedExtractEC
}

/** Water that the crop uses and the share of what is given that should leach. */
export interface AppliedForLeachingInput<Q extends Volume | WaterDepth> {
  /** Water that the crop uses. Unit: L or mm. Range: [0, ∞). */
  readonly use: Q
  /** Share of the water given that should leach. Unit: 1. Range: [0, 1). */
  readonly leachingFraction: DrainFraction
}

/**
 * Water to apply so that the crop gets its use and a wanted share leaches. Some texts add the share to the use instead, which leaches
 * less than they say.
 *
 * ```math
 * A = \frac{ET}{1 - LF}
 * ```
 *
 * @param input - Use and leaching fraction.
 * @returns Water to apply, in the unit of the use. Unit: L or mm.
 * @throws `DomainError` outside the ranges.
 * @source Ayers, R. S. and Westcot, D. W. (1985), FAO Irrigation and Drainage Paper 29 Rev. 1, section 2.4
 * @example
 * ```ts
 * appliedForLeaching({ use: millimetresOfDepth(4.2), leachingFraction: percent(25) }) // => 5.6
 * ```
 */
export function appliedForLeaching<Q extends Volume | WaterDepth>(input: AppliedForLeachingInput<Q>): Q {
  return (within(input.use, NET) / (1 - within(input.leachingFraction, DRAIN_FRACTION))) as Q
}

/** Water that goes in during a time, and water that is used of it. */
export interface LeachingOfInfiltrationInput {
  /** Water that goes in. Unit: mm/h. Range: (0, ∞). */
  readonly infiltrationRate: ApplicationRate
  /** How long it goes in. Unit: s. Range: (0, ∞). */
  readonly time: Duration
  /** Water that the crop uses until the next irrigation. Unit: mm. Range: [0, ∞). */
  readonly use: WaterDepth
}

/**
 * Leaching fraction of an irrigation from how long water goes in and what the crop uses of it.
 *
 * ```math
 * LF = 1 - \frac{ET}{i \, t}
 * ```
 *
 * @param input - Infiltration, time and use.
 * @returns Leaching fraction. Unit: 1.
 * @throws `DomainError` outside the ranges; `InputError` when the crop uses more than goes in.
 * @source Ali, M. H. (2011), Practices of Irrigation and On-farm Water Management, volume 2, Example 8.5
 * @example
 * ```ts
 * const event = { infiltrationRate: millimetresPerHour<ApplicationRate>(12), time: hours(6), use: millimetresOfDepth(66.7) }
 * leachingOfInfiltration(event) // => 0.0736
 * ```
 */
export function leachingOfInfiltration(input: LeachingOfInfiltrationInput): DrainFraction {
  const depth = (within(input.infiltrationRate, INFILTRATION) * within(input.time, ON_TIME)) / 3600
  const use = within(input.use, DEPTH_USE)
  if (use > depth)
    throw new InputError(
      'use',
      `${use} mm is more than the ${depth} mm that go in`,
      'water for longer; nothing leaches',
    )
  return (1 - use / depth) as DrainFraction
}

function notAttainable(water: number, limit: number): InputError {
  return new InputError(
    'waterEC',
    `with water of ${water} dS/m and a limit of ${limit} dS/m the requirement is not attainable`,
    'use better water or a crop that stands more; no amount of leaching is enough',
  )
}
