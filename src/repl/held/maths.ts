import { besideOf, operated } from './arithmetic.js'
import { Measured } from './measured.js'

/** `Math` with those functions that keep a kind: what is larger, smaller, rounded or without sign. */
export function heldMath(): typeof Math {
  const keep = (round: (value: number) => number) => (value: unknown) =>
    value instanceof Measured ? new Measured(round(value.number), value.unit, value.kinds) : round(value as number)
  const pick =
    (sign: '<' | '>', plain: (...values: number[]) => number) =>
    (...values: unknown[]) => {
      const first = values.find((value): value is Measured => value instanceof Measured)
      if (first === undefined) return plain(...(values as number[]))
      const read = values.map((value) => besideOf(value, first))
      return read.reduce((best, value) => (operated(sign, value, best) === true ? value : best))
    }
  const own = Object.fromEntries(
    Object.getOwnPropertyNames(Math).map((name) => [name, Math[name as keyof typeof Math]]),
  )
  return Object.assign(own as unknown as typeof Math, {
    abs: keep(Math.abs),
    round: keep(Math.round),
    floor: keep(Math.floor),
    ceil: keep(Math.ceil),
    trunc: keep(Math.trunc),
    max: pick('>', Math.max),
    min: pick('<', Math.min),
  })
}
