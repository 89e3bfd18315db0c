export type { CsvColumn, CsvSeriesOptions } from './csv/csv-series-options.js'
export { type CsvSeries, seriesFromCsv } from './csv/series-from-csv.js'
export type { Separator } from './csv/table-form.js'
export type { DateOrder } from './csv/table-times.js'
export { type DecodedText, textFromBytes } from './csv/text-from-bytes.js'
export { readingsFromTidyCsv, type TableOptions, type TableReadings, tidyCsvFromReadings } from './csv/tidy-csv.js'
export { DocumentError, type DocumentProblem } from './document-error.js'
export {
  type ContainerDocument,
  type ContainerShape,
  containerFromDocument,
} from './documents/container-document.js'
export { documentJsonSchema, documentSchema } from './documents/document-schema.js'
export type { DocumentName, DocumentTypes } from './documents/documents.js'
export {
  documentFromMedium,
  type MediumDocument,
  mediumFromDocument,
  type RetentionName,
} from './documents/medium-document.js'
export type { ProbeDocument, ReadingDocument, RecordDocument } from './documents/probe-documents.js'
export { type ParseOptions, parseDocument, type ReadOptions, readDocument } from './documents/read-document.js'
export type {
  EmittersDocument,
  LimitsDocument,
  PlanDocument,
  PlanRequestDocument,
  ShotDocument,
} from './documents/watering-documents.js'
export { type JsonData, writeDocument } from './documents/write-document.js'
export type { ZoneDocument } from './documents/zone-document.js'
export type { UnknownKeys } from './field/object-field.js'
export { readingsFromRecord, recordsFromReadings } from './records.js'
export { resolveSenml, type SenmlOptions } from './senml/resolve-senml.js'
export {
  readingsFromSenml,
  type SenmlKinds,
  type SenmlReadings,
  type SenmlSending,
  senmlFromReadings,
} from './senml/senml-readings.js'
export type { ResolvedSenmlRecord, SenmlRecord } from './senml/senml-record.js'
export type { ReadingKind } from './terms.js'
export type { TidyReading } from './tidy-reading.js'
