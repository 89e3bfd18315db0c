/** The reading raised to the exponent, without the cost of a power where none is needed. */
export function powerOf(reading: number, exponent: number): number {
  if (exponent === 1) return reading
  return exponent === 0.5 ? Math.sqrt(reading) : reading ** exponent
}
