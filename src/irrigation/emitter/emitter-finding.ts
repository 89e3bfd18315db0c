import { InputError } from '../../quantity/errors.js'
import type { Finding } from '../../quantity/finding.js'
import { requireObject } from '../../quantity/guard.js'
import type { HowSerious } from '../terms.js'

/** What is to be known of emitters, without words; `explainEmitterFinding` has them. */
export interface EmitterFinding extends HowSerious {
  /** Which limit is passed. */
  readonly code: 'pressure-below-curve' | 'pressure-above-curve' | 'few-catches' | 'uneven-zone' | 'weak-emitters'
  /** The pressure, the catches, the share of the driest quarter, or the weak emitters. Unit: that of `unit`. Range: any. */
  readonly value: number
  /** The end of the curve, the catches that are enough, the share that will do, or all emitters. Unit: that of `unit`. Range: any. */
  readonly limit: number
  /** Unit of both numbers. */
  readonly unit: 'kPa' | '1'
}

const WORDS: Readonly<Record<EmitterFinding['code'], (value: number, limit: number) => string>> = {
  'pressure-below-curve': (value, limit) =>
    `${value.toFixed(1)} kPa is below ${limit.toFixed(0)} kPa, from which the curve of the emitter holds: measure its flow there`,
  'pressure-above-curve': (value, limit) =>
    `${value.toFixed(1)} kPa is above ${limit.toFixed(0)} kPa, up to which the curve of the emitter holds: measure its flow there`,
  'few-catches': (value, limit) =>
    `${value} catches say little about a zone; take ${limit} or more, spread over its lines`,
  'uneven-zone': (value) =>
    `the driest quarter gets ${(100 * value).toFixed(0)} % of the mean: check pressure, filters and emitters before running longer`,
  'weak-emitters': (value, limit) =>
    `${value} of ${limit} emitters give less than three quarters of the mean: clean or replace them and test again`,
}

/**
 * Puts a finding about emitters into words: what is wrong, by how much, and what to do.
 *
 * @procedure Looks up the sentence of the code and writes its numbers into it.
 * @param finding - One of the findings of `catchTest` or `checkEmitterPressure`.
 * @returns A finding with the sentence for people.
 * @throws `InputError` for a code that these procedures do not give.
 * @source common practice, no source
 * @example
 * const { findings } = catchTest({ catches: [100, 98, 103, 97, 101, 55, 99, 102], duration: minutes(3) })
 * const said = findings.map((finding) => explainEmitterFinding(finding).message)
 * said[1] // => '1 of 8 emitters give less than three quarters of the mean: clean or replace them and test again'
 */
export function explainEmitterFinding(finding: EmitterFinding): Finding {
  requireObject(finding, 'finding')
  const { code, level, value, limit, unit } = finding
  if (!Object.hasOwn(WORDS, code))
    throw new InputError('finding', `"${code}" is no code of emitters`, `give one of ${Object.keys(WORDS).join(', ')}`)
  return { code, level, message: WORDS[code](value, limit), value, unit, source: 'common practice, no source' }
}
