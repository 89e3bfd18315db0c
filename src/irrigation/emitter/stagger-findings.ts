import type { Instant } from '../../quantity/calendar.js'
import { InputError } from '../../quantity/errors.js'
import type { Finding } from '../../quantity/finding.js'
import { requireObject } from '../../quantity/guard.js'
import type { HowSerious } from '../terms.js'

/** What is to be known of a shot that had to wait for the pump, without words; `explainStaggerFinding` has them. */
export interface StaggerFinding extends HowSerious {
  /** What is late. */
  readonly code: 'begins-late' | 'ends-too-late'
  /** Whose shot it is. */
  readonly zone: string
  /** When it begins now. Unit: s. Range: any. */
  readonly time: Instant
  /** How much later than wanted it begins, or than allowed it ends. Unit: s. Range: any. */
  readonly value: number
  /** Unit of the value. */
  readonly unit: 's'
}

const WORDS = {
  'begins-late': [
    'begins',
    'later than wanted',
    'begin the day earlier, water fewer zones at once, or find a larger pump',
  ],
  'ends-too-late': [
    'ends',
    'after the last allowed moment',
    'leave it out, or begin the day earlier; a wet night harms roots',
  ],
} as const

/**
 * Puts a finding of `staggerZones` into words: which zone, by how much, and what to do.
 *
 * @procedure Looks up the sentence of the code and writes the zone and the minutes into it.
 * @param finding - One of the findings of staggered shots, made by `staggerZones`.
 * @returns A finding with the sentence for people.
 * @throws `InputError` for a code that `staggerZones` does not give.
 * @source common practice, no source
 * @example
 * const wanted = ['north', 'south'].map((zone) => ({ zone, time: instant(1779148800), runTime: hours(1), flow: litresPerHour(800) }))
 * const { findings } = staggerZones(wanted, { maxFlow: litresPerHour(1000), minRest: seconds(0) })
 * const said = findings.map((finding) => explainStaggerFinding(finding).message)
 * said[0] // => 'zone south begins 60 min later than wanted: begin the day earlier, water fewer zones at once, or find a larger pump'
 */
export function explainStaggerFinding(finding: StaggerFinding): Finding {
  requireObject(finding, 'finding')
  const { code, level, zone, value, unit } = finding
  const words = Object.hasOwn(WORDS, code) ? WORDS[code] : undefined
  if (words === undefined)
    throw new InputError(
      'finding',
      `"${code}" is no code of staggered zones`,
      `give one of ${Object.keys(WORDS).join(', ')}`,
    )
  const [begin, end, remedy] = words
  const message = `zone ${zone} ${begin} ${Number((value / 60).toPrecision(3))} min ${end}: ${remedy}`
  return { code, level, message, about: zone, value, unit, source: 'common practice, no source' }
}
