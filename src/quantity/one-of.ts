import { InputError } from './errors.js'

/** The word, if it is one of an option's words: a misspelt option must not choose another behaviour in silence. */
export function oneOf<const W extends string>(value: W, words: readonly W[], argument: string): W {
  if (words.includes(value)) return value
  throw new InputError(
    argument,
    `${typeof value === 'string' ? `'${value}'` : `a ${typeof value}`} is not one of its words`,
    `give one of ${words.map((word) => `'${word}'`).join(', ')}`,
  )
}
