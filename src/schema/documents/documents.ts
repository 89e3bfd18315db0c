import type * as z from 'zod'
import type { ProbeCalibration } from '../../probe/calibration.js'
import { oneOf } from '../../quantity/one-of.js'
import type { UnknownKeys } from '../field/object-field.js'
import { calibrationSchema } from './calibration-document.js'
import { type ContainerDocument, containerSchema } from './container-document.js'
import { type MediumDocument, mediumSchema } from './medium-document.js'
import type { MigrationStep } from './migrate.js'
import {
  type ProbeDocument,
  probeSchema,
  type ReadingDocument,
  type RecordDocument,
  readingSchema,
  recordSchema,
} from './probe-documents.js'
import {
  type EmittersDocument,
  emittersSchema,
  type LimitsDocument,
  limitsSchema,
  type PlanDocument,
  type PlanRequestDocument,
  planRequestSchema,
  planSchema,
  type ShotDocument,
  shotSchema,
} from './watering-documents.js'
import { type ZoneDocument, zoneSchema } from './zone-document.js'

/** What each kind of document is once it has been read. */
export interface DocumentTypes {
  readonly medium: MediumDocument
  readonly container: ContainerDocument
  readonly probe: ProbeDocument
  readonly calibration: ProbeCalibration
  readonly limits: LimitsDocument
  readonly emitters: EmittersDocument
  readonly reading: ReadingDocument
  readonly record: RecordDocument
  readonly shot: ShotDocument
  readonly 'plan-request': PlanRequestDocument
  readonly plan: PlanDocument
  readonly zone: ZoneDocument
}

/** Name of a kind of document. */
export type DocumentName =
  | 'medium'
  | 'container'
  | 'probe'
  | 'calibration'
  | 'limits'
  | 'emitters'
  | 'reading'
  | 'record'
  | 'shot'
  | 'plan-request'
  | 'plan'
  | 'zone'

/** How documents of one kind are read. */
export interface DocumentKind {
  readonly about: string
  /** The version that is written. */
  readonly version: number
  /** The first brings version 1 to version 2, and so on. */
  readonly migrations: readonly MigrationStep[]
  readonly schema: (unknownKeys: UnknownKeys) => z.ZodType
}

/** Every kind of document. No kind has left its first version yet, so that there is nothing to migrate from. */
export const DOCUMENTS: Readonly<Record<DocumentName, DocumentKind>> = {
  medium: { about: 'A growing medium: its retention curve.', version: 1, migrations: [], schema: mediumSchema },
  container: {
    about: 'The measures of the medium in a container.',
    version: 1,
    migrations: [],
    schema: containerSchema,
  },
  probe: { about: 'A probe and where it stands.', version: 1, migrations: [], schema: probeSchema },
  calibration: {
    about: "What a probe's readings mean in one medium.",
    version: 1,
    migrations: [],
    schema: calibrationSchema,
  },
  limits: {
    about: 'Between what water contents a zone is kept, and what its valve may do.',
    version: 1,
    migrations: [],
    schema: limitsSchema,
  },
  emitters: { about: 'The emitters of one container.', version: 1, migrations: [], schema: emittersSchema },
  reading: { about: 'One reading of one probe.', version: 1, migrations: [], schema: readingSchema },
  record: { about: 'The readings of one probe over time.', version: 1, migrations: [], schema: recordSchema },
  shot: { about: 'One opening of a valve.', version: 1, migrations: [], schema: shotSchema },
  'plan-request': {
    about: 'What a plan of shots for a day has to respect.',
    version: 1,
    migrations: [],
    schema: planRequestSchema,
  },
  plan: { about: 'A plan of shots for a day with its prediction.', version: 1, migrations: [], schema: planSchema },
  zone: { about: 'A zone: its containers, probes, place and limits.', version: 1, migrations: [], schema: zoneSchema },
}

/** Schemas that were built already: building one costs more than reading a document. */
const BUILT: Partial<Record<string, z.ZodType>> = {}

/** The schema of a kind of document. */
export function schemaOf(name: DocumentName, unknownKeys: UnknownKeys): z.ZodType {
  const key = `${name} ${oneOf(unknownKeys, ['refuse', 'keep'], 'unknownKeys')}`
  BUILT[key] ??= DOCUMENTS[name].schema(unknownKeys)
  return BUILT[key]
}
