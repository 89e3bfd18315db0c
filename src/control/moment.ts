/** A moment in seconds; milliseconds since 1970 lie outside. */
export function isMoment(value: unknown): value is number {
  return typeof value === 'number' && value >= -62135596800 && value <= 253402300799
}
