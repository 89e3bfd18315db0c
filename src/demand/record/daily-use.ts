import { answerOf } from '../../quantity/answer.js'
import { EMITTERS, PLANTS } from '../../quantity/domains.js'
import type { PlantWaterUse, Volume } from '../../quantity/generated/kinds.js'
import { numberIn, optionOr, optionsOf, wholeNumberIn } from '../../quantity/guard.js'
import type { PlantUseInput } from '../crop/crop-et.js'
import { waterUsePerPlant } from '../crop/crop-et.js'

/** A crop in containers: how much it uses, how densely it stands, and what feeds it. */
export interface DailyUseInput extends PlantUseInput {
  /** Plants that share a container; one by default. Unit: 1. Range: integers [1, ∞). */
  readonly plantsPerContainer?: number
  /** Emitters that feed a container, a mean of several where they differ; one by default. Unit: 1. Range: (0, 100000]. */
  readonly emittersPerContainer?: number
}

/** What a day takes out of the medium, and what each emitter has to give back. */
export interface DailyUse {
  /** Use of one plant. Unit: L/d. */
  readonly perPlant: PlantWaterUse
  /** Use of one container in the day. Unit: L. */
  readonly perContainer: Volume
  /** Use that each emitter has to replace in the day, without drain. Unit: L. */
  readonly perEmitter: Volume
}

/**
 * Water that a plant, a container and an emitter stand for in a day.
 *
 * The drain that keeps salts moving is not in these figures.
 *
 * @equation `W_p = \frac{ET_c}{N} \qquad W_c = n_p\,W_p \qquad W_e = \frac{W_c}{n_e}`
 * @returns Litres for a plant, a container and an emitter.
 * @source definition
 * @example
 * dailyUse({
 *   cropET: millimetresPerDay(4.5), plantDensity: plantsPerSquareMetre(2.5), plantsPerContainer: 3, emittersPerContainer: 3,
 * }) // => { perPlant: 1.8, perContainer: 5.4, perEmitter: 1.8 }
 */
export function dailyUse(input: DailyUseInput): DailyUse {
  const perPlant = waterUsePerPlant(input)
  const perContainer = (perPlant *
    wholeNumberIn(optionOr(optionsOf(input).plantsPerContainer, 1), PLANTS, 'plantsPerContainer')) as Volume
  const emitters = numberIn(optionOr(optionsOf(input).emittersPerContainer, 1), EMITTERS, 'emittersPerContainer')
  const perEmitter = answerOf(perContainer / emitters, 'emittersPerContainer') as Volume
  return { perPlant, perContainer, perEmitter }
}
