import { inspect } from 'node:util'
import { numberWithUnit } from '../number-with-unit.js'

/**
 * A number with its unit and its kind, as the session holds it: plain JavaScript would forget both in the first sum.
 * Where JavaScript wants a plain number, it is the number in the unit that is shown.
 */
export class Measured {
  constructor(
    readonly number: number,
    readonly unit: string,
    /** The kinds that it may be; none where it was read out in a unit, as by `inMillilitres()`. */
    readonly kinds: readonly string[] = [],
  ) {
    Object.freeze(this)
  }
  valueOf(): number {
    return this.number
  }
  toString(): string {
    return numberWithUnit(this.number, this.unit)
  }
  toJSON(): number {
    return this.number
  }
  toFixed(digits?: number): string {
    return this.number.toFixed(digits)
  }
  toPrecision(digits?: number): string {
    return this.number.toPrecision(digits)
  }
  toExponential(digits?: number): string {
    return this.number.toExponential(digits)
  }
  [inspect.custom](): string {
    return this.toString()
  }
}
