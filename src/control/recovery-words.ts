import { digits } from '../quantity/explained.js'
import type { RecoveryFinding } from './plan-recovery.js'

/** What a person should know before a container is watered again. */
export const RECOVERY_WORDS: { readonly [Code in RecoveryFinding['code']]: string } = {
  'clock-not-checked':
    'look at the clock and at the last shot in the log first: a controller that catches up by itself would water twice',
  'more-than-allowed':
    'more is wanted than the limit still allows: raise the limit deliberately, or come back tomorrow',
  'already-full':
    'the container is at its full point, so nothing is given: if its medium is dry, check the probe and the full point',
  'short-pauses':
    'shots follow each other within a minute, and dry medium lets them run through: check that the time between them is in seconds, and give five minutes or more',
  'takes-days':
    'the shots take longer than a day, and plants dry out meanwhile: check the largest shot and the time between shots, or water by hand first',
  'watch-first-shots':
    'watch the first shots: if they drain at once and the reading hardly moves, the medium repels water; wait longer between smaller shots',
  pump: 'keep your hands out of pumps, which may start by themselves when power returns',
}

/** The sentence with the number and its limit, where there are some. */
export function recoveryInWords({ value, limit, unit }: RecoveryFinding, sentence: string): string {
  if (value === undefined || limit === undefined) return sentence
  const told = (number: number) => (unit === 'L' ? `${Math.round(number * 1000)} mL` : `${digits(number)} ${unit}`)
  return `${sentence} (${told(value)}, limit ${told(limit)})`
}
