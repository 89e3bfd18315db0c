/** What is remembered against the drain gauge, beyond the shots that told it. */
export interface GaugeWatch {
  /** What drained of waterings before all of them drained twice as much, and since when they did; null where they do not. Unit: 1, s. */
  readonly usual: number | null
  readonly since: number | null
  /** What drained of them last. Unit: 1. */
  readonly drained: number
  /** Times until which more drained of the last shots than they brought, the oldest first. */
  readonly beyond: readonly BeyondShots[]
}

export interface BeyondShots {
  readonly time: number
  /** The largest share that drained. Unit: 1. */
  readonly share: number
}

export const newGauge: GaugeWatch = { usual: null, since: null, drained: 0, beyond: [] }

/** Times that are kept. */
export const TIMES = 4
/** What comes within so long is the same time: a refill. Unit: s. */
const APART = 43200
/** A zone is full once a week or so: what was seen two weeks ago is of another time. Unit: s. */
const RECALLED = 1209600
/** After so long of waterings that drain twice as much it is the zone that is watered otherwise. Chosen. Unit: s. */
const MAX_TOLD = 1814400
/** A gauge that counts a multiple counts the same one each time; rain does not. Chosen. */
const ALIKE = 0.25
/** So many times the usual still is twice as much; and a gauge that was mended counts so much less. Chosen. */
const STILL = 1.36
const MENDED = 0.65

/** The newest time, if the one before it was alike and not long ago: a gauge that counts too much, and no rain. */
export function oftenBeyond({ beyond }: GaugeWatch, now: number): BeyondShots | null {
  const [before, last] = beyond.slice(-2)
  if (before === undefined || last === undefined || Math.abs(now - last.time) > RECALLED) return null
  return last.time - before.time <= RECALLED && Math.abs(last.share / before.share - 1) <= ALIKE ? last : null
}

/** What the last shots and the last day add: whether the shots drained more than they brought, and what drained of the day's waterings. */
export interface DrainOfLate {
  readonly beyond: number | null
  readonly isDouble: boolean
  readonly drained: number | null
  readonly drainedBefore: number | null
}

export function withDrain(gauge: GaugeWatch, late: DrainOfLate, now: number): GaugeWatch {
  return withDouble(withBeyond(gauge, late, now), late, now)
}

function withBeyond(
  gauge: GaugeWatch,
  { beyond: share, drained, drainedBefore }: DrainOfLate,
  now: number,
): GaugeWatch {
  const { beyond } = gauge
  const isMended = drained !== null && drainedBefore !== null && drained < MENDED * drainedBefore
  if (share === null) return isMended && beyond.length > 0 ? { ...gauge, beyond: [] } : gauge
  const last = beyond[beyond.length - 1]
  if (last === undefined || Math.abs(now - last.time) > APART)
    return { ...gauge, beyond: [...beyond, { time: now, share }].slice(-TIMES) }
  return { ...gauge, beyond: [...beyond.slice(0, -1), { time: now, share: Math.max(share, last.share) }] }
}

function withDouble(gauge: GaugeWatch, { isDouble, drained, drainedBefore }: DrainOfLate, now: number): GaugeWatch {
  const { usual, since } = gauge
  if (usual === null || since === null)
    return isDouble ? { ...gauge, usual: drainedBefore, since: now, drained: drained ?? 0 } : gauge
  const isOver = Math.abs(now - since) > MAX_TOLD || (drained !== null && drained < STILL * usual)
  if (isOver && !isDouble) return { ...gauge, usual: null, since: null, drained: 0 }
  return drained === null || drained === gauge.drained ? gauge : { ...gauge, drained }
}
