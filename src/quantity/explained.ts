import { isPorewaterError } from './attempt.js'
import { InputError } from './errors.js'
import type { Finding } from './finding.js'
import { requireObject } from './guard.js'
import { asName, hasRow } from './one-of.js'

/** Of the findings of a topic those with one code. */
type Of<F, Code> = F extends { readonly code: infer Some } ? (Code extends Some ? F : never) : never

/** What to say of each code: the sentence, and where the rule comes from. `With` is what a sentence needs besides its finding. */
export type WordsOf<F extends { readonly code: string }, With extends readonly unknown[] = []> = {
  readonly [Code in F['code']]: readonly [
    words: string | ((finding: Of<F, Code>, ...given: With) => string),
    source?: string,
  ]
}

/** The code of a reason by itself, as `{ code: result.reason }`. */
export interface ReasonCode<Code extends string> {
  /** Why something is decided, or is not known. */
  readonly code: Code
}

/** What to say of each reason. */
export type ReasonWords<Code extends string> = { readonly [Each in Code]: readonly [words: string] }

/** The families of findings of a topic as one type. Where a code stands in two of them it is `never`, and nothing compiles. */
export type OneCodeEach<Families extends readonly { readonly code: string }[]> = Families extends readonly [
  infer First extends { readonly code: string },
  ...infer Rest extends readonly { readonly code: string }[],
]
  ? First['code'] & Rest[number]['code'] extends never
    ? First | OneCodeEach<Rest>
    : never
  : never

/** A finding with its sentence and its source, by the words of its topic. A reason alone is a note. */
export function explained<F extends { readonly code: string }, With extends readonly unknown[] = []>(
  finding: F,
  words: WordsOf<F, With>,
  ...given: With
): Finding {
  requireObject(finding, 'finding')
  const code: F['code'] = finding.code
  if (!hasRow(words, code))
    throw new InputError(
      'finding',
      `"${asName(code)}" is no code of this topic`,
      `give one of ${Object.keys(words).join(', ')}`,
    )
  const [say, source] = words[code]
  const message = typeof say === 'string' ? say : sentence(code, () => say(finding as never, ...given))
  return { level: 'note', ...finding, message, ...(source === undefined ? {} : { source }) }
}

/** The sentence. Where the finding lacks what the sentence needs, as one from JavaScript may, that is a refusal. */
function sentence(code: string, say: () => string): string {
  try {
    return say()
  } catch (error) {
    if (isPorewaterError(error)) throw error
    throw new InputError('finding', `lacks a number or a name of "${code}"`, 'give it as it was found')
  }
}

/** A number of a finding to three digits; "?" where it is missing. */
export const digits = (value: number | undefined): string =>
  value === undefined ? '?' : `${Number(value.toPrecision(3))}`
