import type { Suspicion } from '../cause/cause.js'
import type { RecentShots } from '../state/recent-shots.js'
import type { ZoneWatchState } from '../state/zone-state.js'
import type { BeyondShots, DrainOfLate, GaugeWatch } from '../watch/watch-gauge.js'
import { BY_DAY, drainsBeyond, gaugeLies } from './suspect-drain.js'
import { evidence, suspicion } from './suspicion.js'

/** What the shots of late add to what is remembered against the gauge. */
export function drainOfLate(state: ZoneWatchState, recent: RecentShots, drain: readonly Suspicion[]): DrainOfLate {
  const { day } = recent
  const isBeyond = drainsBeyond(recent) && gaugeLies(state, recent)
  const told = drain.find(({ code }) => code === 'drain-gauge-wrong')
  return {
    beyond: isBeyond ? Math.max(recent.drained(8) ?? 0, recent.minDrained(4) ?? 0) : null,
    isDouble: told?.evidence[0]?.code === 'drained-share-of-a-day' && told.weight === BY_DAY,
    drained: day?.drained ?? null,
    drainedBefore: day?.drainedBefore ?? null,
  }
}

/** What the last shots do not show any more, though nothing says that it has ended. */
export function stillAgainstGauge({ usual, since, drained }: GaugeWatch, beyond: BeyondShots | null): Suspicion[] {
  const because = [
    ...(beyond === null ? [] : [evidence('drained-share', beyond.share, '1', { time: beyond.time })]),
    ...(usual === null || since === null
      ? []
      : [evidence('drained-share-of-a-day', drained, '1', { usual, time: since })]),
  ]
  if (because.length === 0) return []
  return [suspicion('drain-gauge-wrong', 'caution', BY_DAY, because, 'pour-into-the-gauge')]
}
