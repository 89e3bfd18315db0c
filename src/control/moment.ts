import { INSTANT } from '../quantity/domains.js'

/** A moment in seconds; milliseconds since 1970 lie outside. */
export function isMoment(value: unknown): value is number {
  return typeof value === 'number' && value >= INSTANT.min && value <= INSTANT.max
}
