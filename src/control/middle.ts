/** The middle one of some values, or the mean of the two in the middle. */
export function middle(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b)
  const half = sorted.length >> 1
  return sorted.length % 2 === 1 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2
}

/** The middle distance of some values from their middle one. */
export function spread(values: readonly number[]): number {
  const centre = middle(values)
  return middle(values.map((value) => Math.abs(value - centre)))
}
