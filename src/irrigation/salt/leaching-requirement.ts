import { answerOf } from '../../quantity/answer.js'
import { DRAIN_FRACTION } from '../../quantity/domains.js'
import { InputError } from '../../quantity/errors.js'
import type {
  ApplicationRate,
  DrainFraction,
  Duration,
  SaturatedExtractEC,
  SolutionEC,
  Volume,
  WaterDepth,
} from '../../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../../quantity/guard.js'
import { DEPTH_USE, EXTRACT_EC, INFILTRATION, NET_WATER, ON_TIME, WATER_EC } from '../domains.js'

/** Water and the salinity at which the crop yields nothing. */
export interface FrequentLeachingInput {
  /** EC of the irrigation water. Unit: dS/m. Range: [0, 200]. */
  readonly waterEC: SolutionEC
  /** EC of the saturated soil extract at which the yield is zero, see `zeroYieldEC`. Unit: dS/m. Range: (0, ∞). */
  readonly zeroYieldEC: SaturatedExtractEC
}

/**
 * Leaching requirement of a field soil under drip or other irrigation every day or two.
 *
 * For surface irrigation and sprinklers see `fieldLeachingRequirement`, for containers `steadyDrainFraction`.
 *
 * @equation `LR = \frac{EC_w}{2 \, EC_{e,max}}`
 * @returns Leaching requirement. Unit: 1.
 * @throws `DomainError` outside the ranges; `InputError` when it cannot be attained (water EC of twice the zero-yield EC or more).
 * @validity Mineral soils in the field; not containers.
 * @source keller-1990, trickle design chapters
 * @example
 * leachingRequirementFrequent({ waterEC: decisiemensPerMetre(1), zeroYieldEC: decisiemensPerMetre(13) }) // => 0.03846
 */
export function leachingRequirementFrequent(input: FrequentLeachingInput): DrainFraction {
  requireObject(input, 'input')
  const { waterEC, zeroYieldEC } = input
  const water = numberIn(waterEC, WATER_EC, 'waterEC')
  const max = numberIn(zeroYieldEC, EXTRACT_EC, 'zeroYieldEC')
  if (water >= 2 * max)
    throw new InputError(
      'waterEC',
      `with water of ${water} dS/m and a zero yield at ${max} dS/m the requirement is not attainable`,
      'use better water or a crop that stands more; no amount of leaching is enough',
    )
  return (water / (2 * max)) as DrainFraction
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
 * @equation `A = \frac{ET}{1 - LF}`
 * @returns Water to apply, in the unit of the use. Unit: L or mm.
 * @source ayers-1985, section 2.4
 * @example
 * appliedForLeaching({ use: millimetresOfDepth(4.2), leachingFraction: percent(25) }) // => 5.6
 */
export function appliedForLeaching<Q extends Volume | WaterDepth>(input: AppliedForLeachingInput<Q>): Q {
  requireObject(input, 'input')
  return answerOf(
    numberIn(input.use, NET_WATER, 'use') / (1 - numberIn(input.leachingFraction, DRAIN_FRACTION, 'leachingFraction')),
    'use',
  ) as Q
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
 * @equation `LF = 1 - \frac{ET}{i \, t}`
 * @returns Leaching fraction. Unit: 1.
 * @throws `DomainError` outside the ranges; `InputError` when the crop uses more than goes in.
 * @source ali-2011, Example 8.5
 * @example
 * const event = { infiltrationRate: millimetresPerHour<ApplicationRate>(12), time: hours(6), use: millimetresOfDepth(66.7) }
 * leachingOfInfiltration(event) // => 0.0736
 */
export function leachingOfInfiltration(input: LeachingOfInfiltrationInput): DrainFraction {
  requireObject(input, 'input')
  const depth =
    (numberIn(input.infiltrationRate, INFILTRATION, 'infiltrationRate') * numberIn(input.time, ON_TIME, 'time')) / 3600
  const use = numberIn(input.use, DEPTH_USE, 'use')
  if (use > depth)
    throw new InputError(
      'use',
      `${use} mm is more than the ${depth} mm that go in`,
      'water for longer; nothing leaches',
    )
  return (1 - use / depth) as DrainFraction
}
