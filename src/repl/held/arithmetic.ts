import { InputError } from '../../quantity/errors.js'
import type { KindName } from '../../text/generated/kind-types.js'
import { parseQuantity } from '../../text/parse.js'
import { inOtherKind } from './in-other-kind.js'
import { Measured } from './measured.js'
import { isRatio, product, toPower } from './product.js'
import { inUnit, isPoint, kindsWith, unitOfKind } from './signatures.js'
import { aKind } from './wrong-kind.js'

export type Operator = '+' | '-' | '*' | '/' | '%' | '**' | '<' | '<=' | '>' | '>=' | '==' | '===' | '!=' | '!=='

/** What an operator of JavaScript gives for quantities that have a kind; for anything else, what JavaScript gives. */
export function operated(sign: Operator, left: unknown, right: unknown): unknown {
  if (!(left instanceof Measured) && !(right instanceof Measured)) return plainly(sign, left, right)
  if (/[=!<>]/.test(sign)) return compared(sign, left, right)
  if (sign === '+' || sign === '-') return summed(sign, left, right)
  if (sign === '%') return remainder(left, right)
  return multiplied(sign as '*' | '/' | '**', left, right)
}

/** The quantity with the other sign. */
export function negated(value: unknown): unknown {
  if (!(value instanceof Measured)) return -(value as number)
  refusePoint(value, 'has no opposite')
  return new Measured(-value.number, value.unit, value.kinds)
}

/** Two quantities as numbers in the unit of the first one; refused where they are of two kinds. */
function alike(sign: string, left: unknown, right: unknown): { a: number; b: number; of: Measured } {
  const of = (left instanceof Measured ? left : right) as Measured
  const [a, b] = [left, right].map((one) => read(sign, one, of)) as [Measured | number, Measured | number]
  const number = (one: Measured | number): number => {
    if (typeof one === 'number' || (one.unit === of.unit && one.kinds.join() === of.kinds.join())) return Number(one)
    const shared = of.kinds.find((kind) => one.kinds.includes(kind))
    if (shared !== undefined)
      return (
        inOtherKind(one, shared) /
        (of.unit === unitOfKind(shared) ? 1 : inOtherKind(new Measured(1, of.unit, [shared]), shared))
      )
    const free = of.kinds.length === 0 || one.kinds.length === 0
    const kinds = of.kinds.length > 0 ? of.kinds : one.kinds.length > 0 ? one.kinds : kindsWith(of.unit)
    const same = free
      ? kinds.map((kind) => inUnit(one.number, one.unit, kind, of.unit)).find((n) => n !== undefined)
      : undefined
    if (same === undefined) throw mixture(sign, left, right)
    return same
  }
  return { a: number(a), b: number(b), of }
}

/** What stands beside a quantity, read as one if it is text. */
export function besideOf(one: unknown, of: Measured): Measured | number {
  return read(',', one, of)
}

/** The other side of an operator: a quantity, text that stands for one, or a plain number. */
function read(sign: string, one: unknown, of: Measured): Measured | number {
  if (one instanceof Measured || typeof one === 'number') return one
  if (typeof one !== 'string') throw mixture(sign, of, one)
  for (const kind of of.kinds.length > 0 ? of.kinds : kindsWith(of.unit)) {
    try {
      const number = parseQuantity(one, kind as KindName) as number
      return new Measured(number, unitOfKind(kind), [kind])
    } catch {}
  }
  throw mixture(sign, of, one)
}

function summed(sign: '+' | '-', left: unknown, right: unknown): Measured | number {
  if (left instanceof Measured && isPoint(left.kinds[0] ?? '') && !isRatio(left.unit)) return moved(sign, left, right)
  const { a, b, of } = alike(sign, left, right)
  const result = sign === '+' ? a + b : a - b
  const bare = typeof left === 'number' || typeof right === 'number'
  // `1 - porosity` is a plain number, as it is in a program; `inMillilitres(v) + 1` stays in millilitres.
  if (bare && of.unit === '1') return result
  if (isRatio(of.unit))
    return bare || isPoint(of.kinds[0] ?? '') ? unnamed(result, of.unit) : new Measured(result, of.unit, of.kinds)
  if (bare && of.kinds.length > 0)
    throw new InputError(
      `${said(left)} ${sign} ${said(right)}`,
      'has a number without a unit',
      `write the unit, such as '1 ${of.unit}'`,
    )
  if (!bare) refusePoint(of, 'is not added')
  return new Measured(result, of.unit, of.kinds)
}

/** The kind by which a place on a scale is moved. */
const STEPS: Readonly<Record<string, string>> = { Temperature: 'TemperatureChange', Instant: 'Duration' }

/** A place on a scale moved by a step, or the step between two places. Moments are moved by seconds without a unit, too. */
function moved(sign: '+' | '-', left: Measured, right: unknown): Measured {
  const [kind = ''] = left.kinds
  const step = STEPS[kind]
  if (step === undefined) return refusePoint(left, sign === '+' ? 'is not added' : 'is not subtracted') as never
  const one = new Measured(0, unitOfKind(step), [step])
  if (sign === '-' && right instanceof Measured && right.kinds.includes(kind))
    return new Measured(left.number - right.number, one.unit, one.kinds)
  const by =
    kind === 'Instant' && typeof right === 'number' ? right : Number((summed('+', one, right) as Measured).number)
  return new Measured(sign === '+' ? left.number + by : left.number - by, left.unit, left.kinds)
}

/** A number in a unit, of whichever kind: a mean of water contents, or the difference of two. */
function unnamed(number: number, unit: string): Measured | number {
  return unit === '1' ? number : new Measured(number, unit)
}

function multiplied(sign: '*' | '/' | '**', left: unknown, right: unknown): Measured | number {
  for (const one of [left, right])
    if (typeof one !== 'number' && !(one instanceof Measured)) throw mixture(sign, left, right)
  const [a, b] = [left, right] as [Measured | number, Measured | number]
  for (const one of [a, b]) if (one instanceof Measured && !isRatio(one.unit)) refusePoint(one, 'is not multiplied')
  if (sign === '**') {
    if (b instanceof Measured && !isRatio(b.unit)) throw mixture(sign, left, right)
    const readOut = !(a instanceof Measured) || a.kinds.length === 0 || isRatio(a.unit)
    return readOut ? Number(a) ** Number(b) : toPower(a, Number(b))
  }
  return byNumber(a, sign, b) ?? product(whole(a), sign, whole(b))
}

/** Where one side is a plain number or ratio, the other keeps its kind. */
function byNumber(a: Measured | number, sign: '*' | '/', b: Measured | number): Measured | number | undefined {
  const [ratioA, ratioB] = [a, b].map((one) => typeof one === 'number' || isRatio(one.unit))
  const both = sign === '*' ? Number(a) * Number(b) : Number(a) / Number(b)
  if (ratioA && ratioB) return scaledRatio(a, sign, b, both)
  if (ratioB && a instanceof Measured) return new Measured(both, a.unit, a.kinds)
  if (sign === '*' && ratioA && b instanceof Measured) return new Measured(both, b.unit, b.kinds)
  // What was read out in a unit on purpose is a number from here on.
  if ([a, b].some((one) => one instanceof Measured && one.kinds.length === 0)) return both
  // A litre over a litre, or litres that were read out: nothing is left of the unit.
  if (sign === '/' && a instanceof Measured && b instanceof Measured && a.unit === b.unit) return both
  if (sign === '/' && typeof a === 'number') return scale(toPower(b as Measured, -1), a)
  return undefined
}

/** Twice a drain fraction is one; a product of two shares is a plain number. */
function scaledRatio(a: Measured | number, sign: '*' | '/', b: Measured | number, both: number): Measured | number {
  const one = a instanceof Measured && typeof b === 'number' ? a : b
  if (!(one instanceof Measured) || (one === b && (sign === '/' || a instanceof Measured))) return both
  return isPoint(one.kinds[0] ?? '') ? unnamed(both, one.unit) : new Measured(both, one.unit, one.kinds)
}

function scale(value: Measured | number, by: number): Measured | number {
  return typeof value === 'number' ? value * by : new Measured(value.number * by, value.unit, value.kinds)
}

function whole(one: Measured | number): Measured {
  return typeof one === 'number' ? new Measured(one, '1') : one
}

function remainder(left: unknown, right: unknown): Measured {
  const { a, b, of } = alike('%', left, right)
  return new Measured(a % b, of.unit, of.kinds)
}

function compared(sign: Operator, left: unknown, right: unknown): boolean {
  // What is no quantity is equal to none.
  const comparable = [left, right].every(
    (one) => one instanceof Measured || typeof one === 'number' || typeof one === 'string',
  )
  if (!comparable && /^[=!]/.test(sign)) return sign.startsWith('!')
  const { a, b } = alike(sign, left, right)
  return plainly(sign, a, b) as boolean
}

function refusePoint(value: Measured, problem: string): void {
  const [kind] = value.kinds
  if (kind === undefined || !isPoint(kind)) return
  throw new InputError(
    String(value),
    `is ${aKind(value)}, a place on a scale, and ${problem}`,
    "see find('shift') and find('difference')",
  )
}

function mixture(sign: string, left: unknown, right: unknown): InputError {
  const [a, b] = [left, right].map((one) =>
    one instanceof Measured ? `${one} is ${aKind(one)}` : `${said(one)} is not`,
  )
  return new InputError(
    `${said(left)} ${sign} ${said(right)}`,
    'mixes two kinds',
    left instanceof Measured && right instanceof Measured
      ? `${a}, ${b}`
      : `${left instanceof Measured ? `${a}, ${b}` : `${b}, ${a}`}`,
  )
}

function said(one: unknown): string {
  return typeof one === 'string' ? `'${one.slice(0, 40)}'` : String(one).slice(0, 40)
}

function plainly(sign: Operator, left: unknown, right: unknown): unknown {
  const [a, b] = [left, right] as [number, number]
  switch (sign) {
    case '+':
      return a + b
    case '-':
      return a - b
    case '*':
      return a * b
    case '/':
      return a / b
    case '%':
      return a % b
    case '**':
      return a ** b
    case '<':
      return a < b
    case '<=':
      return a <= b
    case '>':
      return a > b
    case '>=':
      return a >= b
    case '==':
      // biome-ignore lint/suspicious/noDoubleEquals: the person has typed it
      return a == b
    case '!=':
      // biome-ignore lint/suspicious/noDoubleEquals: the person has typed it
      return a != b
    case '===':
      return a === b
    default:
      return a !== b
  }
}
