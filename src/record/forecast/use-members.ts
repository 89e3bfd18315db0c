/** How fast each of the eight levels of use follows the days: half of them slowly, half quickly. */
const GAINS: readonly number[] = [0.2, 0.2, 0.2, 0.2, 0.6, 0.6, 0.6, 0.6]
/** By which power of the radiation each of them is scaled. */
const POWERS: readonly number[] = [0, 0.2, 0.4, 0.6, 0, 0.2, 0.4, 0.6]
export const MEMBERS = 8
/** A dark day uses at least this share of a usual one: lamps, heating and dry air go on. */
const DARKEST = 0.2
/** How fast old losses are forgotten, and how strongly a member that does better is preferred. */
const FORGET = 0.07
const SHARPNESS = 4
const MIN_LOSS = 0.0001

/** How members have done, with radiation or without. */
export interface MemberLosses {
  /** Slow mean of the squared relative miss of each member. Unit: 1. Range: any. */
  readonly losses: readonly number[]
  /** A usual squared miss. Unit: 1. Range: any. */
  readonly usual: number
}

/** Factor of the use of a day by its radiation against the usual one; 1 where either is unknown. */
export function radiationFactor(member: number, radiation: number | null, usual: number | null): number {
  if (radiation === null || usual === null || !(usual > 0)) return 1
  return Math.max(DARKEST, (radiation / usual) ** POWERS[member]!)
}

/** What each member foresees. */
export function memberForecasts(levels: readonly number[], radiation: number | null, usual: number | null): number[] {
  return levels.map((level, member) => level * radiationFactor(member, radiation, usual))
}

/** The mean of the members, those that did better weighing more. */
export function weighedForecast(forecasts: readonly number[], { losses, usual }: MemberLosses): number {
  let best = Infinity
  for (const loss of losses) best = Math.min(best, loss)
  let [weights, sum] = [0, 0]
  for (let member = 0; member < MEMBERS; member++) {
    const weight = Math.exp((-SHARPNESS * (losses[member]! - best)) / usual)
    weights += weight
    sum += weight * forecasts[member]!
  }
  return sum / weights
}

/** The losses after a day. One wild day counts as sixteen usual ones at most. */
export function withMisses(
  old: MemberLosses,
  forecasts: readonly number[],
  use: number,
  forecast: number,
  first: boolean,
): MemberLosses {
  const squares = forecasts.map((one) => ((use - one) / forecast) ** 2)
  const sorted = squares.slice().sort((a, b) => a - b)
  const middle = (sorted[MEMBERS / 2 - 1]! + sorted[MEMBERS / 2]!) / 2
  // A slow median: it steps towards each day by a tenth of itself.
  const usual = first
    ? Math.max(middle, 4 * MIN_LOSS)
    : Math.max(MIN_LOSS, old.usual * (1 + 0.1 * Math.sign(middle - old.usual)))
  const losses = old.losses.map((loss, k) => loss + FORGET * (Math.min(squares[k]!, 16 * usual) - loss))
  return { losses, usual }
}

/** The level of a member after a day whose use was known: it follows, but no farther than three usual misses. */
export function followed(level: number, spread: number, member: number, factor: number, use: number, days: number) {
  const miss = Math.max(-3 * spread, Math.min(3 * spread, use / (factor * level) - 1))
  const gain = Math.max(GAINS[member]!, 1 / days)
  return {
    // A level never falls below a hundredth of itself in one day, so that it can rise again.
    level: level * Math.max(0.01, 1 + gain * miss),
    spread: Math.max(0.02, spread + 0.1 * (Math.abs(miss) - spread)),
  }
}
