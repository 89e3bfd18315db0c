import { type CatalogueEntry, type CatalogueField, catalogue } from 'porewater/catalogue'
import { describe, expect, it } from 'vitest'
import { rememberedCalls } from '../../docs/tools/call-in-example.js'
import { publicNames } from '../../docs/tools/public-names.js'
import { type DocumentedRange, parseRange } from '../../docs/tools/ranges.js'
import { argumentIn, withReplaced } from '../../docs/tools/replaced-argument.js'

const argumentsOf = rememberedCalls()

type Arguments = unknown[]
interface Refusal {
  code?: string
  argument?: string
  message?: string
  min?: number
  max?: number
}

/** The arguments with one number replaced, in a list its first; undefined when nothing reaches it. */
function replaced(entry: CatalogueEntry, args: Arguments, field: CatalogueField, value: number): Arguments | undefined {
  if (field.shape !== 'list') return withReplaced(entry, args, field, value)
  return withReplaced(entry, args, field, withFirst(argumentIn(entry, args, field) ?? [], value))
}

function withFirst(list: unknown, value: number): unknown {
  if (ArrayBuffer.isView(list)) {
    const copy = (list as Float64Array).slice()
    copy[0] = value
    return copy
  }
  return Array.isArray(list) ? [value, ...list.slice(1)] : list
}

function refusalOf(entry: CatalogueEntry, args: Arguments): Refusal | undefined {
  try {
    ;(publicNames[entry.name] as (...args: Arguments) => unknown)(...args)
    return undefined
  } catch (error) {
    return error as Refusal
  }
}

const near = (a: number | undefined, b: number) =>
  a === b || (a !== undefined && Math.abs(a - b) <= 1e-6 * Math.max(Math.abs(a), Math.abs(b)))
const refusesRange = (refusal: Refusal | undefined, range: DocumentedRange) =>
  refusal?.code === 'outside-domain' && near(refusal.min, range.min) && near(refusal.max, range.max)

/** A refusal names the argument: by its last word at least, `emitterFlow` or `zones[0].emitterFlow`. A function of one number says only what is wrong. */
function names(refusal: Refusal | undefined, field: CatalogueField): boolean {
  const argument = refusal?.argument?.replace(/\[\d+\]$/, '')
  if (argument === undefined) return !field.path.includes('.')
  return argument.split('.').at(-1) === field.path.split('.').at(-1)
}

/** Where the example leaves the whole part out, its other numbers are made up too, and may be refused first. */
function isMadeUp(entry: CatalogueEntry, args: Arguments, field: CatalogueField): boolean {
  const parent = field.path.split('.').slice(0, -1).join('.')
  return parent !== '' && argumentIn(entry, args, { ...field, path: parent }) === undefined
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

const probed = catalogue.flatMap((entry) =>
  entry.arguments
    .filter((field) => field.shape !== 'other' && field.range && parseRange(field.range)?.kind === 'interval')
    .map((field) => [`${entry.name}: ${field.path} in ${field.range}`, entry, field] as const),
)

describe('documented ranges are the coded ones', () => {
  it.each(probed)('%s', async (_, entry, field) => {
    const args = await argumentsOf(entry)
    expect(args, 'the example calls the function').toBeDefined()
    const range = parseRange(field.range as string) as DocumentedRange
    const madeUp = isMadeUp(entry, args as Arguments, field)
    const wrong: string[] = []
    for (const value of outside(range)) {
      const call = replaced(entry, args as Arguments, field, value)
      if (call === undefined) {
        wrong.push('not reached: a probe that reaches nothing proves nothing')
        break
      }
      const refusal = refusalOf(entry, call)
      if (madeUp ? refusal?.code === undefined : !refusesRange(refusal, range))
        wrong.push(`${value} is not refused with that range`)
      if (!madeUp && !names(refusal, field)) wrong.push(`the refusal names ${refusal?.argument}`)
      if (!madeUp && value % 1 && range.integers && !refusal?.message?.includes('whole'))
        wrong.push('no word of a whole number')
    }
    // In a list NaN may stand for a missing value, which the description then says.
    if (!(field.shape === 'list' && /missing|gap/i.test(field.text))) {
      const call = replaced(entry, args as Arguments, field, Number.NaN)
      if (call !== undefined && refusalOf(entry, call)?.code !== 'outside-domain') wrong.push('NaN is not refused')
    }
    for (const [end, isOpen] of [
      [range.min, range.minOpen],
      [range.max, range.maxOpen],
    ] as const) {
      // A very large count is allowed, but not waited for.
      if (isOpen || !Number.isFinite(end) || (range.integers && end > 1e5)) continue
      const call = replaced(entry, args as Arguments, field, end)
      const refusal = call && refusalOf(entry, call)
      const another = madeUp && refusal?.argument !== field.path.split('.').at(-1)
      if (refusesRange(refusal, range) && !another) wrong.push(`the end ${end} is refused`)
    }
    expect(wrong).toEqual([])
  })
})
