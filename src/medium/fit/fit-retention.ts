import { type LeastSquaresMinimum, nonlinearLeastSquares } from '../../numerics/levenberg-marquardt.js'
import { attempt } from '../../quantity/attempt.js'
import { requireObject } from '../../quantity/guard.js'
import { fitProblem, type RetentionFitRequest } from './fit-problem.js'
import { fitResult, type RetentionFit } from './fit-result.js'

/**
 * Fits a retention model to measured points by least squares, and says how well each of its numbers is known.
 *
 * Start values come from the points: a grid over the shape of the curve, with the two limits solved from a straight line at
 * each place. From the three best places the method of Levenberg and Marquardt goes on, and the best end counts. Saturated
 * water content stays at or below 1, residual at or above 0 and at or below the driest point. Where conductivities are given,
 * those at saturation and the exponent of pore connection (−1.99 to 10) are fitted too.
 *
 * @equation `\min \sum_i \left(\frac{\theta_i - \theta(s_i)}{u_\theta}\right)^2 + \sum_j \left(\frac{\log_{10} K_j - \log_{10} K(s_j)}{u_{\log K}}\right)^2`
 * @param request - Points, model and what is known already.
 * @returns The curve with standard errors, correlation, misfit and findings.
 * @throws `DomainError` outside the ranges; `InputError` when the points cannot tell a parameter, with its name and the reason;
 * `ConvergenceError` when the search does not end.
 * @validity Standard errors are first-order and assume independent points; points of one drying run are not quite independent.
 * @source marquardt-1963; AICc: hurvich-1989
 * @example
 * const measured = [[1, 0.918], [5, 0.861], [10, 0.781], [20, 0.66], [50, 0.484], [100, 0.373], [300, 0.252]] as const
 * const fit = fitRetention({
 *   form: formVanGenuchten1980,
 *   points: measured.map(([s, w]) => ({ suction: centimetresOfSuction(s), waterContent: waterContent(w) })),
 * })
 * fit.rmse // => 0.00027
 */
export function fitRetention(request: RetentionFitRequest): RetentionFit {
  requireObject(request, 'request')
  const problem = fitProblem(request)
  const ends = problem.starts.map((start) => attempt(() => nonlinearLeastSquares({ ...problem, start })))
  let best: LeastSquaresMinimum | undefined
  for (const end of ends) {
    if (end.ok && !(best !== undefined && best.sumOfSquares <= end.value.sumOfSquares)) best = end.value
  }
  // Only when none of the searches ended does their failure matter.
  if (best === undefined) for (const end of ends) if (!end.ok) throw end.error
  return fitResult(problem, best as LeastSquaresMinimum)
}
