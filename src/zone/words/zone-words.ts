import { ASSUMPTION_WORDS, DOUBT_WORDS } from '../../demand/reference/weather-words.js'
import { ecDoubtInWords } from '../../irrigation/salt/ec-doubt-words.js'
import { explained, type WordsOf } from '../../quantity/explained.js'
import { asLitres, asPercent, asPoints, signed } from '../../quantity/in-words.js'
import { oneOf } from '../../quantity/one-of.js'
import type { DayDifference } from '../day/day-differences.js'
import { OFF_TARGET, type ZoneFinding } from '../findings/zone-finding.js'
import { leftOutInWords } from './left-out-words.js'
import { unitDoubtInWords } from './unit-doubt-words.js'

/** A clock time in words. */
export type ClockTime = (time: number) => string

/** What a proposal changes. */
export const DIFFERENCE_WORDS: WordsOf<DayDifference, [at: ClockTime]> = {
  shots: [
    (finding) => `${finding.tomorrow} ${finding.tomorrow === 1 ? 'shot' : 'shots'}, ${finding.today} on the day before`,
  ],
  given: [
    (finding) =>
      `${asLitres(finding.tomorrow)} instead of ${asLitres(finding.today)}${finding.today > 0 ? ` (${signed(100 * (finding.tomorrow / finding.today - 1), 0)} %)` : ''}`,
  ],
  'drain-fraction': [(finding) => `a drain of ${asPercent(finding.tomorrow)} instead of ${asPercent(finding.today)}`],
  'first-shot': [(finding, at) => `the first shot at ${at(finding.tomorrow)} instead of ${at(finding.today)}`],
  'last-shot': [(finding, at) => `the last shot at ${at(finding.tomorrow)} instead of ${at(finding.today)}`],
}

/** What a review finds out about a zone and its probes. */
export const ZONE_WORDS: WordsOf<ZoneFinding, [at: ClockTime]> = {
  'no-readings': [(finding) => `${finding.probe} has no reading on this day that can be trusted, and is left out`],
  'looks-like-percent': [
    (finding) =>
      `${finding.probe} reports ${finding.middle.toFixed(1)}: that is per cent, where a fraction such as ${(finding.middle / 100).toFixed(3)} is expected; it is left out until its unit is set`,
  ],
  'few-shots-seen': [
    (finding) =>
      `${finding.probe} saw ${finding.seen} of ${finding.of} shots, fewer than half of what another one saw: a clogged emitter, or a lifted probe; do a catch test and look at its pins: the probe is left out until then`,
  ],
  'fell-away': [
    (finding) =>
      `${finding.probe} is ${asPoints(finding.below)} below the level to which its own shots drained back, the others ${asPoints(finding.others)}: the probe was lifted, or its plant is dry; it is left out, so look at it first`,
  ],
  'no-late-reading': [(finding) => `${finding.probe} has no late reading, and is left out`],
  'no-level-after-drain': [
    (finding) =>
      `${finding.probe} has no level after drain of its own, so it cannot be compared with the others and is left out`,
  ],
  'shots-without-rise': [
    (finding, at) =>
      `${finding.probe} did not rise after the ${finding.times.length === 1 ? 'shot' : 'shots'} at ${times(finding, at)}: a valve that did not open, water that did not reach it, or a container that was full`,
  ],
  'shots-not-judged': [
    (finding, at) =>
      `nobody can say whether ${finding.probe} rose after the ${finding.times.length === 1 ? 'shot' : 'shots'} at ${times(finding, at)}: readings are missing there`,
  ],
  'rises-without-shot': [
    (finding, at) =>
      `${finding.probe} rose at ${times(finding, at)} without an entry in the log: a valve that passes water, watering by hand, or gaps in the log`,
  ],
  'rises-alone': [
    (finding) =>
      `${finding.probe} rose ${finding.rises} times without an entry in the log, and no other probe did: the probe is noisy, or its container gets water that the others do not; it is left out, so look at it first`,
  ],
  'climbs-between-shots': [
    (finding, at) =>
      `${finding.probe} climbed by ${asPoints(finding.rise)} from ${at(finding.from)} to ${at(finding.to)}, more slowly than a shot: a valve or an emitter that leaks, shots too small to show, rain, watering by hand, or a probe that warmed up; shut off the water by hand, look and listen`,
  ],
  'level-stepped': [
    (finding, at) =>
      `${finding.probe} ${finding.change < 0 ? 'fell' : 'rose'} by ${asPoints(Math.abs(finding.change))} at once at ${at(finding.time)} and stayed there: a probe that was pulled, pushed or bumped, or a container that was moved; look at it, and do not compare readings across that moment`,
  ],
  'rises-with-salt': [
    (finding) =>
      `the level after drain of ${finding.probe} rises by ${asPoints(finding.levelPerDay, 2)} a day while the drain EC rises by ${finding.drainPerDay.toFixed(2)} dS/m a day: the probe takes salt for water; measure before and after a flush`,
  ],
  'off-capacity': [
    (finding) =>
      `${finding.probe} drains back to ${asPoints(Math.abs(finding.difference))} ${finding.difference > 0 ? 'above' : 'below'} the container capacity of the bench test: a probe sees one place, so weigh a container before you trust either`,
  ],
  'level-remembered': [
    (finding) =>
      `${finding.probe} has no new level after drain; the one of ${finding.days} ${finding.days === 1 ? 'day' : 'days'} ago is used`,
  ],
  'no-water': [
    (finding) =>
      `${finding.shots} shots in the log and no probe rose: look at valve, filter and supply; a full container shows no rise either, so weigh one before anybody waters by hand`,
  ],
  bypass: [
    (finding) =>
      `${finding.shots} shots drained and no probe rose: water runs past the medium, or the probes do not touch it`,
  ],
  'probes-differ': [
    (finding) =>
      `the probes differ by ${asPoints(finding.spread)} at the end of the day; each is judged by its own level`,
  ],
  'readings-out-of-order': [
    (finding) =>
      `${finding.count} ${finding.count === 1 ? 'reading' : 'readings'} left out: without a time, not later than the one before, or so far ahead of it that others must confirm the time; check the logger's clock`,
  ],
  'entries-left-out': [leftOutInWords],
  'root-readings-left-out': [
    (finding) =>
      `${finding.count} ${finding.count === 1 ? 'reading' : 'readings'} of the root zone left out, below −5 or above 60 °C: look at the sensor and its plug`,
  ],
  'negative-use': [
    (finding) =>
      `the water balance gives a use of ${asLitres(finding.use)}, less than zero: the log, the share of a container or a probe is wrong`,
  ],
  'use-doubted': [
    (finding) =>
      `the water balance gives a use of ${asLitres(finding.use)}, ${Math.round((100 * finding.use) / finding.climate)} % of the ${asLitres(finding.climate)} expected from the climate: check the log, the drain gauge, the probes, the volume of the container, the climate readings and the crop coefficient; one of them is wrong`,
  ],
  'drain-gauge-silent': [
    (finding) =>
      `according to the log nothing drained of ${asLitres(finding.given)} given (${finding.entries} ${finding.entries === 1 ? 'entry' : 'entries'}): a gauge that is stuck or bypassed, or shots too small to drain; look under the container`,
  ],
  'more-drain-than-given': [
    (finding) =>
      `${asLitres(finding.drained)} drained of ${asLitres(finding.given)} given, which cannot go on for long: check the drain gauge, the log and their units`,
  ],
  'salts-not-steady': [
    (finding) =>
      `at a steady state without uptake of salts ${asPercent(finding.steady, 0)} would drain; ${asPercent(finding.share, 0)} did, so salts are taken up or stored; the larger share is no target for drain`,
  ],
  'ec-doubted': [ecDoubtInWords],
  'root-zone-temperature': [
    (finding) =>
      `the root zone was ${finding.extreme === 'lowest' ? 'at its coldest' : 'at its warmest'} ${finding.value.toFixed(1)} °C: ${oneOf(finding.band, OFF_TARGET, 'finding.band')} for fruiting vegetables (common practice)`,
  ],
  'climate-doubted': [
    (finding) => explained<WeatherDoubt>(finding.weather, { ...DOUBT_WORDS, ...ASSUMPTION_WORDS }).message,
  ],
  'light-off-noon': [
    (finding, at) =>
      `half of the day's light had come by ${at(finding.time)}, far from noon: the clock of the climate log, or the zone's offset from universal time, is wrong`,
  ],
  'unit-doubted': [unitDoubtInWords],
  'log-on-another-clock': [
    (finding) =>
      `the valve log fits the rises once it is moved by ${signed(finding.hours, 1)} h: it runs on another clock than the readings, for instance local instead of universal time; set the clock or the offset of that table first, because everything said of single shots rests on it`,
  ],
  'light-assumed': ['light was not measured, or not all day long; daylight from 6:00 to 20:00 is assumed'],
  'all-probes-left-out': [
    'no probe can be trusted, so nothing is proposed: look at plants and probes, and weigh a container before anybody waters by hand',
  ],
}

type WeatherDoubt = Extract<ZoneFinding, { readonly code: 'climate-doubted' }>['weather']

const times = ({ times: list }: { readonly times: readonly number[] }, at: ClockTime) => list.map(at).join(', ')
