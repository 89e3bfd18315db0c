import { InputError } from '../quantity/errors.js'
import type { Finding } from '../quantity/finding.js'

/** A disorder up to this much water content is taken for scatter, in m³/m³. Common practice, no source. */
const SCATTER = 0.05

/**
 * Refuses samples whose water content goes back by more than half of its range while the reading goes on, and warns of smaller disorder.
 */
export function worstDisorder(readings: readonly number[], contents: readonly number[]): Finding[] {
  const n = readings.length
  const meanR = readings.reduce((total, r) => total + r, 0) / n
  const meanT = contents.reduce((total, t) => total + t, 0) / n
  const direction = readings.reduce((total, r, i) => total + (r - meanR) * (contents[i]! - meanT), 0) < 0 ? -1 : 1
  const order = readings
    .map((_, i) => i)
    .sort((a, b) => direction * (readings[a]! - readings[b]!) || contents[a]! - contents[b]!)
  let wettest = order[0]!
  let [worst, before, after] = [0, wettest, wettest]
  for (const i of order) {
    if (contents[i]! > contents[wettest]!) wettest = i
    // Samples with one reading come from dry to wet, so that none of them is behind another.
    const back = contents[wettest]! - contents[i]!
    if (back > worst) [worst, before, after] = [back, wettest, i]
  }
  const range =
    contents.reduce((a, b) => Math.max(a, b), -Infinity) - contents.reduce((a, b) => Math.min(a, b), Infinity)
  const pair = `${contents[before]} m³/m³ at a reading of ${readings[before]}, but ${contents[after]} m³/m³ at ${readings[after]}`
  if (range === 0 || worst > range / 2)
    throw new InputError(
      'samples',
      range === 0 ? 'all hold the same water' : `they rise and fall: ${pair}`,
      'look for swapped labels or samples of another medium, weigh and read them again, and take some from dry to wet',
    )
  if (worst <= SCATTER) return []
  return [
    {
      code: 'samples-out-of-order',
      level: 'caution',
      message: `two samples are out of order by ${worst.toFixed(3)} m³/m³: ${pair}; look for swapped labels, an air gap or salt`,
      about: 'samples',
      value: worst,
      unit: 'm³/m³',
      source: 'common practice, no source',
    },
  ]
}
