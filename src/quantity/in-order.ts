import { InputError } from './errors.js'

/** Refuses two arguments of which the first is not below the second. */
export function inOrder(lower: string, low: number, upper: string, high: number): void {
  if (!(low < high)) throw new InputError(lower, `${low} is not below ${upper}, ${high}`, 'check both')
}
