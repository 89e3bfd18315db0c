import type { Area } from '../quantity/area.js'
import { within } from '../quantity/guard.js'
import type { Length } from '../quantity/length.js'
import type { Span } from '../quantity/span.js'
import type { Volume } from '../quantity/volume.js'

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
  /** Area of the horizontal section at a height above the bottom. */
  readonly area: (height: Length) => Area
}

/** A positive length of a container, by its name. */
export function checkExtent(name: string, value: Length): number {
  return within(value, { ...EXTENT, quantity: name })
}

/** A section of a container that is the same at each height. */
export function prism(kind: string, squareCentimetres: number, height: number): Container {
  const area = (squareCentimetres / 10000) as Area
  return {
    kind,
    height: height as Length,
    volume: ((squareCentimetres * height) / 1000) as Volume,
    breakpoints: [],
    area: () => area,
  }
}

const EXTENT: Span = {
  quantity: 'length',
  unit: 'cm',
  min: 0,
  max: Infinity,
  open: 'both',
  hint: 'measure the medium inside the container, in its settled state',
}
