/** A symmetric matrix as rows. */
export type Rows = readonly (readonly number[])[]

/** What came of a factorisation: the lower factor, or the first row that depends on the rows before it. */
export type CholeskyFactor = { readonly lower: number[][] } | { readonly dependent: number }

/**
 * Cholesky factor of a symmetric matrix. A pivot at or below `smallest` times its diagonal counts as dependent: nothing but
 * rounding is left of that row.
 */
export function choleskyFactor(matrix: Rows, min = 0): CholeskyFactor {
  const lower: number[][] = []
  for (let i = 0; i < matrix.length; i++) {
    const row: number[] = []
    for (let j = 0; j <= i; j++) {
      let left = at(matrix, i, j)
      const other = j === i ? row : lower[j]!
      for (let k = 0; k < j; k++) left -= row[k]! * other[k]!
      if (j < i) row.push(left / at(lower, j, j))
      else if (left > min * at(matrix, i, i)) row.push(Math.sqrt(left))
      else return { dependent: i }
    }
    lower.push(row)
  }
  return { lower }
}

/** The solution x of L Lᵀ x = b. */
export function choleskySolve(lower: Rows, b: readonly number[]): number[] {
  const x: number[] = []
  for (let i = 0; i < b.length; i++) {
    let left = b[i]!
    for (let k = 0; k < i; k++) left -= at(lower, i, k) * x[k]!
    x.push(left / at(lower, i, i))
  }
  for (let i = b.length - 1; i >= 0; i--) {
    let left = x[i]!
    for (let k = i + 1; k < b.length; k++) left -= at(lower, k, i) * x[k]!
    x[i] = left / at(lower, i, i)
  }
  return x
}

/** The inverse of L Lᵀ. */
export function choleskyInverse(lower: Rows): number[][] {
  return lower.map((_, column) =>
    choleskySolve(
      lower,
      lower.map((__, i) => (i === column ? 1 : 0)),
    ),
  )
}

function at(rows: Rows, i: number, j: number): number {
  return rows[i]![j]!
}
