import { InputError } from '../../quantity/errors.js'
import { requireList } from '../../quantity/guard.js'

/** Quality flags of QARTOD: what a test says of a reading. */
export const QUALITY = { pass: 1, notEvaluated: 2, suspect: 3, fail: 4, missing: 9 } as const

/** How many readings carry each flag. Together they are all readings. */
export interface FlagCounts {
  /** Readings that passed. Unit: 1. */
  readonly pass: number
  /** Readings that could not be judged. Unit: 1. */
  readonly notEvaluated: number
  /** Readings that are doubtful. Unit: 1. */
  readonly suspect: number
  /** Readings that are wrong. Unit: 1. */
  readonly fail: number
  /** Readings that are not there. Unit: 1. */
  readonly missing: number
}

/** How serious each flag is, by its number: not evaluated, pass, suspect, fail, missing. Numbers that are no flag count as missing. */
const SERIOUS: readonly number[] = [5, 2, 1, 3, 4, 5, 5, 5, 5, 5]

/**
 * The most serious flag of each reading over several tests. A reading that one test could not judge and another passed has passed.
 *
 * @procedure Takes, reading by reading, the flag that comes last in: not evaluated, pass, suspect, fail, missing.
 * @param tests - Flags of each test, made by `grossRangeTest` and its like.
 * @returns One flag for each reading.
 * @throws `InputError` when there is no test or the tests have different lengths.
 * @source qartod-2016, section 3.1, aggregation of flags [not confirmed, source not seen]
 * @example
 * combineFlags([Uint8Array.of(1, 2, 1), Uint8Array.of(3, 2, 1)]) // => [3, 2, 1]
 */
export function combineFlags(tests: readonly Uint8Array[]): Uint8Array {
  requireList(tests, 'tests')
  const [first] = tests
  if (first === undefined) throw new InputError('tests', 'there is none', 'give the flags of at least one test')
  for (const [i, test] of tests.entries()) requireList(test, `tests[${i}]`)
  const combined = first.slice()
  for (const test of tests) {
    if (test.length !== combined.length)
      throw new InputError(
        'tests',
        `have ${combined.length} and ${test.length} flags`,
        'run all tests on the same readings',
      )
    for (let i = 0; i < test.length; i++) combined[i] = moreSerious(combined[i]!, test[i]!)
  }
  return combined
}

/** The more serious of two flags. */
export function moreSerious(a: number, b: number): number {
  return SERIOUS[b]! > SERIOUS[a]! ? b : a
}

/**
 * How many readings carry each flag.
 *
 * @procedure Counts.
 * @param flags - One flag for each reading, made by `combineFlags`.
 * @returns The counts, which sum to the number of readings.
 * @source definition
 * @example
 * countFlags(Uint8Array.of(1, 1, 3, 9)) // => { pass: 2, suspect: 1, missing: 1 }
 */
export function countFlags(flags: Uint8Array): FlagCounts {
  requireList(flags, 'flags')
  let [pass, notEvaluated, suspect, fail] = [0, 0, 0, 0]
  for (let i = 0; i < flags.length; i++) {
    const flag = flags[i]
    if (flag === QUALITY.pass) pass++
    else if (flag === QUALITY.notEvaluated) notEvaluated++
    else if (flag === QUALITY.suspect) suspect++
    else if (flag === QUALITY.fail) fail++
  }
  return { pass, notEvaluated, suspect, fail, missing: flags.length - pass - notEvaluated - suspect - fail }
}
