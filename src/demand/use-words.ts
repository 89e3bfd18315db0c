import type { WordsOf } from '../quantity/explained.js'
import { asPercent } from '../quantity/in-words.js'
import type { UseFinding } from './use-finding.js'

const PRACTICE = 'common practice, no source'

/** What is doubtful in a use, by how much, and what to look at. */
export const USE_WORDS: WordsOf<UseFinding> = {
  'above-latent-heat': [
    ({ value, limit, unit }) =>
      `${value} ${unit} is above the ${limit.toFixed(2)} that this radiation can evaporate: check the unit, or count heating and dry air separately`,
    'allen-1998, Table 3',
  ],
  'cannot-tell-radiation': [
    'the interval of the use per J/cm² includes zero: the record does not show what light does',
    PRACTICE,
  ],
  'cannot-tell-dryness': [
    'the interval of the use per kPa·h includes zero: the record does not show what dry air does',
    PRACTICE,
  ],
  'cannot-tell-cause': [
    ({ about }) => `the interval of the coefficient of ${about} includes zero: the record does not show what it does`,
    PRACTICE,
  ],
  'causes-move-together': [
    ({ value }) =>
      `radiation and dryness move together (r = ${value.toFixed(2)}): their shares are uncertain, their sum less so`,
    PRACTICE,
  ],
  'fails-new-days': [
    ({ value }) =>
      `on days outside the fit it explains ${asPercent(value, 0)} of the variance: the crop or the house has changed`,
    PRACTICE,
  ],
  'hardly-any-light': [
    ({ value, limit }) =>
      `the brightest day has ${value.toFixed(1)} J/cm², less than the ${limit} of a dull winter day: check the unit (1 MJ/m² is 100 J/cm²); if it really is that dark, light says little about use`,
    PRACTICE,
  ],
}
