import { explainWeatherFinding } from '../demand/reference/explain-weather-finding.js'
import { InputError } from '../quantity/errors.js'
import { requireObject } from '../quantity/guard.js'
import { explainRecordReason } from '../record/explain-record-finding.js'
import { checkOffsets, type LocalOffset } from '../record/local-time.js'
import { checkFinding } from './checked-finding.js'
import type { DayDifference } from './day-differences.js'
import { wallClock } from './local-day.js'
import type { ZoneFinding } from './zone-finding.js'

/** A finding, and the clock by which its times are told. */
export interface ExplainZoneInput {
  /** The finding, from a review, or a difference, from a proposal. */
  readonly finding: ZoneFinding | DayDifference
  /** What local clocks do, as in the zone. */
  readonly clock: readonly LocalOffset[]
}

/**
 * A finding of a review, or a difference of a proposal, in one sentence for people, with its numbers.
 *
 * @procedure Looks the code up and fills in the numbers.
 * @returns One sentence, without a full stop.
 * @source definition
 * @example
 * const clock = [{ from: 0, ahead: 7200 }]
 * explainZoneFinding({ clock, finding: { code: 'given', today: 4, tomorrow: 5 } }) // => '5.00 L instead of 4.00 L (+25 %)'
 */
export function explainZoneFinding(input: ExplainZoneInput): string {
  requireObject(input, 'input')
  const { finding, clock } = input
  checkFinding(finding)
  checkOffsets(clock, 'clock')
  const at = (time: number) => wallClock(clock, time)
  switch (finding.code) {
    case 'shots':
      return `${finding.tomorrow} shots, ${finding.today} on the day before`
    case 'given':
      return `${litres(finding.tomorrow)} instead of ${litres(finding.today)} (${signed(100 * (finding.tomorrow / finding.today - 1))} %)`
    case 'drain-fraction':
      return `a drain of ${percent(finding.tomorrow)} instead of ${percent(finding.today)}`
    case 'first-shot':
      return `the first shot at ${at(finding.tomorrow)} instead of ${at(finding.today)}`
    case 'last-shot':
      return `the last shot at ${at(finding.tomorrow)} instead of ${at(finding.today)}`
    default:
      return 'probe' in finding ? ofProbe(finding, at) : ofZone(finding)
  }
}

type OfProbe = Extract<ZoneFinding, { readonly probe: string }>
type OfZone = Exclude<ZoneFinding, OfProbe>

function ofProbe(finding: OfProbe, at: (time: number) => string): string {
  const { probe } = finding
  const times = (list: readonly number[]) => list.map(at).join(', ')
  switch (finding.code) {
    case 'no-readings':
      return `${probe} has no reading on this day that can be trusted, and is left out`
    case 'looks-like-percent':
      return `${probe} reports ${finding.middle.toFixed(1)}: that is per cent, where a fraction such as ${(finding.middle / 100).toFixed(3)} is expected; it is left out until its unit is set`
    case 'few-shots-seen':
      return `${probe} saw ${finding.seen} of ${finding.of} shots, fewer than half of what another one saw: a clogged emitter, or a probe that was lifted; it is left out until a catch test and a look at its pins have told which`
    case 'fell-away':
      return `${probe} stands ${points(finding.below)} below the level to which its own shots drained back, the others ${points(finding.others)}: lifted, or its plant dry; it is left out, so look at it first`
    case 'no-late-reading':
      return `${probe} has no reading in the last hours of the day, and is left out`
    case 'no-level-after-drain':
      return `${probe} has no level after drain of its own, so that it cannot be compared with the others, and is left out`
    case 'shots-without-rise':
      return `${probe} did not rise after the ${finding.times.length === 1 ? 'shot' : 'shots'} at ${times(finding.times)}: a valve that did not open, or water that did not reach it`
    case 'shots-not-judged':
      return `whether ${probe} rose after the ${finding.times.length === 1 ? 'shot' : 'shots'} at ${times(finding.times)} cannot be said, because readings are missing there`
    case 'rises-without-shot':
      return `${probe} rose at ${times(finding.times)} without an entry in the log: a valve that passes water, watering by hand, or a log with holes`
    case 'climbs-between-shots':
      return `${probe} climbed by ${points(finding.rise)} from ${at(finding.from)} to ${at(finding.to)}, more slowly than a shot: a valve or an emitter that leaks, shots too small to show, rain, a hand that watered, or a probe that warmed up; close the water by hand, look and listen`
    case 'level-stepped':
      return `${probe} ${finding.change < 0 ? 'fell' : 'rose'} by ${points(Math.abs(finding.change))} at once at ${at(finding.time)} and stayed there: a probe that was pulled, pushed or bumped, or a container that was moved; look at it, and compare nothing across that moment`
    case 'rises-with-salt':
      return `the level after drain of ${probe} rises by ${points(finding.levelPerDay, 2)} a day together with the drain, by ${finding.drainPerDay.toFixed(2)} dS/m a day: salt that the probe takes for water; measure before and after a flush`
    case 'off-capacity':
      return `${probe} drains back to ${points(Math.abs(finding.difference))} ${finding.difference > 0 ? 'above' : 'below'} the container capacity of the bench test: a probe sees one place, so weigh a container before you trust either`
    case 'level-remembered':
      return `${probe} has no new level after drain; that of ${finding.days} ${finding.days === 1 ? 'day' : 'days'} ago is used`
  }
}

function ofZone(finding: OfZone): string {
  switch (finding.code) {
    case 'no-water':
      return `${finding.shots} shots in the log and no probe rose: look at valve, filter and supply; a full container shows no rise either, so weigh one before anybody waters by hand`
    case 'bypass':
      return `${finding.shots} shots drained and no probe rose: water runs past the medium, or the probes do not touch it`
    case 'probes-differ':
      return `the probes differ by ${points(finding.spread)} at the end of the day; each is judged by its own level`
    case 'readings-out-of-order':
      return `${finding.count} ${finding.count === 1 ? 'reading is' : 'readings are'} not later than the one before and left out: look at the clock of the logger`
    case 'negative-use':
      return `the water balance says ${litres(finding.use)}, less than nothing: the log, the share of a container or a probe is wrong`
    case 'use-doubted':
      return `the water balance says that ${litres(finding.use)} were used, ${Math.round((100 * finding.use) / finding.climate)} % of the ${litres(finding.climate)} that the climate says: one of the log, the drain gauge, the probes, the volume of the container and the crop coefficient is wrong`
    case 'drain-gauge-silent':
      return `nothing drained of ${litres(finding.given)} by the log (${finding.entries} ${finding.entries === 1 ? 'entry' : 'entries'}): a gauge that is stuck or bypassed, or shots too small to drain; look under the container`
    case 'more-drain-than-given':
      return `${litres(finding.drained)} drained of ${litres(finding.given)} given: more than was given cannot drain for long`
    case 'salts-not-steady':
      return `at a steady state without uptake of salts ${percent(finding.steady, 0)} would drain and ${percent(finding.share, 0)} did, so that salts are taken up or stored; this is no target for drain`
    case 'root-zone-temperature':
      return `the root zone was ${finding.extreme === 'lowest' ? 'at its coldest' : 'at its warmest'} ${finding.value.toFixed(1)} °C: ${finding.band} for fruiting vegetables (common practice)`
    case 'climate-doubted':
      return explainWeatherFinding(finding.weather).message
    case 'light-assumed':
      return 'light was not measured; a day from 6 to 20 o’clock is assumed'
    case 'all-probes-left-out':
      return 'no probe can be trusted, so that nothing is proposed: look at plants and probes, and weigh a container before anybody waters by hand'
  }
}

const REASONS: Readonly<Record<string, string>> = {
  'no-bench-test': 'the medium has no bench test',
  'no-watering-log': 'there is no log of water given and drained',
  'no-entry-on-this-day': 'the log has no entry on this day',
  'given-not-logged': 'an entry of the log has no volume given',
  'drain-not-logged': 'an entry of the log has no volume drained',
  'log-impossible': 'the log has volumes that cannot be, below zero or over fifty times the medium: check their unit',
  'nothing-given-or-not-logged': 'nothing was given, or not all was logged',
  'no-readings-at-midnight': 'no probe that counts has readings at the beginning and at the end of the day',
  'climate-not-recorded': 'air temperature, humidity and radiation are not all recorded',
  'climate-has-gaps': 'the climate of the day has too many gaps',
  'climate-impossible': 'the climate of the day has numbers that cannot be',
  'not-logged': 'it is not logged',
  'not-recorded': 'it is not recorded',
  'no-shot-on-this-day': 'no shot was seen or logged on this day',
  'last-shot-not-in-record': 'the record begins after the last shot',
  'no-long-stretch-without-shots': 'there are no three hours without a shot',
  'not-used': 'the probe does not count',
  'no-late-reading': 'the last hours of the day have no reading',
  'no-readings': 'no reading can be trusted',
  'all-probes-left-out':
    'no probe can be trusted: look at plants and probes, and weigh a container before anybody waters by hand',
  'more-than-eight-probes': 'the zone has more than eight probes',
  'full-point-not-believed': 'the full point is not among the water contents that are believed',
  'no-log-of-openings': 'no log tells the single openings of the valve',
  'no-full-point': 'neither a level after drain nor a bench test of the medium is known',
  'full-point-below-lower-limit': 'the full point is not above the lower limit',
  'use-not-known': 'neither the water balance nor the climate says how much the plants use',
  'no-time-for-shots': 'the first shot would come after the last',
  'plan-not-possible': 'the limits of the zone contradict each other',
}

/**
 * Why a result of a zone is not known, in words for people.
 *
 * @procedure Looks the code up; a reason that came from the record has the words of `explainRecordReason`.
 * @param reason - The code, from a result that is not known.
 * @returns Words without a full stop.
 * @source definition
 * @example
 * explainZoneReason('no-watering-log') // => 'there is no log of water given and drained'
 */
export function explainZoneReason(reason: string): string {
  if (typeof reason !== 'string')
    throw new InputError('reason', 'is no text', 'give the reason of a result that is not known')
  return Object.hasOwn(REASONS, reason) ? REASONS[reason]! : explainRecordReason(reason)
}

const percent = (share: number, digits = 1) => `${(share * 100).toFixed(digits)} %`
const points = (share: number, digits = 1) => `${(share * 100).toFixed(digits)} points`
const litres = (volume: number) => `${volume.toFixed(2)} L`
const signed = (x: number) => `${x < 0 ? '−' : '+'}${Math.abs(x).toFixed(0)}`
