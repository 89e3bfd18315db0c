import type { SourcedRow } from './sourced-row.js'

/** A span of published values. */
export interface PublishedRange extends SourcedRow {
  /** What was measured, in words. */
  readonly quantity: string
  /** Lower end. Unit: as in `unit`. */
  readonly low: number
  /** Upper end. Unit: as in `unit`. */
  readonly high: number
  readonly unit: string
}

const EVANS = 'evans-1996, abstract'
const ABAD = 'abad-2005, abstract'
const NURSERY = 'yeager-2007'
const FONTENO = 'fonteno-1990, abstract; journal not seen'
const NAASZ = 'naasz-2008, abstract'

/** Published spans of growing media: how far one material differs from sample to sample, and what growers aim at. */
export const substrateRanges = {
  'coir-dust-of-five-sources': [
    { quantity: 'bulk-density', low: 0.04, high: 0.08, unit: 'g/cm³', source: EVANS, known: 'read' },
    { quantity: 'air-space', low: 9.5, high: 12.6, unit: '%', source: EVANS, known: 'read' },
    { quantity: 'container-capacity', low: 73, high: 80, unit: '%', source: EVANS, known: 'read' },
    { quantity: 'total-porosity', low: 85.5, high: 89.5, unit: '%', source: EVANS, known: 'read' },
    { quantity: 'solids', low: 10.5, high: 14.5, unit: '%', source: EVANS, known: 'read' },
    { quantity: 'water-per-dry-mass', low: 750, high: 1100, unit: '%', source: EVANS, known: 'read' },
  ],
  'coir-dust-of-thirteen-sources': [
    { quantity: 'total-porosity', low: 94, high: 100, unit: '%', source: ABAD, known: 'read' },
    { quantity: 'air-capacity', low: 24, high: 89, unit: '%', source: ABAD, known: 'read' },
    { quantity: 'easily-available-water', low: 0, high: 36, unit: '%', source: ABAD, known: 'read' },
    { quantity: 'total-water-holding-capacity', low: 137, high: 786, unit: 'mL/L', source: ABAD, known: 'read' },
  ],
  'recommended-nursery-medium': [
    { quantity: 'total-porosity', low: 50, high: 85, unit: '%', source: NURSERY, known: 'not-confirmed' },
    { quantity: 'air-space', low: 10, high: 30, unit: '%', source: NURSERY, known: 'not-confirmed' },
    { quantity: 'container-capacity', low: 45, high: 65, unit: '%', source: NURSERY, known: 'not-confirmed' },
    { quantity: 'available-water', low: 25, high: 35, unit: '%', source: NURSERY, known: 'not-confirmed' },
    { quantity: 'unavailable-water', low: 25, high: 35, unit: '%', source: NURSERY, known: 'not-confirmed' },
    { quantity: 'bulk-density', low: 0.19, high: 0.7, unit: 'g/cm³', source: NURSERY, known: 'not-confirmed' },
  ],
  'horticultural-materials': [
    { quantity: 'particle-density', low: 0.35, high: 2.1, unit: 'g/cm³', source: FONTENO, known: 'read' },
  ],
  'width-of-the-hysteresis-loop': [
    { quantity: 'peat', low: 21, high: 21, unit: '%', source: NAASZ, known: 'read' },
    { quantity: 'pine-bark', low: 10, high: 10, unit: '%', source: NAASZ, known: 'read' },
  ],
} as const satisfies Readonly<Record<string, readonly PublishedRange[]>>
