import { shownValue } from '../document-error.js'
import { refusal } from '../hostile-input.js'

/** Turns a document of one version into one of the next. It sees plain data that nothing has checked but its safety. */
export type MigrationStep = (old: Readonly<Record<string, unknown>>) => Record<string, unknown>

/** The document in the current version; the version of the input must be stated, because guessing it could change its meaning. */
export function bringUpToDate(what: string, data: unknown, current: number, steps: readonly MigrationStep[]): unknown {
  // What is no object is refused by the schema, which can say what it should be.
  if (typeof data !== 'object' || data === null || Array.isArray(data)) return data
  const version: unknown = (data as { version?: unknown }).version
  if (version === undefined)
    throw refusal(
      what,
      'version',
      '',
      'is missing',
      `version ${current}`,
      `write "version": ${current}, if that is its form`,
    )
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1)
    throw refusal(
      what,
      'version',
      shownValue(version),
      'is not a version',
      `a whole number up to ${current}`,
      'correct it',
    )
  if (version > current)
    throw refusal(
      what,
      'version',
      String(version),
      'was written by a newer porewater',
      `at most ${current}`,
      'update porewater; an old one could misread it',
    )
  let document = data as Record<string, unknown>
  for (let from = version; from < current; from++) document = { ...steps[from - 1]!(document), version: from + 1 }
  return document
}
