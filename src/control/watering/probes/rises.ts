import type { Limits } from '../settings/checked-settings.js'
import type { WateringProbe } from '../state/state.js'
import { medianOf, type ProbeView } from './probes.js'

/** A rise of a smaller share of what the shot should bring is none: two or three times the scatter of a median where a shot brings 0.02 m³/m³. */
const SHARE = 0.2
/** So many shots that plants may have drunk meanwhile hide one, at their use of a day in so much daylight. Own judgement. Unit: 1, s. */
const DRUNK = 0.75
const DAYLIGHT = 43200
/** A fall is told over at least this time, in which noise does not hide it, and over not much more than the longer one, in which light changes. Own judgement. Unit: s. */
const SHORT = 600
const LONG = 7200

/** Remembers what a probe said before an opening. */
export function beforeShot(probe: WateringProbe, view: ProbeView, limits: Limits): WateringProbe {
  if (view.seen === null) return probe
  const known = withFall(probe, view.seen, view.measured, SHORT, limits)
  return { ...known, before: view.seen, beforeAt: view.measured, peak: null }
}

/** Remembers the highest that a probe said since a shot ended: at noon plants may have drunk it before it is judged. */
export function watchPeak(probe: WateringProbe, offset: number, closed: number): WateringProbe {
  const { before, measured, peak, probation } = probe
  if (before === null || probation > 0 || measured < closed) return probe
  const level = medianOf(probe, offset, closed)
  return level === null || (peak !== null && level <= peak) ? probe : { ...probe, peak: level }
}

/** How fast a probe falls between shots; seldom renewed, so that noise does not tell it. */
export function watchFall(probe: WateringProbe, view: ProbeView, limits: Limits): WateringProbe {
  if (view.seen === null || probe.before !== null) return probe
  return withFall(probe, view.seen, view.measured, LONG, limits)
}

function withFall(probe: WateringProbe, level: number, at: number, min: number, limits: Limits): WateringProbe {
  const { anchor, anchorAt } = probe
  if (anchor === null) return { ...probe, anchor: level, anchorAt: at }
  if (at - anchorAt < min) return probe
  const max = (4 * limits.use) / limits.substrate
  const fall = Math.min(max, Math.max(0, (anchor - level) / (at - anchorAt)))
  return { ...probe, anchor: level, anchorAt: at, fall }
}

/**
 * Water that a probe shows of the last shot, once it can have: what it rose, and what plants drank meanwhile. Nothing where its number
 * stands still, or where it was judged before. Unit: L.
 */
export function shownBy(probe: WateringProbe, view: ProbeView, closed: number, limits: Limits): number | null {
  const { before, beforeAt, changed, fall } = probe
  if (before === null || view.seen === null || view.measured < closed + limits.lag || changed <= beforeAt) return null
  return (view.seen - before + fall * Math.max(0, view.measured - beforeAt)) * limits.substrate
}

/**
 * Judges whether a probe saw the last shot, once it can have: shots unseen count up, shots seen count down, so that rises by chance do not
 * excuse a probe that sees something else. At the limit it is not believed any more, until it has seen as many. What plants drank meanwhile is told by the fall
 * before the shot.
 */
export function judgeRise(
  probe: WateringProbe,
  view: ProbeView,
  closed: number,
  meter: { readonly isBacked: boolean; readonly sawNone: boolean; readonly isPart: boolean },
  limits: Limits,
): WateringProbe {
  const { before } = probe
  if (before === null || view.seen === null || view.measured < closed + limits.lag) return probe
  const judged = { ...probe, before: null, peak: null, anchor: view.seen, anchorAt: view.measured }
  // A full container drains what it is given.
  if (before >= limits.upper) return judged
  // A small part of a shot is lost in the scatter.
  if (meter.isPart) return judged
  const passed = Math.max(0, view.measured - probe.beforeAt)
  const used = probe.fall * passed
  const rose = Math.max(view.seen + used, probe.peak ?? view.seen) - before
  const saw = rose >= (SHARE * limits.shot) / limits.substrate
  // Where decisions come seldom, plants may have drunk the shot before the next one.
  if (!saw && (passed * limits.usual) / DAYLIGHT > DRUNK * limits.shot) return judged
  // A probe that has agreed with the meter need not see water that the meter did not see either.
  if (meter.isBacked && meter.sawNone) return judged
  // A meter that said the same as the probe makes it good twice as fast.
  const misses = saw
    ? Math.max(0, probe.misses - (meter.isBacked ? 2 : 1))
    : Math.min(limits.maxMisses, probe.misses + 1)
  // Believed again only after as many shots seen as it takes to be doubted, or when somebody says so.
  return { ...judged, misses, latched: probe.latched ? misses > 0 : misses >= limits.maxMisses }
}
