import { InputError } from '../../quantity/errors.js'
import { besideOf, operated } from './arithmetic.js'
import { Measured } from './measured.js'
import { isRatio } from './product.js'

type Plain = (...values: never[]) => unknown

/** `Math` for quantities: what is larger, rounded or without sign keeps its kind, a root takes that of its unit, a logarithm wants a plain number. */
export function heldMath(): typeof Math {
  const own = Object.fromEntries(
    Object.getOwnPropertyNames(Math).map((name) => {
      const member: unknown = Math[name as keyof typeof Math]
      return [name, typeof member === 'function' ? ofNumbers(name, member as Plain) : member]
    }),
  )
  return Object.assign(own as unknown as typeof Math, {
    abs: keep(Math.abs),
    round: keep(Math.round),
    floor: keep(Math.floor),
    ceil: keep(Math.ceil),
    trunc: keep(Math.trunc),
    sign: (value: unknown) => Math.sign(Number(value)),
    max: pick('>', Math.max),
    min: pick('<', Math.min),
    sqrt: (value: unknown) => power(value, 0.5, Math.sqrt),
    cbrt: (value: unknown) => power(value, 1 / 3, Math.cbrt),
    pow: (value: unknown, exponent: unknown) => operated('**', value, exponent),
  })
}

function keep(round: (value: number) => number) {
  return (value: unknown) =>
    value instanceof Measured ? new Measured(round(value.number), value.unit, value.kinds) : round(value as number)
}

function pick(sign: '<' | '>', plain: (...values: number[]) => number) {
  return (...values: unknown[]) => {
    const first = values.find((value): value is Measured => value instanceof Measured)
    if (first === undefined) return plain(...(values as number[]))
    const read = values.map((value) => besideOf(value, first))
    return read.reduce((best, value) => (operated(sign, value, best) === true ? value : best))
  }
}

/** A root by the function that is exact for plain numbers, and by the unit's own power for what has one. */
function power(value: unknown, exponent: number, plain: (value: number) => number): unknown {
  return hasUnit(value) ? operated('**', value, exponent) : plain(Number(value))
}

/** A function of plain numbers, such as a logarithm: of a quantity in litres it would depend on the unit. */
function ofNumbers(name: string, plain: Plain): (...values: unknown[]) => unknown {
  return (...values) => {
    const wrong = values.find(hasUnit)
    if (wrong === undefined) return plain(...(values as never[]))
    throw new InputError(
      `Math.${name}`,
      `has no meaning for ${String(wrong)}`,
      'divide by a quantity of the same kind, or read the number out in a unit first',
    )
  }
}

/** Whether a number has a kind with a unit: what was read out on purpose and shares are plain numbers. */
function hasUnit(value: unknown): value is Measured {
  return value instanceof Measured && value.kinds.length > 0 && !isRatio(value.unit)
}
