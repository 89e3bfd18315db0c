import type { ProbeView } from '../probes/probes.js'
import type { Limits } from '../settings/checked-settings.js'
import type { WateringFill, WateringState, WateringZone } from '../state/state.js'
import { isShortOfFull, LIKE, learntSlip, learntUse } from './between-full-times.js'
import { knownErrors, MAX_UP } from './known-error.js'
import { liftedBy } from './lifted-by.js'
import { apartAtFull, togetherAtFull } from './said-at-full.js'

/**
 * Two containers with a probe part from the mean of a zone by this share of the water that plants used: drippers and plants that each differ by
 * 4 % (standard deviations; own judgement after drippers that are made to 3 to 5 %: common practice, no source), over the root of two.
 */
export const PARTS = 0.04
/** By no more of it at a time where the zone was not filled on purpose: under half, so that one drain by chance sets little. Own judgement. Unit: m³/m³. */
const STEP = 0.008
/** A probe rises by more than this share of a shot where its container is not full. Own judgement, no source. */
const RISE = 0.25
/** No probe is foreseen to drift faster: 0.03 m³/m³ in a day, above which it is broken. Own judgement, no source. Unit: m³/m³ in a second. */
const FASTEST = 3.5e-7
/** What a probe says of a full zone differs by so much from time to time: water still drains then, and plants drink. Own judgement. Unit: m³/m³. */
const SCATTER = 0.006
/** A drift is not told over less than this: refills come at least twenty hours apart. Unit: s. */
const MIN_SINCE = 72000

/** The balance begins anew, and no refill is under way. */
const ANEW = { under: null, foretold: null, net: 0, due: 0, excess: 0, overflow: 0 } as const

/**
 * A zone that is full sets its probes: what they say beyond what they said when it was full first is their error, and what they rose since they were
 * set last goes on.
 */
export function setFull(
  state: WateringState,
  views: readonly ProbeView[],
  how: 'wholly' | 'just',
  limits: Limits,
): WateringState {
  const { fill, zone, clock } = state
  if (how === 'just') return justFull(state, views, limits)
  const rises = liftedBy(RISE * limits.shot, fill, views, limits.substrate)
  const atFull = levelsAtFull(fill, views, rises)
  const since = clock.elapsed - (fill.full ?? clock.elapsed)
  // Who says nothing of this full zone drifts on as before.
  const told = views.map(({ seen }, i) => (rises[i] || seen === null || atFull[i] === null ? null : seen - atFull[i]!))
  const known = knownErrors(fill, clock.elapsed)
  const bias = told.map((error, i) => Math.max(-MAX_UP, Math.min(1, error ?? known[i]!)))
  const drift = fill.drift.map((before, i) =>
    told[i] === null ? before : learntDrift(before, bias[i]! - known[i]!, since),
  )
  return {
    ...state,
    fill: {
      ...fill,
      ...ANEW,
      full: clock.elapsed,
      tried: clock.elapsed,
      fails: 0,
      cut: false,
      atFull,
      bias,
      levelAtFull: togetherAtFull(views, bias),
      drift,
      apart: apartAtFull(views, atFull, bias),
      slip: learntSlip(fill, bias, known, limits),
      usual: learntUse(fill, views, atFull, limits),
    },
    zone: zoneWhenFull(zone, views, atFull),
  }
}

/** What each probe said when its container was full first: no one rises then, nor stands far below the wettest. */
function levelsAtFull(fill: WateringFill, views: readonly ProbeView[], rises: readonly boolean[]) {
  const wettest = views.reduce((max, { level }) => Math.max(max, level ?? max), -Infinity)
  const isFull = (level: number | null, i: number) => !rises[i] && level !== null && level >= wettest - LIKE
  return fill.atFull.map((first, i) => first ?? (isFull(views[i]!.level, i) ? views[i]!.level : null))
}

/** A drift as a full zone corrects it, that found an error beyond what was known. */
function learntDrift(before: number, found: number, since: number): number {
  if (since < MIN_SINCE) return before
  const more = Math.sign(found) * Math.max(0, Math.abs(found) - SCATTER)
  return Math.max(0, Math.min(FASTEST, before + more / since))
}

/**
 * The zone when it is full: what was told before was told by other probes, as it were. Only those that stood still while plants drank, below what they
 * say of a full zone, have to move first.
 */
function zoneWhenFull(
  zone: WateringZone,
  views: readonly ProbeView[],
  atFull: readonly (number | null)[],
): WateringZone {
  const verdict = zone.verdict === 'use-too-small' && isShortOfFull(views, atFull) ? zone.verdict : 'plausible'
  return { ...zone, dry: false, verdict, use: 0, given: 0, level: null, told: null }
}

/**
 * What is known of full after a time of which nothing is known: as in a state that was stored a day ago. Water given meanwhile counts nowhere, so
 * that nothing is filled before it would have left the day.
 */
export function sinceLeap(fill: WateringFill, elapsed: number): WateringFill {
  return { ...fill, ...ANEW, full: null, tried: elapsed, owed: 0, bias: knownErrors(fill, elapsed) }
}

/** A zone that has just become full while probes still rise: together they say too little by what they are short of full. */
function justFull(state: WateringState, views: readonly ProbeView[], limits: Limits): WateringState {
  const { fill, zone, clock } = state
  let [sum, told] = [0, 0]
  const known = knownErrors(fill, clock.elapsed)
  for (let i = 0; i < views.length; i++) {
    const [seen, first] = [views[i]!.seen, fill.atFull[i]!]
    if (seen === null || first === null) continue
    sum += seen - first - known[i]!
    told++
  }
  const error = told === 0 ? 0 : Math.max(-STEP, Math.min(0, sum / told))
  const bias = known.map((before) => Math.max(-MAX_UP, before + error))
  return {
    ...state,
    fill: {
      ...fill,
      ...ANEW,
      full: clock.elapsed,
      bias,
      levelAtFull: togetherAtFull(views, bias),
      apart: apartAtFull(views, fill.atFull, bias),
      slip: learntSlip(fill, bias, known, limits),
    },
    zone: { ...zone, dry: false },
  }
}
