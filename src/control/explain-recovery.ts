import { InputError } from '../quantity/errors.js'
import type { Finding } from '../quantity/finding.js'
import { requireObject } from '../quantity/guard.js'
import type { RecoveryFinding } from './plan-recovery.js'

const WORDS: { readonly [Code in RecoveryFinding['code']]: string } = {
  'clock-not-checked':
    'look at the clock and at the last shot in the log first: a controller that catches up by itself would water twice',
  'more-than-allowed': 'more is wanted than may still be given: raise the limit knowingly or come back tomorrow',
  'watch-first-shots':
    'watch the first shots: if they drain at once and the reading hardly moves, the medium repels water; wait longer between smaller shots',
  pump: 'keep hands out of pump gear that may start by itself when power returns',
}

/**
 * Puts a finding of `planRecovery` into words.
 *
 * @procedure Looks up the sentence of the code and adds volume and limit where there are some.
 * @param finding - One of the findings of a plan, made by `planRecovery`.
 * @returns A finding with the sentence for people.
 * @throws `InputError` for a code that `planRecovery` does not give.
 * @source common practice, no source
 * @example
 * const finding = explainRecovery({ code: 'pump', level: 'caution' })
 * finding.message // => 'keep hands out of pump gear that may start by itself when power returns'
 */
export function explainRecovery(finding: RecoveryFinding): Finding {
  requireObject(finding, 'finding')
  const { code, value, limit } = finding
  if (!Object.hasOwn(WORDS, code))
    throw new InputError(
      'finding',
      `"${code}" is no code of a recovery`,
      `give one of ${Object.keys(WORDS).join(', ')}`,
    )
  const millilitres = (volume: number) => `${Math.round(volume * 1000)} mL`
  const numbers =
    value === undefined || limit === undefined ? '' : ` (${millilitres(value)}, limit ${millilitres(limit)})`
  return { ...finding, message: WORDS[code] + numbers, source: 'common practice, no source' }
}
