import { answerOf } from '../../quantity/answer.js'
import { SUBSTRATE, WATER_GIVEN } from '../../quantity/domains.js'
import type { Share, Volume } from '../../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../../quantity/guard.js'
import { SHARE } from '../domains.js'
import type { Substrate } from '../terms.js'

/** A volume of water and the medium that takes it. */
export interface ShotShareInput extends Substrate {
  /** Water of the shot. Unit: L. Range: [0, ∞). */
  readonly volume: Volume
}

/**
 * A shot as a share of the volume of medium, the way growers speak of a "3 % shot". A shot without drain raises the water content
 * by just this share.
 *
 * @equation `s = V / V_s`
 * @returns Share of the substrate volume, not of the water in it. Unit: 1.
 * @source definition
 * @example
 * inPercent(shotShare({ volume: millilitres(300), substrateVolume: litres(10) })) // => 3
 */
export function shotShare(input: ShotShareInput): Share {
  requireObject(input, 'input')
  const { volume, substrateVolume } = input
  return answerOf(
    numberIn(volume, WATER_GIVEN, 'volume') / numberIn(substrateVolume, SUBSTRATE, 'substrateVolume'),
    'substrateVolume',
  ) as Share
}

/** A medium and the share of its volume that a shot should have. */
export interface ShotFromShareInput extends Substrate {
  /** Water as a share of the substrate volume. Unit: 1. Range: [0, 1]. */
  readonly share: Share
}

/**
 * Volume of a shot that is wanted as a share of the volume of medium.
 *
 * @equation `V = s \, V_s`
 * @returns Volume of the shot, with what drains of it. Unit: L.
 * @source definition
 * @example
 * inMillilitres(shotFromShare({ substrateVolume: litres(10), share: percent(3) })) // => 300
 */
export function shotFromShare(input: ShotFromShareInput): Volume {
  requireObject(input, 'input')
  const { substrateVolume, share } = input
  return (numberIn(share, SHARE, 'share') * numberIn(substrateVolume, SUBSTRATE, 'substrateVolume')) as Volume
}
