import type { FaultRow } from './fault-row.js'
import type { FaultSign } from './fault-signs.js'
import { type FaultName, faultNames, faultRow } from './fault-table.js'

/** What can go wrong in a rehearsal. */
export interface FaultKind extends Pick<FaultRow, 'about'> {
  /** Its name. */
  readonly fault: FaultName
  /** What a right alarm says; `none` where nothing need be said. */
  readonly sign: FaultSign
  /** How long it lasts where it is drawn by lot; zero to the end. Unit: h. */
  readonly duration: number
  /** How large it is by default. Unit: as in `unit`. */
  readonly size: number
  /** Unit of the size. */
  readonly unit: string
}

/**
 * All faults that a rehearsal knows, and the deeds of people: at probes, messages, water, power, clock, gauges, medium and weather.
 *
 * @procedure Lists the table of faults; sizes are invented, large enough to matter and small enough to happen.
 * @returns One entry a fault.
 * @source common practice, no source
 * @example
 * rehearsalFaults().length > 60 // => true
 * rehearsalFaults()[0] // => { fault: 'probe-reads-zero', sign: 'probe-dead' }
 */
export function rehearsalFaults(): FaultKind[] {
  return faultNames().map((fault) => {
    const row = faultRow(fault)!
    return { fault, sign: row.sign, about: row.about, duration: row.duration, size: row.size, unit: row.unit }
  })
}
