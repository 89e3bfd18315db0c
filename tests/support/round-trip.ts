import fc from 'fast-check'
import { expect, it } from 'vitest'

/** Any number of a span; its ends are drawn more often than chance would. */
export function between(min: number, max: number): fc.Arbitrary<number> {
  const any = fc.double({ min, max, noNaN: true })
  return fc.oneof({ arbitrary: any, weight: 8 }, { arbitrary: fc.constantFrom(min, max), weight: 1 })
}

/** One property test: there and back gives the number again, to 1e-12 of it or of `scale`. */
export function itIsUndone<K extends string>(
  name: string,
  spans: Readonly<Record<K, readonly [min: number, max: number]>>,
  start: NoInfer<K>,
  loop: (x: Record<K, number>) => number,
  scale = 0,
  fits: (x: Record<K, number>) => boolean = () => true,
): void {
  it(`${name} is undone by its inverse to 1e-12`, () => {
    const arbitraries = Object.entries<readonly [number, number]>(spans).map(([key, [min, max]]) => [
      key,
      between(min, max),
    ])
    fc.assert(
      fc.property(fc.record(Object.fromEntries(arbitraries) as Record<K, fc.Arbitrary<number>>), (record) => {
        const x = record as Record<K, number>
        fc.pre(fits(x))
        // Numbers so small that doubles hold only some of their digits are left out of the comparison.
        const tolerance = 1e-12 * Math.max(Math.abs(x[start]), scale) + 1e-300
        expect(Math.abs(loop(x) - x[start])).toBeLessThanOrEqual(tolerance)
      }),
      { numRuns: 300 },
    )
  })
}

/** One property test: the function rises over a span; neighbours closer than its rounding are left out. */
export function itRises(name: string, min: number, max: number, f: (x: number) => number): void {
  it(`${name} rises`, () => {
    fc.assert(
      fc.property(between(min, max), between(min, max), (a, b) => {
        fc.pre(b - a > 1e-6 * (max - min))
        expect(f(b)).toBeGreaterThan(f(a))
      }),
      { numRuns: 300 },
    )
  })
}
