import type { StoreRecord } from './store-record.js'

/** Capacity in m³/m³, bypass, and the natural logarithm of the lag in s. */
export type StoreNumbers = readonly [capacity: number, bypass: number, lag: number]

/** The drain of `waterStore`, without its checks, which a search would repeat a million times. */
export function quickDrain({
  substrateVolume,
  minWaterContent,
  start,
  steps,
}: StoreRecord): (at: StoreNumbers) => Float64Array {
  return ([capacity, bypass, lag]) => {
    const [max, min, pace] = [capacity * substrateVolume, minWaterContent * substrateVolume, Math.exp(-lag)]
    let [held, draining, duration, stay] = [start * substrateVolume, 0, 0, 1]
    const out = new Float64Array(steps.length)
    for (let k = 0; k < out.length; k++) {
      const during = steps[k]!
      if (during.duration !== duration) {
        duration = during.duration
        stay = Math.exp(-duration * pace)
      }
      const filled = held + during.applied * (1 - bypass)
      const left = filled - Math.min(during.demand, Math.max(0, filled - min))
      held = Math.min(left, max)
      const moving = draining + during.applied * bypass + (left - held)
      draining = moving * stay
      out[k] = moving - draining
    }
    return out
  }
}
