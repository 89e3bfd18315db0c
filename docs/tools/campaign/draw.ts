import type { DocumentedRange } from '../ranges.js'

/** One seed for each function and trial, so that a case is found again by its three words. */
export function seedOf(seed: number, name: string, trial: number): number {
  let hash = Math.imul(seed ^ 0x9e3779b9, 0x85ebca6b) ^ trial
  for (const letter of name) hash = Math.imul(hash ^ letter.charCodeAt(0), 0x01000193)
  return hash >>> 0
}

/** Far beyond all physics, but its cube is still a number. */
const FAR = 1e80

/** A number near the example's, anywhere in its range, at an end, outside, slipped by a unit, or none at all. */
export function drawnNumber(random: () => number, range: DocumentedRange, example: unknown): number {
  const kind = random()
  const known = typeof example === 'number' && Number.isFinite(example) ? example : undefined
  if (kind < 0.35 && known !== undefined) return inside(known * 4 ** (2 * random() - 1), range)
  if (kind < 0.7) return inside(anywhere(random, range), range)
  if (kind < 0.8) return random() < 0.5 ? range.min : range.max
  if (kind < 0.86) return outside(random, range)
  if (kind < 0.92) return (known ?? 1) * pick(random, [1000, 0.001, 100, 0.01, 60, 3600])
  return pick(random, [Number.NaN, Infinity, -Infinity, -0, FAR, -FAR, 1 / FAR, -1 / FAR])
}

export function pick<T>(random: () => number, list: readonly T[]): T {
  return list[Math.floor(random() * list.length)]!
}

function anywhere(random: () => number, { min, max }: DocumentedRange): number {
  if (Number.isFinite(min) && Number.isFinite(max)) return min + random() * (max - min)
  const far = 10 ** (12 * random() - 6)
  if (Number.isFinite(min)) return min + far
  return Number.isFinite(max) ? max - far : (random() < 0.5 ? -1 : 1) * far
}

function inside(value: number, { min, max, integers }: DocumentedRange): number {
  const whole = integers ? Math.round(value) : value
  return Math.min(Math.max(whole, min), max)
}

function outside(random: () => number, { min, max }: DocumentedRange): number {
  const far = 10 ** (8 * random() - 4)
  const below = random() < 0.5
  if (below && Number.isFinite(min)) return min - far
  return Number.isFinite(max) ? max + far : Number.isFinite(min) ? min - far : far
}

export function isInside(value: number, range: DocumentedRange): boolean {
  if (range.integers && !Number.isInteger(value)) return false
  const aboveMin = range.minOpen ? value > range.min : value >= range.min
  return aboveMin && (range.maxOpen ? value < range.max : value <= range.max)
}
