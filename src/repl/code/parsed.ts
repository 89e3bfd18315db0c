import { type Program, parse } from 'acorn'
import { withoutTypeArguments, withoutTypes } from './erase-types.js'

/** Code that can run, with its tree. */
export interface ParsedCode {
  readonly source: string
  readonly program: Program
}

/** Reads a line or block as JavaScript, or as TypeScript without its types; an object in braces is an object, not a block. */
export function parsed(typed: string): ParsedCode {
  const source = withoutTypeArguments(typed)
  let first: unknown
  for (const candidate of candidates(source)) {
    try {
      return { source: candidate, program: parse(candidate, { ecmaVersion: 'latest', sourceType: 'module' }) }
    } catch (error) {
      first ??= error
    }
  }
  throw first
}

function* candidates(source: string): Iterable<string> {
  if (/^\s*\{/.test(source)) yield `(${source.trim().replace(/;$/, '')}\n)`
  yield source
  yield withoutTypes(source)
}

/** Whether more must be typed before a line can run. */
export function isUnfinished(typed: string): boolean {
  const source = withoutTypeArguments(typed)
  const all = [source, withoutTypes(source)]
  const found = all.map(problemOf)
  return !found.includes(undefined) && found.some((error, i) => error !== undefined && isAtEnd(error, all[i]!))
}

interface Problem extends SyntaxError {
  readonly pos: number
  readonly raisedAt: number
}

function problemOf(source: string): Problem | undefined {
  try {
    parse(source, { ecmaVersion: 'latest', sourceType: 'module' })
    return undefined
  } catch (error) {
    return error as Problem
  }
}

function isAtEnd({ message, pos }: Problem, source: string): boolean {
  if (/^Unterminated (?:template|comment)/.test(message)) return true
  return /^Unexpected token/.test(message) && pos >= source.replace(/(?:\s|\/\/[^\n]*\n?)+$/, '').length
}
