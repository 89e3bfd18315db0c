import type { CauseCode, Diagnosis, Suspicion, UnknownReason } from './cause.js'
import { isFrozen, isNoisy } from './probe-doubts.js'
import type { RecentShots } from './recent-shots.js'
import { evidence } from './suspect-water.js'
import { canJudge } from './trust.js'
import { LEAK } from './watch-valve.js'
import type { Watched } from './watched.js'
import type { ZoneWatchState } from './zone-state.js'

type Unknown = { -readonly [K in CauseCode]?: UnknownReason }

const OF_SHOTS: readonly CauseCode[] = ['no-water', 'partial-water', 'line-leak', 'clogged-dripper', 'channelling']

/** What the record cannot tell, and what its numbers speak against; what is suspected stands in neither list. */
export function notTold(
  state: ZoneWatchState,
  suspicions: readonly Suspicion[],
  recent: RecentShots,
  now: number,
  zone: Watched,
): Pick<Diagnosis, 'cannotTell' | 'ruledOut'> {
  const unknown: Unknown = {}
  const ruledOut: { code: CauseCode; evidence: ReturnType<typeof evidence> }[] = []
  const suspected = new Set(suspicions.map(({ code }) => code))
  const trusted = state.probes.filter((probe) => canJudge(probe, now, zone))
  const best = recent.best(2)
  if (best === null)
    for (const code of OF_SHOTS) unknown[code] = trusted.length === 0 ? 'no-trusted-probe' : 'too-few-shots'
  else if (best > 0.9) ruledOut.push({ code: 'no-water', evidence: evidence('rise-share', best, '1', { usual: 1 }) })
  const worst = recent.worst(6)
  if (worst !== null && worst > 0.9) {
    const even = evidence('lowest-rise-share', worst, '1', { usual: 1 })
    for (const code of ['partial-water', 'clogged-dripper', 'channelling', 'line-leak'] as const)
      ruledOut.push({ code, evidence: even })
  }
  if (state.valve.hasMeter) {
    const flow = evidence('flow-while-closed', state.valve.closedFlow, 'share of the flow', { usual: 0 })
    if (state.valve.closedFlow < LEAK)
      for (const code of ['valve-stuck-open', 'leak-between-shots'] as const) ruledOut.push({ code, evidence: flow })
  } else unknown['flow-meter-wrong'] = 'no-flow-meter'
  if (!state.valve.hasDrain) unknown['drain-gauge-wrong'] = 'no-drain-gauge'
  if (state.feed.count === 0) unknown['feed-tank-wrong'] = 'no-feed-ec'
  if (!state.hasTemperature) unknown['temperature-driven'] = 'no-temperature'
  if (state.drainEC === null) unknown['salt-driven'] = 'no-drain-ec'
  else if (state.nights.length < 4) unknown['salt-driven'] = 'too-few-nights'
  if (state.nights.length < 3) unknown['probe-drifting'] = 'too-few-nights'
  if (state.probes.length < 2) {
    unknown['probes-swapped'] = 'only-one-probe'
    unknown['clogged-dripper'] = 'only-one-probe'
  }
  if (state.clock.last === null) unknown['clock-wrong'] = 'clock-unreadable'
  if (state.probes.every((probe) => probe.bad === null && !isFrozen(probe) && !isNoisy(probe)) && trusted.length > 0)
    for (const code of ['probe-dead', 'probe-frozen', 'probe-noisy'] as const)
      ruledOut.push({ code, evidence: evidence('trusted-probes', trusted.length, '1') })
  return {
    ruledOut: ruledOut.filter(({ code }) => !suspected.has(code) && unknown[code] === undefined),
    cannotTell: (Object.entries(unknown) as [CauseCode, UnknownReason][])
      .filter(([code]) => !suspected.has(code))
      .map(([code, reason]) => ({ code, reason })),
  }
}
