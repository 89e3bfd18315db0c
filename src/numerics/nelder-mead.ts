/** How much a simplex may differ, as a share of its first size, when the search ends. */
const SETTLED = 1e-6
const MAX = 600

/**
 * The least value of a function of some numbers by the downhill simplex of nelder-1965: for
 * functions with kinks, on which derivatives mislead. Begun again where it ended until that brings no more.
 */
export function nelderMead(
  f: (x: readonly number[]) => number,
  start: readonly number[],
  sizes: readonly number[],
): { readonly at: readonly number[]; readonly value: number } {
  let best = { at: start, value: f(start) }
  for (let round = 0; round < 8; round++) {
    const next = descend(f, best.at, sizes)
    const gain = best.value - next.value
    if (next.value < best.value) best = next
    if (!(gain > 1e-9 * Math.abs(best.value))) break
  }
  return best
}

function descend(f: (x: readonly number[]) => number, start: readonly number[], sizes: readonly number[]) {
  const point = (at: readonly number[]) => ({ at, value: f(at) })
  const corners = [point(start)]
  start.forEach((_, j) => {
    corners.push(point(start.map((value, i) => (i === j ? value + sizes[i]! : value))))
  })
  const n = start.length
  for (let count = 0; count < MAX; count++) {
    corners.sort((a, b) => a.value - b.value)
    const [first, last] = [corners[0]!, corners[n]!]
    if (start.every((_, j) => corners.every(({ at }) => apart(at, first.at, j) <= SETTLED * sizes[j]!))) break
    const centre = start.map((_, j) => corners.slice(0, n).reduce((sum, { at }) => sum + at[j]! / n, 0))
    const along = (t: number) => point(centre.map((c, j) => c + t * (last.at[j]! - c)))
    const mirrored = along(-1)
    if (mirrored.value < first.value) {
      const far = along(-2)
      corners[n] = far.value < mirrored.value ? far : mirrored
    } else if (mirrored.value < corners[n - 1]!.value) corners[n] = mirrored
    else {
      const inner = mirrored.value < last.value ? along(-0.5) : along(0.5)
      if (inner.value < Math.min(mirrored.value, last.value)) corners[n] = inner
      else for (let k = 1; k <= n; k++) corners[k] = point(corners[k]!.at.map((value, j) => (value + first.at[j]!) / 2))
    }
  }
  return corners.reduce((a, b) => (b.value < a.value ? b : a))
}

function apart(a: readonly number[], b: readonly number[], j: number): number {
  return Math.abs(a[j]! - b[j]!)
}
