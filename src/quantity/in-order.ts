import { InputError } from './errors.js'

/** Refuses two arguments of which the first is not below the second, or no more than a little above it. */
export function inOrder(lower: string, low: number, upper: string, high: number, slack = 0): void {
  if (!(low < high + slack)) throw new InputError(lower, `${low} is not below ${upper}, ${high}`, 'check both')
}
