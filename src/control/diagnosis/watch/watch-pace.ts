/** How often readings of a probe arrive, in any order and with any number. */
export interface PaceWatch {
  /** Over the last half hour, or the last twenty readings, and usually. Unit: 1/s. */
  readonly now: number
  readonly usual: number
  /** How far the pace usually lies from that, as a share. Unit: 1. */
  readonly swing: number
  /** For how long it was watched. Unit: s. */
  readonly watched: number
}

/** What has a pace, and counts its readings. */
interface Paced {
  readonly pace: PaceWatch
  readonly count: number
}

export const newPace: PaceWatch = { now: 0, usual: 0, swing: 0, watched: 0 }

/** A pace is known from about so many readings, and half an hour at least: both chosen on rehearsals. */
const READINGS = 20
const SPAN = 1800
/** What is usual is learnt over a day. */
const DAY = 86400
/**
 * It is told that readings get lost from the first share on, and until it is below the second; more where the pace swings by itself. With half of
 * thirty lost, that share is 0.5 with a
 * standard deviation of 0.09, by the binomial law.
 */
const LOST = 0.3
const STILL_LOST = 0.15
const SWINGS = 5
/** A usual pace, and how it swings, are known after this time. Unit: s. */
const KNOWN = 21600

/** Counts what arrived in a call. */
export function withPace<P extends Paced>(probe: P, before: Paced, passed: number): P {
  if (passed < 1e-3) return probe
  const { pace } = probe
  const arrived = (probe.count - before.count) / passed
  const span = Math.max(SPAN, pace.usual > 0 ? READINGS / pace.usual : 0)
  const watched = Math.min(pace.watched + passed, 10 * DAY)
  const now = pace.now + share(passed, Math.min(span, watched)) * (arrived - pace.now)
  if (watched >= KNOWN && 1 - now / pace.usual > lostLimit(pace)) return { ...probe, pace: { ...pace, now, watched } }
  const learnt = share(passed, Math.min(DAY, watched))
  const usual = pace.usual + learnt * (arrived - pace.usual)
  const off = usual > 0 && watched > SPAN ? Math.abs(1 - now / usual) : 0
  const swing = pace.swing + learnt * (Math.min(1, off) - pace.swing)
  return { ...probe, pace: { now, usual, swing, watched } }
}

function share(passed: number, span: number): number {
  return 1 - Math.exp(-passed / span)
}

function lostLimit({ swing }: PaceWatch): number {
  return Math.max(LOST, SWINGS * swing)
}

/** Share of the usual readings that do not arrive, where so many are missing that it is no chance; else zero. */
export function lostShare({ pace }: Pick<Paced, 'pace'>, isTold: boolean): number {
  if (pace.watched < KNOWN || !(pace.usual > 0)) return 0
  const lost = 1 - pace.now / pace.usual
  return lost > (isTold ? Math.max(STILL_LOST, 2 * pace.swing) : lostLimit(pace)) ? lost : 0
}
