import { InputError } from '../../quantity/errors.js'
import type { Duration, WaterContent, WaterContentChange } from '../../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../../quantity/guard.js'
import { notAbove } from '../../quantity/not-above.js'
import { alignedSeries } from '../aligned-series.js'
import { PROBE_CONTENT, REFILL_POINT, TIME_CONSTANT } from '../domains.js'
import type { RefillPoint } from '../terms.js'
import type { DryDownInput, TimeToRefill } from './dry-down.js'
import { asymptoteInterval, bestTimeConstant, type ExponentialSums } from './exponential-search.js'
import { independentShare } from './independent-share.js'

/** A dry-down that slows down as it nears an asymptote. */
export interface ExponentialCourse {
  /** Water content from which it goes on. Unit: m³/m³. Range: [-1, 2]. */
  readonly from: WaterContent
  /** Water content that it approaches. Unit: m³/m³. Range: [-1, 2]. */
  readonly asymptote: WaterContent
  /** Time in which the distance to the asymptote falls to 37 %. Unit: s. Range: (0, ∞). */
  readonly timeConstant: Duration
  /** Water content that later levels seldom pass, as `fitExponentialDryDown` tells it. Unit: m³/m³. Range: [-1, 2]. */
  readonly floor?: WaterContent
}

/** A dry-down and the water content that it should not pass. */
export interface ExponentialRefillInput extends RefillPoint, ExponentialCourse {}

/**
 * Time in which a dry-down that slows down reaches the refill point.
 *
 * @equation `t = \tau \ln\frac{\theta_0 - \theta_\infty}{\theta_{refill} - \theta_\infty}`
 * @param input - Start, asymptote, time constant, refill point, and the floor where there is one.
 * @returns The time, zero where the refill point is passed already; or why there is none: `levels-off-above` (the refill point lies below the
 *   floor), `may-level-off-above` (it lies below the asymptote, but no floor rules it out), `not-falling`.
 * @throws `DomainError` outside the ranges; `InputError` for a floor above the asymptote.
 * @validity A description of one stretch, for charts and for comparing nights. It holds as long as light and air stay what they were, which is seldom until the next water: to foresee, use `forecastLevel`.
 * @source First-order dry-down as in mccoll-2017
 * @example
 * const time = timeToRefillExponential({
 *   from: waterContent(0.6), asymptote: waterContent(0.1), timeConstant: hours(60), refillPoint: waterContent(0.45),
 * })
 * time // => { known: true, time: 77041.79 }
 */
export function timeToRefillExponential(input: ExponentialRefillInput): TimeToRefill {
  requireObject(input, 'input')
  const from = numberIn(input.from, PROBE_CONTENT, 'from')
  const asymptote = numberIn(input.asymptote, PROBE_CONTENT, 'asymptote')
  const floor = input.floor === undefined ? -Infinity : numberIn(input.floor, PROBE_CONTENT, 'floor')
  const constant = numberIn(input.timeConstant, TIME_CONSTANT, 'timeConstant')
  const refill = numberIn(input.refillPoint, REFILL_POINT, 'refillPoint')
  notAbove('floor', floor, 'asymptote', asymptote)
  if (from <= refill) return { known: true, time: 0 as Duration }
  if (asymptote >= from) return { known: false, reason: 'not-falling' }
  if (asymptote < refill)
    return { known: true, time: (constant * Math.log((from - asymptote) / (refill - asymptote))) as Duration }
  return { known: false, reason: floor > refill ? 'levels-off-above' : 'may-level-off-above' }
}

/** An exponential fitted to a dry-down, or why the readings do not tell one from a straight line. */
export type ExponentialDryDown =
  | {
      readonly known: true
      /** Water content on the curve at the first reading. Unit: m³/m³. */
      readonly first: WaterContent
      /** Water content on the curve at the last reading. Unit: m³/m³. */
      readonly last: WaterContent
      /** Water content that the curve of this stretch approaches: levels that come later often pass it. Unit: m³/m³. */
      readonly asymptote: WaterContent
      /** Lower end of the 95 % interval of the asymptote. Unit: m³/m³. */
      readonly asymptoteLow: WaterContent
      /** Upper end of it. Unit: m³/m³. */
      readonly asymptoteHigh: WaterContent
      /** Below this nine of ten courses did not fall until the next water, whatever light and air did. Unit: m³/m³. */
      readonly floor: WaterContent
      /** Time in which the distance to the asymptote falls to 37 %. Unit: s. */
      readonly timeConstant: Duration
      /** Standard deviation of the readings about the curve. Unit: m³/m³. */
      readonly residualStandardDeviation: WaterContentChange
      /** Standard deviation of the readings about a straight line. Unit: m³/m³. */
      readonly lineResidualStandardDeviation: WaterContentChange
      /** Readings that were used. Unit: 1. */
      readonly readings: number
    }
  | {
      readonly known: false
      readonly reason: 'few-readings' | 'not-falling' | 'no-bend' | 'no-time-constant' | 'wide-asymptote'
    }

/**
 * Fits an exponential to a dry-down of one regime and says when the readings do not carry it: an asymptote and a time constant are read off
 * the bend, and without a bend any pair fits.
 *
 * Least squares; for each time constant asymptote and start follow from a line, the time constant is searched from a fiftieth to fifty
 * times the length of the series.
 *
 * @equation `\theta(t) = \theta_\infty + (\theta_0 - \theta_\infty)\, e^{-t/\tau}`
 * @returns The curve with the 95 % interval of its asymptote and a floor, or why there is none: `few-readings` (fewer than 8), `not-falling`,
 *   `no-bend` (a straight line does as well), `no-time-constant` (the bend is too slight or too sudden), `wide-asymptote` (the asymptote is a
 *   guess: its interval is wider than half of the fall that was seen).
 * @throws `InputError` for lists of different lengths.
 * @validity Within one regime. Believed when it lowers the Schwarz criterion by 6 against the line, and its asymptote is narrow by the profile of its likelihood, with so many independent readings as the rest shows. The asymptote describes the stretch and rules nothing out: later levels passed it after 30 % of the fits on slabs of tomato and 46 % on soils. The floor is the lower of the interval's end and of a third of the fall that was seen below the asymptote; 7 % passed it on either. For how long a level lasts use `forecastLevel`.
 * @source mccoll-2017; schwarz-1978; the limit of 6: kass-1995; the third of the fall: common practice, no source
 * @example
 * const time = Array.from({ length: 25 }, (_, i) => i * 3600)
 * const fit = fitExponentialDryDown({ time, waterContent: time.map((t) => 0.2 + 0.4 * Math.exp(-t / 36000)) })
 * fit // => { known: true, asymptote: 0.2, floor: 0.0788, timeConstant: 36000, first: 0.6 }
 */
export function fitExponentialDryDown(input: DryDownInput): ExponentialDryDown {
  requireObject(input, 'input')
  const [time, waterContent] = alignedSeries(input.time, input.waterContent, 'waterContent')
  const t: number[] = []
  const x: number[] = []
  for (let i = 0; i < waterContent.length; i++) {
    if (Number.isNaN(waterContent[i]) || Number.isNaN(time[i])) continue
    if (t.length > 0 && !(time[i]! > t[t.length - 1]!))
      throw new InputError('time', 'does not rise', 'give one stretch without a break')
    t.push(time[i]!)
    x.push(waterContent[i]!)
  }
  const n = t.length
  if (n < 8) return { known: false, reason: 'few-readings' }
  const origin = t[0]!
  const length = t[n - 1]! - origin
  const share = t.map((one) => (one - origin) / length)
  const best = bestTimeConstant(share, x)
  // Rounding must not decide: below this no two courses can be told apart.
  const min = n * 1e-20
  const gain = n * Math.log(Math.max(best.lineRest, min) / Math.max(best.rest, min)) - Math.log(n)
  if (!(best.slope > 0)) return { known: false, reason: 'not-falling' }
  if (!(gain > 6)) return { known: false, reason: 'no-bend' }
  if (best.atEnd) return { known: false, reason: 'no-time-constant' }
  const interval = intervalOf(share, x, best)
  const fall = best.slope * (1 - Math.exp(-1 / best.constant))
  if (interval[1] - interval[0] > WIDEST * fall) return { known: false, reason: 'wide-asymptote' }
  return courseOf(best, interval, length, n)
}

/** An asymptote whose interval is wider than this share of the fall that was seen is a guess. */
const WIDEST = 0.5
/** In nine of ten courses of slabs and of soils, levels fell later no farther below the asymptote than this share of the fall that was seen. */
const BEYOND = 0.3333333333333333
/** The square of a standard normal number passes this once in twenty times. */
const CHI_SQUARE = 3.8415

/** The 95 % interval of the asymptote, with so many independent readings as the rest shows. */
function intervalOf(t: readonly number[], x: readonly number[], best: ExponentialSums): readonly [number, number] {
  const { asymptote, slope, constant, rest } = best
  const off = t.map((one, k) => x[k]! - asymptote - slope * Math.exp(-one / constant))
  const free = Math.max(1, t.length * independentShare(off, rest) - 3)
  return asymptoteInterval(t, x, best, Math.max(rest, t.length * 1e-20) * (1 + CHI_SQUARE / free))
}

function courseOf(
  best: ExponentialSums,
  [asymptoteLow, asymptoteHigh]: readonly [number, number],
  length: number,
  n: number,
): ExponentialDryDown {
  const fall = best.slope * (1 - Math.exp(-1 / best.constant))
  return {
    known: true,
    first: (best.asymptote + best.slope) as WaterContent,
    last: (best.asymptote + best.slope * Math.exp(-1 / best.constant)) as WaterContent,
    asymptote: best.asymptote as WaterContent,
    asymptoteLow: asymptoteLow as WaterContent,
    asymptoteHigh: asymptoteHigh as WaterContent,
    floor: Math.min(asymptoteLow, best.asymptote - BEYOND * fall) as WaterContent,
    timeConstant: (best.constant * length) as Duration,
    residualStandardDeviation: Math.sqrt(best.rest / (n - 3)) as WaterContentChange,
    lineResidualStandardDeviation: Math.sqrt(best.lineRest / (n - 2)) as WaterContentChange,
    readings: n,
  }
}
