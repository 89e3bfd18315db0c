import type { Suspicion } from './cause.js'
import type { DayBesideBefore } from './day-beside-before.js'
import type { RecentShots } from './recent-shots.js'
import { evidence, suspicion } from './suspect-water.js'
import type { UsualShares } from './zone-state.js'

/** What drain against given water shows: water that runs past the medium, or a gauge that lies. */
export function suspectDrain(recent: RecentShots, usual: UsualShares): Suspicion[] {
  return [...atOnce(recent, usual), ...(recent.day === null ? [] : inADay(recent.day))]
}

/** Four shots cannot drain so many times what they brought: a gauge in millilitres counts a hundred times and more. */
const BEYOND = 3

/** Four shots rise by far too little, and drain what is missing; or eight rise well, and nothing drains. */
function atOnce(recent: RecentShots, usual: UsualShares): Suspicion[] {
  const best = recent.best(4)
  const drained = recent.drained(4)
  if (drained !== null && drained > BEYOND)
    return [
      suspicion(
        'drain-gauge-wrong',
        'caution',
        0.85,
        [evidence('drained-share', drained, '1', { time: recent.since(4) })],
        'pour-into-the-gauge',
      ),
    ]
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
  const [eight, long] = [recent.best(8), recent.drained(8)]
  if (eight !== null && long !== null && eight > 0.75 && usual.drained > 0.015 && long < 0.15 * usual.drained)
    return [suspicion('drain-gauge-wrong', 'caution', 0.85, because, 'pour-into-the-gauge')]
  return []
}

/** A day whose shots rose by less and drained what is missing: it ran past. Chosen on rehearsals. Unit: 1. */
const LESS_RISE = 0.065
const MORE_DRAIN = 0.015
/** Of what did not rise at the probes so much drains at least: other places may be wetter, and lose less. */
const MISSING = 0.25
/** So much more is enough by itself. Chosen on rehearsals. Unit: 1. */
const MUCH_DRAIN = 0.03
/** A gauge that counts twice shows it at all shots; drain that overflows differs from shot to shot. Chosen on rehearsals. Unit: 1. */
const DOUBLE = 1.6
const EVEN = 1.45

/** A day that drains more than the shots of the same kind before. */
function inADay(day: DayBesideBefore): Suspicion[] {
  const { drained, drainedBefore, rise, riseBefore, error, dryMore, dryTimes, minTimes, maxTimes, since } = day
  const more = drained - drainedBefore
  const short = riseBefore - rise
  const because = [
    evidence('drained-share-of-a-day', drained, '1', { usual: drainedBefore, time: since }),
    evidence('rise-share-of-a-day', rise, '1', { usual: riseBefore, time: since }),
  ]
  const min = Math.max(MORE_DRAIN, Math.min(MUCH_DRAIN, MISSING * short))
  const isDouble = Math.min(minTimes, dryTimes) > DOUBLE
  const past = (weight: number) => suspicion('channelling', 'caution', weight, because, 'small-shots-and-weigh')
  const gauge = (weight: number) => suspicion('drain-gauge-wrong', 'caution', weight, because, 'pour-into-the-gauge')
  if (Math.min(more, dryMore) > min && short > Math.max(LESS_RISE, 2.5 * error))
    return [past(0.75), ...(isDouble ? [gauge(0.5)] : [])]
  if (more < MORE_DRAIN || !isDouble || maxTimes > EVEN * minTimes || short > LESS_RISE) return []
  // Where the places that drain are no probed ones, water that runs past them looks the same.
  return [gauge(0.7), past(0.5)]
}
