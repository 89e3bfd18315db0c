import { InputError } from '../quantity/errors.js'
import type { KindName, KindTypes } from './generated/kind-types.js'
import { kindNamed } from './kind-named.js'
import { nearUnit } from './near-unit.js'
import { leadingNumber } from './number-text.js'
import { keptNumber, type TextKind, type TextUnit } from './text-kind.js'
import { unitNamed } from './unit-named.js'

/** No quantity is written with more characters than this. */
const MAX = 80

/**
 * A quantity from text such as `150 mL`, `0.5 gph`, `68 °F`, `15 %`, `1 h 30 min` or `pF 2`, as a number in the canonical unit of its kind.
 *
 * A number without a unit is taken for a kind that has none (a share, a permittivity) and refused for all others. A temperature
 * and a difference of temperatures are different kinds: 9 °F as a difference is 5 K, as a temperature -12.8 °C. Digits may stand in
 * groups of three with a space between: `1 500 mL`. A comma is refused, because `1,500` means two things. Symbols are taken letter for
 * letter, so that `Ml`, a megalitre, is never a millilitre; names and units without prefix are taken in capitals too.
 *
 * @procedure Splits the text into number and unit, brings the unit into the form that its spellings share, finds it among the units of the
 * kind, converts, and lets the kind's own constructor check the value.
 * @param text - What was written.
 * @param kind - Name of the kind that is wanted, as in the typings.
 * @returns The quantity, in the canonical unit of its kind. Unit: that of the kind.
 * @throws `InputError` for text that is not a quantity of this kind, with the units that are accepted and the one that may be meant;
 * `DomainError` for a value that the kind cannot have.
 * @source definition
 * @example
 * parseQuantity('1 500 mL', 'Volume') // => 1.5
 * parseQuantity('68 °F', 'Temperature') // => 20
 * parseQuantity('9 °F', 'TemperatureChange') // => 5
 * parseQuantity('1 h 30 min', 'Duration') // => 5400
 * parseQuantity('3 ft', 'Volume') // => throws InputError
 */
export function parseQuantity<K extends KindName>(text: string, kind: K): KindTypes[K] {
  const about = kindNamed(kind)
  if (typeof text !== 'string') throw refusal(kind, about, String(typeof text), 'is not text')
  const written = text.length > MAX ? '' : text.normalize('NFC').replace(/−/g, '-').trim()
  const suction = kind === 'SuctionHead' ? /^pF\s*([+-]?(?:\d+\.?\d*|\.\d+))$/.exec(written) : null
  if (suction) return about.make(10 ** Number(suction[1])) as KindTypes[K]
  const parts = about.compound ? written.match(PARTS) : null
  if (parts !== null && parts.length > 1 && parts.join('') === written)
    return about.make(sumOf(parts, kind, about, text)) as KindTypes[K]
  const read = leadingNumber(written)
  if (typeof read === 'string') throw refusal(kind, about, text, read)
  return about.make(keptNumber(read.number, unitOf(read.rest, kind, about, text))) as KindTypes[K]
}

/** One number with one unit, of several: letters only, because `1'200 mm` has twelve hundred millimetres for some. */
const PARTS = /\d+(?:\.\d+)?\s*[a-z]+\s*/gi

/** The sum of parts such as `1 h` and `30 min`, each less than one of the unit before. */
function sumOf(parts: readonly string[], kind: KindName, about: TextKind, text: string): number {
  let total = 0
  let before = Infinity
  for (const part of parts) {
    const read = leadingNumber(part.trim())
    if (typeof read === 'string') throw refusal(kind, about, text, read)
    const unit = unitOf(read.rest, kind, about, text)
    const kept = keptNumber(read.number, unit)
    if (kept >= before) throw refusal(kind, about, text, 'has parts that do not get smaller')
    total += kept
    before = keptNumber(1, unit)
  }
  return total
}

function unitOf(unit: string, kind: KindName, about: TextKind, text: string): TextUnit {
  const found = unitNamed(unit, about)
  if (found !== undefined) return found
  const problem = unit === '' ? 'has no unit' : `has the unit "${unit}"${nearUnit(unit, about)}`
  throw refusal(kind, about, text, problem)
}

function refusal(kind: KindName, about: TextKind, text: string, problem: string): InputError {
  const accepted = about.units.map((unit) => (unit.shown === '1' ? 'no unit' : unit.shown)).join(', ')
  const short = text.length > MAX ? `${text.slice(0, MAX)}...` : text
  return new InputError(
    `${kind} from text`,
    `"${short}" ${problem}`,
    `write a number, with a decimal point, and one of: ${accepted}${kind === 'SuctionHead' ? ', or pF 2' : ''}`,
  )
}
