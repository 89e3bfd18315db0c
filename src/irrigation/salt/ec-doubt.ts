import type { HowSerious } from '../terms.js'

/** An EC that no drain, or no feed, can have beside the other. */
export interface EcDoubt extends HowSerious {
  readonly code: 'ec-doubted'
  /** The EC that is doubted. */
  readonly about: 'feedEC' | 'drainEC'
  /** What was told of it. Unit: dS/m. Range: any. */
  readonly value: number
  /** The other one, beside which it cannot be. Unit: dS/m. Range: any. */
  readonly beside: number
}

/** Rain has 0.01 to 0.1 dS/m, and water of reverse osmosis hardly less: from memory. Drain that washed a root zone has more. Unit: dS/m. */
const RAIN = 0.1
/** An EC below this is that of a dead or dry sensor. Unit: dS/m. */
export const PURE = 0.01
/** Sea water has about 50 dS/m, from memory; feed and drain of living plants have a tenth and a third of it. 60 mS/m are 0.6 dS/m. Unit: dS/m. */
export const SEA = 50
/** Nor is the drain so much thinner than the feed that made it: own judgement, no source. */
const MAX_THINNER = 5

/** The EC of a dead or dry sensor, where water drained, also where both are, and one in mS/m. A flush with the purest water is told, too. */
export function ecDoubt(feed: number, drain: number): EcDoubt | undefined {
  if (feed > SEA) return { code: 'ec-doubted', level: 'caution', about: 'feedEC', value: feed, beside: drain }
  if (drain > SEA || drain < PURE || (drain < RAIN && drain * MAX_THINNER < feed))
    return { code: 'ec-doubted', level: 'caution', about: 'drainEC', value: drain, beside: feed }
  if (feed < PURE && feed * MAX_THINNER < drain)
    return { code: 'ec-doubted', level: 'caution', about: 'feedEC', value: feed, beside: drain }
  return undefined
}
