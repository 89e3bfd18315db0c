import * as z from 'zod'

/** What happens to keys that a document should not have. */
export type UnknownKeys = 'refuse' | 'keep'

/** An object with these keys; others are refused by name or kept, as the reader chose. */
export function objectField<S extends z.core.$ZodLooseShape>(shape: S, unknownKeys: UnknownKeys) {
  const known = Object.keys(shape).join(', ')
  const error = (issue: { readonly code?: string | undefined }) =>
    issue.code === 'unrecognized_keys' ? `one of ${known}` : `an object with ${known}`
  // Both kinds read the keys of the shape alike; only the strict one has a type that names them and no others.
  return unknownKeys === 'keep'
    ? (z.looseObject(shape, { error }) as unknown as z.ZodObject<S, z.core.$strict>)
    : z.strictObject(shape, { error })
}

/** One word out of a list. */
export function choiceField<const W extends readonly [string, ...string[]]>(about: string, words: W) {
  return z.enum(words, { error: () => `one of ${words.join(', ')}` }).meta({ description: about })
}
