import { type LeastSquaresMinimum, nonlinearLeastSquares } from '../../numerics/levenberg-marquardt.js'
import { attempt } from '../../quantity/attempt.js'
import { ConvergenceError } from '../../quantity/errors.js'
import type { MediumProblem } from './medium-problem.js'

/** How far the trials of the beginning lie from the guess, as natural logarithms. */
const TRIALS = [-0.7, 0, 0.7]
/** From how many of them the search goes on: valleys are narrow and have ends of their own. */
const BEGINS = 2

/** The best of the ends from the best trials around the guess. */
export function searchMedium(problem: MediumProblem): LeastSquaresMinimum {
  const out = new Float64Array(problem.count)
  const trials = trialsAround(problem).map((place) => {
    problem.residuals(place, out)
    return { place, value: out.reduce((sum, value) => sum + value * value, 0) }
  })
  const begins = trials.filter(({ value }) => !Number.isNaN(value)).sort((a, b) => a.value - b.value)
  if (begins.length === 0)
    throw new ConvergenceError('simulating the guess', 0, Number.NaN, 'guess a medium nearer to what it is')
  const ends = begins
    .slice(0, BEGINS)
    .map(({ place }) => attempt(() => nonlinearLeastSquares({ ...problem, start: place })))
  const found = ends.flatMap((end) => (end.ok ? [end.value] : []))
  // Only when none of the searches ended does their failure matter.
  for (const end of ends) if (!end.ok && found.length === 0) throw end.error
  return found.sort((a, b) => a.sumOfSquares - b.sumOfSquares)[0]!
}

/** The guess, and around it half and double of what is sought by its logarithm. */
function trialsAround({ sought }: MediumProblem): number[][] {
  return sought.reduce<number[][]>(
    (places, number, i) =>
      number.logarithmic
        ? places.flatMap((place) =>
            TRIALS.map((off) =>
              place.map((value, j) => (j === i ? Math.min(Math.max(value + off, number.low), number.high) : value)),
            ),
          )
        : places,
    [sought.map(({ guess }) => guess)],
  )
}
