import * as z from 'zod'
import { PROBE_HEIGHT } from '../../flow/domains.js'
import { isPorewaterError } from '../../quantity/attempt.js'
import { INSTANT } from '../../quantity/domains.js'
import { InputError } from '../../quantity/errors.js'
import type { Duration, Length } from '../../quantity/generated/kinds.js'
import type { KindName } from '../../text/generated/kind-types.js'
import { KINDS } from '../../text/generated/kinds.js'
import { DOCUMENT_READING, READING_INTERVAL } from '../domains.js'
import { checked, numberField, quantityField, seriesField, wordField } from '../field/field.js'
import { instantField } from '../field/instant-field.js'
import { choiceField, objectField, type UnknownKeys } from '../field/object-field.js'
import type { ReadingKind, ReadingOrigin } from '../terms.js'
import { checkSource, FLAGS, readingValue, type TidyReading } from '../tidy-reading.js'

/** A probe and where it stands. */
export interface ProbeDocument {
  readonly version: 1
  /** Its own name, the `source` of its readings. */
  readonly name: string
  /** What it reports. */
  readonly measures: ReadingKind
  /** The irrigation zone that it stands for. */
  readonly zone?: string
  /** Height of its middle above the bottom of the medium. Unit: cm. */
  readonly heightAboveBottom?: Length
  /** Time between two readings. Unit: s. */
  readonly interval?: Duration
  /** Lower readings are faults. Unit: that of what it measures. */
  readonly min?: number
  /** Higher readings are faults. Unit: that of what it measures. */
  readonly max?: number
}

/** One reading with the version of its form. */
export type ReadingDocument = { readonly version: 1 } & TidyReading

/** The readings of one probe. */
export interface RecordDocument extends ReadingOrigin {
  readonly version: 1
  /** When. Unit: s. */
  readonly time: Float64Array
  /** How much, NaN where one is missing. Unit: that of the kind. */
  readonly value: Float64Array
  /** Quality flags, as `QUALITY` has them. Unit: 1. */
  readonly quality?: Uint8Array
}

const MAX_ROWS = 1_000_000

const kindField = () =>
  choiceField('what is measured', ['RawReading', ...Object.keys(KINDS)] as ['RawReading', ...KindName[]])
const sourceField = () =>
  wordField('name of the probe').transform((name, context) => checked(context, 'a name', () => checkSource(name)))

/** The schema of a probe. */
export function probeSchema(unknownKeys: UnknownKeys) {
  return objectField(
    {
      version: z.literal(1),
      name: sourceField(),
      measures: kindField(),
      zone: wordField('irrigation zone that it stands for').optional(),
      heightAboveBottom: quantityField('Length', 'height of its middle above the bottom', PROBE_HEIGHT).optional(),
      interval: quantityField('Duration', 'time between two readings', READING_INTERVAL).optional(),
      min: numberField(DOCUMENT_READING).optional(),
      max: numberField(DOCUMENT_READING).optional(),
    },
    unknownKeys,
  ).transform((probe, context) =>
    checked(context, 'a lowest reading below the highest', () => {
      if (probe.min !== undefined && probe.max !== undefined && probe.min >= probe.max)
        throw new InputError('min', 'is not below the highest reading', 'check both; they may be swapped')
      return probe
    }),
  )
}

/** The schema of one reading. */
export function readingSchema(unknownKeys: UnknownKeys) {
  return objectField(
    {
      version: z.literal(1),
      time: instantField('when'),
      source: sourceField(),
      kind: kindField(),
      value: z
        .union([z.number(), z.string(), z.null()], {
          error: () => 'a number, text with a unit, or null where it is missing',
        })
        .meta({ description: 'how much; a number in the canonical unit of the kind, text with a unit, or null' }),
      quality: z.union([z.literal(1), z.literal(2), z.literal(3), z.literal(4), z.literal(9)]).optional(),
    },
    unknownKeys,
  ).transform((reading, context) => ({
    ...reading,
    value: checked(context, 'a reading of its kind', () =>
      readingValue(reading.value as number | string | null, reading.kind as ReadingKind),
    ),
  }))
}

/** The schema of a record. */
export function recordSchema(unknownKeys: UnknownKeys) {
  return objectField(
    {
      version: z.literal(1),
      source: sourceField(),
      kind: kindField(),
      time: seriesField(INSTANT, false, MAX_ROWS),
      value: seriesField(DOCUMENT_READING, true, MAX_ROWS),
      quality: z.union([z.array(z.number()).max(MAX_ROWS), z.instanceof(Uint8Array)]).optional(),
    },
    unknownKeys,
  ).transform((record, context) =>
    checked(context, 'one time, value and flag for each reading', () => {
      const { time, value, kind } = record as unknown as RecordDocument
      if (value.length !== time.length)
        throw new InputError(
          'value',
          `has ${value.length} entries for ${time.length} times`,
          'give null where one is missing',
        )
      for (let i = 0; i < value.length; i++) checkEntry(value[i]!, kind, i)
      if (record.quality === undefined) return record
      return { ...record, quality: flagsOf(record.quality as ArrayLike<number>, time.length) }
    }),
  )
}

function checkEntry(value: number, kind: ReadingKind, i: number): void {
  if (Number.isNaN(value)) return
  try {
    readingValue(value, kind)
  } catch (error) {
    if (!isPorewaterError(error)) throw error
    throw new InputError('value', `has at [${i}] ${value}: ${error.message.split(';')[0]}`, error.hint)
  }
}

function flagsOf(flags: ArrayLike<number>, rows: number): Uint8Array {
  if (flags.length !== rows)
    throw new InputError(
      'quality',
      `has ${flags.length} entries for ${rows} readings`,
      'give one flag for each reading',
    )
  for (let i = 0; i < flags.length; i++) {
    if (!FLAGS.includes(flags[i]!))
      throw new InputError(
        'quality',
        `has at [${i}] the flag ${String(flags[i])}`,
        'use 1 pass, 2 not evaluated, 3 suspect, 4 fail, 9 missing',
      )
  }
  return Uint8Array.from(flags)
}
