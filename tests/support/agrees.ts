import { expect } from 'vitest'

/** Compares two numbers that come from the same relation by two ways, relative to the second. */
export function agreesWithin(usual: number) {
  return (ours: number, theirs: number, within = usual): void => {
    expect(Math.abs(ours / theirs - 1)).toBeLessThan(within)
  }
}
