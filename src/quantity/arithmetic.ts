import { answerOf } from '../quantity/answer.js'
import { DomainError } from './errors.js'
import { numberOf, requireList } from './guard.js'
import type { Additive, OneKind } from './kind.js'

/**
 * The sum of two amounts of the same kind.
 *
 * @equation `q = a + b`
 * @param a - An amount. Unit: any. Range: any.
 * @param b - An amount of the same kind. Unit: that of a. Range: any.
 * @returns Their sum. Unit: that of a.
 * @source definition
 * @example
 * inLitres(add(litres(2), millilitres(500))) // => 2.5
 */
export function add<Q extends Additive>(a: Q, b: NoInfer<Q>): Q {
  return (numberOf(a, 'a') + numberOf(b, 'b')) as Q
}

/**
 * One amount less another of the same kind. The result may be negative, where an amount could not have been made so.
 *
 * @equation `q = a - b`
 * @param a - An amount. Unit: any. Range: any.
 * @param b - An amount of the same kind. Unit: that of a. Range: any.
 * @returns Their difference. Unit: that of a.
 * @source definition
 * @example
 * inLitres(subtract(litres(2), millilitres(500))) // => 1.5
 */
export function subtract<Q extends Additive>(a: Q, b: NoInfer<Q>): Q {
  return (numberOf(a, 'a') - numberOf(b, 'b')) as Q
}

/**
 * An amount times a plain number.
 *
 * @equation `q = f a`
 * @param amount - An amount. Unit: any. Range: any.
 * @param factor - Plain number. Unit: 1. Range: (-∞, ∞).
 * @returns The scaled amount. Unit: that of amount.
 * @throws `DomainError` when the factor is not finite.
 * @source definition
 * @example
 * inLitres(scale(litres(2), 3)) // => 6
 */
export function scale<Q extends Additive>(amount: Q, factor: number): Q {
  if (typeof factor !== 'number' || factor - factor !== 0) {
    throw new DomainError(factor, {
      quantity: 'factor',
      unit: '1',
      min: -Infinity,
      max: Infinity,
      ends: '()',
      hint: 'scale by a finite number',
    })
  }
  return answerOf(numberOf(amount, 'amount') * factor, 'factor') as Q
}

/**
 * The sum of a list of amounts of one kind; zero for an empty list.
 *
 * @equation `q = \sum_i a_i`
 * @param amounts - Amounts of one kind. Unit: any. Range: any.
 * @returns Their sum. Unit: that of the amounts.
 * @throws `InputError` for what is no list, and for an entry that is no number.
 * @source definition
 * @example
 * inLitres(sum([litres(1), litres(2)])) // => 3
 */
export function sum<Q extends Additive>(amounts: readonly Q[] & readonly OneKind<Q>[]): Q {
  requireList(amounts, 'amounts')
  let total = 0
  for (let i = 0; i < amounts.length; i++) total += numberOf(amounts[i]!, `amounts[${i}]`)
  return total as Q
}

/**
 * How many times one amount holds another of the same kind, as a plain number.
 *
 * @equation `f = a / b`
 * @param a - An amount. Unit: any. Range: any.
 * @param b - An amount of the same kind, not zero. Unit: that of a. Range: any.
 * @returns Plain number. Unit: 1.
 * @throws `DomainError` when the quotient is not finite.
 * @source definition
 * @example
 * ratio(litres(3), litres(2)) // => 1.5
 */
export function ratio<Q extends Additive>(a: Q, b: NoInfer<Q>): number {
  const quotient = numberOf(a, 'a') / numberOf(b, 'b')
  if (quotient - quotient !== 0) {
    throw new DomainError(b, {
      quantity: 'divisor',
      unit: 'unit of the dividend',
      min: -Infinity,
      max: Infinity,
      ends: '()',
      hint: 'divide by an amount other than zero',
    })
  }
  return quotient
}
