/** How many doubles lie between two numbers; zero for the same bits, infinite where only one is NaN. */
export function ulpsBetween(a: number, b: number): number {
  if (Object.is(a, b)) return 0
  if (Number.isNaN(a) || Number.isNaN(b)) return Infinity
  const distance = placeOf(a) - placeOf(b)
  return Number(distance < 0n ? -distance : distance)
}

/** Doubles numbered from the lowest to the highest. */
function placeOf(value: number): bigint {
  const bits = new BigInt64Array(new Float64Array([value]).buffer)[0]!
  return bits < 0n ? -(bits & 0x7fffffffffffffffn) : bits
}
