import * as z from 'zod'
import { type BoxMeasures, boxContainer } from '../../medium/container/box-container.js'
import type { Container } from '../../medium/container/container.js'
import { type CylinderMeasures, cylinderContainer } from '../../medium/container/cylinder-container.js'
import { type FrustumMeasures, frustumContainer } from '../../medium/container/frustum-container.js'
import { type MeasuredSections, measuredContainer } from '../../medium/container/measured-container.js'
import { type RoundedSquareMeasures, roundedSquareContainer } from '../../medium/container/rounded-square-container.js'
import { stackedContainer } from '../../medium/container/stacked-container.js'
import { type TaperedBoxMeasures, taperedBoxContainer } from '../../medium/container/tapered-box-container.js'
import { CORNER_RADIUS, EXTENT, HEIGHT, SECTION_AREA } from '../../medium/domains.js'
import { requireObject } from '../../quantity/guard.js'
import { oneOf } from '../../quantity/one-of.js'
import { checked, quantityField, wordField } from '../field/field.js'
import { objectField, type UnknownKeys } from '../field/object-field.js'

/** The measures of a container, with the name of its shape. */
export type ContainerShape =
  | ({ readonly shape: 'box' } & BoxMeasures)
  | ({ readonly shape: 'cylinder' } & CylinderMeasures)
  | ({ readonly shape: 'frustum' } & FrustumMeasures)
  | ({ readonly shape: 'tapered-box' } & TaperedBoxMeasures)
  | ({ readonly shape: 'rounded-square' } & RoundedSquareMeasures)
  | ({ readonly shape: 'measured' } & MeasuredSections)

/** A container as it is stored: the measures of the medium in it, not those of the wall. */
export type ContainerDocument = { readonly version: 1; readonly name?: string } & (
  | ContainerShape
  | { readonly shape: 'stack'; readonly parts: readonly ContainerShape[] }
)

/** Parts that a stack may have. */
const MAX_PARTS = 20
const MAX_SECTIONS = 1000
const length = (about: string) => quantityField('Length', about, EXTENT)

const SHAPES = {
  box: () => ({ length: length('length'), width: length('width'), height: length('height') }),
  cylinder: () => ({ diameter: length('diameter'), height: length('height') }),
  frustum: () => ({
    bottomDiameter: length('diameter at the bottom'),
    topDiameter: length('diameter at the surface'),
    height: length('height'),
  }),
  'tapered-box': () => ({
    bottomLength: length('length at the bottom'),
    bottomWidth: length('width at the bottom'),
    topLength: length('length at the surface'),
    topWidth: length('width at the surface'),
    height: length('height'),
  }),
  'rounded-square': () => ({
    bottomSide: length('side at the bottom'),
    topSide: length('side at the surface'),
    cornerRadius: quantityField('Length', 'radius of the corners', CORNER_RADIUS),
    height: length('height'),
  }),
  measured: () => ({
    heights: z
      .array(quantityField('Length', 'height above the bottom', HEIGHT))
      .min(2)
      .max(MAX_SECTIONS),
    areas: z
      .array(quantityField('Area', 'area of the section', SECTION_AREA))
      .min(2)
      .max(MAX_SECTIONS),
  }),
} as const

const NAMES = Object.keys(SHAPES) as (keyof typeof SHAPES)[]
const MAKE: Readonly<Record<keyof typeof SHAPES, (measures: never) => Container>> = {
  box: boxContainer,
  cylinder: cylinderContainer,
  frustum: frustumContainer,
  'tapered-box': taperedBoxContainer,
  'rounded-square': roundedSquareContainer,
  measured: measuredContainer,
}

/** The schema of a container; a container that passes it has a volume. */
export function containerSchema(unknownKeys: UnknownKeys) {
  const error = { error: () => `a container whose shape is one of ${[...NAMES, 'stack'].join(', ')}` }
  const head = { version: z.literal(1), name: wordField('name for people').optional() }
  const parts = NAMES.map((name) => objectField({ shape: z.literal(name), ...SHAPES[name]() }, unknownKeys))
  const whole = NAMES.map((name) => objectField({ ...head, shape: z.literal(name), ...SHAPES[name]() }, unknownKeys))
  const part = z.discriminatedUnion('shape', parts as unknown as [(typeof parts)[number]], error)
  const stack = objectField(
    { ...head, shape: z.literal('stack'), parts: z.array(part).min(1).max(MAX_PARTS) },
    unknownKeys,
  )
  return z
    .discriminatedUnion('shape', [...whole, stack] as unknown as [typeof stack], error)
    .transform((document, context) =>
      checked(context, 'measures of one container', () => {
        containerFromDocument(document as unknown as ContainerDocument)
        return document
      }),
    )
}

/**
 * The container that a stored one describes.
 *
 * @procedure Builds the shape that is named from its measures; the parts of a stack from the bottom up.
 * @param document - The container, made by `readDocument`.
 * @returns The container.
 * @throws `DomainError` and `InputError` as the shape itself.
 * @source definition
 * @example
 * const document = readDocument('container', {
 *   version: 1, shape: 'box', length: '1 m', width: '15 cm', height: '75 mm',
 * })
 * containerFromDocument(document).volume // => 11.25
 */
export function containerFromDocument(document: ContainerDocument | ContainerShape): Container {
  requireObject(document, 'document')
  oneOf(document.shape, [...NAMES, 'stack'], 'document.shape')
  if (document.shape === 'stack') return stackedContainer(document.parts.map((part) => containerFromDocument(part)))
  return MAKE[document.shape](document as never)
}
