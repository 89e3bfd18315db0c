import * as z from 'zod'
import { type Instant, instant } from '../../quantity/calendar.js'
import { INSTANT } from '../../quantity/domains.js'
import { instantFromText } from '../instant-text.js'
import { checked, limitsOf } from './field.js'

const EXPECTED = 'seconds since 1970 in universal time, or text such as 2026-05-19T06:30:00Z'

/** A moment: seconds since 1970 in universal time, or ISO 8601 text with a zone. */
export function instantField(about: string) {
  return z
    .union([z.number(), z.string()], { error: () => EXPECTED })
    .transform(
      (input, context): Instant =>
        checked(context, EXPECTED, () => (typeof input === 'string' ? instantFromText(input) : instant(input))),
    )
    .meta({ description: `${about}; ${EXPECTED}`, ...limitsOf(INSTANT) })
}
