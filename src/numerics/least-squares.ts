/** A linear fit by least squares. */
export interface LinearFit {
  readonly coefficients: readonly number[]
  /** The inverse of XᵀWX: times the residual variance it is the covariance of the coefficients. */
  readonly inverse: readonly (readonly number[])[]
  /** Observed less fitted, row by row. */
  readonly residuals: readonly number[]
  /** How much each row determines its own fitted value, from 0 to 1. */
  readonly leverages: readonly number[]
}

/**
 * Weighted linear least squares by Householder's orthogonal triangles (Golub and Van Loan, Matrix Computations, section 5.3), which
 * keeps the digits that the normal equations lose. Undefined when the columns depend on each other within rounding.
 */
export function leastSquares(
  rows: readonly (readonly number[])[],
  observed: readonly number[],
  weights?: readonly number[],
): LinearFit | undefined {
  const p = rows[0]?.length ?? 0
  const root = (i: number) => (weights === undefined ? 1 : Math.sqrt(weights[i]!))
  const matrix = rows.map((row, i) => row.map((value) => value * root(i)))
  const right = observed.map((value, i) => value * root(i))
  if (!reflectToTriangle(matrix, right, p)) return undefined
  const inverseR = invertedTriangle(matrix, p)
  const coefficients = inverseR.map((row) => row.reduce((total, value, k) => total + value * right[k]!, 0))
  const inverse = inverseR.map((a) => inverseR.map((b) => a.reduce((total, value, k) => total + value * b[k]!, 0)))
  const residuals = rows.map((row, i) => row.reduce((left, value, k) => left - value * coefficients[k]!, observed[i]!))
  const leverages = rows.map((row, i) => {
    let total = 0
    for (let k = 0; k < p; k++) {
      let dot = 0
      for (let m = 0; m <= k; m++) dot += row[m]! * inverseR[m]![k]!
      total += (root(i) * dot) ** 2
    }
    return Math.min(1, total)
  })
  return { coefficients, inverse, residuals, leverages }
}

/** Turns the matrix into its triangle and the right side with it; false when its columns depend on each other. */
function reflectToTriangle(matrix: readonly number[][], right: number[], p: number): boolean {
  const n = matrix.length
  for (let j = 0; j < p; j++) {
    let norm = 0
    let whole = 0
    for (let i = 0; i < n; i++) {
      if (i >= j) norm = Math.hypot(norm, matrix[i]![j]!)
      whole = Math.hypot(whole, matrix[i]![j]!)
    }
    if (!(norm > 1e-11 * whole)) return false
    const head = matrix[j]![j]! > 0 ? -norm : norm
    const mirror = matrix.slice(j).map((row, i) => (i === 0 ? row[j]! - head : row[j]!))
    const length = mirror.reduce((total, value) => total + value * value, 0)
    const reflect = (get: (i: number) => number, set: (i: number, value: number) => void) => {
      let dot = 0
      for (let i = 0; i < mirror.length; i++) dot += mirror[i]! * get(i + j)
      for (let i = 0; i < mirror.length; i++) set(i + j, get(i + j) - ((2 * dot) / length) * mirror[i]!)
    }
    for (let k = j; k < p; k++) {
      reflect(
        (i) => matrix[i]![k]!,
        (i, value) => {
          matrix[i]![k] = value
        },
      )
    }
    reflect(
      (i) => right[i]!,
      (i, value) => {
        right[i] = value
      },
    )
  }
  return true
}

function invertedTriangle(matrix: readonly (readonly number[])[], p: number): number[][] {
  const inverse = Array.from({ length: p }, () => new Array<number>(p).fill(0))
  for (let j = 0; j < p; j++) {
    inverse[j]![j] = 1 / matrix[j]![j]!
    for (let i = j - 1; i >= 0; i--) {
      let sum = 0
      for (let k = i + 1; k <= j; k++) sum += matrix[i]![k]! * inverse[k]![j]!
      inverse[i]![j] = -sum / matrix[i]![i]!
    }
  }
  return inverse
}
