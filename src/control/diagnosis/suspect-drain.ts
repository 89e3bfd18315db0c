import type { Suspicion } from './cause.js'
import type { DayBesideBefore } from './day-beside-before.js'
import type { RecentShots } from './recent-shots.js'
import { evidence, suspicion } from './suspect-water.js'
import type { UsualShares } from './zone-state.js'

/** What drain against given water shows: water that runs past the medium, or a gauge that lies. */
export function suspectDrain(recent: RecentShots, usual: UsualShares): Suspicion[] {
  return [...atOnce(recent, usual), ...(recent.day === null ? [] : inADay(recent.day))]
}

/** Four shots rise by far too little, and drain what is missing; or eight rise well, and nothing drains. */
function atOnce(recent: RecentShots, usual: UsualShares): Suspicion[] {
  const best = recent.best(4)
  const drained = recent.drained(4)
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

/** A day that drains more than those before at the same level: what did not rise ran past, or the gauge counts too much. */
function inADay(day: DayBesideBefore): Suspicion[] {
  const { drained, drainedBefore, rise, riseBefore, level, levelBefore, mayOverflow, since } = day
  const more = drained - drainedBefore
  const short = riseBefore - rise
  if (mayOverflow || level > levelBefore + 0.008) return []
  const because = [
    evidence('drained-share-of-a-day', drained, '1', { usual: drainedBefore, time: since }),
    evidence('rise-share-of-a-day', rise, '1', { usual: riseBefore, time: since }),
  ]
  if (short > 0.05 && more > Math.max(0.03, 0.5 * short))
    return [suspicion('channelling', 'caution', 0.75, because, 'small-shots-and-weigh')]
  if (short < 0.04 && drained > 1.7 * drainedBefore && more > 0.015)
    return [
      suspicion('drain-gauge-wrong', 'caution', 0.7, because, 'pour-into-the-gauge'),
      suspicion('channelling', 'caution', 0.5, because, 'small-shots-and-weigh'),
    ]
  return []
}
