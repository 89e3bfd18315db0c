import { requireObject } from '../../quantity/guard.js'
import { checkZone } from '../checked-zone.js'
import { checkProbe } from '../probes/check-probe.js'
import type { Missable } from '../record/zone-record.js'
import { columnsOfRecord, windowOf } from '../record/zone-window.js'
import { dayOfDate, type ReviewDayInput } from './review-zone.js'

/** Readings of a day and of the 24 hours before it, as a review sees them: plain lists, null where nothing can be trusted. */
export interface TrustedReadings {
  /** Unit: s. */
  readonly time: readonly number[]
  /** Water content of each probe by its name. Unit: m³/m³. */
  readonly probes: Readonly<Record<string, readonly Missable[]>>
  /** Unit: °C. */
  readonly rootTemperature: readonly Missable[]
}

/**
 * The calibrated water contents that a review of a day trusts, to draw or to store them.
 *
 * @procedure Takes the day with the 24 hours before it out of the record, calibrates and tests it as `reviewDay` does.
 * @param input - Zone, record and date.
 * @returns Times and water contents.
 * @throws `DomainError` for a number of the zone outside its range, `InputError` for a date that does not exist or parts that contradict each other.
 * @source definition
 * @example
 * const zone: Zone = {
 *   name: 'bench 4',
 *   container: { substrateVolume: litres(14), height: centimetres(12), plants: 2 },
 *   plantDensity: plantsPerSquareMetre(2.5), cropCoefficient: cropCoefficient(1),
 *   emitters: { count: 2, flow: litresPerHour(2), lineFill: seconds(8) },
 *   probes: [{ name: 'A' }],
 *   place: { latitude: latitude(47.5), elevation: metresAboveSeaLevel(420), clock: [{ from: 0, ahead: 0 }] },
 *   readingStep: minutes(5),
 *   limits: {
 *     maxPerDay: litres(8), minRunTime: minutes(2), maxRunTime: minutes(20), minRest: minutes(20),
 *     drainFraction: percent(20), allowedFall: waterContentChange(0.03), lowerLimit: waterContent(0.1),
 *     minBelievable: waterContent(0.05), maxBelievable: waterContent(0.9), minRise: waterContentChange(0.01),
 *     firstShotAfterLight: hours(1), lastShotBeforeDark: hours(3),
 *   },
 * }
 * const record = { time: [0, 300, 600], probes: { A: [0.55, -999, 0.549] } }
 * trustedReadings({ zone, record, date: '1970-01-01' }).probes.A // => [0.55, null, 0.549]
 */
export function trustedReadings(input: Omit<ReviewDayInput, 'memory'>): TrustedReadings {
  requireObject(input, 'input')
  const zone = checkZone(input.zone)
  const window = windowOf(zone, columnsOfRecord(zone, input.record), dayOfDate(zone, input.date))
  const plain = (column: Float64Array): Missable[] => Array.from(column, (x) => (Number.isNaN(x) ? null : x))
  return {
    time: Array.from(window.time),
    probes: Object.fromEntries(
      zone.probes.map(({ name }, p) => [name, plain(checkProbe(zone, window, p).waterContent)]),
    ),
    rootTemperature: plain(window.rootTemperature),
  }
}
