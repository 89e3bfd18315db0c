/**
 * Solves a system whose matrix has three diagonals, by elimination without pivoting (the matrix must be diagonally dominant or nearly
 * so). The right side becomes the solution; the diagonal is overwritten. `lower[i]` stands left of `diagonal[i]`, `upper[i]` right of it.
 */
export function solveTridiagonal(
  lower: Float64Array,
  diagonal: Float64Array,
  upper: Float64Array,
  right: Float64Array,
): void {
  const n = right.length
  // What is left of the diagonal is kept as its inverse: the way back, and each later right side, then divides no more. What a row needs of the
  // one before stays at hand, because a row waits for it.
  let inverse = 1 / diagonal[0]!
  let before = right[0]!
  diagonal[0] = inverse
  for (let i = 1; i < n; i++) {
    const share = lower[i]! * inverse
    inverse = 1 / (diagonal[i]! - share * upper[i - 1]!)
    before = right[i]! - share * before
    diagonal[i] = inverse
    right[i] = before
  }
  substituteBack(diagonal, upper, right)
}

/** Solves the same system for another right side, after `solveTridiagonal` has overwritten the diagonal. */
export function solveTridiagonalAgain(
  lower: Float64Array,
  diagonal: Float64Array,
  upper: Float64Array,
  right: Float64Array,
): void {
  const n = right.length
  let before = right[0]!
  for (let i = 1; i < n; i++) {
    before = right[i]! - lower[i]! * diagonal[i - 1]! * before
    right[i] = before
  }
  substituteBack(diagonal, upper, right)
}

function substituteBack(inverse: Float64Array, upper: Float64Array, right: Float64Array): void {
  const last = right.length - 1
  let after = right[last]! * inverse[last]!
  right[last] = after
  for (let i = last - 1; i >= 0; i--) {
    after = (right[i]! - upper[i]! * after) * inverse[i]!
    right[i] = after
  }
}
