import type { Diagnosis } from '../cause/cause.js'
import type { ZoneWatchState } from '../state/zone-state.js'
import { canJudge } from '../watch/can-judge.js'
import { levelOf } from '../watch/level-of-probe.js'
import type { ProbeWatch } from '../watch/watch-probe.js'
import { drainsLate } from '../watch/watch-valve.js'
import type { Watched } from '../watch/watched.js'

const DAY = 86400

export function isSilent({ heard }: ProbeWatch, now: number, zone: Watched): boolean {
  return heard !== null && now - heard > zone.maxAge
}

/** Whether its level can be believed too: it did not jump in the last day. */
export function canTellLevel(probe: ProbeWatch, now: number, zone: Watched): boolean {
  return canJudge(probe, now, zone) && (probe.step === null || now - probe.step.time > DAY)
}

/** Whether the zone is full by a probe that can be trusted or by drain that runs on. */
export function fullOrNot(state: ZoneWatchState, now: number, zone: Watched): Diagnosis['full'] {
  const { probes, valve, pairs } = state
  if (valve.hasDrain && drainsLate(valve)) return { known: true, value: true }
  const swapped = pairs.swap !== null && now - pairs.swap.time < DAY
  const told = swapped ? [] : probes.filter((probe) => canTellLevel(probe, now, zone))
  if (told.length === 0) return { known: false, reason: 'no-trusted-probe' }
  if (told.some((probe) => (levelOf(probe) as number) >= zone.full)) return { known: true, value: true }
  // The middle of five readings lags behind water that comes: a newest one that says full leaves it open.
  return told.some(({ levels }) => levels[levels.length - 1]! >= zone.full)
    ? { known: false, reason: 'only-newest-reading' }
    : { known: true, value: false }
}
