import type { RootZoneTemperature } from '../day/zone-day.js'
import { type Known, known, unknown } from '../findings/known.js'
import type { ZoneFinding } from '../findings/zone-finding.js'
import { firstAt, type ZoneWindow } from '../record/zone-window.js'

/** The readings of the root zone on the day, and those of them that can be. Unit: °C. */
function rootReadings({ day, time, rootTemperature }: ZoneWindow) {
  const read = rootTemperature.subarray(firstAt(time, day.from))
  return { read, there: read.filter((x) => x >= -5 && x <= 60) }
}

/** Readings of the root zone that are left out of its range. */
export function rootDoubts(root: Known<RootZoneTemperature>, window: ZoneWindow): ZoneFinding[] {
  const { read, there } = rootReadings(window)
  const count = read.filter((x) => !Number.isNaN(x)).length - there.length
  return root.known && count > 0 ? [{ code: 'root-readings-left-out', level: 'caution', count }] : []
}

/** How cold and warm the root zone was on the day, from the readings that can be. */
export function rootZone(window: ZoneWindow): Known<RootZoneTemperature> {
  const { read, there } = rootReadings(window)
  if (there.length === 0) return unknown(read.every(Number.isNaN) ? 'not-recorded' : 'numbers-impossible')
  let [min, max, sum] = [Infinity, -Infinity, 0]
  for (const x of there) {
    min = Math.min(min, x)
    max = Math.max(max, x)
    sum += x
  }
  return known({ min, max, mean: sum / there.length })
}
