import type { Domain } from './domain.js'

/**
 * A number lies where the mathematics or the physics has no meaning.
 * Recognise it by `code`, not by `instanceof`: two copies of the package may be loaded.
 */
export class DomainError extends Error {
  declare readonly code: 'outside-domain'
  declare readonly name: 'DomainError'
  /** Which argument, where the function has several. */
  declare readonly argument: string | undefined
  declare readonly quantity: string
  declare readonly value: number
  declare readonly unit: string
  declare readonly min: number
  declare readonly max: number
  declare readonly ends: Domain['ends']
  declare readonly hint: string
  constructor(value: number, domain: Domain, argument?: string) {
    // The range is written out, not by rangeText: every function of the package carries these bytes.
    super(
      `${argument ?? domain.quantity} is ${typeof value === 'number' ? value + (domain.unit === '1' ? '' : ` ${domain.unit}`) : typeof value}, outside ${domain.ends[0]}${domain.min}, ${domain.max}${domain.ends[1]}: ${domain.hint}`,
    )
    Object.assign(this, domain, { code: 'outside-domain', name: 'DomainError', value, argument })
  }
}

/** What was passed contradicts itself, whatever the single numbers are: lengths that differ, points swapped, a name unknown. */
export class InputError extends Error {
  declare readonly code: 'bad-input'
  declare readonly name: 'InputError'
  /** Which argument or pair of arguments. */
  declare readonly argument: string
  declare readonly hint: string
  constructor(argument: string, problem: string, hint: string) {
    super(`${argument}: ${problem}; ${hint}`)
    Object.assign(this, { code: 'bad-input', name: 'InputError', argument, hint })
  }
}

/** An iteration did not reach its tolerance. */
export class ConvergenceError extends Error {
  readonly code = 'no-convergence'
  override readonly name = 'ConvergenceError'
  readonly method: string
  readonly iterations: number
  /** What was still missing when it gave up, in the unit of the result. */
  readonly residual: number
  readonly hint: string
  constructor(method: string, iterations: number, residual: number, hint: string) {
    super(`${method} did not converge in ${iterations} iterations (still ${residual} away): ${hint}`)
    this.method = method
    this.iterations = iterations
    this.residual = residual
    this.hint = hint
  }
}

/** Every error that the core throws on purpose. Tell them apart by `code`. */
export type PorewaterError = DomainError | InputError | ConvergenceError
