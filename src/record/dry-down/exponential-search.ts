/** Least squares of an exponential with an asymptote, at its best time constant; times run from 0 to 1. */
export interface ExponentialSums {
  readonly constant: number
  readonly asymptote: number
  readonly slope: number
  /** Sum of the squares that are left. */
  readonly rest: number
  /** The same for a straight line. */
  readonly lineRest: number
  /** Whether the search ended at an end of its range, so that the readings do not bound the constant. */
  readonly atEnd: boolean
}

/** Logarithm of 50: the time constant is searched from a fiftieth to fifty times the length of the series. */
const TO = 3.912023005428146
const FROM = -TO

/** Searches the logarithm of the time constant on a grid, then by golden section between the neighbours of the best. */
export function bestTimeConstant(t: readonly number[], x: readonly number[]): ExponentialSums {
  const restAt = (log: number) => line(t, x, Math.exp(log)).rest
  const steps = 60
  let best = 0
  let min = Infinity
  for (let k = 0; k <= steps; k++) {
    const rest = restAt(FROM + ((TO - FROM) * k) / steps)
    if (rest < min) {
      min = rest
      best = k
    }
  }
  const width = (TO - FROM) / steps
  const log = goldenSection(restAt, FROM + width * Math.max(0, best - 1), FROM + width * Math.min(steps, best + 1))
  const constant = Math.exp(log)
  const { slope, intercept, rest } = line(t, x, constant)
  const lineRest = line(t, x, Number.POSITIVE_INFINITY).rest
  return { constant, asymptote: intercept, slope, rest, lineRest, atEnd: best === 0 || best === steps }
}

/** Ends of the asymptotes whose best curve leaves at most so large a sum of squares: the profile of the likelihood. */
export function asymptoteInterval(
  t: readonly number[],
  x: readonly number[],
  best: ExponentialSums,
  rest: number,
): readonly [low: number, high: number] {
  let [low, high] = [best.asymptote, best.asymptote]
  const reach = (end: number) => lastThat((log) => line(t, x, Math.exp(log)).rest <= rest, Math.log(best.constant), end)
  const [from, to] = [reach(FROM), reach(TO)]
  const steps = 60
  for (let k = 0; k <= steps; k++) {
    const at = line(t, x, Math.exp(from + ((to - from) * k) / steps))
    const half = Math.sqrt(Math.max(rest - at.rest, 0) * at.spread)
    low = Math.min(low, at.intercept - half)
    high = Math.max(high, at.intercept + half)
  }
  return [low, high]
}

/** The last place towards an end at which something still holds that holds at the begin. */
function lastThat(holds: (at: number) => boolean, begin: number, end: number): number {
  if (holds(end)) return end
  let [inside, outside] = [begin, end]
  for (let k = 0; k < 40; k++) {
    const middle = (inside + outside) / 2
    if (holds(middle)) inside = middle
    else outside = middle
  }
  return inside
}

/** The line through x over exp(-t/constant), or over t itself for a constant without end. */
function line(t: readonly number[], x: readonly number[], constant: number) {
  const at = (s: number) => (constant === Infinity ? s : Math.exp(-s / constant))
  const n = t.length
  let [meanU, meanX] = [0, 0]
  for (let i = 0; i < n; i++) {
    meanU += at(t[i]!) / n
    meanX += x[i]! / n
  }
  let [uu, ux] = [0, 0]
  for (let i = 0; i < n; i++) {
    const u = at(t[i]!) - meanU
    uu += u * u
    ux += u * (x[i]! - meanX)
  }
  const slope = ux / uu
  let rest = 0
  for (let i = 0; i < n; i++) rest += (x[i]! - meanX - slope * (at(t[i]!) - meanU)) ** 2
  return { slope, intercept: meanX - slope * meanU, rest, spread: 1 / n + (meanU * meanU) / uu }
}

function goldenSection(f: (x: number) => number, from: number, to: number): number {
  const ratio = (Math.sqrt(5) - 1) / 2
  let [a, b] = [from, to]
  let c = b - ratio * (b - a)
  let d = a + ratio * (b - a)
  let [fc, fd] = [f(c), f(d)]
  for (let k = 0; k < 60; k++) {
    if (fc < fd) {
      ;[b, d, fd] = [d, c, fc]
      c = b - ratio * (b - a)
      fc = f(c)
    } else {
      ;[a, c, fc] = [c, d, fd]
      d = a + ratio * (b - a)
      fd = f(d)
    }
  }
  return (a + b) / 2
}
