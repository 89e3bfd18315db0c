import { catalogue } from '../catalogue/catalogue.js'
import type { CatalogueEntry } from '../catalogue/entry.js'
import { InputError } from '../quantity/errors.js'
import { numberFromText } from './number-from-text.js'
import { refusalLine } from './refusal.js'
import { type Called, unitOf } from './shown.js'
import { headsOf, propertiesOf } from './typed-arguments.js'

/** A function at points of a range: what it gave, with units, and what it refused. */
export interface OverRange {
  readonly x: readonly number[]
  /** NaN where the function refused. */
  readonly y: readonly number[]
  readonly xUnit: string
  readonly yUnit: string
  readonly xName: string
  readonly yName: string
  readonly refused: number
  readonly firstRefusal: string
}

/** What was called last, for the unit of the result. */
export type LastCall = () => Called | undefined

/** Calls a function at equal steps from one end to the other. */
export function overRange(run: unknown, from: unknown, to: unknown, points: number, last: LastCall): OverRange {
  if (typeof run !== 'function')
    throw new InputError('function', `is of type ${typeof run}`, 'give a function, such as waterContentTopp1980')
  const entry = catalogue.find((one) => one.name === run.name)
  if (entry !== undefined) checkOneNumber(entry)
  const ends = endsOf(entry, from, to)
  const x = Array.from({ length: points }, (_, i) => ends.from + ((ends.to - ends.from) * i) / (points - 1))
  let refused = 0
  let firstRefusal = ''
  let called: Called | undefined
  const y = x.map((at) => {
    try {
      const value: unknown = run(ends.text === '' ? at : `${Number(at.toPrecision(12))} ${ends.text}`)
      if (typeof value !== 'number')
        throw new InputError('function', 'does not give a number', 'pick one: (x) => f(x).name')
      const call = last()
      if (call !== undefined && Object.is(call.value, value)) called = call
      return value
    } catch (error) {
      refused++
      firstRefusal ||= refusalLine(error)
      return Number.NaN
    }
  })
  return {
    x,
    y,
    refused,
    firstRefusal,
    xUnit: ends.unit,
    yUnit: named(called === undefined ? undefined : unitOf(called)),
    xName: entry === undefined ? '' : (headsOf(entry)[0]?.path ?? ''),
    yName: called?.entry.name ?? entry?.name ?? '',
  }
}

/** Only a function of one number has a curve; of others one argument must be picked. */
function checkOneNumber(entry: CatalogueEntry): void {
  const heads = headsOf(entry)
  const [head] = heads
  const needed = heads.filter((one) => !one.optional)
  if (head?.shape === 'number' && needed.length === 1) return
  const names = head === undefined ? [] : propertiesOf(entry, head).map((field) => field.path.replace(/^.*\./, ''))
  const form =
    names.length > 0 ? `{ ${names.map((name, i) => (i === 0 ? `${name}: x` : `${name}: ...`)).join(', ')} }` : 'x, ...'
  throw new InputError(entry.name, 'takes more than one number', `pick one: (x) => ${entry.name}(${form})`)
}

interface Ends {
  readonly from: number
  readonly to: number
  /** The unit that is written behind each number before the function gets it; empty for plain numbers. */
  readonly text: string
  readonly unit: string
}

function endsOf(entry: CatalogueEntry | undefined, from: unknown, to: unknown): Ends {
  const field = entry === undefined ? undefined : headsOf(entry)[0]
  if (field !== undefined && entry !== undefined) {
    const read = (end: unknown) => (typeof end === 'string' ? numberFromText(end, field, entry.result.type) : end)
    return { ...different(read(from), read(to)), text: '', unit: named(field.unit) }
  }
  if (typeof from !== 'string' && typeof to !== 'string') return { ...different(from, to), text: '', unit: '' }
  const [first, second] = [from, to].map((end) => /^\s*([+-]?[\d.]+(?:[eE][+-]?\d+)?)\s*(\D*)$/.exec(String(end)))
  const unit = first?.[2]?.trim()
  if (!first || !second || unit !== second[2]?.trim() || unit === undefined)
    throw new InputError('range', 'has ends in two units', 'write both ends in the same unit')
  return { ...different(Number(first[1]), Number(second[1])), text: unit, unit }
}

function different(from: unknown, to: unknown): { from: number; to: number } {
  if (typeof from === 'number' && typeof to === 'number' && Number.isFinite(from) && Number.isFinite(to) && from < to)
    return { from, to }
  throw new InputError(
    'range',
    `from ${String(from)} to ${String(to)} is no range`,
    'give two numbers, the lower one first',
  )
}

function named(unit: string | undefined): string {
  return unit === undefined || unit === '1' || unit.startsWith('that of') ? '' : unit
}
