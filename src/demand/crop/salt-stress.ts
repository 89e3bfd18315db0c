import { answerOf } from '../../quantity/answer.js'
import { InputError } from '../../quantity/errors.js'
import type { SaturatedExtractEC, Share, WaterDepth } from '../../quantity/generated/kinds.js'
import { numberIn, optionsOf } from '../../quantity/guard.js'
import { EC, LEACHING, TOLERATED_EC, TOTAL_AVAILABLE, WATER_DEPTH, YIELD_LOSS, YIELD_RESPONSE } from '../domains.js'
import type { FieldWaterEC, WaterShortage } from '../terms.js'

import { dryingLine } from './drying-line.js'

/** How a crop bears salt, and the salt it meets. */
export interface SaltInput {
  /** EC of the saturated extract of the root zone. Unit: dS/m. Range: [0, 200]. */
  readonly extractEC: SaturatedExtractEC
  /** EC of the saturated extract from which the yield falls. Unit: dS/m. Range: [0, 200]. */
  readonly thresholdEC: SaturatedExtractEC
  /** Percent of yield lost for each dS/m above the threshold. Unit: %/(dS/m). Range: [0, 100]. */
  readonly lossPerDecisiemens: number
}

/**
 * Yield under salt as a share of the yield without, from the salt tolerance of a crop; zero where the line has reached it.
 *
 * @equation `\frac{Y_a}{Y_m} = \min\left(1, \max\left(0, 1 - \frac{b}{100}\,(EC_e - EC_{e,t})\right)\right)`
 * @returns Share of the full yield. Unit: 1.
 * @validity Field soils, EC of the saturated extract. The EC of a drip solution or of drain is another number.
 * @source allen-1998, Eq. 89
 * @example
 * yieldUnderSalt({
 *   extractEC: decisiemensPerMetre(2.3), thresholdEC: decisiemensPerMetre(1.3), lossPerDecisiemens: 12,
 * }) // => 0.88
 */
export function yieldUnderSalt(input: SaltInput): Share {
  const { extractEC, thresholdEC, lossPerDecisiemens } = optionsOf(input)
  const above = Math.max(0, numberIn(extractEC, EC, 'extractEC') - numberIn(thresholdEC, EC, 'thresholdEC'))
  return shareAbove(above, numberIn(lossPerDecisiemens, YIELD_LOSS, 'lossPerDecisiemens'))
}

/** What is left when each dS/m above the threshold costs `loss` percent. */
function shareAbove(above: number, loss: number): Share {
  return Math.max(0, 1 - (loss / 100) * above) as Share
}

/** Salt and dryness together. */
export interface SaltAndWaterStressInput extends WaterShortage, SaltInput {
  /** Yield response factor Ky. Unit: 1. Range: (0, 5]. */
  readonly yieldResponse: number
  /** Readily available water, below the total. Unit: mm. Range: [0, 10000]. */
  readonly readilyAvailable: WaterDepth
}

/**
 * Share of the full transpiration that salt and dryness together still allow.
 *
 * @equation `K_s = \left[1 - \frac{b}{100\,K_y}\,(EC_e - EC_{e,t})\right] \cdot \min\left(1, \frac{TAW - D_r}{TAW - RAW}\right)`
 * @param input - Salt, salt tolerance, yield response and water of the root zone.
 * @returns Stress coefficient. Unit: 1.
 * @throws `DomainError` outside the ranges, `InputError` when the readily available water is not below the total.
 * @validity Salt up to the threshold plus 50/b; months rather than days.
 * @source allen-1998, Eq. 91 and 92
 * @example
 * saltAndWaterStress({
 *   extractEC: decisiemensPerMetre(2), thresholdEC: decisiemensPerMetre(1), lossPerDecisiemens: 19, yieldResponse: 1.15,
 *   totalAvailable: millimetresOfDepth(110), readilyAvailable: millimetresOfDepth(44), depletion: millimetresOfDepth(60),
 * }) // => 0.63
 */
export function saltAndWaterStress(input: SaltAndWaterStressInput): Share {
  const total = numberIn(optionsOf(input).totalAvailable, TOTAL_AVAILABLE, 'totalAvailable')
  const readily = numberIn(input.readilyAvailable, WATER_DEPTH, 'readilyAvailable')
  const water = dryingLine(total, readily, numberIn(input.depletion, WATER_DEPTH, 'depletion'), 'readilyAvailable')
  const above = Math.max(0, numberIn(input.extractEC, EC, 'extractEC') - numberIn(input.thresholdEC, EC, 'thresholdEC'))
  const loss =
    numberIn(input.lossPerDecisiemens, YIELD_LOSS, 'lossPerDecisiemens') /
    numberIn(input.yieldResponse, YIELD_RESPONSE, 'yieldResponse')
  const salt = shareAbove(above, loss)
  return (salt * water) as Share
}

/** Irrigation water and the share of it that leaves below the roots. */
export interface ExtractFromLeachingInput extends FieldWaterEC {
  /** Share of the infiltrated water that drains below the roots. Unit: 1. Range: (0, 1]. */
  readonly leachingFraction: Share
}

/**
 * EC of the saturated extract to which a field soil tends under a leaching fraction.
 *
 * @equation `EC_e = \frac{1 + LF}{LF}\,\frac{EC_{iw}}{5}`
 * @returns EC of the saturated extract. Unit: dS/m.
 * @validity Field soils at steady state with the usual pattern of uptake; not containers.
 * @source allen-1998, Eq. 93
 * @example
 * extractECFromLeaching({ leachingFraction: fraction(0.2), irrigationEC: decisiemensPerMetre(2) }) // => 2.4
 */
export function extractECFromLeaching(input: ExtractFromLeachingInput): SaturatedExtractEC {
  const { leachingFraction, irrigationEC } = optionsOf(input)
  const drained = numberIn(leachingFraction, LEACHING, 'leachingFraction')
  return answerOf(
    ((1 + drained) / drained) * (numberIn(irrigationEC, EC, 'irrigationEC') / 5),
    'leachingFraction',
  ) as SaturatedExtractEC
}

/** Irrigation water and the salt that a crop bears. */
export interface FieldLeachingInput extends FieldWaterEC {
  /** EC of the saturated extract that the crop is to bear. Unit: dS/m. Range: (0, 200]. */
  readonly extractEC: SaturatedExtractEC
}

/**
 * Share of the irrigation that has to drain through a field soil to hold its salt: a tool for field soil, not for containers.
 *
 * @equation `LR = \frac{EC_{iw}}{5\,EC_e - EC_{iw}}`
 * @returns Leaching requirement. Unit: 1.
 * @throws `DomainError` outside the ranges, `InputError` when the water is at or above 2.5 times the extract: no share of drain is enough.
 * @validity Field soils at steady state, surface irrigation or sprinklers.
 * @source ayers-1985, section 2.4.2, as quoted in allen-1998, p. 180
 * @example
 * fieldLeachingRequirement({ irrigationEC: decisiemensPerMetre(1), extractEC: decisiemensPerMetre(2.5) }) // => 0.087
 */
export function fieldLeachingRequirement(input: FieldLeachingInput): Share {
  const { irrigationEC, extractEC } = optionsOf(input)
  const water = numberIn(irrigationEC, EC, 'irrigationEC')
  const borne = numberIn(extractEC, TOLERATED_EC, 'extractEC')
  if (water >= 2.5 * borne) {
    throw new InputError(
      'irrigationEC',
      `water of ${water} dS/m cannot hold the extract at ${borne} dS/m, however much drains`,
      'use water with less salt or a crop that bears more',
    )
  }
  return (water / (5 * borne - water)) as Share
}
