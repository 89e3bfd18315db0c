import { isObject, wholeNumberIn } from '../quantity/guard.js'
import { DocumentError, shownValue } from './document-error.js'
import { MAX_CHARACTERS } from './domains.js'

/** Objects inside objects that a document of this package can have. */
const DEEPEST = 16
/** Values in one document, list entries included. */
const MAX_VALUES = 5_000_000
const MAX_TEXT = 2000
const MAX_KEY = 200
/** Names through which a document could reach into the program that reads it. */
const UNSAFE: readonly string[] = ['__proto__', 'prototype', 'constructor']
/** Characters of a text that is read unless the caller allows more. */
const CHARACTERS_BY_DEFAULT = 8_000_000

/** Refuses a text that is longer than the caller accepts. */
export function limitedText(what: string, text: unknown, max: number = CHARACTERS_BY_DEFAULT): string {
  const limit = wholeNumberIn(max, MAX_CHARACTERS, 'maxCharacters')
  if (typeof text !== 'string')
    throw refusal(what, '', shownValue(text), `is not text but ${typeof text}`, 'text', 'pass the text of the document')
  if (text.length > limit)
    throw refusal(
      what,
      '',
      '',
      `has ${text.length} characters`,
      `at most ${limit} characters`,
      'split it, or allow more with maxCharacters',
    )
  return text
}

/**
 * The data behind a JSON text. Its depth is counted first, so that no parser runs out of stack, and a key that stands twice in one
 * object is refused (RFC 7493, section 2.3): of two limits for one valve a parser would silently take the last.
 */
export function jsonData(what: string, text: string): unknown {
  const keys: Set<string>[] = []
  for (let i = 0; i < text.length; i++) {
    const c = text.charCodeAt(i)
    if (c === 34) {
      const begin = i
      for (i++; i < text.length && text.charCodeAt(i) !== 34; i++) if (text.charCodeAt(i) === 92) i++
      if (isKey(text, i + 1)) checkTwice(what, text.slice(begin, i + 1), keys.at(-1))
    } else if (c === 91 || c === 123) {
      if (keys.push(new Set()) > DEEPEST) throw tooDeep(what, '')
    } else if (c === 93 || c === 125) keys.pop()
  }
  try {
    return JSON.parse(text)
  } catch {
    throw refusal(what, '', shownValue(text), 'is not JSON', 'a JSON text', 'check that the text is whole')
  }
}

/** Whether a colon follows, with white space before it or not. */
function isKey(text: string, from: number): boolean {
  let at = from
  while (at < text.length && ' \t\n\r'.includes(text[at]!)) at++
  return text[at] === ':'
}

function checkTwice(what: string, quoted: string, keys: Set<string> | undefined): void {
  if (quoted.length > 6 * MAX_KEY + 2) return // Too long for any key; it is refused with the data.
  // The same key may be spelled with escapes.
  const key = quoted.includes('\\') ? unescaped(quoted) : quoted.slice(1, -1)
  if (keys?.has(key))
    throw refusal(what, key.slice(0, 60), '', 'stands twice in one object', 'each key once', 'remove one of the two')
  keys?.add(key)
}

function unescaped(quoted: string): string {
  try {
    return String(JSON.parse(quoted))
  } catch {
    return quoted // The whole text is refused for it.
  }
}

/**
 * Refuses data that no document of this package can hold, before anything else looks at it. Nothing is followed by recursion, so
 * that deep or circular data ends in a refusal like any other.
 */
export function refuseHostile(what: string, data: unknown): void {
  const open: { value: unknown; path: string; depth: number }[] = [{ value: data, path: '', depth: 0 }]
  let count = 0
  for (let next = open.pop(); next !== undefined; next = open.pop()) {
    const { value, path, depth } = next
    if (!isObject(value)) {
      checkLeaf(what, value, path)
      continue
    }
    if (depth >= DEEPEST) throw tooDeep(what, path)
    const numbers = value instanceof Float64Array || value instanceof Uint8Array
    const keys = numbers || Array.isArray(value) ? [] : plainKeys(what, value, path)
    count += numbers || Array.isArray(value) ? value.length : keys.length
    if (count > MAX_VALUES)
      throw refusal(what, path, '', `has more than ${MAX_VALUES} values`, 'a smaller document', 'split it')
    if (numbers) continue
    if (Array.isArray(value)) {
      for (let i = 0; i < value.length; i++) {
        const entry = value[i]
        if (typeof entry === 'object' && entry !== null)
          open.push({ value: entry, path: `${path}[${i}]`, depth: depth + 1 })
        else if (typeof entry !== 'number') checkLeaf(what, entry, path)
      }
    } else {
      for (const key of keys)
        open.push({
          value: (value as Record<string, unknown>)[key],
          path: path === '' ? key : `${path}.${key}`,
          depth: depth + 1,
        })
    }
  }
}

function plainKeys(what: string, value: object, path: string): string[] {
  const prototype = Object.getPrototypeOf(value)
  // A plain object of another window or worker has a prototype of its own, whose prototype is nothing.
  if (prototype !== null && Object.getPrototypeOf(prototype) !== null)
    throw refusal(
      what,
      path,
      '',
      'is not plain data',
      'plain objects, lists, text, numbers',
      'convert it to JSON first',
    )
  const keys = Object.keys(value)
  for (const key of keys) {
    if (UNSAFE.includes(key))
      throw refusal(what, path, '', `has a key "${key}"`, 'no such key', 'remove it; it has no meaning in a document')
    if (key.length > MAX_KEY)
      throw refusal(what, path, '', `has a key of ${key.length} characters`, `keys of at most ${MAX_KEY}`, 'shorten it')
  }
  return keys
}

function checkLeaf(what: string, value: unknown, path: string): void {
  if (typeof value === 'string' && value.length > MAX_TEXT)
    throw refusal(
      what,
      path,
      shownValue(value),
      `has ${value.length} characters`,
      `at most ${MAX_TEXT} characters`,
      'shorten the text',
    )
  if (typeof value === 'function' || typeof value === 'symbol' || typeof value === 'bigint')
    throw refusal(what, path, '', `is a ${typeof value}`, 'plain data', 'convert it to JSON first')
  if (typeof value === 'object' && value !== null)
    throw refusal(what, path, '', 'cannot be read', 'plain data', 'convert it to JSON first')
}

function tooDeep(what: string, path: string): DocumentError {
  return refusal(
    what,
    path.slice(0, 200),
    '',
    'is nested too deeply',
    `at most ${DEEPEST} levels`,
    'no document of this package is so deep; check where it comes from',
  )
}

/** An error about one thing. */
export function refusal(
  what: string,
  path: string,
  value: string,
  problem: string,
  expected: string,
  hint: string,
): DocumentError {
  return new DocumentError(what, [{ path, value, problem, expected, hint }])
}
