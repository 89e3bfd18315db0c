import { maxOf } from '../../../quantity/extremes.js'
import type { Suspicion } from '../cause/cause.js'
import type { BesideOthers, RecentShots } from '../state/recent-shots.js'
import type { ZoneWatchState } from '../state/zone-state.js'
import { isFrozen, isNoisy, newSpikes, scatters } from '../watch/probe-doubts.js'
import { lostShare } from '../watch/watch-pace.js'
import type { BadReadings, LevelStep, ProbeWatch } from '../watch/watch-probe.js'
import type { Watched } from '../watch/watched.js'
import { exchanged, maySwap, risesExchanged, swappedBy } from './suspect-swap.js'
import { evidence, suspicion } from './suspicion.js'
import { isSilent } from './trust.js'

const DAY = 86400

/** What each probe says against itself. */
export function suspectProbes(state: ZoneWatchState, recent: RecentShots, now: number, zone: Watched): Suspicion[] {
  const silent = state.probes.map((probe) => isSilent(probe, now, zone))
  const found: Suspicion[] = []
  if (silent.length > 0 && silent.every(Boolean)) {
    const heard = maxOf(state.probes.map((probe) => probe.heard ?? 0))
    found.push(
      suspicion(
        'no-readings',
        'danger',
        0.9,
        [evidence('silence', now - heard, 's', { time: heard })],
        'look-at-gateway',
      ),
    )
  }
  // A probe that falls silent loses its own readings only.
  const gaps = state.probes.every((probe) => lostShare(probe, true) > 0)
  state.probes.forEach((probe, i) => {
    const name = zone.names[i]!
    const others = state.probes.some(({ times }) => (times[times.length - 1] ?? -Infinity) > now - zone.maxAge / 2)
    if (silent[i] === true && others)
      found.push(
        // Where many readings get lost, so may all of twenty minutes.
        dead(name, [evidence('silence', now - (probe.heard ?? 0), 's', { about: name })], gaps ? 0.6 : 0.9),
      )
    else if (probe.bad !== null && probe.bad.count >= 3) found.push(...unbelievable(probe.bad, name, zone))
    else if (isFrozen(probe)) found.push(frozen(probe, name))
    else found.push(...moved(state, probe, i, recent, now, zone))
  })
  return [...found, ...exchanged(state, zone.names, now), ...risesExchanged(recent, zone.names)]
}

function dead(name: string, because: Suspicion['evidence'], weight: number): Suspicion {
  return suspicion('probe-dead', 'caution', weight, because, 'look-at-probe-and-cable', [name])
}

/**
 * Numbers that no medium can hold: a factor of units, air at the rods, or nothing at all. A fall of 0.06 m³/m³ is three shots: chosen on
 * rehearsals.
 */
function unbelievable(bad: BadReadings, name: string, zone: Watched): Suspicion[] {
  const because = [
    evidence('unbelievable-readings', bad.count, '1', { about: name, time: bad.since }),
    ...(bad.value === null
      ? []
      : [evidence('reading', bad.value, 'm³/m³', { about: name, usual: bad.before ?? zone.min })]),
  ]
  const { value, alike } = bad
  if (value === null) return [dead(name, because, 0.9)]
  if (value > zone.max && !alike) return [suspicion('unit-slip', 'caution', 0.9, because, 'check-the-unit', [name])]
  if (value > zone.max || value < 0) return [dead(name, because, 0.9)]
  // It went there slowly: a place that dries out, and is told as such.
  if (bad.before !== null && bad.before - value < 0.06 && !alike) return []
  const slip = (weight: number) => suspicion('unit-slip', 'caution', weight, because, 'check-the-unit', [name])
  if (bad.before !== null && isTenth(value / bad.before)) return [slip(0.87), lifted(name, because, 0.8)]
  // What never could be believed tells nothing of what it was before.
  if (bad.before === null && !alike) return [lifted(name, because, 0.65), slip(0.6), dead(name, because, 0.55)]
  return [lifted(name, because, alike ? 0.6 : 0.85), dead(name, because, alike ? 0.85 : 0.6)]
}

function lifted(name: string, because: Suspicion['evidence'], weight: number): Suspicion {
  return suspicion('probe-lifted', 'caution', weight, because, 'reseat-the-probe', [name])
}

/** A tenth, a hundredth or a thousandth, within what a place dries meanwhile. */
function isTenth(ratio: number): boolean {
  return [10, 100, 1000].some((factor) => Math.abs(ratio * factor - 1) < 0.06)
}

function frozen({ flatSince, flatCount, times }: ProbeWatch, name: string): Suspicion {
  const ran = times[times.length - 1]! - (flatSince as number)
  const because = [
    evidence('equal-readings', flatCount, '1', { about: name, time: flatSince as number }),
    evidence('time-without-change', ran, 's', { about: name }),
  ]
  return suspicion('probe-frozen', 'caution', 0.92, because, 'restart-the-probe', [name])
}

/** A probe that speaks, and believably, but not of its place. */
function moved(
  state: ZoneWatchState,
  probe: ProbeWatch,
  i: number,
  recent: RecentShots,
  now: number,
  zone: Watched,
): Suspicion[] {
  const name = zone.names[i]!
  const found: Suspicion[] = []
  if (isNoisy(probe)) {
    const because = [
      ...(scatters(probe) ? [evidence('noise', probe.noise, 'm³/m³', { usual: probe.usualNoise, about: name })] : []),
      ...(newSpikes(probe) > 1 ? [evidence('spikes', newSpikes(probe), '1', { usual: 0, about: name })] : []),
    ]
    found.push(suspicion('probe-noisy', 'caution', 0.85, because, 'reseat-the-probe', [name]))
  }
  const { step } = probe
  const stepped = step !== null && now - step.time < DAY
  if (stepped && !mayRiseTogether(state, step, i, now, zone)) found.push(...jumped(step, name, recent.riseOf(i, 3)))
  found.push(...deaf(state, i, name, recent, stepped, now))
  return found
}

/** Whether another probe has not sent enough since to show whether it rose as well: water lifts all of them. */
function mayRiseTogether({ probes }: ZoneWatchState, step: LevelStep, i: number, now: number, zone: Watched): boolean {
  return (
    step.after > step.before &&
    probes.some(
      ({ times }, j) => j !== i && now - (times.at(-1) ?? -Infinity) <= zone.maxAge && times.at(-5)! < step.time,
    )
  )
}

function jumped(step: LevelStep, name: string, rises: number | null): Suspicion[] {
  const change = step.after - step.before
  const because = [evidence('jump', change, 'm³/m³', { usual: 0, about: name, time: step.time })]
  if (change > 0) return [suspicion('probe-reinserted', 'caution', 0.8, because, 'compare-with-hand-meter', [name])]
  // Rods in air lose a share of what they see, rises among it; another place in the medium does not. Shares chosen on rehearsals.
  const less = rises !== null && rises < 0.92
  const much = step.after < 0.9 * step.before
  return [
    lifted(name, because, less || much ? 0.8 : 0.7),
    suspicion('probe-reinserted', 'caution', 0.75, because, 'compare-with-hand-meter', [name]),
  ]
}

/** It misses the shots that others see: three of them nearly, or six by a fifth and six standard errors. Chosen on rehearsals. */
function deaf(
  state: ZoneWatchState,
  i: number,
  name: string,
  recent: RecentShots,
  stepped: boolean,
  now: number,
): Suspicion[] {
  const found: Suspicion[] = []
  const three = recent.beside(i, 3)
  const six = recent.beside(i, 6)
  const none = three !== null && three.own < 0.35 && three.best >= 0.7
  const half = six !== null && six.own < 0.78 && six.best - six.own > Math.max(0.2, 6 * six.error)
  const shown = (none ? three : six) as BesideOthers
  const because = () => [
    evidence('rise-share', shown.own, '1', { usual: 1, about: name, time: shown.since }),
    evidence('best-rise-share', shown.best, '1', { usual: 1 }),
  ]
  if (none || half)
    found.push(
      suspicion('clogged-dripper', 'caution', (none ? 0.85 : 0.75) - (stepped ? 0.15 : 0), because(), 'catch-test', [
        name,
      ]),
    )
  const swapped = maySwap(state, i, now, none || half || stepped)
  const shares = none || half ? because() : []
  return swapped === null ? found : [...found, swappedBy(swapped, name, shares)]
}
