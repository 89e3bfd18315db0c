import type { SourcedRow } from '../../medium/tables/sourced-row.js'

/** A medium in a rehearsal. What tables do not give is invented. */
export interface ScenarioMedium extends SourcedRow {
  /** Mean water content after free drainage. Unit: m³/m³. */
  readonly containerCapacity: number
  /** Water content at which plants get nothing more: invented. Unit: m³/m³. */
  readonly minWaterContent: number
  /** Share of a shot that runs past the medium: invented. Unit: 1. */
  readonly bypass: number
  /** Time in which all but 37 % of the drain has left: invented. Unit: s. */
  readonly drainLag: number
}

/** The media of the ready-made scenarios. */
export type ScenarioName = 'stone-wool' | 'coir-dust' | 'sphagnum-peat-moss' | 'pine-bark'

/**
 * Container capacities of peat moss and pine bark stand in `substratesPorometer2012`, that of coir dust is the middle of the range in
 * `substrateRanges`; stone wool and everything else is invented.
 */
export const SCENARIO_MEDIA = {
  'stone-wool': {
    containerCapacity: 0.75,
    minWaterContent: 0.1,
    bypass: 0.04,
    drainLag: 600,
    source: 'invented',
    known: 'not-confirmed',
  },
  'coir-dust': {
    containerCapacity: 0.765,
    minWaterContent: 0.25,
    bypass: 0.06,
    drainLag: 900,
    source: 'substrateRanges: coir dust of five sources, container capacity 73 to 80 %; the rest is invented',
    known: 'read',
  },
  'sphagnum-peat-moss': {
    containerCapacity: 0.87,
    minWaterContent: 0.3,
    bypass: 0.08,
    drainLag: 1200,
    source: 'substratesPorometer2012; the rest is invented',
    known: 'read',
  },
  'pine-bark': {
    containerCapacity: 0.48,
    minWaterContent: 0.15,
    bypass: 0.15,
    drainLag: 300,
    source: 'substratesPorometer2012; the rest is invented',
    known: 'read',
  },
} as const satisfies Readonly<Record<ScenarioName, ScenarioMedium>>
