import { InputError } from '../quantity/errors.js'
import { isList } from '../quantity/guard.js'

/** One thing that is wrong with a document: where, what stands there, what should stand there and what to do. */
export interface DocumentProblem {
  /** Way to the value, as `parameters.alpha` or `shots[2].volume`; empty for the whole document. */
  readonly path: string
  /** What stands there, shortened. */
  readonly value: string
  /** What is wrong with it. */
  readonly problem: string
  /** What should stand there, with its unit. */
  readonly expected: string
  /** What to do about it. */
  readonly hint: string
}

/** No message lists more problems than this; the rest is counted. */
const MAX_LISTED = 5

/**
 * A document, a pack or a table that cannot be used, with everything that is wrong with it.
 * It is an `InputError`, recognised by the same `code`; `argument` is the path of the first problem.
 */
export class DocumentError extends InputError {
  /** Every problem that was found, at most a hundred. */
  readonly problems: readonly DocumentProblem[]
  constructor(what: string, problems: readonly [DocumentProblem, ...DocumentProblem[]]) {
    const [first, ...others] = problems
    const more = others.slice(0, MAX_LISTED - 1).map((one) => `; ${sentence(one)}`)
    const rest = problems.length - 1 - more.length
    super(
      first.path === '' ? what : `${what}, ${first.path}`,
      `${phrase(first)}${more.join('')}${rest > 0 ? `; and ${rest} more` : ''}`,
      first.hint,
    )
    this.problems = problems
  }
}

function sentence(one: DocumentProblem): string {
  return `${one.path === '' ? 'it' : one.path}: ${phrase(one)}`
}

function phrase({ value, problem, expected }: DocumentProblem): string {
  return `${value === '' ? '' : `${value} `}${problem}${expected === '' ? '' : ` (expected: ${expected})`}`
}

/** Problems kept of one document. */
export const MAX_PROBLEMS = 100

/** A value as a few characters, whatever it is. */
export function shownValue(value: unknown): string {
  if (value === undefined) return ''
  if (typeof value === 'string') return JSON.stringify(value.length > 60 ? `${value.slice(0, 60)}...` : value)
  if (typeof value === 'number' || typeof value === 'boolean' || value === null) return String(value)
  if (isList(value)) return `a list of ${value.length}`
  return typeof value === 'object' ? 'an object' : `a ${typeof value}`
}

/** The same path as people write it. */
export function pathText(path: readonly PropertyKey[]): string {
  let text = ''
  for (const key of path) {
    if (typeof key === 'number') text += `[${key}]`
    else text += `${text === '' ? '' : '.'}${String(key).slice(0, 60)}`
  }
  return text
}
