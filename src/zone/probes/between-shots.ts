import type { Duration, WaterContentChange } from '../../quantity/generated/kinds.js'
import { findClimbs } from '../../record/dry-down/find-climbs.js'
import { dryStretches } from '../../record/dry-down/find-dry-downs.js'
import { findSteps } from '../../record/shots/find-steps.js'
import type { ZoneFinding } from '../findings/zone-finding.js'
import type { ZoneWindow } from '../record/zone-window.js'
import type { Zone } from '../zone.js'
import { isIn } from './answers-to-shots.js'
import { type CheckedProbe, maxStepOf } from './check-probe.js'

/** Time after a shot in which drain is not taken for use, and the shortest stretch that is looked at. */
const SETTLE = 2400
const MIN = 3600
/** Rises of so many times the least rise of a shot are a climb, falls of so many a step. */
const CLIMB = 2
const STEP = 4
/** Readings on each side of a step, and how many steps of the record may lie between them. */
const SIDE = 5
/** Where readings come more rarely, plants drink more between the two sides, and a step must be as many times larger. Unit: s. */
const OFTEN = 600
const BRIDGED = 4.2

/** What a probe saw between the shots that ends on this day and should not be: a level that climbs, and one that falls at once and stays. */
export function betweenShots(
  zone: Zone,
  window: ZoneWindow,
  probe: CheckedProbe,
  openings: readonly number[],
): ZoneFinding[] {
  const { day, time } = window
  const { name, waterContent, shots } = probe
  const maxStep = maxStepOf(zone)
  const series = { time, waterContent, shots, maxStep }
  const dryDowns = dryStretches({
    ...series,
    drainTime: Math.max(SETTLE, Math.min(86400, zone.readingStep)) as Duration,
    minDuration: MIN as Duration,
  })
  const min = (times: number) => Math.min(1, times * zone.limits.minRise) as WaterContentChange
  const late = dryDowns.filter(({ end }) => end >= day.from)
  const climbs = findClimbs({ time, waterContent, dryDowns: late, minRise: min(CLIMB) })
  // The readings on both sides of a step are taken for spikes: they are bridged.
  const bridged = Math.min(86400, BRIDGED * zone.readingStep) as Duration
  const steps = findSteps({
    ...series,
    maxStep: bridged,
    minChange: min(STEP * Math.max(1, zone.readingStep / OFTEN)),
    side: SIDE,
  })
  return [
    ...climbs
      // What the valve gave meanwhile explains a climb, also where no shot shows.
      .filter(({ start, end }) => isIn(day, end) && !openings.some((at) => at > start - SETTLE && at < end))
      .map(({ start, end, rise }): ZoneFinding => {
        return { code: 'climbs-between-shots', level: 'caution', probe: name, from: start, to: end, rise }
      }),
    ...steps
      .filter(({ time: at }) => isIn(day, at))
      .map(({ time: at, change }): ZoneFinding => {
        return { code: 'level-stepped', level: 'caution', probe: name, time: at, change }
      }),
  ]
}
