import { requireObject } from '../../quantity/guard.js'
import { refuseHostile } from '../hostile-input.js'
import type { DocumentName, DocumentTypes } from './documents.js'
import { documentKind, type ReadOptions, readDocument } from './read-document.js'

/** Anything that JSON can hold. */
export type JsonData = null | boolean | number | string | readonly JsonData[] | { readonly [key: string]: JsonData }

/**
 * A document as plain data for JSON, with the version of its form: what `readDocument` reads again without loss.
 *
 * @procedure Reads the document once, so that nothing is written that could not be read; writes arrays of numbers as lists, with
 * `null` where a reading is missing, and leaves out what is undefined.
 * @param name - Which kind of document it is.
 * @param document - The document, without its version or with it.
 * @returns Plain data, to be passed to `JSON.stringify`.
 * @throws `DocumentError`, an `InputError` that lists every problem.
 * @source definition
 * @example
 * const calibration = calibrateTwoPoint({
 *   dry: { reading: rawReading(300), waterContent: waterContent(0.02) },
 *   saturated: { reading: rawReading(1100), waterContent: waterContent(0.78) },
 * })
 * writeDocument('calibration', calibration) // => { version: 1, form: 'line', coefficients: [-0.265, 0.00095] }
 */
export function writeDocument<N extends DocumentName>(
  name: N,
  document: Omit<DocumentTypes[N], 'version'>,
  options: ReadOptions = {},
): JsonData {
  requireObject(options, 'options')
  const { version } = documentKind(name)
  refuseHostile(`${name} document`, document)
  return plain(readDocument(name, withoutGaps({ ...document, version }), options))
}

/** Undefined properties left out, at every level of the few that documents have. */
function withoutGaps(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(withoutGaps)
  if (typeof value !== 'object' || value === null || ArrayBuffer.isView(value)) return value
  return Object.fromEntries(
    Object.entries(value)
      .filter(([, one]) => one !== undefined)
      .map(([key, one]) => [key, withoutGaps(one)]),
  )
}

function plain(value: unknown): JsonData {
  if (typeof value === 'number') return Number.isNaN(value) ? null : value
  if (value instanceof Float64Array || value instanceof Uint8Array || Array.isArray(value))
    return Array.from(value as ArrayLike<unknown>, plain)
  if (typeof value !== 'object' || value === null) return value as JsonData
  return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, plain(one)]))
}
