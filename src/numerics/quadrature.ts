import { ConvergenceError } from '../quantity/errors.js'

/** Positive nodes of the 15-point Kronrod rule, the weights there, and those of the 7-point Gauss rule on every second node. */
const NODES = [
  0.9914553711208126, 0.9491079123427585, 0.8648644233597691, 0.7415311855993945, 0.5860872354676911,
  0.4058451513773972, 0.20778495500789848, 0,
]
const KRONROD = [
  0.022935322010529224, 0.06309209262997856, 0.10479001032225019, 0.14065325971552592, 0.1690047266392679,
  0.19035057806478542, 0.20443294007529889, 0.20948214108472782,
]
const GAUSS = [0, 0.1294849661688697, 0, 0.27970539148927664, 0, 0.3818300505051189, 0, 0.4179591836734694]

interface Piece {
  readonly from: number
  readonly to: number
  readonly value: number
  /** The integral of the absolute value. */
  readonly magnitude: number
  readonly error: number
}

/**
 * The integral of `f` over the pieces between successive `ends`: Gauss–Kronrod, the worst piece halved until the estimated error is
 * below `tolerance` of the integral of |f|, or of `floor` where that is more. Put an end at every kink and inside every narrow change,
 * which the nodes of a wide piece could miss; a weak singularity at an end is reached by halving.
 * The estimate is the difference of the two rules, which is the error of the weaker one, so the result is better than it says.
 */
export function integrate(f: (x: number) => number, ends: readonly number[], tolerance = 1e-13, floor = 0): number {
  const pieces: Piece[] = []
  for (let i = 1; i < ends.length; i++) pieces.push(piece(f, ends[i - 1]!, ends[i]!))
  let error = 0
  let halvings = 0
  for (; halvings < 2000; halvings++) {
    let value = 0
    let magnitude = 0
    let worst = 0
    error = 0
    for (let i = 0; i < pieces.length; i++) {
      const part = pieces[i]!
      value += part.value
      magnitude += part.magnitude
      error += part.error
      if (part.error > pieces[worst]!.error) worst = i
    }
    if (error <= tolerance * Math.max(magnitude, floor)) return value
    const { from, to } = pieces[worst]!
    const middle = (from + to) / 2
    if (middle === from || middle === to || !(error < Infinity))
      throw new ConvergenceError('quadrature', halvings, error, 'the function is not finite or not integrable there')
    pieces[worst] = piece(f, from, middle)
    pieces.push(piece(f, middle, to))
  }
  throw new ConvergenceError('quadrature', halvings, error, 'split the integral where the function has kinks')
}

function piece(f: (x: number) => number, from: number, to: number): Piece {
  const half = (to - from) / 2
  const middle = (from + to) / 2
  const centre = f(middle)
  let kronrod = KRONROD[7]! * centre
  let gauss = GAUSS[7]! * centre
  let magnitude = KRONROD[7]! * Math.abs(centre)
  for (let i = 0; i < 7; i++) {
    const low = f(middle - half * NODES[i]!)
    const high = f(middle + half * NODES[i]!)
    kronrod += KRONROD[i]! * (low + high)
    gauss += GAUSS[i]! * (low + high)
    magnitude += KRONROD[i]! * (Math.abs(low) + Math.abs(high))
  }
  const width = Math.abs(half)
  return { from, to, value: kronrod * half, magnitude: magnitude * width, error: Math.abs(kronrod - gauss) * width }
}
