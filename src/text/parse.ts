import { InputError } from '../quantity/errors.js'
import type { KindName, KindTypes } from './kind-types.js'
import { KINDS, type TextKind } from './kinds.js'
import { math, spelled } from './units.js'

/** No quantity is written with more characters than this. */
const LONGEST = 80

/**
 * A quantity from text such as `150 mL`, `0.5 gph`, `68 °F`, `15 %` or `pF 2`, as a number in the canonical unit of its kind.
 *
 * A number without a unit is taken for a kind that has none (a share, a permittivity) and refused for all others. A temperature
 * and a difference of temperatures are different kinds: 9 °F as a difference is 5 K, as a temperature -12.8 °C. A decimal comma
 * is refused, because `1,500` means two things.
 *
 * @procedure Splits the text into number and unit, brings the unit into the spelling of the parser, compares its dimension with
 * that of the kind, converts, and lets the kind's own constructor check the value.
 * @param text - What was written.
 * @param kind - Name of the kind that is wanted, as in the typings.
 * @returns The quantity, in the canonical unit of its kind. Unit: that of the kind.
 * @throws `InputError` for text that is not a quantity of this kind, with the units that are accepted; `DomainError` for a value that the kind cannot have.
 * @source definition
 * @example
 * ```ts
 * quantity('150 mL', 'Volume') // => 0.15
 * quantity('68 °F', 'Temperature') // => 20
 * quantity('9 °F', 'TemperatureChange') // => 5
 * quantity('3 ft', 'Volume') // => throws InputError
 * ```
 */
export function quantity<K extends KindName>(text: string, kind: K): KindTypes[K] {
  const about = kindNamed(kind)
  const { number, unit } = numberAndUnit(text, kind)
  if (kind === 'SuctionHead' && unit === 'pF') return KINDS.SuctionHead.make(10 ** number * 0.0980665) as KindTypes[K]
  return about.make(inCanonical(number, unit, text, kind)) as KindTypes[K]
}

/** The kind of that name. */
export function kindNamed(kind: string): TextKind {
  const about = Object.hasOwn(KINDS, kind) ? KINDS[kind as KindName] : undefined
  if (about === undefined)
    throw new InputError(
      'kind',
      `"${String(kind).slice(0, LONGEST)}" is not the name of a kind`,
      `use one of ${Object.keys(KINDS).join(', ')}`,
    )
  return about
}

function numberAndUnit(text: string, kind: KindName): { number: number; unit: string } {
  if (typeof text !== 'string') throw refusal(kind, String(typeof text), 'is not text')
  const trimmed = text.length > LONGEST ? '' : text.normalize('NFC').replace(/−/g, '-').trim()
  const suction = /^pF\s*([+-]?(?:\d+\.?\d*|\.\d+))$/.exec(trimmed)
  if (suction && kind === 'SuctionHead') return { number: Number(suction[1]), unit: 'pF' }
  const match = /^([+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)\s*(\D.*)?$/.exec(trimmed)
  if (match === null || /^[,.]/.test(match[2] ?? '')) throw refusal(kind, text, 'is not a number with a unit')
  return { number: Number(match[1]), unit: (match[2] ?? '').trim() }
}

function inCanonical(number: number, unit: string, text: string, kind: KindName): number {
  const { units } = KINDS[kind]
  const shown = units.find((one) => one.shown === unit || one.ucum === unit)
  const [canonical] = units
  if (canonical.parsed === '') {
    if (unit === '' || shown === canonical) return number
    if (shown?.parsed === '%') return number / 100
    throw refusal(kind, text, unit === '' ? 'has no unit' : `has the unit "${unit}"`)
  }
  if (unit === '') throw refusal(kind, text, 'has no unit')
  const parsed = shown?.parsed ?? (kind === 'InverseSuction' ? heads(spelled(unit)) : spelled(unit))
  if (kind === 'TemperatureChange') {
    const factor = { K: 1, degC: 1, degF: 5 / 9 }[parsed]
    if (factor === undefined) throw refusal(kind, text, `has the unit "${unit}"`)
    return number * factor
  }
  try {
    // Converting to a unit of another dimension throws.
    return math.unit(number, parsed).toNumber(canonical.parsed)
  } catch {
    throw refusal(kind, text, `has the unit "${unit}"`)
  }
}

/** In an inverse suction, as tables of retention curves print it, a length is a head of water. */
function heads(unit: string): string {
  return unit.replace(/\b(c?m)\b/g, '$1water')
}

function refusal(kind: KindName, text: string, problem: string): InputError {
  const accepted = KINDS[kind].units.map((unit) => (unit.shown === '1' ? 'no unit' : unit.shown)).join(', ')
  const short = String(text).length > LONGEST ? `${String(text).slice(0, LONGEST)}...` : String(text)
  return new InputError(
    `${kind} from text`,
    `"${short}" ${problem}`,
    `write a number, with a decimal point, and one of: ${accepted}${kind === 'SuctionHead' ? ', or pF 2' : ''}`,
  )
}
