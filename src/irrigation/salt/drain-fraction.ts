import { answerOf } from '../../quantity/answer.js'
import { DRAIN_FRACTION, DRAINED } from '../../quantity/domains.js'
import { InputError } from '../../quantity/errors.js'
import type { DrainEC, DrainFraction, SolutionEC, Volume } from '../../quantity/generated/kinds.js'
import { numberIn, optionOr, requireObject } from '../../quantity/guard.js'
import { DRAIN_EC, FEED_EC, SOME_APPLIED, SOME_LEACHING, UPTAKE_EC } from '../domains.js'
import type { FeedSalts, UptakeSalts } from '../terms.js'

/** What was given and what came out of it. */
export interface DrainFractionInput {
  /** Water applied. Unit: L. Range: (0, ∞). */
  readonly applied: Volume
  /** Drain of the same time and the same plants. Unit: L. Range: [0, ∞). */
  readonly drained: Volume
}

/**
 * Drain fraction (leaching fraction): drain over water applied. Take whole days, because the drain of one shot is partly water of
 * the shots before it.
 *
 * @equation `f = \frac{D}{I}`
 * @returns Drain fraction. Unit: 1.
 * @throws `DomainError` outside the ranges, `InputError` when more drained than was applied.
 * @source definition
 * @example
 * inPercent(drainFraction({ applied: litres(3.2), drained: litres(0.38) })) // => 11.875
 */
export function drainFraction(input: DrainFractionInput): DrainFraction {
  requireObject(input, 'input')
  const { applied, drained } = input
  const given = numberIn(applied, SOME_APPLIED, 'applied')
  const out = numberIn(drained, DRAINED, 'drained')
  if (out > given)
    throw new InputError(
      'drained',
      `${out} L drained of ${given} L applied`,
      'take a longer time, or check both meters',
    )
  return (out / given) as DrainFraction
}

/** Salts in and out of a root zone that neither gains nor loses any. */
export interface SteadyDrainFractionInput extends FeedSalts {
  /** EC of the drain. Unit: dS/m. Range: [0, 200]. */
  readonly drainEC: DrainEC
}

/**
 * Drain fraction at which a drain EC stays as it is. Without uptake it is the plain ratio of feed EC to drain EC.
 *
 * It is the drain fraction that you have only at a steady state. When the measured drain is less, salts are being stored:
 * `checkSaltBalance` compares both. Used as a target without uptake it asks for far more drain than is needed.
 *
 * @equation `f = \frac{EC_{in} - EC_{up}}{EC_{drain} - EC_{up}}`
 * @returns Drain fraction. Unit: 1.
 * @throws `DomainError` outside the ranges; `InputError` when no drain fraction from 0 to 1 keeps that drain EC, or the feed is 0, as of a dead sensor.
 * @source definition: salt balance of the root zone at a steady state
 * @example
 * const feedEC = decisiemensPerMetre<SolutionEC>(2.6)
 * steadyDrainFraction({ feedEC, drainEC: decisiemensPerMetre(4) }) // => 0.65
 * steadyDrainFraction({ feedEC, drainEC: decisiemensPerMetre(4), uptakeEC: decisiemensPerMetre(1.8) }) // => 0.36364
 */
export function steadyDrainFraction(input: SteadyDrainFractionInput): DrainFraction {
  requireObject(input, 'input')
  const feed = numberIn(input.feedEC, FEED_EC, 'feedEC')
  const drain = numberIn(input.drainEC, DRAIN_EC, 'drainEC')
  const uptake = numberIn(optionOr(input.uptakeEC, 0), UPTAKE_EC, 'uptakeEC')
  if (feed === 0 && drain > 0)
    throw new InputError(
      'feedEC',
      `a feed of ${feed} dS/m beside a drain of ${drain} dS/m asks for no drain at all`,
      'measure the feed by hand: a dead sensor shows 0, and no water does',
    )
  const share = (feed - uptake) / (drain - uptake)
  if (!(feed >= uptake && drain > uptake && share <= 1))
    throw new InputError(
      'drainEC',
      `no drain fraction holds a drain of ${drain} dS/m with a feed of ${feed} and an uptake of ${uptake} dS/m`,
      'at a steady state uptake is below feed and feed is not above drain: the root zone is changing, or a number is wrong',
    )
  return share as DrainFraction
}

/** A feed and how much of it drains. */
export interface SteadyDrainECInput extends FeedSalts {
  /** Drain over water applied. Unit: 1. Range: (0, 1]. */
  readonly drainFraction: DrainFraction
}

/**
 * EC towards which the drain tends with a feed and a drain fraction.
 *
 * @equation `EC_{drain} = \frac{EC_{in} - (1 - f) \, EC_{up}}{f}`
 * @returns EC of the drain at a steady state. Unit: dS/m.
 * @throws `DomainError` outside the ranges; `InputError` when the plants would take more salt than the feed brings.
 * @source definition: salt balance of the root zone at a steady state
 * @example
 * steadyDrainEC({ feedEC: decisiemensPerMetre(2.6), drainFraction: percent(20) }) // => 13
 */
export function steadyDrainEC(input: SteadyDrainECInput): DrainEC {
  requireObject(input, 'input')
  const feed = numberIn(input.feedEC, FEED_EC, 'feedEC')
  const share = numberIn(input.drainFraction, SOME_LEACHING, 'drainFraction')
  const uptake = numberIn(optionOr(input.uptakeEC, 0), UPTAKE_EC, 'uptakeEC')
  const steady = (feed - (1 - share) * uptake) / share
  if (steady < 0)
    throw new InputError(
      'uptakeEC',
      `plants would take more than the feed of ${feed} dS/m brings`,
      'check the uptake; plants cannot take what is not there',
    )
  return answerOf(steady, 'drainFraction') as DrainEC
}

/** A drain that is wanted. */
export interface FeedECInput extends UptakeSalts {
  /** EC of the drain that is wanted. Unit: dS/m. Range: [0, 200]. */
  readonly drainEC: DrainEC
  /** Drain over water applied. Unit: 1. Range: [0, 1). */
  readonly drainFraction: DrainFraction
}

/**
 * Feed EC that holds a wanted drain EC at a drain fraction.
 *
 * Go there in small steps: fresh water on a salty root zone can split fruit and shock roots.
 *
 * @equation `EC_{in} = f \, EC_{drain} + (1 - f) \, EC_{up}`
 * @returns EC of the feed. Unit: dS/m.
 * @source definition: salt balance of the root zone at a steady state
 * @example
 * const wanted = { drainEC: decisiemensPerMetre<DrainEC>(4), drainFraction: percent<DrainFraction>(30) }
 * feedECForDrain({ ...wanted, uptakeEC: decisiemensPerMetre(1.8) }) // => 2.46
 */
export function feedECForDrain(input: FeedECInput): SolutionEC {
  requireObject(input, 'input')
  const share = numberIn(input.drainFraction, DRAIN_FRACTION, 'drainFraction')
  const uptake = numberIn(optionOr(input.uptakeEC, 0), UPTAKE_EC, 'uptakeEC')
  return (share * numberIn(input.drainEC, DRAIN_EC, 'drainEC') + (1 - share) * uptake) as SolutionEC
}
