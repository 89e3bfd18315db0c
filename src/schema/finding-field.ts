import * as z from 'zod'
import { wordField } from './field.js'
import { choiceField, objectField, type UnknownKeys } from './object-field.js'

/** A finding, as results carry them. */
export function findingField(unknownKeys: UnknownKeys) {
  return objectField(
    {
      code: wordField('name for programs'),
      level: choiceField('how much it matters', ['note', 'caution', 'danger']),
      message: wordField('one sentence for people', 2000),
      about: wordField('which input or output').optional(),
      value: z.number().optional(),
      unit: wordField('unit of the value').optional(),
      source: wordField('where the rule comes from', 1000).optional(),
    },
    unknownKeys,
  )
}
