import * as z from 'zod'
import { isPorewaterError } from '../../quantity/attempt.js'
import { type Domain, domainWith, isClosedEnd, isWithin, rangeText } from '../../quantity/domain.js'
import { InputError } from '../../quantity/errors.js'
import { numberIn, wholeNumberIn } from '../../quantity/guard.js'
import { asName, hasRow } from '../../quantity/one-of.js'
import type { KindName, KindTypes } from '../../text/generated/kind-types.js'
import { KINDS } from '../../text/generated/kinds.js'
import { parseQuantity } from '../../text/parse.js'
import { textPattern } from './text-pattern.js'

/** Numbers beyond this are no amount of anything that a grower measures, but a fault or an attack. */
const MAX = 1e12

/** What a check of this package tells of a value. */
export interface FieldFault {
  /** Way from the value to the part that is at fault, empty for the value itself. */
  readonly part: string
  readonly problem: string
  readonly expected: string
  readonly hint: string
}

/** The unit in which plain numbers of a kind are meant: its canonical one. */
export function unitOfNumbers(kind: KindName): string {
  return KINDS[kind].kept
}

/** The quantity behind a plain number in the canonical unit, or behind text with a unit. */
export function quantityFrom<K extends KindName>(input: number | string, kind: K): KindTypes[K] {
  if (typeof input === 'string') return parseQuantity(input, kind)
  if (!hasRow(KINDS, kind))
    throw new InputError('kind', `"${asName(kind).slice(0, 60)}" is no kind`, 'use the name of a kind')
  return KINDS[kind].make(input) as KindTypes[K]
}

/** A quantity: a number in its canonical unit, or text with a unit. The domain narrows what its kind allows. */
export function quantityField<K extends KindName>(kind: K, about: string, domain: Domain = KINDS[kind].domain) {
  const unit = unitOfNumbers(kind)
  const texts = KINDS[kind].units.map((one) => one.shown).filter((one) => one !== '1')
  const withText = texts.length > 0 ? ` or text with one of ${texts.join(', ')}` : ''
  const expected = `${kind}, a ${numberOf(unit)}${withText}, in ${spanText(domain)}`
  const full = domainWith(domain, { quantity: about })
  return z
    .union([z.number(), z.string().meta({ pattern: textPattern(kind) })], { error: () => expected })
    .transform((input, context): KindTypes[K] =>
      checked(context, expected, () => numberIn(bounded(quantityFrom(input, kind)), full) as KindTypes[K]),
    )
    .meta({
      description: `${about}; ${expected}`,
      ...limitsOf(domain),
    })
}

/** A plain number that has no kind: an exponent, a coefficient, a count. */
export function numberField<N extends number = number>(span: Domain, whole = false) {
  const expected = `a ${whole ? 'whole number' : 'number'} in ${spanText(span)}`
  return z
    .number({ error: () => expected })
    .transform(
      (input, context): N =>
        checked(context, expected, () => (whole ? wholeNumberIn : numberIn)(bounded(input), span) as N),
    )
    .meta({
      description: `${span.quantity}; ${expected}`,
      // JSON Schema has its own word for whole numbers, which a transform hides.
      ...(whole ? { override: { type: 'integer', ...limitsOf(span) } } : limitsOf(span)),
    })
}

/** A short text. */
export function wordField(about: string, max = 200) {
  return z
    .string({ error: () => `text of at most ${max} characters` })
    .max(max)
    .meta({ description: about })
}

/** A list of numbers in one unit; `null` or NaN stands for a missing one where that is allowed. Read into an array of doubles. */
export function seriesField(span: Domain, missing: boolean, max: number) {
  const expected = `a list of at most ${max} numbers in ${spanText(span)}${missing ? ', null where one is missing' : ''}`
  return z
    .union([z.array(z.unknown()), z.instanceof(Float64Array)], { error: () => expected })
    .transform((list, context) => {
      const numbers = new Float64Array(list.length)
      checked(context, expected, () => {
        if (list.length > max) throw new RangeFault(`has ${list.length} entries`)
        for (let i = 0; i < list.length; i++) {
          const entry = list[i]
          if (missing && (entry === null || Number.isNaN(entry))) numbers[i] = Number.NaN
          else if (typeof entry !== 'number')
            throw new RangeFault(`has at [${i}] a ${entry === null ? 'null' : typeof entry}`)
          else numbers[i] = inList(entry, i, span)
        }
        return 0
      })
      return numbers
    })
    .meta({ description: `${span.quantity}; ${expected}`, override: seriesSchema(span, missing, max) })
}

/** The JSON Schema of a list, which the reader sees as an array of doubles. */
function seriesSchema(span: Domain, missing: boolean, max: number) {
  const number = { type: 'number', ...limitsOf(span) }
  return { type: 'array', maxItems: max, items: missing ? { anyOf: [number, { type: 'null' }] } : number }
}

class RangeFault extends Error {}

function inList(entry: number, i: number, span: Domain): number {
  if (isWithin(entry, span) && Math.abs(entry) <= MAX) return entry
  throw new RangeFault(`has at [${i}] ${entry}`)
}

/** The number, if anything that a grower measures can be so large. */
export function bounded<N extends number>(value: N): N {
  if (Math.abs(value) > MAX)
    throw new InputError('value', `is beyond ${MAX}, which no such quantity reaches`, 'check the number and its unit')
  return value
}

/** Runs a check and gives its refusal to the schema as a fault. */
export function checked<T>(context: z.core.$RefinementCtx, expected: string, check: () => T): T {
  try {
    return check()
  } catch (error) {
    if (!(error instanceof RangeFault) && !isPorewaterError(error)) throw error
    context.addIssue({ code: 'custom', message: error.message, params: faultOf(error, expected) })
    return z.NEVER
  }
}

function faultOf(error: Error, expected: string): FieldFault {
  const part = ''
  if (!isPorewaterError(error)) return { part, problem: error.message, expected, hint: 'check the number and its unit' }
  if (error.code === 'outside-domain')
    return { part, problem: `${error.value} is outside ${spanText(error)}`, expected, hint: error.hint }
  if (error.code === 'no-convergence') return { part, problem: error.message, expected, hint: error.hint }
  // The message is made of the argument, the problem and the hint; here each has its own place.
  const problem = error.message.slice(error.argument.length + 2, -error.hint.length - 2)
  return { part: / /.test(error.argument) ? '' : error.argument, problem, expected, hint: error.hint }
}

function numberOf(unit: string): string {
  return unit === '1' ? 'number without unit' : `number of ${unit}`
}

function spanText(span: Pick<Domain, 'min' | 'max' | 'ends' | 'unit'>): string {
  return `${rangeText(span).replaceAll('Infinity', '∞')}${span.unit === '1' ? '' : ` ${span.unit}`}`
}

/** The ends of a domain in the words of JSON Schema. */
export function limitsOf(span: Pick<Domain, 'min' | 'max' | 'ends'>): Record<string, number> {
  const limits: Record<string, number> = {}
  if (Number.isFinite(span.min)) limits[isClosedEnd(span.min, span) ? 'minimum' : 'exclusiveMinimum'] = span.min
  if (Number.isFinite(span.max)) limits[isClosedEnd(span.max, span) ? 'maximum' : 'exclusiveMaximum'] = span.max
  return limits
}
