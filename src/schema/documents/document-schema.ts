import * as z from 'zod'
import { requireObject } from '../../quantity/guard.js'
import { type DocumentName, type DocumentTypes, schemaOf } from './documents.js'
import { documentKind, type ReadOptions } from './read-document.js'
import type { JsonData } from './write-document.js'

/**
 * The JSON Schema of a kind of document, for editors, forms and programs in other languages.
 *
 * It says what can be written: keys, types, ranges of plain numbers. That text with a unit fits its quantity, and that values agree
 * with each other, only `readDocument` checks.
 *
 * @procedure Translates the schema that `readDocument` uses.
 * @returns A JSON Schema of draft 2020-12 as plain data.
 * @source wright-2022
 * @example
 * documentJsonSchema('emitters') // => { title: 'emitters', type: 'object', additionalProperties: false }
 */
export function documentJsonSchema(
  name: DocumentName,
  options: ReadOptions = {},
): { readonly [key: string]: JsonData } {
  requireObject(options, 'options')
  const kind = documentKind(name)
  const schema = z.toJSONSchema(schemaOf(name, options.unknownKeys ?? 'refuse'), {
    io: 'input',
    unrepresentable: 'any',
    override: ({ jsonSchema }) => {
      // Lists of numbers are read into arrays of doubles, for which JSON Schema has no word; the field says what is written.
      const { override, ...rest } = jsonSchema as Record<string, unknown>
      if (override === undefined) return
      for (const key of Object.keys(jsonSchema)) delete jsonSchema[key]
      Object.assign(
        jsonSchema,
        { ...(rest.description === undefined ? {} : { description: rest.description }) },
        override,
      )
    },
  })
  const { $schema, ...body } = JSON.parse(JSON.stringify(schema)) as { [key: string]: JsonData }
  return { $schema: $schema as string, title: name, description: kind.about, ...body }
}

/**
 * The zod schema of a kind of document in its current version, to be built into schemas of your own.
 *
 * It does not guard against text of any length or depth, and does not bring older versions up to date: for data of unknown origin
 * use `readDocument`.
 *
 * @procedure Builds the schema that `readDocument` uses.
 * @param name - Which kind of document.
 * @returns A zod schema whose output is the document.
 * @source definition
 * @example
 * const schema = documentSchema('emitters')
 * schema.safeParse({ version: 1, emitters: 2, emitterFlow: '2 L/h', lineFill: '8 s' }).success // => true
 */
export function documentSchema<N extends DocumentName>(
  name: N,
  options: ReadOptions = {},
): z.ZodType<DocumentTypes[N]> {
  requireObject(options, 'options')
  documentKind(name)
  return schemaOf(name, options.unknownKeys ?? 'refuse') as z.ZodType<DocumentTypes[N]>
}
