/** From year 1 to year 9999. Unit: s since 1970. */
export const FIRST_MOMENT = -62135596800
export const LAST_MOMENT = 253402300799

/** A moment in seconds; milliseconds since 1970 lie outside. */
export function isMoment(value: unknown): value is number {
  return typeof value === 'number' && value >= FIRST_MOMENT && value <= LAST_MOMENT
}
