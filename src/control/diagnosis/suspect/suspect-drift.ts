import { trendOf } from '../../../record/compare/trend.js'
import { middle } from '../../middle.js'
import type { Suspicion } from '../cause/cause.js'
import type { Drift } from '../state/memo.js'
import type { RememberedZone } from '../state/settings.js'
import type { ZoneWatchState } from '../state/zone-state.js'
import type { FullLevels } from '../watch/full-levels.js'
import { evidence, suspicion } from './suspicion.js'

const DAY = 86400
/** Calibrations are good to 0.02 or 0.03: what a probe says of its full container changes by no less. Common practice, no source. Unit: m³/m³. */
const FAR = 0.02
/** Over these times: a fast drift shows in few days, a slow one, or a zone that is seldom full, in more. Chosen. Unit: s. */
const WITHIN = [604800, 1209600, 1814400]
/** What was said longer ago is of another time. Chosen: zones are full once a week or so. Unit: s. */
const TOLD = 864000
/** Full times that make a way, the time from first to last, and its standard errors. Chosen. */
const TIMES = 3
const LASTS = 259200
const ERRORS = 5
/** A line explains three quarters of a leap at most: so much of it is a way. */
const LINE = 0.9
/** A place that shows less of its shots lacks water, and has fallen by that. Chosen. */
const RISES = 0.75
/** Shots that tell it: those that fill a zone have hardly room and are fewer. Chosen. */
const SHOTS = 12

/** A full container holds what it held the last time: a probe that says more or less of it from time to time, and the others not, drifts. */
export function suspectDrift(state: ZoneWatchState, now: number, { names, memo }: RememberedZone): Suspicion[] {
  const { fulls, probes, pairs } = state
  if (fulls.length < TIMES) return []
  const moved = probes.map(({ step }) => Math.max(step?.time ?? -Infinity, pairs.swap?.time ?? -Infinity))
  const old = memo.drifts.get(fulls)
  const drifts = old?.moved.every((time, i) => time === moved[i]) ? old.drifts : driftsOf(fulls, moved)
  memo.drifts.set(fulls, { moved, drifts })
  return drifts.flatMap((drift, i): Suspicion[] => {
    if (drift === null || Math.abs(now - drift.last) > TOLD || (drift.slope < 0 && !getsWater(state, i))) return []
    const name = names[i]!
    const because = [evidence('plateau-per-day', drift.slope, 'm³/m³/d', { usual: 0, about: name, time: drift.since })]
    return [suspicion('probe-drifting', 'caution', 0.75, because, 'compare-with-hand-meter', [name])]
  })
}

/** The drift of each probe; what was said before it was moved, or under another name, was said of another place. */
function driftsOf(fulls: readonly FullLevels[], moved: readonly number[]): (Drift | null)[] {
  const ways = WITHIN.map((within) => moved.map((from, i) => wayOf(fulls, i, from, within)))
  return moved.map((_, i) => ways.find((of) => isDrift(of, i))?.[i] ?? null)
}

function isDrift(ways: readonly (Drift | null)[], i: number): boolean {
  const way = ways[i]!
  if (way === null || !way.isStraight || Math.abs(way.change) < FAR) return false
  const others = ways.flatMap((other, j) => (j === i || other === null ? [] : [other.slope]))
  // What all say alike is the zone: its medium, or its salts.
  const own = others.length === 0 ? 1 : 1 - middle(others) / way.slope
  return own * Math.abs(way.change) >= FAR
}

function wayOf(fulls: readonly FullLevels[], i: number, moved: number, within: number): Drift | null {
  const told = fulls.filter(({ time, levels }) => levels[i] != null && time > moved)
  const last = told[told.length - 1]?.time ?? 0
  // What lies ahead of the last belongs to a clock that was set back.
  const shown = told.filter(({ time }) => time >= last - within && time <= last)
  const since = shown[0]?.time ?? 0
  if (shown.length < TIMES || last - since < LASTS) return null
  const { slope, error } = trendOf(
    shown.map(({ time }) => (time - since) / DAY),
    shown.map(({ levels }) => levels[i]!),
  )
  const size = Math.abs(slope)
  const ofLine = size ** 2 / (size ** 2 + (shown.length - 2) * error ** 2)
  const isStraight = size > ERRORS * error && ofLine > LINE
  return { slope, change: (slope * (last - since)) / DAY, isStraight, since, last }
}

/** Whether the last shots for which its place had room rose there as usual. */
function getsWater({ shots }: ZoneWatchState, i: number): boolean {
  const rises = shots.flatMap(({ rises }) => rises[i] ?? []).slice(-SHOTS)
  return rises.length >= TIMES && middle(rises) > RISES
}
