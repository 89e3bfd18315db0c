/** The largest number of a part of a list. */
export function largest(list: ArrayLike<number>, from = 0, to = list.length): number {
  let largest = -Infinity
  for (let i = from; i < to; i++) largest = Math.max(largest, list[i]!)
  return largest
}
