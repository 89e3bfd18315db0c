import * as z from 'zod'
import { wordField } from './field.js'
import { choiceField, objectField, type UnknownKeys } from './object-field.js'

/** A finding, as results carry them. */
export function findingField(unknownKeys: UnknownKeys) {
  return objectField(
    {
      code: wordField('name for programs'),
      level: choiceField('how much it matters', ['note', 'caution', 'danger']),
      about: wordField('which input or output').optional(),
      value: z.number().optional(),
      limit: z.number().optional(),
      min: z.number().optional(),
      max: z.number().optional(),
      unit: wordField('unit of the numbers').optional(),
      samples: z.array(z.number()).max(2).optional(),
    },
    unknownKeys,
  )
}
