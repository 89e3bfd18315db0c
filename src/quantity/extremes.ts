/** The least of a list, without handing it to a call, which breaks from about 125,000 entries; Infinity for none. */
export function minOf(list: ArrayLike<number>): number {
  let least = Infinity
  for (let i = 0; i < list.length; i++) least = Math.min(least, list[i]!)
  return least
}

/** The greatest of a list; -Infinity for none. */
export function maxOf(list: ArrayLike<number>): number {
  let most = -Infinity
  for (let i = 0; i < list.length; i++) most = Math.max(most, list[i]!)
  return most
}
