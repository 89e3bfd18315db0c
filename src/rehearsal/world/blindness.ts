import type { ReceivedReading } from '../controllers/rehearsed-controller.js'
import type { CheckedLimits } from '../scenario/rehearsal-limits.js'

/** Whether a controller that believes nothing impossible is without a reading that is young enough, after those that arrive now. */
export function blindnessOf(limits: CheckedLimits, probes: number) {
  const { minBelievable, maxBelievable, maxReadingAge: maxAge } = limits
  const stamps = new Float64Array(probes).fill(Number.NaN)
  return (readings: readonly ReceivedReading[], now: number): boolean => {
    for (const { probe, value, time } of readings) {
      if (typeof value !== 'number' || !(value >= minBelievable && value <= maxBelievable)) continue
      if (time >= stamps[probe]! || Number.isNaN(stamps[probe]!)) stamps[probe] = time
    }
    // NaN, where nothing came yet, is no age.
    return !stamps.some((stamp) => Math.abs(now - stamp) <= maxAge)
  }
}
