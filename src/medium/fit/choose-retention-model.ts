import { attempt } from '../../quantity/attempt.js'
import { InputError, type PorewaterError } from '../../quantity/errors.js'
import { requireObject, requireRows } from '../../quantity/guard.js'
import type { FitRefusal } from '../medium-finding.js'
import type { RetentionFitRequest } from './fit-problem.js'
import type { RetentionFit } from './fit-result.js'
import { fitRetention } from './fit-retention.js'
import type { RetentionForm } from './retention-form.js'

/** Which models compete for which points. */
export interface RetentionChoiceRequest extends Omit<RetentionFitRequest, 'form'> {
  /** The models that compete: a list of forms, or `allRetentionForms`. */
  readonly forms: readonly RetentionForm[]
}

/** The fits of several models to the same points. */
export interface RetentionChoice {
  /** The fit with the lowest information criterion. */
  readonly best: RetentionFit
  /** All fits, the best first. */
  readonly fits: readonly RetentionFit[]
  /** The models that these points cannot tell. */
  readonly refused: readonly RefusedModel[]
}

/** A model that cannot be fitted, and why. */
export interface RefusedModel {
  /** Short name of the equation. */
  readonly kind: string
  /** Why, as a code. */
  readonly reason: FitRefusal
  /** With what `fitRetention` refuses it: which number the points do not tell, and what to measure. */
  readonly error: PorewaterError
}

/**
 * Fits several retention models to the same points and puts them in the order of Akaike's information criterion, which weighs
 * the misfit against the number of parameters.
 *
 * A model that is better by less than 2 is not really better: take the simpler one.
 *
 * @equation `\mathrm{AICc} = N \ln\frac{\sum r_i^2}{N} + 2k + \frac{2k(k+1)}{N-k-1}`
 * @param input - Points, models and what is known already.
 * @returns The best fit, all fits in order, and the models that were refused.
 * @throws `DomainError` outside the ranges; `InputError` when every model is refused.
 * @source hurvich-1989
 * @example
 * const readings = [[1, 0.918], [5, 0.861], [10, 0.781], [20, 0.66], [50, 0.484], [100, 0.373], [300, 0.252]] as const
 * const choice = chooseRetentionModel({
 *   forms: [formVanGenuchten1980, formCampbell1974],
 *   points: readings.map(([s, w]) => ({ suction: centimetresOfSuction(s), waterContent: waterContent(w) })),
 * })
 * choice.best.model.kind // => 'van-genuchten-1980'
 */
export function chooseRetentionModel(input: RetentionChoiceRequest): RetentionChoice {
  requireObject(input, 'input')
  const { forms, ...request } = input
  requireRows(forms, 'forms')
  const fits: RetentionFit[] = []
  const refused: RefusedModel[] = []
  for (const form of forms) {
    const fit = attempt(() => fitRetention({ ...request, form }))
    if (fit.ok) fits.push(fit.value)
    else if (fit.error.code === 'outside-domain') throw fit.error
    else refused.push(refusal(form.kind, fit.error))
  }
  fits.sort((a, b) => a.aicc - b.aicc)
  const [best] = fits
  if (best === undefined) {
    throw new InputError(
      'points',
      `no model can be told: ${refused.map(({ error }) => error.message).join(' | ') || 'none was given'}`,
      'measure at more suctions, or fix saturated or residual',
    )
  }
  return { best, fits, refused }
}

function refusal(kind: string, error: PorewaterError): RefusedModel {
  return { kind, reason: error.code === 'no-convergence' ? 'search-without-end' : 'not-told-by-points', error }
}
