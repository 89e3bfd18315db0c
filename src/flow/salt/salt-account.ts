import type { DrainEC } from '../../quantity/generated/kinds.js'
import type { RichardsColumn } from '../richards-column.js'
import type { SaltOutcome } from '../richards-terms.js'
import { noSaltPassed, type SaltPassed } from './transport.js'

/** Lets the salt of some cells come along with the flows of each step. */
export function companionOf(cells: Float64Array, salt: NonNullable<RichardsColumn['salt']>, feed: number) {
  const passed = noSaltPassed()
  const at = { feed, fromBelow: salt.fromBelow, uptakeShare: salt.uptakeShare, diffusion: salt.diffusion }
  return {
    passed,
    onStep: (flows: Parameters<typeof salt.carry>[1]) => salt.carry(cells, flows, at, passed),
  }
}

/** Where the salt went, with that of the water that ran past the medium. */
export function saltOutcome(passed: SaltPassed, past: number, feed: number, drained: number): SaltOutcome {
  const left = passed.drained + past * feed
  const water = drained + past
  return {
    given: (passed.given + past * feed) / 1000,
    drained: (left - passed.fromBelow) / 1000,
    taken: passed.taken / 1000,
    ranOff: passed.runOff / 1000,
    drainEC: water > 0 ? { known: true, ec: (left / water) as DrainEC } : { known: false, reason: 'no-drain' },
  }
}
