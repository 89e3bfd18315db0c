import { WATER_CONTENT } from '../../quantity/domains.js'
import { InputError } from '../../quantity/errors.js'
import type { Length, WaterContent, WaterDepth } from '../../quantity/generated/kinds.js'
import { numberIn, requireRows } from '../../quantity/guard.js'
import { LAYER_DEPTH } from '../domains.js'
import type { FieldCapacity } from '../terms.js'

/** One layer of a root zone. */
export interface WaterLayer extends FieldCapacity {
  /** Water content at the wilting point, not above field capacity. Unit: m³/m³. Range: [0, 1]. */
  readonly wiltingPoint: WaterContent
  /** Water content now. Unit: m³/m³. Range: [0, 1]. */
  readonly waterContent: WaterContent
  /** Thickness of the layer. Unit: cm. Range: (0, 2000]. */
  readonly thickness: Length
}

/** Water of all layers together. */
export interface LayeredWater {
  /** Water between field capacity and the wilting point. Unit: mm. */
  readonly totalAvailable: WaterDepth
  /** Water that is missing to field capacity; negative when wetter. Unit: mm. */
  readonly depletion: WaterDepth
}

/**
 * Available and missing water of a root zone of several layers.
 *
 * @equation `TAW = \sum_i (\theta_{FC,i} - \theta_{WP,i})\,d_i \qquad D_r = \sum_i (\theta_{FC,i} - \theta_i)\,d_i`
 * @param layers - Layers of the root zone, in any order.
 * @returns Total available water and depletion.
 * @throws `DomainError` outside the ranges, `InputError` for no layers or a wilting point above field capacity.
 * @source allen-1998, Eq. 82 and 87, summed over layers
 * @example
 * layeredWater([
 *   { fieldCapacity: waterContent(0.3), wiltingPoint: waterContent(0.1), waterContent: waterContent(0.2), thickness: metres(0.2) },
 *   { fieldCapacity: waterContent(0.4), wiltingPoint: waterContent(0.2), waterContent: waterContent(0.35), thickness: metres(0.4) },
 * ]) // => { totalAvailable: 120.0, depletion: 40.0 }
 */
export function layeredWater(layers: readonly WaterLayer[]): LayeredWater {
  requireRows(layers, 'layers')
  if (layers.length === 0) throw new InputError('layers', 'there are none', 'give at least one layer')
  let totalAvailable = 0
  let depletion = 0
  for (const layer of layers) {
    const capacity = numberIn(layer.fieldCapacity, WATER_CONTENT, 'fieldCapacity')
    const wilting = numberIn(layer.wiltingPoint, WATER_CONTENT, 'wiltingPoint')
    if (wilting > capacity) {
      throw new InputError('wiltingPoint', 'it is above field capacity', 'check that the two are not swapped')
    }
    const thickness = 10 * numberIn(layer.thickness, LAYER_DEPTH, 'thickness')
    totalAvailable += (capacity - wilting) * thickness
    depletion += (capacity - numberIn(layer.waterContent, WATER_CONTENT, 'waterContent')) * thickness
  }
  return { totalAvailable: totalAvailable as WaterDepth, depletion: depletion as WaterDepth }
}
