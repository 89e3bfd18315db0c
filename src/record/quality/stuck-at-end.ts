import { QUALITY } from './flags.js'
import type { Ranges } from './gross-range-test.js'

/** A step of this share of what the sensor can report, right to an end of it, is a broken cable or a probe out of its medium. */
const STEP = 0.2

/**
 * Whether a reading stands exactly at an end of what the sensor can report after a jump there: it stays so until another value
 * comes. Light that fades to zero and air that becomes saturated come there in small steps.
 */
export function isStuck(wasStuck: boolean, before: number, x: number, { low, high }: Ranges): boolean {
  if (x !== low && x !== high) return false
  if (before === x) return wasStuck
  return Math.abs(x - before) > STEP * (high - low)
}

export function stuckFlag(stuck: boolean, x: number): number {
  return Number.isNaN(x) ? QUALITY.missing : stuck ? QUALITY.suspect : QUALITY.pass
}
