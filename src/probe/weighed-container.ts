import { WATER_DENSITY } from '../medium/domains.js'
import { domainWith } from '../quantity/domain.js'
import { SCALE_MASS, SUBSTRATE } from '../quantity/domains.js'
import { InputError } from '../quantity/errors.js'
import type { Mass, Volume, WaterContent, WaterDensity } from '../quantity/generated/kinds.js'
import { numberIn, optionOr, requireObject } from '../quantity/guard.js'
import { SOME_MASS } from './domains.js'

/** A whole container on a scale. */
export interface WeighedContainer {
  /** Mass of container, medium, water and plant. Unit: g. Range: (0, ∞). */
  readonly totalMass: Mass
  /** Mass of everything that is neither medium, water nor plant: pot, film, probe, drippers. Unit: g. Range: [0, ∞). */
  readonly tareMass: Mass
  /** Oven-dry mass of the medium. Unit: g. Range: (0, ∞). */
  readonly dryMass: Mass
  /** Fresh mass of the plant with its roots, 0 when left out. Unit: g. Range: [0, ∞). */
  readonly plantMass?: Mass
  /** Volume of the medium. Unit: L. Range: (0, ∞). */
  readonly substrateVolume: Volume
  /** Density of the water, 1 when left out. Unit: g/cm³. Range: [0.9, 1.2]. */
  readonly waterDensity?: WaterDensity
}

/** Water in a weighed container. */
export interface ContainerWater {
  /** Volume of water. Unit: L. */
  readonly waterVolume: Volume
  /** Mean water content of the medium. Unit: m³/m³. */
  readonly waterContent: WaterContent
}

/**
 * Mean water content of a container from its mass: the reference for a probe that nobody wants to lift out, and the way for
 * stone wool slabs, which cannot be sampled.
 *
 * The plant grows: weigh some plants or leave the last term out only for a bare container. A probe sees its own place and the scale
 * sees the mean; a container at rest is wetter below. A litre of water is a kilogram to lift.
 *
 * @equation `\theta = \frac{m - m_t - m_d - m_p}{\rho_w V}`
 * @param container - Masses and volume.
 * @returns Volume of water and mean water content.
 * @throws `DomainError` outside the ranges; `InputError` when less than nothing or more water than medium would be left.
 * @source definition (mass balance)
 * @example
 * weighedContainerWater({
 *   totalMass: kilograms(6.85),
 *   tareMass: grams(350),
 *   dryMass: kilograms(1.1),
 *   substrateVolume: litres(8),
 * }) // => { waterVolume: 5.4, waterContent: 0.675 }
 */
export function weighedContainerWater(container: WeighedContainer): ContainerWater {
  requireObject(container, 'container')
  const total = numberIn(container.totalMass, domainWith(SOME_MASS, { quantity: 'mass of the container' }), 'totalMass')
  const tare = numberIn(container.tareMass, domainWith(SCALE_MASS, { quantity: 'mass of the tare' }), 'tareMass')
  const dry = numberIn(container.dryMass, domainWith(SOME_MASS, { quantity: 'dry mass of the medium' }), 'dryMass')
  const plant = numberIn(
    optionOr(container.plantMass, 0),
    domainWith(SCALE_MASS, { quantity: 'mass of the plant' }),
    'plantMass',
  )
  const volume = numberIn(container.substrateVolume, SUBSTRATE, 'substrateVolume')
  const density =
    container.waterDensity === undefined ? 1 : numberIn(container.waterDensity, WATER_DENSITY, 'waterDensity')
  const water = (total - tare - dry - plant) / (1000 * density)
  if (!(water >= 0))
    throw new InputError(
      'totalMass',
      `${total} g is less than tare, dry medium and plant together`,
      'weigh the parts again: the dry mass must be oven-dry, without what the pot weighs',
    )
  if (water > volume)
    throw new InputError(
      'totalMass',
      `${water} L of water do not fit into ${volume} L of medium`,
      'look at the units, and subtract pot, plant and standing drain water',
    )
  return { waterVolume: water as Volume, waterContent: (water / volume) as WaterContent }
}
