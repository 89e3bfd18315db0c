import { createRequire } from 'node:module'
import type { Unit } from 'mathjs'
import { InputError } from '../../quantity/errors.js'
import { Measured } from './measured.js'
import { allKinds, isPoint, unitOfKind } from './signatures.js'

type MathJs = Pick<typeof import('mathjs'), 'unit'>
let loaded: MathJs | undefined

/** mathjs knows the dimensions of units; it is loaded when the first product of two units is asked for. */
function mathjs(): MathJs {
  try {
    loaded ??= createRequire(import.meta.url)('mathjs') as MathJs
    return loaded
  } catch {
    throw new InputError('product of two units', 'needs mathjs', 'install it beside porewater: npm install mathjs')
  }
}

/** A product of two quantities, as a quantity of the kinds that have its unit; a plain number where the units cancel. */
export function product(a: Measured, sign: '*' | '/', b: Measured): Measured | number {
  const right = mathUnit(b.number, b.unit)
  const left = mathUnit(a.number, a.unit)
  return inItsKinds(sign === '*' ? left.multiply(right) : left.divide(right))
}

/** A quantity to a plain power: a square, a root, or the inverse for -1. */
export function toPower(a: Measured, power: number): Measured | number {
  return inItsKinds(
    // The typings of mathjs want a unit for an exponent; it takes a number.
    mathUnit(a.number, a.unit).pow(power as unknown as Unit),
  )
}

function inItsKinds(result: Unit | number): Measured | number {
  if (typeof result === 'number') return result
  const kinds = allKinds().filter((kind) => !isPoint(kind) && sameDimension(result, kind))
  const [first] = kinds
  if (first !== undefined) return new Measured(result.toNumber(spelled(unitOfKind(first))), unitOfKind(first), kinds)
  const { value, unit } = result.toJSON() as { value: number; unit: string }
  return new Measured(value, withPowers(unit), ['Product'])
}

/** `L L` is `L²`. */
function withPowers(unit: string): string {
  return unit.replace(
    /(\b\w+)((?: \1\b)+)/g,
    (_, one: string, more: string) => one + '²³'[more.trim().split(' ').length - 1],
  )
}

function sameDimension(result: Unit, kind: string): boolean {
  const unit = unitOfKind(kind)
  return !isRatio(unit) && !UNKNOWN.test(unit) && result.equalBase(mathUnit(1, unit))
}

/** What a number in one unit must be multiplied by to be in another one of the same dimension. */
export function factorBetween(from: string, to: string): number {
  return mathUnit(1, from).toNumber(spelled(to))
}

/** Whether a unit is that of a plain ratio, by which anything may be multiplied. */
export function isRatio(unit: string): boolean {
  const [over, under] = unit.split('/')
  return unit === '1' || over === under
}

/** Units that mathjs does not know: charge is not amount, a root of a time has no name. */
const UNKNOWN = /\+|½|°|lx|raw/

function mathUnit(number: number, unit: string): Unit {
  if (UNKNOWN.test(unit))
    throw new InputError(
      'product of two units',
      `cannot be told for ${unit}`,
      'take the number out of one of them first',
    )
  return mathjs().unit(number, spelled(unit))
}

/** A symbol of ours as mathjs spells it: after a stroke, all that follows is divided by. */
function spelled(unit: string): string {
  return unit
    .replace(/[µμ]/g, 'u')
    .replace(/²/g, '^2')
    .replace(/³/g, '^3')
    .replace(/·/g, ' ')
    .replace(/Ω/g, 'ohm')
    .replace(/\bd\b(?!\w)/g, 'day')
    .replace(/^1\/(\w+)\^(\d)$/, '$1^-$2')
    .replace(/^1\/(\w+)$/, '$1^-1')
}
