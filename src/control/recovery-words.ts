import type { RecoveryFinding } from './plan-recovery.js'

/** What a person should know before a container is watered again. */
export const RECOVERY_WORDS: { readonly [Code in RecoveryFinding['code']]: string } = {
  'clock-not-checked':
    'look at the clock and at the last shot in the log first: a controller that catches up by itself would water twice',
  'more-than-allowed': 'more is wanted than may still be given: raise the limit knowingly or come back tomorrow',
  'watch-first-shots':
    'watch the first shots: if they drain at once and the reading hardly moves, the medium repels water; wait longer between smaller shots',
  pump: 'keep hands out of pump gear that may start by itself when power returns',
}

/** The sentence with the volume and its limit, where there are some. */
export function recoveryInWords({ value, limit }: RecoveryFinding, sentence: string): string {
  const millilitres = (volume: number) => `${Math.round(volume * 1000)} mL`
  return value === undefined || limit === undefined
    ? sentence
    : `${sentence} (${millilitres(value)}, limit ${millilitres(limit)})`
}
