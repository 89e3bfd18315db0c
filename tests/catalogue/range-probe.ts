import type { CatalogueEntry, CatalogueField } from 'porewater/catalogue'
import { type DocumentedRange, parseRange } from '../../docs/tools/ranges.js'
import { argumentIn, type Filled, withReplaced } from '../../docs/tools/replaced-argument.js'

type Arguments = readonly unknown[]
type Called = (...args: Arguments) => unknown
interface Refusal {
  code?: string
  argument?: string
  message?: string
  min?: number
  max?: number
}

/** The fields of a function whose range is an interval: those are probed. */
export const isProbed = ({ range }: CatalogueField): boolean =>
  range !== undefined && parseRange(range)?.kind === 'interval'

/** What is wrong with the range of an argument: probed just outside, at its ends and by NaN, in the call of an example. */
export function faultsOfRange(entry: CatalogueEntry, called: Called, args: Arguments, field: CatalogueField): string[] {
  const range = parseRange(field.range as string) as DocumentedRange
  const filled = manners.find((manner) =>
    isRefused(refusalAt(entry, called, args, field, Infinity, manner), range, field),
  )
  if (filled === undefined) return [`nothing reaches it: ${told(entry, called, args, field)}`]
  const at = (value: number) => refusalAt(entry, called, args, field, value, filled) as Refusal | undefined
  const wrong: string[] = []
  for (const value of outside(range)) {
    const refusal = at(value)
    if (!isRefused(refusal, range, field)) wrong.push(`${value} is not refused with that range and name`)
    else if (range.integers && value % 1 && !refusal?.message?.includes('whole'))
      wrong.push('no word of a whole number')
  }
  // NaN may stand for a missing value, which the description then says.
  const mayBeMissing = field.shape !== 'number' && /missing|gap/i.test(field.text)
  if (!mayBeMissing && at(Number.NaN)?.code !== 'outside-domain') wrong.push('NaN is not refused')
  for (const end of closedEnds(range)) if (isRefused(at(end), range, field)) wrong.push(`the end ${end} is refused`)
  return wrong
}

/** Where the example leaves a whole part out, what it needs is made up: first what is required, then all of it. */
const manners: readonly Filled[] = ['required', 'all']

/** The refusal of a call with one number replaced, in a list its first; `unreached` where nothing reaches that. */
function refusalAt(
  entry: CatalogueEntry,
  called: Called,
  args: Arguments,
  field: CatalogueField,
  value: number,
  filled: Filled,
): Refusal | 'unreached' | undefined {
  const given = field.shape === 'list' ? withFirst(argumentIn(entry, args, field) ?? listLike(args), value) : value
  const call = withReplaced(entry, args, field, given, filled)
  if (call === undefined) return 'unreached'
  try {
    called(...call)
    return undefined
  } catch (error) {
    return error as Refusal
  }
}

/** As many places as the longest list of a call has: lists of an input belong together, as a rule. */
function listLike(value: unknown): unknown[] {
  if (Array.isArray(value) && value.some((one) => typeof one === 'number'))
    return new Array(value.length).fill(undefined)
  const inside = typeof value === 'object' && value !== null ? Object.values(value).map(listLike) : []
  return inside.reduce((longest, list) => (list.length > longest.length ? list : longest), [])
}

function withFirst(list: unknown, value: number): unknown {
  if (ArrayBuffer.isView(list)) {
    const copy = (list as Float64Array).slice()
    copy[0] = value
    return copy
  }
  return Array.isArray(list) ? [value, ...list.slice(1)] : list
}

const near = (a: number | undefined, b: number) =>
  a === b || (a !== undefined && Math.abs(a - b) <= 1e-6 * Math.max(Math.abs(a), Math.abs(b)))

function isRefused(refusal: Refusal | 'unreached' | undefined, range: DocumentedRange, field: CatalogueField): boolean {
  if (refusal === undefined || refusal === 'unreached' || refusal.code !== 'outside-domain') return false
  return near(refusal.min, range.min) && near(refusal.max, range.max) && names(refusal, field)
}

/** A refusal names the argument: by its last word at least, `emitterFlow` or `zones[0].emitterFlow`. A function of one number says only what is wrong. */
function names({ argument }: Refusal, { path }: CatalogueField): boolean {
  if (argument === undefined) return !path.includes('.')
  return (
    argument
      .replace(/\[\d+\]$/, '')
      .split('.')
      .at(-1) === path.split('.').at(-1)
  )
}

/** What came of a number without end instead of its refusal. */
function told(entry: CatalogueEntry, called: Called, args: Arguments, field: CatalogueField): string {
  const refusal = refusalAt(entry, called, args, field, Infinity, 'all')
  if (refusal === undefined) return 'it is answered'
  if (refusal === 'unreached') return 'the example has no place for it'
  return `${refusal.code ?? String(refusal)} of ${refusal.argument} in ${refusal.min} to ${refusal.max}`
}

/** Numbers just outside the documented range, which must be refused with that very range. */
function outside(range: DocumentedRange): number[] {
  const step = (end: number) => Math.max(Math.abs(end) * 1e-3, 1e-3)
  const out = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
  if (Number.isFinite(range.min))
    out.push(range.minOpen ? range.min : range.min - (range.integers ? 1 : step(range.min)))
  if (Number.isFinite(range.max))
    out.push(range.maxOpen ? range.max : range.max + (range.integers ? 1 : step(range.max)))
  if (range.integers) out.push((Number.isFinite(range.min) ? range.min : 0) + 0.5)
  return out
}

/** Ends that belong to the range. A very large count is allowed, but not waited for. */
function closedEnds({ min, max, minOpen, maxOpen, integers }: DocumentedRange): number[] {
  const ends = [...(minOpen ? [] : [min]), ...(maxOpen ? [] : [max])]
  return ends.filter((end) => Number.isFinite(end) && !(integers && end > 1e5))
}
