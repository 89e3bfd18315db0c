import { randomNumbers } from '../../numerics/random.js'
import type { ValveOrder } from '../controllers/rehearsed-controller.js'
import type { Effects } from '../faults/effects.js'

/** A valve with the way of its orders. */
export interface Valve {
  /** Takes an order that the controller gives now. */
  readonly give: (order: ValveOrder, effects: Effects, time: number) => void
  /** Takes orders that have arrived, and closes what should close. */
  readonly settle: (effects: Effects, time: number) => void
  /** The next moment at which it would change by itself. */
  readonly next: () => number
  /** Whether water can pass. */
  readonly isOpen: (effects: Effects) => boolean
  /** Whether the controller wants it open at this moment, within the time that it gave. */
  readonly isWanted: (time: number) => boolean
  readonly mainOpen: () => boolean
}

interface Underway {
  readonly at: number
  readonly open: boolean
  readonly until: number
}

export function valveOf(seed: number, hasMain: boolean): Valve {
  const random = randomNumbers(seed)
  let ordered = false
  let until = 0
  let wanted = false
  let main = true
  let underway: Underway[] = []
  const take = (open: boolean, end: number) => {
    ordered = open
    until = end
  }
  return {
    give: ({ open, closeAfter, mainOpen }, effects, time) => {
      // Only true opens: a word or a one in place of true must not.
      wanted = open === true
      if (hasMain) main = mainOpen !== false
      // What is no number never closes it: that is what a valve without a timer does.
      const lasts =
        closeAfter === undefined || !(closeAfter > Number.NEGATIVE_INFINITY)
          ? Number.POSITIVE_INFINITY
          : Math.max(0, closeAfter)
      if (effects.ordersLost > 0 && random.uniform() < effects.ordersLost) return
      if (effects.ordersDelay > 0) {
        const at = time + effects.ordersDelay * random.uniform()
        underway.push({ at, open: wanted, until: at + lasts })
      } else take(wanted, time + lasts)
    },
    settle: (effects, time) => {
      if (underway.length > 0) {
        for (const { open, until } of underway.filter(({ at }) => at <= time).sort((a, b) => a.at - b.at))
          take(open, until)
        underway = underway.filter(({ at }) => at > time)
      }
      // Without power it closes, and the order is forgotten.
      if (!effects.power || (ordered && time >= until && effects.closesItself)) ordered = false
    },
    next: () => {
      const end = ordered ? until : Number.POSITIVE_INFINITY
      return underway.length === 0 ? end : underway.reduce((min, { at }) => Math.min(min, at), end)
    },
    isOpen: (effects) => {
      if (effects.valve !== 'works') return effects.valve === 'open' && effects.power
      return ordered
    },
    isWanted: (time) => ordered && wanted && time < until,
    mainOpen: () => main,
  }
}
