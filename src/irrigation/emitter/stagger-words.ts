import { digits, type WordsOf } from '../../quantity/explained.js'
import type { StaggerFinding } from './stagger-findings.js'

const PRACTICE = 'common practice, no source'

/** Which zone waits for the pump, by how much, and what to do. */
export const STAGGER_WORDS: WordsOf<StaggerFinding> = {
  'begins-late': [
    ({ zone, value }) =>
      `zone ${zone} starts ${digits(value / 60)} min later than wanted: start the day earlier, water fewer zones at once, or use a larger pump`,
    PRACTICE,
  ],
  'wanted-twice': [
    ({ zone, value }) =>
      `zone ${zone} asks for a shot while another of its shots still has ${digits(value / 60)} min to run; it gets both: check whether the same shot was sent twice`,
    PRACTICE,
  ],
  'runs-long': [
    ({ zone, value }) =>
      `zone ${zone} is open for ${digits(value / 60)} min at a time, longer than any shot in containers: check that the run time is in seconds; if it is, split the shot`,
    PRACTICE,
  ],
  'ends-too-late': [
    ({ zone, value }) =>
      value > 86400
        ? `zone ${zone} finishes more than a day after the latest allowed end: give that end, too, in seconds since 1970, not as an hour of the day`
        : `zone ${zone} finishes ${digits(value / 60)} min after the latest allowed end: leave the shot out, or start the day earlier; a wet night harms roots`,
    PRACTICE,
  ],
}
