import type { Instant } from '../../quantity/calendar.js'
import { requireObject } from '../../quantity/guard.js'
import { DocumentError, type DocumentProblem, MAX_PROBLEMS, shownValue } from '../document-error.js'
import { jsonData, limitedText, refusal, refuseHostile } from '../hostile-input.js'
import type { ReadingLimit } from '../terms.js'
import { hasOnlyBases, senmlFields } from './senml-fields.js'
import {
  MIN_ABSOLUTE_TIME,
  type ResolvedSenmlRecord,
  SENML_NAME,
  SENML_VERSION,
  type SenmlRecord,
} from './senml-record.js'

/** What is needed to read a pack. */
export interface SenmlOptions extends ReadingLimit {
  /** The moment from which relative times count, such as that of arrival; without it a pack with relative times is refused. Unit: s. Range: any. */
  readonly now?: Instant
}

const WHAT = 'SenML pack'
const MAX_NAME = 500

/**
 * The records of a SenML pack, each with its full name, unit and absolute time.
 *
 * A time below 2^28 is counted from now. The package has no clock: pass the moment of arrival, or such a pack is refused.
 *
 * @procedure Checks every record; puts base name, time, unit, value and sum of a record into itself and those behind it; sorts by time.
 * A record that holds base fields only gives no record. Fields that RFC 8428 does not know are passed over, but a label that ends with
 * an underscore, and a version that is not understood, refuse the pack.
 * @param pack - The pack, as JSON text or parsed.
 * @param options - The moment that is now, and the longest text to look at.
 * @returns The resolved records in the order of their times.
 * @throws `DocumentError`, an `InputError` that lists every problem; `DomainError` for a limit of characters that is none.
 * @source rfc-8428-2018, sections 4 and 5; example of section 5.1.3
 * @example
 * const pack = '[{"bn":"urn:dev:ow:10e2073a01080063","bt":1.320067464e+09,"bu":"%RH","v":20},{"t":60,"v":20.3}]'
 * resolveSenml(pack, { maxCharacters: 1000 })[1] // => { n: 'urn:dev:ow:10e2073a01080063', u: '%RH', t: 1320067524, v: 20.3 }
 */
export function resolveSenml(pack: unknown, options: SenmlOptions = {}): ResolvedSenmlRecord[] {
  requireObject(options, 'options')
  const data = typeof pack === 'string' ? jsonData(WHAT, limitedText(WHAT, pack, options.maxCharacters)) : pack
  refuseHostile(WHAT, data)
  if (!Array.isArray(data))
    throw refusal(WHAT, '', shownValue(data), 'is not a list of records', 'a JSON array of objects', 'check the sender')
  const problems: DocumentProblem[] = []
  const resolved: ResolvedSenmlRecord[] = []
  let base: SenmlRecord = {}
  for (let i = 0; i < data.length && problems.length < MAX_PROBLEMS; i++) {
    const { record, problems: wrong } = senmlFields(data[i], i)
    for (const one of wrong) problems.push(one)
    if (record.bver !== undefined && i > 0 && record.bver !== (base.bver ?? SENML_VERSION))
      problems.push(
        problem(i, 'bver', record.bver, 'differs from that of the records before', 'one version', 'split the pack'),
      )
    base = { ...base, ...basesOf(record) }
    if (wrong.length > 0 || hasOnlyBases(record)) continue
    const one = resolvedFrom(record, base, options.now)
    if ('path' in one) problems.push({ ...one, path: `[${i}].${one.path}` })
    else resolved.push(one)
  }
  const [first, ...others] = problems
  if (first !== undefined) throw new DocumentError(WHAT, [first, ...others])
  return resolved.sort((a, b) => a.t - b.t)
}

function basesOf({ bn, bt, bu, bv, bs, bver }: SenmlRecord): SenmlRecord {
  return {
    ...(bn !== undefined && { bn }),
    ...(bt !== undefined && { bt }),
    ...(bu !== undefined && { bu }),
    ...(bv !== undefined && { bv }),
    ...(bs !== undefined && { bs }),
    ...(bver !== undefined && { bver }),
  }
}

function resolvedFrom(
  record: SenmlRecord,
  base: SenmlRecord,
  now: Instant | undefined,
): ResolvedSenmlRecord | DocumentProblem {
  const n = (base.bn ?? '') + (record.n ?? '')
  if (!SENML_NAME.test(n) || n.length > MAX_NAME)
    return {
      path: 'n',
      value: shownValue(n),
      problem: 'is not a name',
      expected: 'letters, digits and - : . / _, beginning with a letter or digit',
      hint: 'give every record a name, by itself or with a base name',
    }
  const told = (base.bt ?? 0) + (record.t ?? 0)
  if (told < MIN_ABSOLUTE_TIME && now === undefined)
    return {
      path: 't',
      value: String(told),
      problem: 'is counted from now',
      expected: 'seconds since 1970, at least 2^28',
      hint: 'pass the moment of arrival as now',
    }
  const u = record.u ?? base.bu
  const { vs, vb, vd, ut } = record
  const v = record.v === undefined ? undefined : (base.bv ?? 0) + record.v
  const s = record.s === undefined && base.bs === undefined ? undefined : (base.bs ?? 0) + (record.s ?? 0)
  // Each addend is finite, and their sum may still not be.
  for (const [path, sum] of Object.entries({ t: told, v, s }))
    if (sum !== undefined && sum - sum !== 0)
      return {
        path,
        value: '',
        problem: 'and its base add up to more than a number can hold',
        expected: 'a finite sum',
        hint: 'check the base fields of the pack',
      }
  const version = base.bver ?? SENML_VERSION
  return {
    n,
    ...(u !== undefined && { u }),
    ...(v !== undefined && { v }),
    ...(vs !== undefined && { vs }),
    ...(vb !== undefined && { vb }),
    ...(vd !== undefined && { vd }),
    ...(s !== undefined && { s }),
    t: told < MIN_ABSOLUTE_TIME ? (now as number) + told : told,
    ...(ut !== undefined && { ut }),
    ...(version !== SENML_VERSION && { bver: version }),
  }
}

function problem(
  i: number,
  label: string,
  value: unknown,
  what: string,
  expected: string,
  hint: string,
): DocumentProblem {
  return { path: `[${i}].${label}`, value: shownValue(value), problem: what, expected, hint }
}
