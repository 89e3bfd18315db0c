import type { WordsOf } from '../../quantity/explained.js'
import { asPercent } from '../../quantity/in-words.js'
import type { EmitterFinding } from './emitter-finding.js'

const PRACTICE = 'common practice, no source'

/** What is wrong with emitters, by how much, and what to do. */
export const EMITTER_WORDS: WordsOf<EmitterFinding> = {
  'pressure-below-curve': [
    ({ value, limit }) =>
      `a pressure of ${value.toFixed(1)} kPa is below ${limit.toFixed(0)} kPa, where the emitter's curve begins: measure its flow at that pressure`,
    PRACTICE,
  ],
  'pressure-above-curve': [
    ({ value, limit }) =>
      `a pressure of ${value.toFixed(1)} kPa is above ${limit.toFixed(0)} kPa, where the emitter's curve ends: measure its flow at that pressure`,
    PRACTICE,
  ],
  'few-catches': [
    ({ value, limit }) => `${value} catches say little about a zone: take ${limit} or more, spread over its lines`,
    PRACTICE,
  ],
  'uneven-zone': [
    ({ value }) =>
      `the driest quarter gets ${asPercent(value, 0)} of the mean: check pressure, filters and emitters before running longer`,
    PRACTICE,
  ],
  'weak-emitters': [
    ({ value, limit }) =>
      `${value} of ${limit} emitters give less than three quarters of the mean: clean or replace them and test again`,
    PRACTICE,
  ],
}
