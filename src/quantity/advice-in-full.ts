import { ADVICE, type Advice } from './advice.js'
import { InputError } from './errors.js'
import type { Finding } from './finding.js'
import { isObject } from './guard.js'

const WORDS: { readonly [code: string]: string } = {
  'own-limits':
    'this is advice and no order: whatever opens a valve needs a longest time, a most for any 24 hours, a leak check and a safe state without readings, all of its own, because crops are lost by automation that believes one number',
  'electricity-near-water':
    'electricity stands near water: extra-low voltage at the plants, residual-current protection, and isolate a pump before you touch it; its installation is work for a licensed electrician under the local code',
  'acids-and-fertiliser':
    'acids, alkalis, chlorine and concentrated fertiliser burn: goggles and gloves, acid into water and never the reverse, never acid with chlorine',
  'drain-water':
    'drain is waste water with nutrients: reuse, store or discharge it as local law says, and keep it out of the supply by backflow prevention',
}

/**
 * The caution that goes with every plan and every sized shot, in full: what can hurt people, crops and waters, and whom to ask. It takes
 * a whole result and no finding.
 *
 * @procedure Gives one finding for each of own limits, electricity, chemicals and drain.
 * @param advice - A result with a caution: a plan, a sized shot, a series, a round of a pump. Range: any.
 * @returns Findings with sentences for people.
 * @throws `InputError` for what carries no such caution.
 * @source common practice, no source
 * @example
 * const cycles = soakCycles({ runTime: minutes(9), maxOn: minutes(3), soak: minutes(10) })
 * adviceInFull({ caution: cycles.caution }).map((finding) => finding.code) // => ['own-limits', 'electricity-near-water', 'acids-and-fertiliser', 'drain-water']
 */
export function adviceInFull(advice: Advice): Finding[] {
  if (!isObject(advice) || advice.caution !== ADVICE)
    throw new InputError('advice', 'carries no caution of a plan or a shot', 'give the whole result')
  const source = 'common practice, no source'
  return Object.keys(WORDS).map((code) => ({ code, level: 'caution', message: WORDS[code]!, source }))
}
