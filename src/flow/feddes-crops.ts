import type { SourcedRow } from '../medium/tables/sourced-row.js'
import type { SuctionHead } from '../quantity/generated/kinds.js'
import type { FeddesLimits } from './feddes-factor.js'

/** The limits of uptake of a crop in field soil. */
export interface CropUptakeLimits extends SourcedRow, FeddesLimits {}

/** The suctions from which a crop in field soil suffers, at high and at low demand. */
export interface CropDryLimits extends SourcedRow {
  /** Unit: cm. */
  readonly h3HighDemand: SuctionHead
  /** Unit: cm. */
  readonly h3LowDemand: SuctionHead
}

const FEDDES = 'feddes-1978, values of potato [not confirmed, source not seen]'
const WESSELING = 'wesseling-1991, as quoted in later literature'
const LETTUCE =
  'h3: taylor-1972, table of suctions at which to irrigate, seen in a secondary copy; h1, h2 and h4: common practice, no source'
const TAYLOR = 'taylor-1972, table of suctions at which to irrigate, seen in a secondary copy'

/**
 * Limits of uptake of three crops in field soils, for `uptakeFeddes1978`. Those of potato and tomato are not confirmed, and the literature
 * disagrees (`dryLimitsTaylorAshcroft1972` has potatoes from 300 to 500 cm); containers want wetter ones.
 */
export const uptakeLimitsFeddes = {
  potato: {
    h1: 10,
    h2: 25,
    h3HighDemand: 320,
    h3LowDemand: 600,
    h4: 16000,
    highDemand: 5,
    lowDemand: 1,
    source: FEDDES,
    known: 'not-confirmed',
  },
  lettuce: {
    h1: 10,
    h2: 25,
    h3HighDemand: 400,
    h3LowDemand: 600,
    h4: 8000,
    highDemand: 5,
    lowDemand: 1,
    source: LETTUCE,
    known: 'read',
  },
  tomato: {
    h1: 1,
    h2: 2,
    h3HighDemand: 800,
    h3LowDemand: 1500,
    h4: 8000,
    highDemand: 5,
    lowDemand: 1,
    source: WESSELING,
    known: 'not-confirmed',
  },
} as unknown as Readonly<Record<'potato' | 'lettuce' | 'tomato', CropUptakeLimits>>

/** The h3 of crops in field soils after Taylor and Ashcroft (1972); the wet limits and h4 are not in that table. */
export const dryLimitsTaylorAshcroft1972 = {
  beans: { h3HighDemand: 750, h3LowDemand: 2000, source: TAYLOR, known: 'read' },
  cabbage: { h3HighDemand: 600, h3LowDemand: 700, source: TAYLOR, known: 'read' },
  carrots: { h3HighDemand: 550, h3LowDemand: 650, source: TAYLOR, known: 'read' },
  cauliflower: { h3HighDemand: 600, h3LowDemand: 700, source: TAYLOR, known: 'read' },
  celery: { h3HighDemand: 200, h3LowDemand: 300, source: TAYLOR, known: 'read' },
  lettuce: { h3HighDemand: 400, h3LowDemand: 600, source: TAYLOR, known: 'read' },
  melons: { h3HighDemand: 350, h3LowDemand: 450, source: TAYLOR, known: 'read' },
  potatoes: { h3HighDemand: 300, h3LowDemand: 500, source: TAYLOR, known: 'read' },
  strawberries: { h3HighDemand: 200, h3LowDemand: 300, source: TAYLOR, known: 'read' },
  tomatoes: { h3HighDemand: 800, h3LowDemand: 1500, source: TAYLOR, known: 'read' },
} as unknown as Readonly<
  Record<
    | 'beans'
    | 'cabbage'
    | 'carrots'
    | 'cauliflower'
    | 'celery'
    | 'lettuce'
    | 'melons'
    | 'potatoes'
    | 'strawberries'
    | 'tomatoes',
    CropDryLimits
  >
>
