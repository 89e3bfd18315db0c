import { InputError } from '../quantity/errors.js'
import { numberIn, optionOr, requireObject, wholeNumberIn } from '../quantity/guard.js'
import { DIGITS, UNCERTAINTY } from './domains.js'
import type { KindName, KindTypes } from './generated/kind-types.js'
import { kindNamed } from './kind-named.js'
import { shownNumber, type TextUnit } from './text-kind.js'

/** How a quantity is written. */
export interface TextStyle {
  /** Unit to write it in, as the kind lists it; its canonical unit by default. */
  readonly unit?: string
  /** Standard uncertainty in the canonical unit; the number is rounded to its second digit. Unit: that of the kind. Range: (0, ∞). */
  readonly uncertainty?: number
  /** Significant digits where no uncertainty is given; six by default. Unit: 1. Range: integers [1, 17]. */
  readonly digits?: number
}

/**
 * A quantity as text with its unit: always a decimal point, no thousands separators, the same on every machine.
 *
 * @procedure Converts to the wanted unit and rounds to the second digit of the uncertainty (JCGM 100:2008, 7.2.6), or to a number of significant digits.
 * @param value - The quantity. Unit: that of the kind. Range: (-∞, ∞).
 * @param kind - Name of its kind.
 * @param style - Unit and rounding.
 * @returns Number, space, unit.
 * @throws `InputError` for a unit that the kind does not list, `DomainError` for a value that is not finite.
 * @source jcgm-100-2008, 7.2.6 [confirmed by public code or text, source not seen]
 * @example
 * formatQuantity(litres(0.39706), 'Volume', { unit: 'mL', uncertainty: 0.004 }) // => '397.1 mL'
 * formatQuantity(celsius(20), 'Temperature', { unit: '°F' }) // => '68 °F'
 */
export function formatQuantity<K extends KindName>(value: KindTypes[K], kind: K, style: TextStyle = {}): string {
  requireObject(style, 'style')
  const about = kindNamed(kind)
  const { units } = about
  numberIn(
    value,
    {
      quantity: kind,
      unit: about.kept,
      min: -Infinity,
      max: Infinity,
      ends: '()',
      hint: 'only finite numbers can be written',
    },
    'value',
  )
  const digits = wholeNumberIn(optionOr(style.digits, 6), DIGITS, 'digits')
  const unit =
    style.unit === undefined ? units[0] : units.find((one) => one.shown === style.unit || one.ucum === style.unit)
  if (unit === undefined)
    throw new InputError(
      'unit',
      `"${style.unit}" is not a unit of ${kind}`,
      `use one of ${units.map((one) => one.shown).join(', ')}`,
    )
  const number = shownNumber(value, unit)
  const text =
    style.uncertainty === undefined ? significant(number, digits) : rounded(number, value, style.uncertainty, unit)
  return unit.shown === '1' ? text : `${text} ${unit.shown}`
}

function significant(number: number, digits: number): string {
  return plain(Number(number.toPrecision(digits)))
}

function rounded(number: number, value: number, uncertainty: number, unit: TextUnit): string {
  numberIn(uncertainty, UNCERTAINTY, 'uncertainty')
  const there = Math.abs(shownNumber(value + uncertainty, unit) - number)
  const decimals = 1 - Math.floor(Math.log10(Number(there.toPrecision(2))))
  if (decimals > 0) return number.toFixed(Math.min(decimals, 100))
  const step = 10 ** -decimals
  return plain(Math.round(number / step) * step)
}

/** A number without exponent where that stays readable. */
function plain(number: number): string {
  const text = String(number)
  const [mantissa = '', exponent] = text.split('e-')
  if (exponent === undefined || Number(exponent) > 12) return text
  return number.toFixed(Number(exponent) + (mantissa.split('.')[1]?.length ?? 0))
}
