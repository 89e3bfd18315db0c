import { requireObject } from '../quantity/guard.js'
import type { RecordFinding } from './record-finding.js'

/** Every code that says why something about a record is not known, in words. */
const REASONS: Readonly<Record<string, string>> = {
  'few-readings': 'there are too few readings',
  constant: 'all readings are the same',
  'not-falling': 'the water content does not fall',
  'within-noise': 'the fall is no larger than its noise',
  'levels-off-above':
    'it levels off above the refill point, which nine of ten such courses did not reach before the next water',
  'may-level-off-above':
    'the curve levels off above the refill point, but only as long as light and air stay as they are: later levels often go below it',
  'no-bend': 'the readings do not tell a bend from a straight line',
  'no-time-constant': 'the bend is too slight or too sudden for a time constant',
  'wide-asymptote': 'the asymptote of the curve is a guess: its interval is wider than half of the fall that was seen',
  'no-change': 'no change of slope that noise could not have made',
  gap: 'a gap or a break of time follows',
  'record-ends': 'the record ends before',
  'next-shot': 'the next shot came before',
  'few-settled-shots': 'fewer than three shots drained back and were left alone long enough',
  'shot-in-night': 'a shot fell into the night',
  short: 'readings or drain leave less than three quarters of the night',
  'clock-ahead': 'the newest good reading carries a time that is still to come: check the clock',
  'none-passed': 'no reading has passed',
  'no-reading': 'no reading has come yet',
  shot: 'water is being given',
  draining: 'drain after the last shot is not over, and its fall is no use by plants',
  'few-dry-downs': 'fewer than three dry-downs of two hours were seen',
  'beyond-two-days': 'it is not foreseen within two days',
  'few-days': 'fewer than seven days with a use were seen',
}

/**
 * Why something about a record is not known, in words.
 *
 * @procedure Looks the code up; a code of another topic is given with spaces for its hyphens.
 * @param reason - The code, from a result of this topic that is not known.
 * @returns Half a sentence in English, without a full stop.
 * @source definition
 * @example
 * explainRecordReason('not-falling') // => 'the water content does not fall'
 */
export function explainRecordReason(reason: string): string {
  return Object.hasOwn(REASONS, reason) ? REASONS[reason]! : reason.replaceAll('-', ' ')
}

/**
 * What a record shows of its probes, in words.
 *
 * @procedure Puts the numbers of the finding into the sentence of its code.
 * @param finding - From `compareProbes`, `responseToShots`, `saltDrift` or `findClimbs`.
 * @returns A sentence in English, without a full stop.
 * @source common practice, no source
 * @example
 * explainRecordFinding({ code: 'few-shots', level: 'note', shots: 2 }) // => 'it rests on 2 shots; three or more say more'
 */
export function explainRecordFinding(finding: RecordFinding): string {
  requireObject(finding, 'finding')
  switch (finding.code) {
    case 'falls-away':
      return `${moves(finding)}: clogged emitter, air at its pins or a plant that drinks more; do a catch test and weigh the container`
    case 'rises-away':
      return `${moves(finding)}: salt, a leaking emitter or a plant that drinks less`
    case 'noisy':
      return `probe ${finding.about} has ${(finding.deviation / finding.usual).toFixed(1)} times the noise of its neighbours: contact, cable or plug`
    case 'probe-sees-little':
      return `${sees(finding.share)}: air at its pins, a place beside the wet part, or bypass; weigh the container, re-seat the probe and repeat its two samples`
    case 'probe-sees-much':
      return `${sees(finding.share)}: it sits under the dripper, or stands for less medium than was given`
    case 'few-shots':
      return `it rests on ${finding.shots} shots; three or more say more`
    case 'reading-rises-with-salt':
      return `the level after drain rises by ${points(finding.levelPerDay)} points a day while the drain rises by ${finding.drainPerDay.toFixed(2)} dS/m a day: correct the reading for salt, or trust it less`
    case 'above-capacity':
      return `a level after drain of ${(100 * finding.max).toFixed(1)} % is above the ${(100 * finding.capacity).toFixed(1)} % that the medium can hold: salt, a wrong calibration or a wrong capacity`
    default:
      return `the water content climbs by ${points(finding.rise)} points in ${((finding.end - finding.start) / 3600).toFixed(1)} h without a shot: a valve or an emitter that leaks, rain, or a probe that warms up`
  }
}

const points = (change: number) => (100 * change).toFixed(2)
const moves = ({ about, perDay }: { readonly about: string; readonly perDay: number }) =>
  `probe ${about} moves away from its neighbours by ${points(perDay)} points a day`
const sees = (share: number) => `the probe sees ${Math.round(share * 100)} % of the water that was kept`
