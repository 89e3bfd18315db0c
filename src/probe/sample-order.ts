import { InputError } from '../quantity/errors.js'
import type { ProbeFinding } from './probe-finding.js'

/** A disorder up to this much water content is taken for scatter, in m³/m³. Common practice, no source. */
const SCATTER = 0.05

/**
 * Refuses samples whose water content goes back by more than half of its range while the reading goes on, and warns of smaller disorder.
 */
export function worstDisorder(readings: readonly number[], waterContents: readonly number[]): ProbeFinding[] {
  const n = readings.length
  const meanR = readings.reduce((total, r) => total + r, 0) / n
  const meanT = waterContents.reduce((total, t) => total + t, 0) / n
  const direction = readings.reduce((total, r, i) => total + (r - meanR) * (waterContents[i]! - meanT), 0) < 0 ? -1 : 1
  const order = readings
    .map((_, i) => i)
    .sort((a, b) => direction * (readings[a]! - readings[b]!) || waterContents[a]! - waterContents[b]!)
  let wettest = order[0]!
  let [worst, before, after] = [0, wettest, wettest]
  for (const i of order) {
    if (waterContents[i]! > waterContents[wettest]!) wettest = i
    // Samples with one reading come from dry to wet, so that none of them is behind another.
    const back = waterContents[wettest]! - waterContents[i]!
    if (back > worst) [worst, before, after] = [back, wettest, i]
  }
  const range =
    waterContents.reduce((a, b) => Math.max(a, b), -Infinity) - waterContents.reduce((a, b) => Math.min(a, b), Infinity)
  const pair = `${waterContents[before]} m³/m³ at a reading of ${readings[before]}, but ${waterContents[after]} m³/m³ at ${readings[after]}`
  if (range === 0 || worst > range / 2)
    throw new InputError(
      'samples',
      range === 0 ? 'all hold the same water' : `they rise and fall: ${pair}`,
      'look for swapped labels or samples of another medium, weigh and read them again, and take some from dry to wet',
    )
  if (worst <= SCATTER) return []
  const samples = [before, after]
  return [{ code: 'samples-out-of-order', level: 'caution', about: 'samples', value: worst, unit: 'm³/m³', samples }]
}
