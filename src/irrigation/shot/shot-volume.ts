import type { Domain } from '../../quantity/domain.js'
import type { DrainFraction } from '../../quantity/generated/share.js'
import type { Volume } from '../../quantity/generated/volume.js'
import type { WaterContentChange } from '../../quantity/generated/water-content.js'
import { numberIn } from '../../quantity/guard.js'

const SUBSTRATE: Domain = {
  quantity: 'substrate volume',
  unit: 'L',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'give the medium, not the pot',
}
const RISE: Domain = {
  quantity: 'rise of water content',
  unit: 'm³/m³',
  min: 0,
  max: 1,
  ends: '[]',
  hint: 'give zero when it is wet',
}
const DRAIN: Domain = {
  quantity: 'drain fraction',
  unit: '1',
  min: 0,
  max: 1,
  ends: '[)',
  hint: 'give the share to drain',
}

/** What a shot is sized from. */
export interface ShotVolumeInput {
  /** Volume of medium that the shot waters. Unit: L. Range: (0, ∞). */
  readonly substrateVolume: Volume
  /** By how much its water content should rise. Unit: m³/m³. Range: [0, 1]. */
  readonly rise: WaterContentChange
  /** Share of the shot that should drain. Unit: 1. Range: [0, 1). */
  readonly drainFraction: DrainFraction
}

/**
 * Volume of a shot that lifts the water content by a wanted rise and lets a wanted share of itself drain.
 *
 * ```math
 * V = \frac{\Delta\theta \, V_s}{1 - f}
 * ```
 *
 * @param input - Substrate volume, rise and drain fraction.
 * @returns Volume of the shot. Unit: L.
 * @throws `DomainError` outside the ranges.
 * @source Water balance of the container: what is applied is kept or drains
 * @example
 * ```ts
 * const shot = shotVolume({ substrateVolume: litres(11.25), rise: waterContentChange(0.03), drainFraction: percent(15) })
 * inMillilitres(shot) // => 397.06
 * ```
 */
export function shotVolume(input: ShotVolumeInput): Volume {
  const substrate = numberIn(input.substrateVolume, SUBSTRATE, 'substrateVolume')
  const rise = numberIn(input.rise, RISE, 'rise')
  return ((rise * substrate) / (1 - numberIn(input.drainFraction, DRAIN, 'drainFraction'))) as Volume
}
