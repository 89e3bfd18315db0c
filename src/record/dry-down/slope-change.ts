import { InputError } from '../../quantity/errors.js'
import type { WaterContent } from '../../quantity/generated/kinds.js'
import { requireObject } from '../../quantity/guard.js'
import { alignedSeries } from '../aligned-series.js'
import { type DryDownInput, fitDryDown } from './dry-down.js'
import { independentShare } from './independent-share.js'

/** Where a dry-down changes its speed, or why no such place shows. */
export type SlopeChange =
  | {
      readonly known: true
      /** Position of the reading at which it changes. Unit: 1. */
      readonly index: number
      /** Its time. Unit: s. */
      readonly time: number
      /** Water content on the lines there. Unit: m³/m³. */
      readonly level: WaterContent
      /** Change in an hour before. Unit: m³/m³/h. */
      readonly slopeBefore: number
      /** Change in an hour after. Unit: m³/m³/h. */
      readonly slopeAfter: number
      /** Whether it dries more slowly after: what plants that run short of water do. */
      readonly slows: boolean
    }
  | { readonly known: false; readonly reason: 'few-readings' | 'no-change' }

/**
 * Looks for the place where a dry-down changes its speed. Where it slows down, plants may begin to run short of water; but night, cold,
 * cloud and a probe that heats up slow it down as well, so that it is no proof of stress.
 *
 * Least squares over every reading that leaves a tenth of the readings, and at least five, on both sides.
 *
 * @equation `\theta(t) = a + b\,t + c\,\max(0, t - t_b)`
 * @param input - Times and readings of one stretch.
 * @returns Place, level and both slopes, or that noise could have made the change.
 * @throws `InputError` for lists of different lengths or times that do not rise.
 * @validity Within one light regime. Believed when it lowers the Schwarz criterion by 10, counted with so many independent readings as the rest shows.
 * @source schwarz-1978; the limit of 10: kass-1995; independent readings from the correlation of neighbours: common practice, no source
 * @example
 * const time = Array.from({ length: 41 }, (_, i) => i * 1800)
 * const content = time.map((_, i) => 0.5 - 0.004 * Math.min(i, 25) - 0.001 * Math.max(0, i - 25))
 * changeOfSlope({ time, waterContent: content }) // => { known: true, index: 25, level: 0.4, slopeBefore: -0.008, slopeAfter: -0.002, slows: true }
 */
export function changeOfSlope(input: DryDownInput): SlopeChange {
  requireObject(input, 'input')
  const [time, waterContent] = alignedSeries(input.time, input.waterContent, 'waterContent')
  const rows = presentRows(time, waterContent)
  const n = rows.length
  const edge = Math.max(5, Math.ceil(n / 10))
  if (n < 2 * edge + 2) return { known: false, reason: 'few-readings' }
  const origin = time[rows[0]!]!
  const t = rows.map((i) => (time[i]! - origin) / 3600)
  const line = fitDryDown({ time: rows.map((i) => time[i]!), waterContent: rows.map((i) => waterContent[i]!) })
  const meanT = t.reduce((sum, one) => sum + one / n, 0)
  const end = line.last - line.slopePerHour * t[n - 1]!
  const rest = rows.map((i, k) => waterContent[i]! - end - line.slopePerHour * t[k]!)
  const best = bestBreak(t, rest, meanT, edge)
  const squares = rest.reduce((sum, r) => sum + r * r, 0)
  const hinge = t.map((one) => Math.max(0, one - t[best.at]!))
  const after = rest.map((r, k) => r - best.bend * (hinge[k]! - best.mean - best.tilt * (t[k]! - meanT)))
  const left = after.reduce((sum, r) => sum + r * r, 0)
  // Rounding must not decide: below this no two courses can be told apart.
  const min = n * 1e-20
  const independent = n * independentShare(after, left)
  const gain = independent * Math.log(Math.max(squares, min) / Math.max(left, min)) - 2 * Math.log(n)
  if (!(gain > 10)) return { known: false, reason: 'no-change' }
  const slopeBefore = line.slopePerHour - best.bend * best.tilt
  const slopeAfter = slopeBefore + best.bend
  const level = end + best.bend * (best.tilt * meanT - best.mean) + slopeBefore * t[best.at]!
  const index = rows[best.at]!
  return {
    known: true,
    index,
    time: time[index]!,
    level: level as WaterContent,
    slopeBefore,
    slopeAfter,
    slows: slopeBefore < 0 && slopeAfter > slopeBefore,
  }
}

/** The readings that are there, in times that rise. */
function presentRows(time: ArrayLike<number>, waterContent: ArrayLike<number>): number[] {
  const rows: number[] = []
  for (let i = 0; i < time.length; i++) {
    if (Number.isNaN(waterContent[i])) continue
    const before = rows[rows.length - 1]
    if (before !== undefined && !(time[i]! > time[before]!))
      throw new InputError('time', 'does not rise', 'give one stretch without a break')
    rows.push(i)
  }
  return rows
}

interface Break {
  readonly at: number
  /** Change of slope. */
  readonly bend: number
  /** Mean of the hinge, and its slope on time. */
  readonly mean: number
  readonly tilt: number
}

/** The hinge that takes most from the rest of the straight line; sums from the end make it one pass. */
function bestBreak(t: readonly number[], rest: readonly number[], meanT: number, edge: number): Break {
  const n = t.length
  const spread = t.reduce((sum, one) => sum + (one - meanT) ** 2, 0)
  let [count, sumT, sumTT, sumR, sumTR] = [0, 0, 0, 0, 0]
  let max = -1
  let best: Break = { at: edge, bend: 0, mean: 0, tilt: 0 }
  for (let k = n - 1; k >= edge; k--) {
    const at = t[k]!
    if (k < n - edge) {
      const h1 = sumT - count * at
      const h2 = sumTT - 2 * at * sumT + count * at * at
      const mean = h1 / n
      const tilt = (sumTT - at * sumT - meanT * h1) / spread
      const own = h2 - h1 * mean - tilt * tilt * spread
      const shared = sumTR - at * sumR
      if (own > 0 && (shared * shared) / own > max) {
        max = (shared * shared) / own
        best = { at: k, bend: shared / own, mean, tilt }
      }
    }
    const r = rest[k]!
    count++
    sumT += at
    sumTT += at * at
    sumR += r
    sumTR += at * r
  }
  return best
}
