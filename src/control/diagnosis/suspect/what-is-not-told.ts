import type { CauseCode, Diagnosis, Suspicion, UnknownReason } from '../cause/cause.js'
import { KNOWN } from '../shots/nothing-drained.js'
import { TOGETHER } from '../shots/waterings.js'
import type { RecentShots } from '../state/recent-shots.js'
import type { ZoneWatchState } from '../state/zone-state.js'
import { canJudge } from '../watch/can-judge.js'
import { isFrozen, isNoisy } from '../watch/probe-doubts.js'
import { tells } from '../watch/steps-of-counter.js'
import { isSlow } from '../watch/time-apart.js'
import { isBelowRain } from '../watch/watch-feed.js'
import { LEAK } from '../watch/watch-valve.js'
import type { Watched } from '../watch/watched.js'
import { evidence } from './suspicion.js'

type Unknown = { -readonly [K in CauseCode]?: UnknownReason }

const OF_SHOTS: readonly CauseCode[] = ['no-water', 'partial-water', 'line-leak', 'clogged-dripper', 'channelling']

/** What the record cannot tell, and what its numbers speak against; what is suspected stands in neither list. */
export function notTold(
  state: ZoneWatchState,
  suspicions: readonly Suspicion[],
  recent: RecentShots,
  outOfStep: boolean,
  now: number,
  zone: Watched,
): Pick<Diagnosis, 'cannotTell' | 'ruledOut'> {
  const trusted = state.probes.filter((probe) => canJudge(probe, now, zone)).length
  const seldom = state.probes.every((probe) => isSlow(probe, zone))
  const unknown: Unknown = {
    ...unknownOfShots(recent, trusted, seldom, outOfStep),
    ...unknownOfZone(state, recent, seldom, zone),
  }
  const suspected = new Set(suspicions.map(({ code }) => code))
  return {
    ruledOut: ruledOut(state, recent, trusted).filter(
      ({ code }) => !suspected.has(code) && unknown[code] === undefined,
    ),
    cannotTell: (Object.entries(unknown) as [CauseCode, UnknownReason][])
      .filter(([code]) => !suspected.has(code))
      .map(([code, reason]) => ({ code, reason })),
  }
}

function unknownOfShots(recent: RecentShots, trusted: number, seldom: boolean, outOfStep: boolean): Unknown {
  if (recent.best(2) !== null && !outOfStep) return {}
  const fewShots = seldom ? 'readings-far-apart' : 'too-few-shots'
  const reason = outOfStep ? 'series-out-of-step' : trusted === 0 ? 'no-trusted-probe' : fewShots
  return Object.fromEntries(OF_SHOTS.map((code) => [code, reason]))
}

function unknownOfZone(
  state: ZoneWatchState,
  recent: RecentShots,
  seldom: boolean,
  { responseTime }: Watched,
): Unknown {
  const unknown: Unknown = {}
  if (seldom) unknown['probes-swapped'] = 'readings-far-apart'
  const { meter, gauge, hasMeter, hasDrain } = state.valve
  if (!hasMeter) unknown['flow-meter-wrong'] = 'no-flow-meter'
  else if (meter.lag >= responseTime || !tells(meter.step, recent.water))
    unknown['flow-meter-wrong'] = 'counts-too-late'
  if (!hasDrain) unknown['drain-gauge-wrong'] = 'no-drain-gauge'
  else if (state.usual.drainedShots < KNOWN) unknown['drain-gauge-wrong'] = 'too-few-shots'
  else if (gauge.lag >= TOGETHER || 2 * gauge.step > state.usual.drained * recent.water)
    unknown['drain-gauge-wrong'] = 'counts-too-late'
  else if (seldom && recent.day === null) unknown['drain-gauge-wrong'] = 'readings-far-apart'
  if (state.feed.count === 0) unknown['feed-tank-wrong'] = 'no-feed-ec'
  else if (isBelowRain(state.feed.usual)) unknown['feed-tank-wrong'] = 'ec-below-rain'
  if (!state.hasTemperature) unknown['temperature-driven'] = 'no-temperature'
  if (state.drainEC === null) unknown['salt-driven'] = 'no-drain-ec'
  else if (isBelowRain(state.drainEC)) unknown['salt-driven'] = 'ec-below-rain'
  else if (state.nights.length < 4) unknown['salt-driven'] = 'too-few-nights'
  if (state.nights.length < 3) unknown['probe-drifting'] = 'too-few-nights'
  if (state.probes.length < 2) {
    unknown['probes-swapped'] = 'only-one-probe'
    unknown['clogged-dripper'] = 'only-one-probe'
  }
  if (state.clock.last === null) unknown['clock-wrong'] = 'no-clock'
  return unknown
}

/** What numbers speak against: shots within a tenth of the usual. Chosen. */
function ruledOut({ probes, valve }: ZoneWatchState, recent: RecentShots, trusted: number): Diagnosis['ruledOut'] {
  const found: { code: CauseCode; evidence: ReturnType<typeof evidence> }[] = []
  const best = recent.best(2)
  if (best !== null && best > 0.9)
    found.push({ code: 'no-water', evidence: evidence('rise-share', best, '1', { usual: 1 }) })
  const worst = recent.worst(6)
  if (worst !== null && worst > 0.9) {
    const even = evidence('lowest-rise-share', worst, '1', { usual: 1 })
    for (const code of ['partial-water', 'clogged-dripper', 'channelling', 'line-leak'] as const)
      found.push({ code, evidence: even })
  }
  if (valve.hasMeter && valve.closedFlow < LEAK) {
    const flow = evidence('flow-while-closed', valve.closedFlow, 'share of the flow', { usual: 0 })
    for (const code of ['valve-stuck-open', 'leak-between-shots'] as const) found.push({ code, evidence: flow })
  }
  if (probes.every((probe) => probe.bad === null && !isFrozen(probe) && !isNoisy(probe)) && trusted > 0)
    for (const code of ['probe-dead', 'probe-frozen', 'probe-noisy'] as const)
      found.push({ code, evidence: evidence('trusted-probes', trusted, '1') })
  return found
}
