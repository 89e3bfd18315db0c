import type { ReasonWords, WordsOf } from '../quantity/explained.js'
import { asPercent, asPoints } from '../quantity/in-words.js'
import type { RecordFinding } from './record-finding.js'
import type { RecordReason } from './record-reason.js'

/** Why something about a record is not known. */
export const RECORD_REASON_WORDS: ReasonWords<RecordReason> = {
  'few-readings': ['there are too few readings'],
  constant: ['all readings are the same'],
  'not-falling': ['the water content does not fall'],
  'within-noise': ['the fall is no larger than its noise'],
  'levels-off-above': [
    'it levels off above the refill point, which nine of ten such dry-downs did not reach before the next water',
  ],
  'may-level-off-above': [
    'the curve levels off above the refill point, but only as long as light and air stay as they are: later levels often go below it',
  ],
  'no-bend': ['the readings cannot tell a bend from a straight line'],
  'no-time-constant': ['the bend is too slight or too sudden for a time constant'],
  'wide-asymptote': [
    'the asymptote of the curve is a guess: its interval is wider than half of the fall that was seen',
  ],
  'no-change': ['no change of slope is larger than noise could make'],
  gap: ['a gap or a break of time follows'],
  'record-ends': ['the record ends first'],
  'next-shot': ['the next shot came first'],
  'few-settled-shots': ['fewer than three shots drained back and were left alone long enough'],
  'shot-in-night': ['a shot fell into the night'],
  short: ['readings or drain leave less than three quarters of the night'],
  'clock-ahead': ['the newest good reading has a time in the future: check the clock'],
  'none-passed': ['no reading has passed'],
  'no-reading': ['no reading has come yet'],
  shot: ['water is being given'],
  draining: [
    'drain after the last shot, or after a gap that may hide one, may not be over yet, and that fall is not use by plants',
  ],
  'few-dry-downs': ['fewer than three dry-downs of two hours were seen'],
  'beyond-two-days': ['it is not expected within two days'],
  'few-days': ['fewer than seven days with a use were seen'],
}

const PRACTICE = 'common practice, no source'

/** What a record shows of its probes. */
export const RECORD_WORDS: WordsOf<RecordFinding> = {
  'falls-away': [
    (found) =>
      `${moves(found)}: clogged emitter, air at its pins or a plant that drinks more; do a catch test and weigh the container`,
    PRACTICE,
  ],
  'rises-away': [(found) => `${moves(found)}: salt, a leaking emitter or a plant that drinks less`, PRACTICE],
  noisy: [
    ({ about, standardDeviation: deviation, usual }) =>
      `probe ${about} has ${(deviation / usual).toFixed(1)} times the noise of its neighbours: contact, cable or plug`,
    PRACTICE,
  ],
  'probe-sees-little': [
    (found) =>
      `${sees(found)}: air at its pins, a place beside the wet part, or bypass; weigh the container, re-seat the probe and repeat its two samples`,
    PRACTICE,
  ],
  'probe-sees-much': [
    (found) => `${sees(found)}: it sits under the dripper, or stands for less medium than was given`,
    PRACTICE,
  ],
  'few-shots': [
    ({ shots }) => `this rests on only ${shots} ${shots === 1 ? 'shot' : 'shots'}: use three or more`,
    PRACTICE,
  ],
  'reading-rises-with-salt': [
    ({ levelPerDay, drainPerDay }) =>
      `the level after drain rises by ${asPoints(levelPerDay, 2)} a day while the drain rises by ${drainPerDay.toFixed(2)} dS/m a day: correct the reading for salt, or trust it less`,
    PRACTICE,
  ],
  'above-capacity': [
    ({ max, containerCapacity: capacity }) =>
      `a level after drain of ${asPercent(max)} is above the ${asPercent(capacity)} that the medium can hold: salt, a wrong calibration or a wrong capacity`,
    PRACTICE,
  ],
  'climbs-between-shots': [
    ({ rise, start, end }) =>
      `the water content climbs by ${asPoints(rise, 2)} in ${((end - start) / 3600).toFixed(1)} h without a shot: a valve or an emitter that leaks, rain, or a probe that warms up`,
    PRACTICE,
  ],
}

const moves = ({ about, perDay }: { readonly about: string; readonly perDay: number }) =>
  `probe ${about} moves away from its neighbours by ${asPoints(perDay, 2)} a day`
const sees = ({ share }: { readonly share: number }) =>
  `the probe sees ${asPercent(share, 0)} of the water that was kept`
