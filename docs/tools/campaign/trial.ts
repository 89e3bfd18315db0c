import { type CatalogueEntry, type CatalogueField, catalogue } from 'porewater/catalogue'
import { randomNumbers } from '../../../src/numerics/random.js'
import { callInExample } from '../call-in-example.js'
import { publicNames } from '../public-names.js'
import { type DocumentedRange, parseRange } from '../ranges.js'
import { argumentIn, isMade, withReplaced } from '../replaced-argument.js'
import { drawnNumber, isInside, pick, seedOf } from './draw.js'

interface Part {
  readonly field: CatalogueField
  readonly range: DocumentedRange
}

/** A function that the campaign can call: the arguments of its example, and the numbers in them that have a range. */
export interface Callable {
  readonly entry: CatalogueEntry
  readonly args: readonly unknown[]
  readonly parts: readonly Part[]
  /** Whether its example already marks gaps by NaN. */
  readonly marksGaps: boolean
}

/** What one call did that it should not. */
export interface Find {
  readonly name: string
  readonly trial: number
  readonly what: string
  readonly changed: readonly string[]
}

/** One after the other: to call all examples takes minutes. */
export async function* callables(only?: string): AsyncGenerator<Callable> {
  for (const entry of catalogue) {
    if (only !== undefined && entry.name !== only) continue
    const args = await callInExample(entry)
    const parts = entry.arguments.flatMap((field) => {
      const range = field.range === undefined ? undefined : parseRange(field.range)
      return field.shape === 'other' || range?.kind !== 'interval' ? [] : [{ field, range }]
    })
    if (args === undefined || parts.length === 0) continue
    yield { entry, args, parts, marksGaps: holdsNaN(called(entry, args), 0) }
  }
}

/** Calls a function once with one to three of its numbers drawn anew. */
export function oneTrial({ entry, args, parts, marksGaps }: Callable, seed: number, trial: number): Find | undefined {
  const random = randomNumbers(seedOf(seed, entry.name, trial)).uniform
  const drawn = new Map<Part, number>()
  let call = args
  for (let left = 1 + Math.floor(3 * random()); left > 0; left--) {
    const part = pick(random, parts)
    const before = argumentIn(entry, call, part.field)
    const value = drawnNumber(random, part.range, firstOf(before))
    const next = withReplaced(
      entry,
      call,
      part.field,
      part.field.shape === 'list' ? withOne(random, before, value) : value,
    )
    if (next === undefined) continue
    call = next
    drawn.set(part, value)
  }
  if (drawn.size === 0) return undefined
  const fault = verdict(entry, call, drawn)
  const what = marksGaps && fault === 'gives NaN' ? undefined : fault
  const changed = [...drawn].map(
    ([{ field, range }, value]) =>
      `${field.path} = ${value} (${isInside(value, range) ? '' : 'not '}in ${field.range})`,
  )
  return what === undefined ? undefined : { name: entry.name, trial, what, changed }
}

const called = ({ name }: CatalogueEntry, args: readonly unknown[]): unknown =>
  (publicNames[name] as (...args: readonly unknown[]) => unknown)(...args)

const TYPED = ['outside-domain', 'bad-input', 'no-convergence', 'bad-document']

function verdict(
  entry: CatalogueEntry,
  call: readonly unknown[],
  drawn: ReadonlyMap<Part, number>,
): string | undefined {
  const outside = [...drawn].filter(([{ field, range }, value]) => !isInside(value, range) && !isGap(field, value))
  let result: unknown
  try {
    result = called(entry, call)
  } catch (error) {
    const { code, argument, value } = error as { code?: string; argument?: string; value?: number }
    if (!TYPED.includes(code ?? '')) return `throws ${String(error).slice(0, 120)}`
    const unjust = [...drawn].some(
      ([{ field, range }, given]) =>
        code === 'outside-domain' &&
        field.path.split('.').at(-1) === argument &&
        Object.is(value, given) &&
        isInside(given, range) &&
        String((error as Error).message).includes(field.range ?? '?'),
    )
    return unjust ? `refuses inside the range: ${(error as Error).message.slice(0, 120)}` : undefined
  }
  if (outside.length > 0) return isMade(entry, outside[0]![0].field) ? undefined : 'accepts a value outside its range'
  const gapped = [...drawn.values()].some((value) => !Number.isFinite(value))
  return !gapped && holdsNaN(result, 0) ? 'gives NaN' : undefined
}

/** In a list NaN may stand for a missing value, which the description then says. */
const isGap = (field: CatalogueField, value: number) =>
  field.shape === 'list' && Number.isNaN(value) && /missing|gap|unknown|NaN/i.test(field.text)

const firstOf = (value: unknown): unknown =>
  ArrayBuffer.isView(value) || Array.isArray(value) ? (value as ArrayLike<unknown>)[0] : value

function withOne(random: () => number, list: unknown, value: number): unknown {
  const copy = ArrayBuffer.isView(list) ? (list as Float64Array).slice() : Array.isArray(list) ? [...list] : [value]
  copy[Math.floor(random() * copy.length)] = value
  return copy
}

function holdsNaN(value: unknown, depth: number): boolean {
  if (typeof value === 'number') return Number.isNaN(value)
  if (typeof value !== 'object' || value === null || depth > 6) return false
  if (ArrayBuffer.isView(value)) return (value as Float64Array).some?.((item) => Number.isNaN(item)) ?? false
  return Object.values(value).some((item) => holdsNaN(item, depth + 1))
}
