import type { WaterContent, WaterContentChange } from './generated/kinds.js'
import { numberOf } from './guard.js'
/**
 * A water content moved by a change: up by a positive one, down by a negative one.
 *
 * @equation `\theta_2 = \theta_1 + \Delta\theta`
 * @param from - Water content. Unit: m³/m³. Range: any.
 * @param change - Change of water content. Unit: m³/m³. Range: any.
 * @returns Water content. Unit: m³/m³.
 * @source definition of a scale with points and differences
 * @example
 * shiftWaterContent(waterContent(0.5), waterContentChange(0.25)) // => 0.75
 */
export function shiftWaterContent(from: WaterContent, change: WaterContentChange): WaterContent {
  return (numberOf(from, 'from') + numberOf(change, 'change')) as WaterContent
}

/**
 * By how much one water content is above another.
 *
 * @equation `\Delta\theta = \theta_1 - \theta_2`
 * @param above - Water content. Unit: m³/m³. Range: any.
 * @param below - Water content. Unit: m³/m³. Range: any.
 * @returns Change of water content. Unit: m³/m³.
 * @source definition of a scale with points and differences
 * @example
 * waterContentDifference(waterContent(0.75), waterContent(0.5)) // => 0.25
 */
export function waterContentDifference(above: WaterContent, below: WaterContent): WaterContentChange {
  return (numberOf(above, 'above') - numberOf(below, 'below')) as WaterContentChange
}
