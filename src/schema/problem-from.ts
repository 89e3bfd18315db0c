import { isPorewaterError } from '../quantity/attempt.js'
import type { DocumentProblem } from './document-error.js'

/** Runs a check on one part of something larger, and keeps its refusal as a problem of that part. */
export function problemFrom(problems: DocumentProblem[], path: string, value: string, check: () => void): void {
  try {
    check()
  } catch (error) {
    if (!isPorewaterError(error)) throw error
    problems.push(problemOf(error, path, value))
  }
}

/** A refusal as a problem. */
function problemOf(error: Error & { readonly hint: string }, path: string, value: string): DocumentProblem {
  const problem = error.message.replace(error.hint, '').replace(/[;:]\s*$/, '')
  return { path, value, problem, expected: '', hint: error.hint }
}
