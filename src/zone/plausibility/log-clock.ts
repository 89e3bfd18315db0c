import type { ZoneFinding } from '../findings/zone-finding.js'
import { isIn } from '../probes/answers-to-shots.js'
import type { CheckedProbe } from '../probes/check-probe.js'
import type { ZoneWindow } from '../record/zone-window.js'
import type { Zone } from '../zone.js'

/** Clocks differ by whole half hours, by a day's half at most with the line of dates. Unit: s. */
const STEP = 1800
const MAX_SHIFT = 50400
/** Fewer openings or rises may fit by chance. */
const MIN_SHOTS = 4
/** Share of openings and rises that fit once the log is moved, and by how much more that is than as it stands. */
const FITS = 0.85
const BETTER = 0.15
/** Where readings come more rarely, openings fit almost anywhere. Unit: s. */
const MAX_READING_STEP = 900

/**
 * The log of the valve on another clock than the readings, as local time that was taken for universal time: as it stands few rises follow its
 * openings, and all do once it is moved by some hours.
 */
export function logClock(
  zone: Zone,
  { day, now }: ZoneWindow,
  checked: readonly CheckedProbe[],
  openings: readonly number[],
): ZoneFinding | undefined {
  const opened = openings.filter((time) => isIn(day, time))
  if (opened.length < MIN_SHOTS || zone.readingStep > MAX_READING_STEP || now !== undefined) return undefined
  for (const { shots } of checked) {
    const all = shots.map(({ start }) => start)
    const by = shiftOf(
      opened,
      all,
      all.filter((start) => isIn(day, start)),
      zone.readingStep,
    )
    if (by !== undefined) return { code: 'log-on-another-clock', level: 'danger', hours: by / 3600 }
  }
  return undefined
}

/** By how much the openings must be moved to fit the rises; nothing where they fit as they stand, or nowhere. */
function shiftOf(
  opened: readonly number[],
  all: readonly number[],
  today: readonly number[],
  step: number,
): number | undefined {
  if (today.length < MIN_SHOTS) return undefined
  const share = (by: number) => {
    const follows = (opening: number, start: number) =>
      start - opening - by >= -1.5 * step && start - opening - by <= 2 * step
    const seen = opened.filter((opening) => all.some((start) => follows(opening, start))).length
    const told = today.filter((start) => opened.some((opening) => follows(opening, start))).length
    return (seen + told) / (opened.length + today.length)
  }
  const stands = share(0)
  if (stands > 1 - BETTER) return undefined
  let [best, moved] = [0, 0]
  for (let by = -MAX_SHIFT; by <= MAX_SHIFT; by += STEP) {
    const now = share(by)
    if (now > best || (now === best && Math.abs(by) < Math.abs(moved))) [best, moved] = [now, by]
  }
  return moved !== 0 && best >= FITS && best - stands >= BETTER ? moved : undefined
}
