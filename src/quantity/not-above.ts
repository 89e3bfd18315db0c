import { InputError } from './errors.js'

/** Refuses two arguments that contradict each other: the lower is above the upper. */
export function notAbove(lower: string, low: number, upper: string, high: number): void {
  if (low > high) throw new InputError(lower, `${low} is above ${upper}, ${high}`, 'swap them')
}
