import { domainWith } from '../quantity/domain.js'
import { SUCTION } from '../quantity/domains.js'
import { InputError } from '../quantity/errors.js'
import type { CropET, Share, SuctionHead } from '../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../quantity/guard.js'
import { DEMAND_RATE, HIGH_DEMAND, WILTING_SUCTION } from './domains.js'
import { type FeddesLimits, feddesDryStart, feddesFactor } from './feddes-factor.js'

/** Roots at one suction, and what the crop asks for. */
export interface RootsAtSuction {
  /** Suction at the roots. Unit: cm. Range: [0, ∞). */
  readonly suction: SuctionHead
  /** What the crop would transpire with its roots well supplied. Unit: mm/d. Range: [0, ∞). */
  readonly demand: CropET
  /** The limits of the crop. */
  readonly limits: FeddesLimits
}

/** How far roots follow a demand. */
export interface RootUptake {
  /** Share of the demand that is taken up. Unit: 1. */
  readonly factor: Share
  /** The suction from which uptake falls at this demand. Unit: cm. */
  readonly h3: SuctionHead
  /** What is taken up. Unit: mm/d. */
  readonly uptake: CropET
}

/**
 * Share of its demand that a crop can take up at a suction: nothing where the roots lack air, all in a middle range, and less and
 * less towards the wilting point. The drier end of the middle range comes sooner when the demand is high.
 *
 * h₃ is on the line between its values for low and high demand, and constant beyond them.
 *
 * Limits of some crops in field soils are in `uptakeLimitsFeddes` and `dryLimitsTaylorAshcroft1972`.
 *
 * @equation `a(s) = \begin{cases} 0 & s < h_1 \text{ or } s \ge h_4 \\ (s - h_1)/(h_2 - h_1) & h_1 \le s < h_2 \\ 1 & h_2 \le s \le h_3 \\ (h_4 - s)/(h_4 - h_3) & h_3 < s < h_4 \end{cases}`
 * @returns Factor, the h₃ in force, and the uptake.
 * @throws `DomainError` outside the ranges; `InputError` when the limits are not in order.
 * @validity Limits come from field soils. In a container the suction at the root surface can be far above that of the medium around
 * it, because the medium conducts hardly any water when dry: stress begins wetter than such limits say.
 * @source feddes-1978
 * @example
 * uptakeFeddes1978({
 *   suction: centimetresOfSuction(6000), demand: millimetresPerDay(3),
 *   limits: {
 *     h1: centimetresOfSuction(10), h2: centimetresOfSuction(25),
 *     h3HighDemand: centimetresOfSuction(320), h3LowDemand: centimetresOfSuction(600), h4: centimetresOfSuction(16000),
 *     highDemand: millimetresPerDay(5), lowDemand: millimetresPerDay(1),
 *   },
 * }) // => { factor: 0.643501, h3: 460, uptake: 1.930502 }
 */
export function uptakeFeddes1978(roots: RootsAtSuction): RootUptake {
  requireObject(roots, 'roots')
  const { suction, demand, limits } = roots
  numberIn(suction, SUCTION, 'suction')
  numberIn(demand, DEMAND_RATE, 'demand')
  checkFeddesLimits(limits)
  const h3 = feddesDryStart(limits, demand)
  const [factor] = feddesFactor(suction, limits, h3)
  return { factor: factor as Share, h3: h3 as SuctionHead, uptake: (factor * demand) as CropET }
}

/** Refuses limits that are impossible one by one or not in order. */
export function checkFeddesLimits(limits: FeddesLimits): void {
  requireObject(limits, 'limits')
  const { h1, h2, h3HighDemand, h3LowDemand, h4, highDemand, lowDemand } = limits
  for (const [quantity, value] of Object.entries({ h1, h2, h3HighDemand, h3LowDemand }))
    numberIn(value, domainWith(SUCTION, { quantity }), quantity)
  numberIn(h4, WILTING_SUCTION, 'h4')
  numberIn(lowDemand, domainWith(DEMAND_RATE, { quantity: 'low demand' }), 'lowDemand')
  numberIn(highDemand, HIGH_DEMAND, 'highDemand')
  if (!(h1 <= h2 && h2 <= h3HighDemand && h3HighDemand <= h3LowDemand && h3LowDemand < h4))
    throw new InputError(
      'limits',
      'the suctions are not in order',
      'give h1, h2, h3HighDemand, h3LowDemand and h4 from wet to dry, without minus signs',
    )
  if (lowDemand >= highDemand)
    throw new InputError('limits', 'the low demand is not below the high one', 'swap them, or give 1 and 5 mm/d')
}
