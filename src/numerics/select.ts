/**
 * The k-th smallest of the first `end` numbers, which it reorders so that no number before the k-th is larger and none behind it
 * smaller: Hoare's selection, pivot the median of three. Linear time on average; no NaN among the numbers.
 */
export function selectInPlace(values: Float64Array, k: number, end = values.length): number {
  let left = 0
  let right = end - 1
  while (left < right) {
    const pivot = middle(values[left]!, values[(left + right) >> 1]!, values[right]!)
    let i = left
    let j = right
    while (i <= j) {
      while (values[i]! < pivot) i++
      while (values[j]! > pivot) j--
      if (i > j) break
      const swap = values[i]!
      values[i++] = values[j]!
      values[j--] = swap
    }
    if (k <= j) right = j
    else if (k >= i) left = i
    else break
  }
  return values[k]!
}

/** The median of the first `end` numbers, which it reorders; the mean of the two in the middle for an even number of them. */
export function medianInPlace(values: Float64Array, end = values.length): number {
  const half = end >> 1
  const upper = selectInPlace(values, half, end)
  if (end % 2 === 1) return upper
  let lower = -Infinity
  for (let i = 0; i < half; i++) lower = Math.max(lower, values[i]!)
  return (lower + upper) / 2
}

function middle(a: number, b: number, c: number): number {
  return Math.max(Math.min(a, b), Math.min(Math.max(a, b), c))
}
