/** Neighbours that err together count for less: (1 - r)/(1 + r) of them, for their correlation r. */
export function independentShare(rest: readonly number[], squares: number): number {
  let products = 0
  for (let k = 1; k < rest.length; k++) products += rest[k]! * rest[k - 1]!
  const r = squares > rest.length * 1e-20 ? Math.min(0.99, Math.max(0, products / squares)) : 0
  return (1 - r) / (1 + r)
}
