import type { AirFilledPorosity, BulkDensity, Porosity, WaterContent } from '../../quantity/generated/kinds.js'
import type { SourcedRow } from './sourced-row.js'

/** What a porometer measured of a growing medium in its own core of about 7.6 cm height. */
export interface PorometerMeasures extends SourcedRow {
  /** Unit: 1. */
  readonly airSpace: AirFilledPorosity
  /** Unit: m³/m³. */
  readonly containerCapacity: WaterContent
  /** Unit: 1. */
  readonly totalPorosity: Porosity
  /** Unit: g/cm³. */
  readonly bulkDensity: BulkDensity
}

const SOURCE = 'boyer-2012, Table 1'

/** The growing media of the 2012 table. */
export type PorometerSubstrate = 'clean-chip-residual-0-48-cm-screen' | 'clean-chip-residual-0-95-cm-screen' | 'pine-bark' | 'sphagnum-peat-moss'

/**
 * Four growing media as a porometer measured them. The numbers belong to a drained column of about 7.6 cm: in a lower container
 * the same medium holds more water and less air, in a higher one the reverse.
 */
export const substratesPorometer2012 = {
  'clean-chip-residual-0-48-cm-screen': { airSpace: 0.28, containerCapacity: 0.57, totalPorosity: 0.85, bulkDensity: 0.22, source: SOURCE, known: 'read' },
  'clean-chip-residual-0-95-cm-screen': { airSpace: 0.48, containerCapacity: 0.42, totalPorosity: 0.9, bulkDensity: 0.19, source: SOURCE, known: 'read' },
  'pine-bark': { airSpace: 0.31, containerCapacity: 0.48, totalPorosity: 0.79, bulkDensity: 0.18, source: SOURCE, known: 'read' },
  'sphagnum-peat-moss': { airSpace: 0.11, containerCapacity: 0.87, totalPorosity: 0.98, bulkDensity: 0.11, source: SOURCE, known: 'read' },
} as unknown as Readonly<Record<PorometerSubstrate, PorometerMeasures>>
