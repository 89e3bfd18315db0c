import type { CauseCode, Suspicion } from '../cause/cause.js'
import type { DayBesideBefore } from '../shots/day-beside-before.js'
import type { FirstAndLater } from '../shots/first-and-later.js'
import type { NothingDrained } from '../shots/nothing-drained.js'
import type { RecentShots } from '../state/recent-shots.js'
import type { UsualShares, ZoneWatchState } from '../state/zone-state.js'
import { LEAK } from '../watch/watch-valve.js'
import { evidence, suspicion } from './suspicion.js'

/** What drain against given water shows: water that runs past the medium, or a gauge that lies. */
export function suspectDrain(
  recent: RecentShots,
  usual: UsualShares,
  standing: ZoneWatchState['standing'],
): Suspicion[] {
  const { day, firstAndLater } = recent
  return [
    ...atOnce(recent, usual),
    ...(day === null ? [] : inADay(day, standing)),
    ...(firstAndLater === null ? [] : pastTheDry(firstAndLater)),
  ]
}

/** More drained of the last shots, and much of each, than they brought: a gauge in millilitres counts a hundred times and more. Chosen. Unit: 1. */
const BEYOND = 1.2
const OF_EACH = 0.3

/** Whether the gauge counts too much; of late only where a meter says that no water came beside the shots. */
export function gaugeLies({ valve }: ZoneWatchState, recent: RecentShots): boolean {
  const { overcounts } = recent
  return overcounts || (drainsBeyond(recent) && valve.hasMeter && valve.closedFlow < LEAK)
}

export function drainsBeyond({ drained, minDrained }: RecentShots): boolean {
  const min = minDrained(4) ?? 0
  const last = drained(min > BEYOND ? 4 : 8) ?? 0
  return min > OF_EACH && last > BEYOND
}

/** Four shots rise by far too little, and drain what is missing; or eight rise well, and nothing drains. */
function atOnce(recent: RecentShots, usual: UsualShares): Suspicion[] {
  const best = recent.bestWithRoom(4)
  const drained = recent.drained(4)
  if (drained !== null && (recent.overcounts || drainsBeyond(recent)))
    return [
      suspicion(
        'drain-gauge-wrong',
        'caution',
        drainsBeyond(recent) || usual.drained > 1 ? 0.85 : 0.65,
        [evidence('drained-share', drained, '1', { time: recent.since(4) })],
        'pour-into-the-gauge',
      ),
    ]
  if (recent.undrained !== null) return [deadGauge(recent.undrained, usual)]
  if (drained === null || best === null || usual.drainedShots < 8) return []
  const because = [
    evidence('drained-share', drained, '1', { usual: usual.drained, time: recent.since(4) }),
    evidence('rise-share', best, '1', { usual: 1, time: recent.since(4) }),
  ]
  if (
    !recent.mayOverflow(4) &&
    recent.sure(4) &&
    best < 0.8 - 3 * recent.error(4) &&
    drained - usual.drained > Math.max(0.08, 0.4 * (1 - best))
  )
    return [suspicion('channelling', 'caution', 0.85, because, 'small-shots-and-weigh')]
  return []
}

function deadGauge({ drained, rise, since }: NothingDrained, usual: UsualShares): Suspicion {
  const because = [
    evidence('drained-share', drained, '1', { usual: usual.drained, time: since }),
    evidence('rise-share', rise, '1', { usual: 1, time: since }),
  ]
  return suspicion('drain-gauge-wrong', 'caution', 0.85, because, 'pour-into-the-gauge')
}

/** A day whose shots rose by less and drained what is missing: it ran past. Chosen on rehearsals. Unit: 1. */
const LESS_RISE = 0.13
const MORE_DRAIN = 0.015
/** And so many standard errors. Chosen on rehearsals. */
const SURE = 4
/** Of what did not rise at the probes so much drains at least: other places may be wetter, and lose less. */
const MISSING = 0.25
/** So much more is enough by itself. Chosen on rehearsals. Unit: 1. */
const MUCH_DRAIN = 0.03
/** A gauge that counts twice shows it at all shots; drain that overflows differs from shot to shot. Chosen on rehearsals. Unit: 1. */
const DOUBLE = 1.6
/** What is told stays told until it is so much less clear. Chosen. Unit: 1. */
const STILL = 0.6
const EVEN = 1.25
/** Waterings of a day that make sure of it. Chosen on rehearsals. */
const WATERINGS = 6

/** All of a day drained twice as much, and rose as before. */
export const BY_DAY = 0.7

/** A day that drains more than the shots of the same kind before. */
function inADay(day: DayBesideBefore, standing: ZoneWatchState['standing']): Suspicion[] {
  const ease = (code: CauseCode) => (standing.some((one) => one.code === code) ? STILL : 1)
  const { count, drained, drainedBefore, rise, riseBefore, error, dryMore, dryTimes, minTimes, maxTimes, since } = day
  const more = drained - drainedBefore
  const short = riseBefore - rise
  const because = [
    evidence('drained-share-of-a-day', drained, '1', { usual: drainedBefore, time: since }),
    evidence('rise-share-of-a-day', rise, '1', { usual: riseBefore, time: since }),
  ]
  const min = ease('channelling') * Math.max(MORE_DRAIN, Math.min(MUCH_DRAIN, MISSING * short))
  const isShort = short > ease('channelling') * Math.max(LESS_RISE, SURE * error)
  const past = (weight: number) => suspicion('channelling', 'caution', weight, because, 'small-shots-and-weigh')
  const gauge = (weight: number) => suspicion('drain-gauge-wrong', 'caution', weight, because, 'pour-into-the-gauge')
  const still = ease('drain-gauge-wrong')
  const isDouble = Math.min(minTimes, dryTimes) - 1 > still * (DOUBLE - 1)
  if (Math.min(more, dryMore) > min && isShort) return [past(0.75), ...(isDouble ? [gauge(0.5)] : [])]
  const isEven = count >= still * WATERINGS && maxTimes - minTimes <= (minTimes * (EVEN - 1)) / still
  if (more < MORE_DRAIN || !isDouble || !isEven || short > LESS_RISE) return []
  // Where the places that drain are no probed ones, water that runs past them looks the same.
  return [gauge(BY_DAY), past(0.5)]
}

/** So many times as much as before drains of first shots, and of later ones: chosen on rehearsals. */
const DRY_TIMES = 1.3
const DRY_OVER_WET = 1.25

/** First shots drain more, and the more so than those that follow: it runs past a dry medium, at places without a probe too. */
function pastTheDry({ drained, drainedBefore, firstTimes, laterTimes, since }: FirstAndLater): Suspicion[] {
  if (drained - drainedBefore < MUCH_DRAIN || firstTimes < Math.max(DRY_TIMES, DRY_OVER_WET * laterTimes)) return []
  const because = [evidence('drained-share-of-a-day', drained, '1', { usual: drainedBefore, time: since })]
  return [suspicion('channelling', 'caution', 0.75, because, 'small-shots-and-weigh')]
}
