/** Sums for a line through the levels of a probe over time and temperature, since the last shot has drained. */
export type Sums = readonly [
  n: number,
  t: number,
  y: number,
  warm: number,
  tt: number,
  ty: number,
  tWarm: number,
  warmWarm: number,
  warmY: number,
]

export const NO_SUMS: Sums = [0, 0, 0, 0, 0, 0, 0, 0, 0]

/** The sums with one more reading. */
export function added(s: Sums, t: number, y: number, warm: number): Sums {
  return [
    s[0] + 1,
    s[1] + t,
    s[2] + y,
    s[3] + warm,
    s[4] + t * t,
    s[5] + t * y,
    s[6] + t * warm,
    s[7] + warm * warm,
    s[8] + warm * y,
  ]
}

/** Fall and answer to temperature of one probe. */
export interface NightLine {
  readonly fall: number | null
  /** Standard error of the fall by the noise of the readings. Unit: m³/m³/h. */
  readonly error: number
  readonly warmth: number | null
}

/** An answer to temperature that is smaller than so many of its standard errors is none. */
const SURE = 4

export function lineOf(s: Sums, noise: number): NightLine {
  const [n, t, y, w] = s
  if (n < 8) return { fall: null, error: 0, warmth: null }
  const tt = s[4] - (t * t) / n
  const ty = s[5] - (t * y) / n
  const tw = s[6] - (t * w) / n
  const ww = s[7] - (w * w) / n
  const wy = s[8] - (w * y) / n
  if (!(tt > 0)) return { fall: null, error: 0, warmth: null }
  // What of the temperature is not just time: half a degree must be left to tell both apart.
  const own = ww - (tw * tw) / tt
  if (!(own / n > 0.06)) return { fall: -ty / tt, error: noise / Math.sqrt(tt), warmth: null }
  const warmth = (wy - (tw * ty) / tt) / own
  const isSure = Math.abs(warmth) > (SURE * noise) / Math.sqrt(own)
  return {
    fall: -(ty - warmth * tw) / tt,
    error: noise * Math.sqrt(ww / (own * tt)),
    warmth: isSure ? warmth : 0,
  }
}
