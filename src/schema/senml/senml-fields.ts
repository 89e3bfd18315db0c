import { type DocumentProblem, shownValue } from '../document-error.js'
import { SENML_VERSION, SENML_VERSION_SECONDARY_UNITS, type SenmlRecord } from './senml-record.js'

const LABELS: Readonly<Record<keyof SenmlRecord, 'text' | 'number' | 'boolean' | 'base64'>> = {
  bn: 'text',
  bt: 'number',
  bu: 'text',
  bv: 'number',
  bs: 'number',
  bver: 'number',
  n: 'text',
  u: 'text',
  v: 'number',
  vs: 'text',
  vb: 'boolean',
  vd: 'base64',
  s: 'number',
  t: 'number',
  ut: 'number',
}
const EXPECTED = {
  text: 'text',
  number: 'a finite number',
  boolean: 'true or false',
  base64: 'base 64 with a URL-safe alphabet',
}
const VALUES = ['v', 'vs', 'vb', 'vd'] as const
const BASES: readonly string[] = ['bn', 'bt', 'bu', 'bv', 'bs', 'bver']

/** The fields of a record that are known, and what is wrong with them. Unknown fields are passed over, as RFC 8428 section 4.4 demands. */
export function senmlFields(data: unknown, index: number): { record: SenmlRecord; problems: DocumentProblem[] } {
  const problems: DocumentProblem[] = []
  const record: Record<string, unknown> = {}
  const tell = (label: string, value: unknown, problem: string, expected: string, hint: string) =>
    problems.push({ path: `[${index}]${label && `.${label}`}`, value: shownValue(value), problem, expected, hint })
  if (typeof data !== 'object' || data === null || Array.isArray(data)) {
    tell('', data, 'is not a record', 'an object with SenML labels', 'check the sender')
    return { record, problems }
  }
  for (const [label, value] of Object.entries(data)) {
    const wanted = Object.hasOwn(LABELS, label) ? LABELS[label as keyof SenmlRecord] : undefined
    if (wanted === undefined) {
      if (label.endsWith('_'))
        tell(
          label,
          value,
          'must be understood and is not',
          'labels of RFC 8428',
          'read the pack with a program that knows the label',
        )
    } else if (!fits(value, wanted)) tell(label, value, 'has the wrong type', EXPECTED[wanted], 'check the sender')
    else record[label] = value
  }
  checkWhole(record as SenmlRecord, problems.length > 0, tell)
  return { record: record as SenmlRecord, problems }
}

/** Whether a record carries base fields only, as the first one of the example in RFC 8428 section 5.1.7. */
export function hasOnlyBases(record: SenmlRecord): boolean {
  return Object.keys(record).every((label) => BASES.includes(label))
}

function checkWhole(
  record: SenmlRecord,
  broken: boolean,
  tell: (label: string, value: unknown, problem: string, expected: string, hint: string) => void,
): void {
  const { bver } = record
  if (bver !== undefined && !understood(bver))
    tell(
      'bver',
      bver,
      'is a version that is not understood',
      'up to 10, or 26',
      'do not use this pack: it may mean something else',
    )
  if (broken || hasOnlyBases(record)) return
  const values = VALUES.filter((label) => record[label] !== undefined)
  if (values.length > 1)
    tell('', undefined, `has the values ${values.join(' and ')}`, 'exactly one value', 'send one record for each value')
  if (values.length === 0 && record.s === undefined)
    tell('', undefined, 'has no value', 'v, vs, vb, vd or a sum', 'leave the record out where a reading is missing')
}

function understood(version: number): boolean {
  return (
    Number.isInteger(version) &&
    ((version > 0 && version <= SENML_VERSION) || version === SENML_VERSION_SECONDARY_UNITS)
  )
}

function fits(value: unknown, wanted: keyof typeof EXPECTED): boolean {
  if (wanted === 'number') return typeof value === 'number' && Number.isFinite(value)
  if (wanted === 'boolean') return typeof value === 'boolean'
  return typeof value === 'string' && (wanted === 'text' || /^[A-Za-z0-9_-]*$/.test(value))
}
