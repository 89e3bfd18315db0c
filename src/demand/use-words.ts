import type { WordsOf } from '../quantity/explained.js'
import { asPercent } from '../quantity/in-words.js'
import type { UseFinding } from './use-finding.js'

const PRACTICE = 'common practice, no source'

/** What is doubtful in a use, by how much, and what to look at. */
export const USE_WORDS: WordsOf<UseFinding> = {
  'above-latent-heat': [
    ({ value, limit, unit }) =>
      `${value} ${unit} is above the ${limit.toFixed(2)} that this radiation can evaporate: check the unit, or count heating and dry air apart`,
    'allen-1998, Table 3',
  ],
  'cannot-tell-radiation': ['the interval of the use for each J/cm² holds zero: the record cannot tell it', PRACTICE],
  'cannot-tell-dryness': ['the interval of the use for each kPa·h holds zero: the record cannot tell it', PRACTICE],
  'cannot-tell-cause': [
    ({ about }) => `the interval of the coefficient of ${about} holds zero: the record cannot tell it`,
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
      `the brightest day has ${value.toFixed(1)} J/cm², and a dull winter day has ${limit}: check the unit, 1 MJ/m² is 100 J/cm²; where it really is so dark, light tells little of the use`,
    PRACTICE,
  ],
}
