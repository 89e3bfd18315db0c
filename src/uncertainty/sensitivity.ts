import { isPorewaterError } from '../quantity/attempt.js'

/** Slope of a function of one input at its estimate, and its bend over one standard uncertainty. */
export interface Sensitivity {
  readonly slope: number
  /** (f(x+u) + f(x-u))/2 - f(x); undefined where the function has no value on one side. */
  readonly bend: number | undefined
}

/**
 * Slope by differences over a tenth of the standard uncertainty, the second of half the step to take off the leading error. Where the
 * function refuses one side, as at the end of its range, the differences are taken on the other side.
 */
export function sensitivity(f: (x: number) => number, x: number, u: number): Sensitivity {
  const step = u > 0 ? u / 10 : 1e-5 * (Math.abs(x) || 1)
  const at = (dx: number) => valueOr(() => f(x + dx))
  const middle = f(x)
  const bendUp = at(u)
  const bendDown = at(-u)
  const bend = bendUp === undefined || bendDown === undefined ? undefined : (bendUp + bendDown) / 2 - middle
  const [up, down] = [at(step), at(-step)]
  if (up !== undefined && down !== undefined) {
    const wide = (up - down) / (x + step - (x - step))
    const half = (f(x + step / 2) - f(x - step / 2)) / (x + step / 2 - (x - step / 2))
    return { slope: half + (half - wide) / 3, bend }
  }
  const side = up !== undefined ? step : -step
  // Not caught: a function without a value on either side has no slope, and its own refusal says why.
  const wide = (f(x + side) - middle) / (x + side - x)
  const half = (f(x + side / 2) - middle) / (x + side / 2 - x)
  return { slope: 2 * half - wide, bend }
}

function valueOr(calculation: () => number): number | undefined {
  try {
    const value = calculation()
    return value - value === 0 ? value : undefined
  } catch (error) {
    if (isPorewaterError(error)) return undefined
    throw error
  }
}
