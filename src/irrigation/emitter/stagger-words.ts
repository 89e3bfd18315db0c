import { digits, type WordsOf } from '../../quantity/explained.js'
import type { StaggerFinding } from './stagger-findings.js'

const PRACTICE = 'common practice, no source'

/** Which zone waits for the pump, by how much, and what to do. */
export const STAGGER_WORDS: WordsOf<StaggerFinding> = {
  'begins-late': [
    ({ zone, value }) =>
      `zone ${zone} begins ${digits(value / 60)} min later than wanted: begin the day earlier, water fewer zones at once, or find a larger pump`,
    PRACTICE,
  ],
  'wanted-twice': [
    ({ zone, value }) =>
      `zone ${zone} wants a shot while one of its own has ${digits(value / 60)} min to run, and gets both: see whether the same shot was sent twice`,
    PRACTICE,
  ],
  'runs-long': [
    ({ zone, value }) =>
      `zone ${zone} is open for ${digits(value / 60)} min at a time, longer than any shot in containers: check that the run time is in seconds, and split it if it is`,
    PRACTICE,
  ],
  'ends-too-late': [
    ({ zone, value }) =>
      value > 86400
        ? `zone ${zone} ends more than a day after the last allowed moment: give that moment, too, in seconds since 1970, not as an hour of the day`
        : `zone ${zone} ends ${digits(value / 60)} min after the last allowed moment: leave it out, or begin the day earlier; a wet night harms roots`,
    PRACTICE,
  ],
}
