import { answerOf } from '../../quantity/answer.js'
import type { Domain } from '../../quantity/domain.js'
import type { PoreWaterEC, SaturatedExtractEC } from '../../quantity/generated/kinds.js'
import { numberIn } from '../../quantity/guard.js'
import { CONDUCTIVITY } from '../domains.js'

const SLOPE = 0.5381
const INTERCEPT = 1.6493

const EXTRACT: Domain = {
  quantity: 'conductivity of the saturated extract',
  unit: 'dS/m',
  min: INTERCEPT,
  max: Infinity,
  ends: '[)',
  hint: 'the line starts at 1.6493 dS/m; below it there is no pore water that it fits',
}

/**
 * Electrical conductivity of the saturated extract of one coir from the pore-water value of the model of Hilhorst.
 *
 * The line of one study of one coir (r² 0.62, error 0.93 dS/m, offset 1.64), and not zero at zero: it shows how far a model value can
 * be from an extract. Fit your own line before you act on one.
 *
 * @equation `\sigma_e = 0.5381\,\sigma_p + 1.6493`
 * @param poreWater - Conductivity of the pore water. Unit: dS/m. Range: [0, ∞).
 * @returns Conductivity of the saturated extract. Unit: dS/m.
 * @validity The coir of that study.
 * @source lee-nd, abstract; journal and year not seen
 * @example
 * saturatedExtractOfCoir(decisiemensPerMetre(1)) // => 2.1874
 */
export function saturatedExtractOfCoir(poreWater: PoreWaterEC): SaturatedExtractEC {
  return (SLOPE * numberIn(poreWater, CONDUCTIVITY) + INTERCEPT) as SaturatedExtractEC
}

/**
 * Pore-water value of the model of Hilhorst at which that coir has a conductivity of the saturated extract.
 *
 * @equation `\sigma_p = \frac{\sigma_e - 1.6493}{0.5381}`
 * @param extract - Conductivity of the saturated extract. Unit: dS/m. Range: [1.6493, ∞).
 * @returns Conductivity of the pore water. Unit: dS/m.
 * @validity The coir of that study.
 * @source lee-nd, abstract, solved for the pore water
 * @example
 * poreWaterOfCoirExtract(decisiemensPerMetre(2.1874)) // => 1
 */
export function poreWaterOfCoirExtract(extract: SaturatedExtractEC): PoreWaterEC {
  return answerOf((numberIn(extract, EXTRACT) - INTERCEPT) / SLOPE, 'extract') as PoreWaterEC
}
