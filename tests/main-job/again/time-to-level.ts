import { Misses, NORMAL } from './misses.js'
import { mean, type Point, sum } from './raw.js'
import { LONGEST_STEP, risesOf, SETTLE } from './shots.js'

const HALF_HOUR = 1800
const DAY = 86400
const bin = (t: number) => Math.floor((t % DAY) / HALF_HOUR)

/** The level at a moment on the line of least squares through the points. */
function onLine(points: readonly Point[], t: number): number {
  const [mt, mx] = [mean(points.map((one) => one.t)), mean(points.map((one) => one.x))]
  const tt = sum(points.map((one) => (one.t - mt) ** 2))
  return tt > 0 ? mx + (sum(points.map((one) => (one.t - mt) * (one.x - mx))) / tt) * (t - mt) : mx
}

/** Readings from when drain has stopped to the foot of the next shot, with those of the rise that had not shown yet. */
interface DryDown {
  readonly points: readonly Point[]
  /** Last reading before the rise showed. */
  readonly seenTo: number
}

function dryDowns(all: readonly Point[], minRise: number): DryDown[] {
  const { shots, not } = risesOf(all, minRise)
  // While it cannot be said whether a rise is a shot, no reading counts.
  const open = ({ t }: Point) => not.some(({ unseen, over }) => t > unseen.t && t < (over?.t ?? Infinity))
  const found: DryDown[] = []
  let points: Point[] = []
  let [settled, next] = [all[0]!.t + SETTLE, 0]
  const close = (seenTo: Point) => {
    if (points.length > 0) found.push({ points, seenTo: seenTo.t })
    points = []
  }
  all.forEach((here, i) => {
    const before = all[i - 1] ?? here
    if (here.t - before.t > LONGEST_STEP) {
      close(before)
      settled = here.t + SETTLE
    }
    const shot = shots[next]
    if (shot !== undefined && here.t > shot.start.t) {
      close(shot.unseen)
      if (here.t < shot.peak.t) return
      settled = shot.peak.t + SETTLE
      next++
    } else if (here.t >= settled && !open(here)) points.push(here)
  })
  close(all.at(-1) as Point)
  return found
}

/** Levels at full and half hours, each on the line through half an hour of readings that ends a quarter of an hour later. */
function levelsOf({ points, seenTo }: DryDown): { first: number; levels: number[] } {
  const first = Math.ceil(points[0]!.t / HALF_HOUR) * HALF_HOUR
  const end = (points.at(-1) as Point).t
  const levels: number[] = []
  for (let t = first; t <= end; t += HALF_HOUR) {
    const late = points.find((one) => one.t >= t + 900)?.t ?? seenTo
    levels.push(
      onLine(
        points.filter((one) => one.t >= late - 1800 && one.t <= late),
        t,
      ),
    )
  }
  return { first, levels }
}

/**
 * Time until a level is reached if nobody waters, and the fall of the next hour: the usual fall of each half hour, times the factor of tonight; bands from the misses of
 * earlier nights. Written from the description of `forecastLevel`, `forecastTimeToLevel` and `fallAhead`.
 */
export function timeToLevel(all: readonly Point[], minRise: number, level: number) {
  const falls = new Array<number | undefined>(48).fill(undefined)
  let [usual, nights] = [0, 0]
  const two = [...NORMAL.map((one) => -0.12 * one), ...NORMAL.map((one) => 0.12 * one)]
  const rings = [0, 1, 2, 3].map(() => new Misses(two, true))
  const ringFor = (ahead: number) => rings[ahead < 5400 ? 0 : ahead < 10800 ? 1 : ahead < 21600 ? 2 : 3]!
  const expected = () => {
    const known = falls.filter((one) => one !== undefined)
    // Half of the mean is the least, or the mean of the 13 around where that is smaller, but not below a tenth of the mean.
    const all = Math.max(0, mean(known))
    const whole = falls.map((_, b) => {
      let k = b
      while (falls[k] === undefined) k = (k + 47) % 48
      return falls[k]!
    })
    const thrice = [...whole, ...whole, ...whole]
    const filled = whole.map((one, b) => Math.max(one, all / 10, Math.min(all / 2, mean(thrice.slice(b + 42, b + 55)))))
    return filled.map((one, b) => one / 2 + (filled[(b + 1) % 48]! + filled[(b + 47) % 48]!) / 4)
  }
  const fallBetween = (rates: readonly number[], from: number, to: number) => {
    let fall = 0
    for (let t = from; t < to; ) {
      const end = Math.min(to, (Math.floor(t / HALF_HOUR) + 1) * HALF_HOUR)
      fall += (rates[bin(t)]! * (end - t)) / HALF_HOUR
      t = end
    }
    return fall
  }
  const factorAt = (rates: readonly number[], start: Point, t: number, now: number) =>
    Math.min(1.33, Math.max(0.75, (start.x - now + usual) / (fallBetween(rates, start.t, t) + usual)))
  const nowOf = ({ points }: DryDown, t: number) =>
    onLine(
      points.filter((one) => one.t >= t - 1800 && one.t <= t),
      t,
    )

  const downs = dryDowns(all, minRise)
  const tonight = downs.pop() as DryDown
  for (const down of downs) {
    const { first, levels } = levelsOf(down)
    const start = down.points[0]!
    if (levels.length < 2) continue
    const at = (t: number) => {
      const place = (t - first) / HALF_HOUR
      const k = Math.min(Math.floor(place), levels.length - 2)
      if (k < 0 || place > levels.length - 1) return undefined
      return levels[k]! + (place - k) * (levels[k + 1]! - levels[k]!)
    }
    if (nights >= 3) {
      const rates = expected()
      for (const wait of [7200, 16200]) {
        const from = down.points.find(({ t }) => t - start.t >= wait)
        if (from === undefined) continue
        const now = nowOf(down, from.t)
        const factor = factorAt(rates, start, from.t, now)
        for (const ahead of [3600, 7200, 14400, 28800]) {
          const then = at(from.t + ahead)
          if (then === undefined) break
          const forecast = factor * fallBetween(rates, from.t, from.t + ahead)
          ringFor(ahead).add((now - then - forecast) / (forecast + 0.1 * usual))
        }
      }
    }
    for (let k = 0; k + 1 < levels.length; k++) {
      const b = bin(first + k * HALF_HOUR)
      const fall = levels[k]! - levels[k + 1]!
      const old = falls[b]
      falls[b] = old === undefined ? fall : old + 0.6 * (fall - old)
    }
    if (first + (levels.length - 1) * HALF_HOUR - start.t < 7200) continue
    const fall = start.x - (levels.at(-1) as number)
    usual = Math.max(0.002, nights === 0 ? fall : usual + 0.2 * (fall - usual))
    nights++
  }

  if (nights < 3) return { until: 'not known', hour: 'not known' } as const
  const last = (tonight.points.at(-1) as Point).t
  const now = nowOf(tonight, last)
  const rates = expected()
  const factor = factorAt(rates, tonight.points[0]!, last, now)
  const until = (fall: number) => {
    // Readings come at full minutes, and so do half hours end: within a minute the rate is one.
    let [left, t] = [fall, last]
    for (; t < last + 2 * DAY; t += 60) {
      const here = (factor * rates[bin(t)]! * 60) / HALF_HOUR
      if (here >= left) return t - last + (60 * left) / here
      left -= here
    }
    return t - last
  }
  const wanted = now - level
  const fall = factor * fallBetween(rates, last, last + 3600)
  const off = (miss: number) => fall + miss * (fall + 0.1 * usual)
  const short = ringFor(3600).bands
  const hour = { fall, half: short.half.map(off), ninety: short.ninety.map(off) }
  if (wanted <= 0) return { until: 'reached', hour } as const
  const time = until(wanted)
  const { half, ninety } = ringFor(time).bands
  const when = (miss: number) => until((wanted - 0.1 * usual * miss) / (1 + miss))
  return {
    until: {
      time,
      half: [when(half[1]), when(half[0])] as const,
      ninety: [when(ninety[1]), when(ninety[0])] as const,
    },
    hour,
  }
}
