import { InputError } from '../quantity/errors.js'
import { requireObject } from '../quantity/guard.js'
import type { KindName, KindTypes } from './generated/kind-types.js'
import { kindNamed } from './kind-named.js'
import { keptNumber, shownNumber, type TextUnit } from './text-kind.js'

/** A number with the UCUM code of its unit, as it goes into files and messages. */
export interface CodedQuantity {
  /** The number. Unit: that of the code. */
  readonly value: number
  /** UCUM code of the unit, case sensitive. */
  readonly code: string
}

/**
 * A quantity as a number with the UCUM code of its unit.
 *
 * @procedure Looks the code up among the units of the kind and converts.
 * @param value - The quantity. Unit: that of the kind. Range: any.
 * @param kind - Name of its kind.
 * @param code - UCUM code to write it in; that of the canonical unit by default.
 * @returns Number and code.
 * @throws `InputError` for a code that the kind does not list.
 * @source ucum-2017
 * @example
 * toUcum(litres(0.5), 'Volume', 'mL') // => { value: 500, code: 'mL' }
 */
export function toUcum<K extends KindName>(value: KindTypes[K], kind: K, code?: string): CodedQuantity {
  const unit = code === undefined ? kindNamed(kind).units[0] : unitOf(kind, code)
  return { value: shownNumber(value, unit), code: unit.ucum }
}

/**
 * A quantity from a number with the UCUM code of its unit.
 *
 * @procedure Looks the code up among the units of the kind, converts, and lets the kind's constructor check the value.
 * @param coded - Number and code, made by `toUcum` or by another system.
 * @param kind - Name of the kind that is wanted.
 * @returns The quantity, in the canonical unit of its kind. Unit: that of the kind.
 * @throws `InputError` for a code that the kind does not list, `DomainError` for a value that the kind cannot have.
 * @source ucum-2017
 * @example
 * fromUcum({ value: 500, code: 'mL' }, 'Volume') // => 0.5
 */
export function fromUcum<K extends KindName>(coded: CodedQuantity, kind: K): KindTypes[K] {
  requireObject(coded, 'coded')
  const unit = unitOf(kind, coded.code)
  if (typeof coded.value !== 'number' || !Number.isFinite(coded.value))
    throw new InputError('coded.value', `${String(coded.value)} is not a finite number`, 'give a finite number')
  return kindNamed(kind).make(keptNumber(coded.value, unit)) as KindTypes[K]
}

function unitOf(kind: KindName, code: string): TextUnit {
  const { units } = kindNamed(kind)
  const unit = units.find((one) => one.ucum === code)
  if (unit === undefined)
    throw new InputError(
      'code',
      `"${String(code).slice(0, 40)}" is not a UCUM code for ${kind}`,
      `use one of ${units.map((one) => one.ucum).join(', ')}`,
    )
  return unit
}
