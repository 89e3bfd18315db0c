export {
  type ContainerDocument,
  type ContainerShape,
  containerFromDocument,
} from './container-document.js'
export type { CsvColumn, CsvSeriesOptions } from './csv-series-options.js'
export { DocumentError, type DocumentProblem } from './document-error.js'
export { documentJsonSchema, documentSchema } from './document-schema.js'
export type { DocumentName, DocumentTypes } from './documents.js'
export { documentFromMedium, type MediumDocument, mediumFromDocument, type RetentionName } from './medium-document.js'
export type { UnknownKeys } from './object-field.js'
export type { ProbeDocument, ReadingDocument, RecordDocument } from './probe-documents.js'
export { type ParseOptions, parseDocument, type ReadOptions, readDocument } from './read-document.js'
export { readingsFromRecord, recordsFromReadings } from './records.js'
export { resolveSenml, type SenmlOptions } from './resolve-senml.js'
export {
  readingsFromSenml,
  type SenmlKinds,
  type SenmlReadings,
  type SenmlSending,
  senmlFromReadings,
} from './senml-readings.js'
export type { ResolvedSenmlRecord, SenmlRecord } from './senml-record.js'
export { type CsvSeries, seriesFromCsv } from './series-from-csv.js'
export type { Separator } from './table-form.js'
export type { DateOrder } from './table-times.js'
export type { ReadingKind } from './terms.js'
export { type DecodedText, textFromBytes } from './text-from-bytes.js'
export { readingsFromTidyCsv, type TableOptions, type TableReadings, tidyCsvFromReadings } from './tidy-csv.js'
export type { TidyReading } from './tidy-reading.js'
export type {
  EmittersDocument,
  LimitsDocument,
  PlanDocument,
  PlanRequestDocument,
  ShotDocument,
} from './watering-documents.js'
export { type JsonData, writeDocument } from './write-document.js'
export type { ZoneDocument } from './zone-document.js'
