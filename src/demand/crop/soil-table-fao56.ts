import { InputError } from '../../quantity/errors.js'
import type { WaterContent, WaterDepth } from '../../quantity/generated/kinds.js'
import { asName } from '../../quantity/one-of.js'

/** What FAO-56 tables say of a soil; pairs are lowest and highest. */
export interface TabledSoil {
  /** Name in the table. */
  readonly soil: string
  /** Water content at field capacity. Unit: m³/m³. */
  readonly fieldCapacity: readonly [WaterContent, WaterContent]
  /** Water content at the wilting point. Unit: m³/m³. */
  readonly wiltingPoint: readonly [WaterContent, WaterContent]
  /** Available water, the difference of the two in one soil. Unit: m³/m³. */
  readonly available: readonly [WaterContent, WaterContent]
  /** Readily evaporable water. Unit: mm. */
  readonly readilyEvaporable: readonly [WaterDepth, WaterDepth]
  /** Total evaporable water of a surface layer of 0.10 m. Unit: mm. */
  readonly totalEvaporable: readonly [WaterDepth, WaterDepth]
}

type Pair = readonly [number, number]

const ROWS: readonly (readonly [string, Pair, Pair, Pair, Pair, Pair])[] = [
  ['sand', [0.07, 0.17], [0.02, 0.07], [0.05, 0.11], [2, 7], [6, 12]],
  ['loamy sand', [0.11, 0.19], [0.03, 0.1], [0.06, 0.12], [4, 8], [9, 14]],
  ['sandy loam', [0.18, 0.28], [0.06, 0.16], [0.11, 0.15], [6, 10], [15, 20]],
  ['loam', [0.2, 0.3], [0.07, 0.17], [0.13, 0.18], [8, 10], [16, 22]],
  ['silt loam', [0.22, 0.36], [0.09, 0.21], [0.13, 0.19], [8, 11], [18, 25]],
  ['silt', [0.28, 0.36], [0.12, 0.22], [0.16, 0.2], [8, 11], [22, 26]],
  ['silt clay loam', [0.3, 0.37], [0.17, 0.24], [0.13, 0.18], [8, 11], [22, 27]],
  ['silty clay', [0.3, 0.42], [0.17, 0.29], [0.13, 0.19], [8, 12], [22, 28]],
  ['clay', [0.32, 0.4], [0.2, 0.24], [0.12, 0.2], [8, 12], [22, 29]],
]

/**
 * Field capacity, wilting point and evaporable water of a field soil by its texture.
 *
 * @param soil - Name in the table: `sand`, `loamy sand`, `sandy loam`, `loam`, `silt loam`, `silt`, `silt clay loam`, `silty clay`, `clay`.
 * @procedure Looks the soil up; the refusal of an unknown one lists all.
 * @returns Ranges of water content and of evaporable water.
 * @throws `InputError` when the table has no such soil.
 * @validity Mineral field soils; growing media hold water otherwise.
 * @source allen-1998, Table 19
 * @example
 * tabledSoilFao56('loam').totalEvaporable // => [16, 22]
 */
export function tabledSoilFao56(soil: string): TabledSoil {
  const row = ROWS.find(([name]) => name === soil)
  if (row === undefined) {
    throw new InputError(
      'soil',
      `the table has no ${asName(soil)}`,
      `choose one of: ${ROWS.map(([name]) => name).join('; ')}`,
    )
  }
  const [name, capacity, wilting, available, readily, total] = row
  return {
    soil: name,
    fieldCapacity: capacity as unknown as TabledSoil['fieldCapacity'],
    wiltingPoint: wilting as unknown as TabledSoil['wiltingPoint'],
    available: available as unknown as TabledSoil['available'],
    readilyEvaporable: readily as unknown as TabledSoil['readilyEvaporable'],
    totalEvaporable: total as unknown as TabledSoil['totalEvaporable'],
  }
}
