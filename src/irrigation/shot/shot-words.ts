import { digits, type WordsOf } from '../../quantity/explained.js'
import type { ShotFinding } from './size-shot.js'

/** What is wrong with a sized shot, by how much, and what to do. Only the tenth is a rule of the trade; other limits are the caller's own. */
export const SHOT_WORDS: WordsOf<ShotFinding> = {
  'max-run-time': [
    ({ value, unit }) =>
      `the valve closes ${digits(value)} ${unit} before the wanted volume is given: give more shots, or allow a longer one`,
  ],
  'min-run-time': [
    ({ value, unit }) =>
      `the valve is open ${digits(value)} ${unit} longer than the wanted volume needs: the surplus drains; water less often, with a larger rise`,
  ],
  'max-rise': [
    ({ value, unit }) =>
      `the wanted rise is ${digits(value)} ${unit} more than is usual for one shot: check the decimal point, and how much the medium can still hold; split the shot, or set maxRise if you mean it`,
  ],
  'line-fill': [
    ({ value, unit }) =>
      `filling the line takes ${digits(value)} ${unit} more than a tenth of the run time: the first emitters get more than the last; give fewer and larger shots, or keep the line full between them`,
    'common practice, no source',
  ],
  'pump-flow': [
    ({ value, unit }) =>
      `the emitters on the valve take ${digits(value)} ${unit} more than the pump gives: pressure falls and the farthest emitters get the least; split the valve, or use a larger pump`,
  ],
}
