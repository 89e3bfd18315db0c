import { requireObject } from '../../quantity/guard.js'
import { asName, hasRow } from '../../quantity/one-of.js'
import { DocumentError, type DocumentProblem } from '../document-error.js'
import type { UnknownKeys } from '../field/object-field.js'
import { jsonData, limitedText, refusal, refuseHostile } from '../hostile-input.js'
import type { ReadingLimit } from '../terms.js'
import { DOCUMENTS, type DocumentKind, type DocumentName, type DocumentTypes, schemaOf } from './documents.js'
import { bringUpToDate } from './migrate.js'
import { problemsOf } from './schema-problems.js'

/** How strictly a document is read. */
export interface ReadOptions {
  /** Whether keys that the document should not have are refused, as by default, or kept. */
  readonly unknownKeys?: UnknownKeys
}

/** How strictly the text of a document is read. */
export interface ParseOptions extends ReadOptions, ReadingLimit {}

/** The kind of document of that name. */
export function documentKind(name: string): DocumentKind {
  const kind = hasRow(DOCUMENTS, name) ? DOCUMENTS[name as DocumentName] : undefined
  if (kind === undefined)
    throw refusal(
      'document',
      'name',
      asName(name).slice(0, 60),
      'is no kind of document',
      Object.keys(DOCUMENTS).join(', '),
      'use one of these',
    )
  return kind
}

/**
 * A document from data of unknown origin: a medium, a container, a probe, a calibration, limits, emitters, a reading, a record, a
 * shot, a request for a plan or a plan. Every number may be given in the canonical unit of its kind, or as text with a unit.
 *
 * What is read has been checked for its form and its ranges, not for being true: a limit that was typed wrong within its range
 * can still cost a crop.
 *
 * @procedure Refuses data that is too large, too deep or unsafe; brings an older version to the current one; checks every key, type,
 * unit and range, and whether the values agree; reads text with a unit into the canonical unit.
 * @param name - Which kind of document it must be.
 * @param data - Plain data, as `JSON.parse` gives it.
 * @returns The document, its numbers in canonical units.
 * @throws `DocumentError`, an `InputError` that lists every problem with its path, value, expected unit and what to do.
 * @source definition
 * @example
 * const emitters = readDocument('emitters', { version: 1, emitters: 2, emitterFlow: '0.5 gph', lineFill: '8 s' })
 * emitters.emitterFlow // => 1.892705892
 * readDocument('emitters', { version: 1, emitters: 2, emitterFlow: '3 ft', lineFill: 8 }) // => throws InputError
 */
export function readDocument<N extends DocumentName>(
  name: N,
  data: unknown,
  options: ReadOptions = {},
): DocumentTypes[N] {
  requireObject(options, 'options')
  const kind = documentKind(name)
  const what = `${asName(name)} document`
  refuseHostile(what, data)
  const current = bringUpToDate(what, data, kind.version, kind.migrations)
  const result = schemaOf(name, options.unknownKeys ?? 'refuse').safeParse(current)
  if (result.success) return result.data as DocumentTypes[N]
  throw new DocumentError(what, problemsOf(result.error.issues, current) as [DocumentProblem, ...DocumentProblem[]])
}

/**
 * A document from JSON text of unknown origin.
 *
 * @procedure Refuses text that is too long or too deep before it is parsed, then reads the data like `readDocument`.
 * @param name - Which kind of document it must be.
 * @param text - The JSON text.
 * @param options - What to do with unknown keys, and the longest text to look at.
 * @returns The document, its numbers in canonical units.
 * @throws `DocumentError`, an `InputError` that lists every problem; `DomainError` for a limit of characters that is none.
 * @source rfc-8259-2017
 * @example
 * const text = '{"version":1,"emitters":2,"emitterFlow":"2 L/h","lineFill":"8 s"}'
 * parseDocument('emitters', text, { maxCharacters: 1000 }).emitterFlow // => 2
 */
export function parseDocument<N extends DocumentName>(
  name: N,
  text: string,
  options: ParseOptions = {},
): DocumentTypes[N] {
  requireObject(options, 'options')
  const what = `${asName(name)} document`
  return readDocument(name, jsonData(what, limitedText(what, text, options.maxCharacters)), options)
}
