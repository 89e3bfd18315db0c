import type { CatalogueEntry } from '../catalogue/entry.js'
import { InputError } from '../quantity/errors.js'
import { heldFunctionOf } from './held/functions.js'
import { Measured } from './held/measured.js'
import type { SignatureType } from './held/signature-type.js'
import { kindsOf, kindsWith, unitOfKind } from './held/signatures.js'
import { taken } from './held/take.js'
import { hasName } from './number-with-unit.js'
import { refusalLine } from './refusal.js'
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

/** Which function of the library each function of a session is. */
export type FunctionEntries = Map<unknown, CatalogueEntry>

/** What is drawn or listed. */
export interface Wanted {
  readonly run: unknown
  readonly from: unknown
  readonly to: unknown
  readonly points: number
  /** Equal factors from point to point, in place of equal steps. */
  readonly log?: boolean
}

/** Calls a function at points from one end to the other; one without a name is called after the last function that it called. */
export function overRange(
  { run, from, to, points, log = false }: Wanted,
  entries: FunctionEntries,
  last: () => string,
): OverRange {
  if (typeof run !== 'function')
    throw new InputError('function', `is of type ${typeof run}`, 'give a function, such as waterContentTopp1980')
  const entry = entries.get(run)
  if (entry !== undefined) checkOneNumber(entry)
  const ends = endsOf(heldFunctionOf(run)?.type.takes[0] ?? 0, from, to)
  if (log && ends.from <= 0)
    throw new InputError('range', `from ${ends.from} has no logarithm`, 'start above zero for a logarithmic axis')
  const x = Array.from({ length: points }, (_, i) => between(ends, i / (points - 1), log))
  let refused = 0
  let firstRefusal = ''
  let yUnit = ''
  const y = x.map((at) => {
    try {
      const value: unknown = run(ends.unit === '' ? at : new Measured(at, ends.unit, ends.kinds))
      if (typeof value !== 'number' && !(value instanceof Measured))
        throw new InputError('function', 'does not give a number', 'pick one: (x) => f(x).name')
      if (value instanceof Measured) yUnit ||= named(value.unit)
      return Number(value)
    } catch (error) {
      refused++
      firstRefusal ||= refusalLine(error)
      return Number.NaN
    }
  })
  const xName = entry === undefined ? '' : (headsOf(entry)[0]?.path ?? '')
  return { x, y, refused, firstRefusal, xUnit: named(ends.unit), yUnit, xName, yName: run.name || last() }
}

function between({ from, to }: Ends, share: number, log: boolean): number {
  if (share === 1) return to
  return log ? from * (to / from) ** share : from + (to - from) * share
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
  /** The unit in which the function gets its argument; empty for plain numbers. */
  readonly unit: string
  readonly kinds: readonly string[]
}

function endsOf(type: SignatureType, from: unknown, to: unknown): Ends {
  const kinds = kindsOf(type)
  const [kind] = kinds
  const unit = kind !== undefined ? unitOfKind(kind) : type !== 0 && 'unit' in type ? type.unit : undefined
  if (unit === undefined) return freeEnds(from, to)
  const taking = { bindings: new Map(), plainFunction: (run: unknown) => run }
  const [start, end] = [from, to].map((one) => taken(one, type, 'range', taking))
  return { ...different(start, end), unit: unit === '1' ? '' : unit, kinds: kind === undefined ? [] : [kind] }
}

/** The ends for a function that does not say what it takes: two numbers, or two quantities in the same unit. */
function freeEnds(from: unknown, to: unknown): Ends {
  const [first, second] = [endOf(from), endOf(to)]
  if (first === undefined || second === undefined || first.unit !== second.unit)
    throw new InputError('range', 'has ends in two units', 'write both ends in the same unit')
  return { ...different(first.number, second.number), unit: first.unit, kinds: first.kinds }
}

function endOf(end: unknown): Measured | undefined {
  if (end instanceof Measured) return end
  if (typeof end !== 'string') return new Measured(end as number, '')
  const [, number, unit = ''] = /^\s*([+-]?[\d.]+(?:[eE][+-]?\d+)?)\s*(\D*)$/.exec(end) ?? []
  if (number === undefined) return undefined
  const symbol = unit.trim()
  if (symbol !== '' && kindsWith(symbol).length === 0)
    throw new InputError('range', `"${end.slice(0, 40)}" has no unit that is known`, "write it as in '1 L' or '10 cm'")
  return new Measured(Number(number), symbol)
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

function named(unit: string): string {
  return hasName(unit) ? unit : ''
}
