import type { Evidence, Suspicion } from '../cause/cause.js'
import type { ZoneWatchState } from '../state/zone-state.js'
import { mayFlap, standingTrouble } from '../watch/watch-clock.js'
import { isBelowRain } from '../watch/watch-feed.js'
import { lostShare } from '../watch/watch-pace.js'
import type { Watched } from '../watch/watched.js'
import { evidence, suspicion } from './suspicion.js'

/** Feed, clocks and power. */
export function suspectRest(state: ZoneWatchState, zone: Watched): Suspicion[] {
  return [...byFeed(state), ...byUnitOfEC(state), ...byClock(state), ...bySender(state, zone), ...byLoss(state, zone)]
}

function byFeed({ feed }: ZoneWatchState): Suspicion[] {
  if (feed.odd < 3) return []
  const because = [
    evidence('feed-ec', feed.now, 'dS/m', { usual: feed.usual, ...(feed.since === null ? {} : { time: feed.since }) }),
  ]
  const slip = (weight: number) => [suspicion('unit-slip', 'caution', weight, because, 'check-the-unit')]
  const times = feed.now / feed.usual
  const slipped = times > MAX_TIMES || times < 1 / MAX_TIMES
  // So little is nothing in any unit that a feed is told in: no fertiliser, or a dead sensor.
  if (slipped && !isBelowRain(feed.now)) return slip(0.9)
  const isTenfold = Math.abs(times / 10 - 1) < 0.05 || Math.abs(times * 10 - 1) < 0.05
  return [
    suspicion('feed-tank-wrong', 'danger', 0.93, because, 'measure-feed-ec'),
    ...(isTenfold || slipped ? slip(0.6) : []),
  ]
}

/** No solution for plants is so salty, and none becomes so much saltier or thinner at once. Chosen. Unit: dS/m, 1. */
const MAX_EC = 50
const MAX_TIMES = 50

/** Solutions that are saltier than the sea are told in another unit. */
function byUnitOfEC({ feed, drainEC }: ZoneWatchState): Suspicion[] {
  const found: Evidence[] = []
  if (feed.count >= 3 && feed.usual > MAX_EC) found.push(evidence('feed-ec', feed.usual, 'dS/m'))
  if (drainEC !== null && drainEC > MAX_EC) found.push(evidence('drain-ec', drainEC, 'dS/m'))
  return found.length === 0 ? [] : [suspicion('unit-slip', 'caution', 0.85, found, 'check-the-unit')]
}

function byClock({ clock }: ZoneWatchState): Suspicion[] {
  const trouble = standingTrouble(clock)
  if (trouble === null) return []
  const { kind, size } = trouble
  if (kind === 'ahead') {
    const because = [evidence('clock-leap', size, 's', { usual: clock.cadence })]
    return [
      suspicion('clock-wrong', 'caution', 0.7, because, 'set-the-clock'),
      suspicion('power-cut', 'note', 0.65, because, 'look-at-the-power'),
    ]
  }
  const because =
    kind === 'rate'
      ? evidence('clock-rate', size, '1', { usual: 1 })
      : kind === 'still'
        ? evidence('calls-without-time', size, '1', { usual: 0 })
        : kind === 'back'
          ? evidence('clock-leap', size, 's', { usual: clock.cadence })
          : evidence('moments-unreadable', 1, '1', { usual: 0 })
  return [suspicion('clock-wrong', 'caution', kind === 'rate' ? 0.85 : 0.95, [because], 'set-the-clock')]
}

/** A way that was told to be slow is told until readings are younger than this share of the greatest age: their mean age wavers. */
const YOUNG_AGAIN = 0.6

/**
 * Readings that carry times of their own: all of them early or late by the same are a clock, by any time a way that is slow. Times chosen on
 * rehearsals.
 */
function bySender({ probes, standing, clock }: ZoneWatchState, zone: Watched): Suspicion[] {
  const heard = probes.filter(({ count }) => count >= 20)
  // Beside a clock that flaps all readings are too old, or too young, in turn.
  if (heard.length === 0 || mayFlap(clock)) return []
  const age = heard.reduce((sum, probe) => sum + probe.age / heard.length, 0)
  const spread = heard.reduce((sum, probe) => sum + probe.ageSpread / heard.length, 0)
  const because = [evidence('age-of-readings', age, 's', { usual: 0 }), evidence('spread-of-age', spread, 's')]
  // What was read right after a call waits for the next one.
  if (age < -300 || (age > 1500 + clock.cadence && spread < 0.1 * age))
    return [suspicion('clock-wrong', 'caution', 0.8, because, 'set-the-clock')]
  // Beside a clock that went ahead all of them are as old as its leap.
  const trouble = standingTrouble(clock)
  if (trouble?.kind === 'ahead' && age < trouble.size + zone.maxAge) return []
  const isTold = standing.some(({ code }) => code === 'no-readings')
  if (age > (isTold ? YOUNG_AGAIN : 1) * zone.maxAge)
    return [suspicion('no-readings', 'caution', 0.7, because, 'look-at-gateway')]
  return []
}

/** Readings that arrive far more seldom than they did. */
function byLoss({ probes, standing }: ZoneWatchState, { names }: Watched): Suspicion[] {
  const isTold = standing.some(({ code }) => code === 'no-readings')
  const lost = probes.map((probe) => lostShare(probe, isTold))
  const because = names.flatMap((name, i) =>
    lost[i]! > 0 ? [evidence('readings-lost', lost[i]!, '1', { usual: 0, about: name })] : [],
  )
  if (because.length === 0) return []
  const about = because.length < names.length ? names.filter((_, i) => lost[i]! > 0) : undefined
  return [suspicion('no-readings', 'caution', 0.75, because, 'look-at-gateway', about)]
}
