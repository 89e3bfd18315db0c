import type { WaterStore } from '../water-store.js'
import type { StoreRecord } from './store-record.js'

/** Steps at which a store could first be full, for one bypass or another; the number of steps stands for never. */
export function possibleOnsets(record: StoreRecord, bypasses: readonly number[]): number[] {
  const onsets = new Set([record.steps.length])
  for (const bypass of bypasses) {
    let max = -Infinity
    waterContentsUnfilled(record, bypass).forEach((waterContent, k) => {
      if (waterContent > max && max < 1) onsets.add(k)
      max = Math.max(max, waterContent)
    })
  }
  return [...onsets]
}

/** From which to which capacity a store is first full at a step: from the highest content before it to the content after it. */
export function capacitiesAt(record: StoreRecord, onset: number, waterContents: Float64Array): [number, number] {
  const low = clip(
    waterContents.slice(0, onset).reduce((a, b) => Math.max(a, b), minCapacity(record)),
    0,
    1,
  )
  return [low, clip(waterContents[onset] ?? low, low, 1)]
}

/** Water contents after each step of a store that is never full. */
export function waterContentsUnfilled(
  { substrateVolume, minWaterContent, start, steps }: StoreRecord,
  bypass: number,
): Float64Array {
  let held = start * substrateVolume
  return Float64Array.from(steps, ({ applied, demand }) => {
    const filled = held + applied * (1 - bypass)
    held = filled - Math.min(demand, Math.max(0, filled - minWaterContent * substrateVolume))
    return held / substrateVolume
  })
}

/** The capacity must be above the content at which plants get nothing. */
export function minCapacity({ minWaterContent }: { readonly minWaterContent: WaterStore['minWaterContent'] }): number {
  return Math.min(minWaterContent + 1e-3, 1)
}

export function clip(value: number, low: number, high: number): number {
  return Math.min(Math.max(value, low), high)
}
