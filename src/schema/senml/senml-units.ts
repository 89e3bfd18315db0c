import { InputError } from '../../quantity/errors.js'
import { asName, hasRow } from '../../quantity/one-of.js'
import type { KindName } from '../../text/generated/kind-types.js'
import { KINDS } from '../../text/generated/kinds.js'
import { keptNumber, shownNumber, type TextUnit } from '../../text/text-kind.js'
import { SENML_UNITS, SENT } from '../generated/senml.js'

/**
 * Symbols of plain ratios, by what they count in. `%` is no percentage but another name of `/` (RFC 8428 section 12.1, note 2); percent
 * is `/100`.
 */
const RATIOS: Readonly<Record<string, number>> = { '/': 1, '%': 1, '/100': 100, '/1000': 1000, ppm: 1e6 }

/** A quantity from a number and a SenML symbol, in the canonical unit of its kind. */
export function fromSenmlUnit(value: number, symbol: string | undefined, kind: KindName): number {
  const sent = hasRow(SENT, kind) ? SENT[kind] : undefined
  const kept = sent === undefined || symbol === undefined ? undefined : keptFrom(value, symbol, sent, kind)
  if (kept !== undefined) return KINDS[kind].make(kept)
  throw new InputError(
    'u',
    symbol === undefined ? 'is missing' : `"${symbol.slice(0, 40)}" is not a SenML unit of ${asName(kind)}`,
    sent === undefined ? `the SenML registry has no unit for ${asName(kind)}` : `send ${kind} in ${sent}`,
  )
}

function keptFrom(value: number, symbol: string, sent: string, kind: KindName): number | undefined {
  // Both are degrees; only the symbol tells them apart.
  if (sent === 'lat' || sent === 'lon') return symbol === sent ? value : undefined
  if (sent === '/' || sent === '%RH') {
    if (symbol === '%RH') return sent === '%RH' ? value / 100 : undefined
    return Object.hasOwn(RATIOS, symbol) ? value / RATIOS[symbol]! : undefined
  }
  const unit = unitWith(symbol, kind)
  return unit === undefined ? undefined : keptNumber(value, unit)
}

function unitWith(symbol: string, kind: KindName): TextUnit | undefined {
  const shown = Object.hasOwn(SENML_UNITS, symbol) ? SENML_UNITS[symbol] : undefined
  return KINDS[kind].units.find((unit) => unit.shown === shown)
}

/** A quantity in the SenML unit of its kind. */
export function inSenmlUnit(value: number, kind: KindName): { value: number; symbol: string } {
  const symbol = SENT[kind]
  if (symbol === undefined)
    throw new InputError('kind', `${kind} has no unit in the SenML registry`, 'send it as a table or a record document')
  if (symbol === '%RH') return { value: value * 100, symbol }
  const unit = unitWith(symbol, kind)
  return { value: unit === undefined ? value : shownNumber(value, unit), symbol }
}
