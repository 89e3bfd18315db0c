/**
 * A number of 32 bits for settings, by which a stored state is known to be one of theirs: Fowler, Noll and Vo's hash 1a of their numbers and names.
 * It guards against mistakes, not against forgery.
 */
export function fingerprintOf(settings: object): number {
  let sum = 0x811c9dc5
  for (const letter of JSON.stringify(settings)) sum = Math.imul(sum ^ letter.codePointAt(0)!, 0x01000193)
  return sum >>> 0
}
