import type { RetentionModel } from '../../medium/curves/retention-model.js'
import { domainWith } from '../../quantity/domain.js'
import { InputError } from '../../quantity/errors.js'
import type { Length, PoreWaterEC, SolutionEC } from '../../quantity/generated/kinds.js'
import { numberIn, optionOr, requireObject } from '../../quantity/guard.js'
import type { ColumnGrid } from '../column/grid/grid.js'
import { DIFFUSION, DISPERSIVITY, EC, UPTAKE_SHARE } from '../domains.js'
import { soluteTransport } from './solute.js'

/** How dissolved salts move in a container. EC stands for their concentration: half as much salt in the water, half the EC. */
export interface SaltInContainer {
  /** EC of the pore water in a state that `start` or `startAt` makes. Unit: dS/m. Range: [0, 200]. */
  readonly startEC: PoreWaterEC
  /** How far moving water spreads salt: about the size of the structure that makes it wander; 1 by default. Unit: cm. Range: [0, ∞). */
  readonly dispersivity?: Length
  /**
   * EC of the water that roots take over that of the water around them: 0 when they leave all salt behind, 1 when they take it as it
   * comes; 0 by default. Unit: 1. Range: [0, 10].
   */
  readonly uptakeShare?: number
  /** Diffusion of the salt in free water; 0.000015 by default. Unit: cm²/s. Range: [0, 0.001]. */
  readonly diffusion?: number
  /** EC of the water that comes in from below; to be given when `base` is a suction. Unit: dS/m. Range: [0, 200]. */
  readonly matEC?: SolutionEC
}

/** Salt as the simulation wants it. */
export interface SaltSetting {
  readonly startEC: number
  readonly uptakeShare: number
  readonly diffusion: number
  readonly fromBelow: number
  readonly carry: ReturnType<typeof soluteTransport>
}

/** Refuses what cannot be; nothing when no salt is to be followed. */
export function saltSetting(
  salt: SaltInContainer | undefined,
  grid: ColumnGrid,
  layers: readonly { readonly medium: RetentionModel }[],
  drawsFromBelow: boolean,
): SaltSetting | undefined {
  if (salt === undefined) return undefined
  requireObject(salt, 'salt')
  if (drawsFromBelow && salt.matEC === undefined)
    throw new InputError('salt.matEC', 'is left out, and water can come in from below', 'give the EC of that water')
  const dispersivity = numberIn(optionOr(salt.dispersivity, 1), DISPERSIVITY, 'dispersivity')
  const carried = layers.map(({ medium }) => ({ dispersivity, saturated: medium.saturated }))
  return {
    startEC: numberIn(salt.startEC, domainWith(EC, { quantity: 'EC at the start' }), 'startEC'),
    uptakeShare: numberIn(optionOr(salt.uptakeShare, 0), UPTAKE_SHARE, 'uptakeShare'),
    diffusion: numberIn(optionOr(salt.diffusion, 1.5e-5), DIFFUSION, 'diffusion'),
    fromBelow: numberIn(optionOr(salt.matEC, 0), domainWith(EC, { quantity: 'EC of the mat' }), 'matEC'),
    carry: soluteTransport(grid, carried),
  }
}

/** The EC of a feed, if it is one. */
export function checkFeedEC(ec: SolutionEC): number {
  return numberIn(ec, domainWith(EC, { quantity: 'EC of the feed' }), 'feedEC')
}
