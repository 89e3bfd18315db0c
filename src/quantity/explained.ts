import { InputError } from './errors.js'
import type { Finding } from './finding.js'
import { requireObject } from './guard.js'

/** What to say of each code: the sentence, and where the rule comes from. */
export type WordsOf<F extends { readonly code: string }> = Readonly<
  Record<F['code'], readonly [words: string | ((finding: F) => string), source?: string]>
>

/** A finding with its sentence and its source, by the words of its topic. */
export function explained<F extends Pick<Finding, 'code' | 'level'>>(finding: F, words: WordsOf<F>): F & Finding {
  requireObject(finding, 'finding')
  const code: F['code'] = finding.code
  if (!Object.hasOwn(words, code))
    throw new InputError(
      'finding',
      `"${code}" is no code of this topic`,
      `give one of ${Object.keys(words).join(', ')}`,
    )
  const [say, source] = words[code]
  const message = typeof say === 'string' ? say : say(finding)
  return { ...finding, message, ...(source === undefined ? {} : { source }) }
}

/** A share as per cent of the volume. */
export const asPercent = (share: number | undefined): string => `${(100 * (share ?? Number.NaN)).toFixed(1)} %`

/** A number of a finding to three digits; "?" where it is missing. */
export const digits = (value: number | undefined): string =>
  value === undefined ? '?' : `${Number(value.toPrecision(3))}`
