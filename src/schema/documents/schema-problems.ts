import type * as z from 'zod'
import { type DocumentProblem, MAX_PROBLEMS, pathText, shownValue } from '../document-error.js'
import type { FieldFault } from '../field/field.js'

/** What the schema library found, in the words of this package. */
export function problemsOf(issues: readonly z.core.$ZodIssue[], data: unknown): DocumentProblem[] {
  return issues.slice(0, MAX_PROBLEMS).flatMap((issue) => problemsOfIssue(issue, data))
}

function problemsOfIssue(issue: z.core.$ZodIssue, data: unknown): DocumentProblem[] {
  const path = pathText(issue.path)
  const value = valueAt(data, issue.path)
  const shown = shownValue(value)
  if (issue.code === 'unrecognized_keys') {
    const keys = issue.keys.slice(0, MAX_PROBLEMS)
    return keys.map((key) => ({
      path: pathText([...issue.path, key]),
      value: shownValue(valueAt(value, [key])),
      problem: 'has a key that is not known here',
      expected: issue.message,
      hint: 'correct its spelling, remove it, or read with unknownKeys: "keep"',
    }))
  }
  if (issue.code === 'custom') {
    const { part, problem, expected, hint } = issue.params as unknown as FieldFault
    const way = [...issue.path, ...part.split('.')]
    const inside = part === '' ? undefined : valueAt(data, way)
    if (inside !== undefined) return [{ path: pathText(way), value: shownValue(inside), problem, expected, hint }]
    if (typeof value !== 'object') return [{ path, value: shown, problem, expected, hint }]
    return [{ path, value: '', problem: part === '' ? problem : `${part}: ${problem}`, expected, hint }]
  }
  const problem = value === undefined ? 'is missing' : 'does not fit'
  const expected = expectedBy(issue)
  return [
    { path, value: shown, problem, expected, hint: value === undefined ? 'add it' : 'replace it by what is expected' },
  ]
}

function expectedBy(issue: z.core.$ZodIssue): string {
  if (issue.code === 'too_big')
    return `at most ${issue.maximum} ${issue.origin === 'string' ? 'characters' : 'entries'}`
  if (issue.code === 'too_small') return `at least ${issue.minimum} entries`
  if (issue.code === 'invalid_value') return issue.values.map((one) => String(one)).join(', ')
  // Where a schema has no words of its own, those of the library say the type.
  return issue.message.replace(/^Invalid input: expected /, '').replace(/, received .*$/, '')
}

function valueAt(data: unknown, path: readonly PropertyKey[]): unknown {
  let value = data
  for (const key of path) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, key)) return undefined
    value = (value as Record<PropertyKey, unknown>)[key]
  }
  return value
}
