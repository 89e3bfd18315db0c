import type { Domain } from '../../quantity/domain.js'
import type { Area, Length, Volume } from '../../quantity/generated/kinds.js'
import { numberIn } from '../../quantity/guard.js'
import { CONTAINER_VOLUME } from '../domains.js'

/** The space that the medium fills, as the area of its section at each height above the bottom. */
export interface Container {
  /** Short name of the shape. */
  readonly kind: string
  /** Height of the medium, not of the wall. Unit: cm. Range: any. */
  readonly height: Length
  /** Volume of the medium. Unit: L. Range: any. */
  readonly volume: Volume
  /** Heights above the bottom where the section changes its course; integrals are split there. Unit: cm. Range: any. */
  readonly breakpoints: readonly Length[]
  /** Area of the horizontal section at a height above the bottom, from 0 to the height of the medium. */
  readonly area: (height: Length) => Area
}

/** A container from its section in cm² at each height and its volume in cm³. */
export function containerOf(
  kind: string,
  height: number,
  cubicCentimetres: number,
  section: (height: number) => number,
  breakpoints: readonly number[] = [],
): Container {
  const inside: Domain = {
    quantity: 'height above the bottom',
    unit: 'cm',
    min: 0,
    max: height,
    ends: '[]',
    hint: 'there is medium from the bottom up to the height of the container',
  }
  return {
    kind,
    height: height as Length,
    volume: (numberIn(cubicCentimetres, CONTAINER_VOLUME, 'volume') / 1000) as Volume,
    breakpoints: breakpoints as readonly Length[],
    area: (z) => (section(numberIn(z, inside)) / 10000) as Area,
  }
}
