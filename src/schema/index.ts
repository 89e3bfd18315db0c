export {
  type ContainerDocument,
  type ContainerShape,
  containerFromDocument,
} from './container-document.js'
export { DocumentError, type DocumentProblem } from './document-error.js'
export { documentJsonSchema, documentSchema } from './document-schema.js'
export type { DocumentName, DocumentTypes } from './documents.js'
export { documentFromMedium, type MediumDocument, mediumFromDocument, type RetentionName } from './medium-document.js'
export type { UnknownKeys } from './object-field.js'
export type { ProbeDocument, ReadingDocument, ReadingKind, RecordDocument, TidyReading } from './probe-documents.js'
export { type ParseOptions, parseDocument, type ReadOptions, readDocument } from './read-document.js'
export type {
  EmittersDocument,
  LimitsDocument,
  PlanDocument,
  PlanRequestDocument,
  ShotDocument,
} from './watering-documents.js'
export { type JsonData, writeDocument } from './write-document.js'
