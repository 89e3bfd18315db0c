/** The least of a list, without handing it to a call, which breaks from about 125,000 entries; Infinity for none. */
export function minOf(list: ArrayLike<number>): number {
  let min = Infinity
  for (let i = 0; i < list.length; i++) min = Math.min(min, list[i]!)
  return min
}

/** The greatest of a list; -Infinity for none. */
export function maxOf(list: ArrayLike<number>): number {
  let max = -Infinity
  for (let i = 0; i < list.length; i++) max = Math.max(max, list[i]!)
  return max
}
