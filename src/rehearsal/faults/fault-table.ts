import { hasRow } from '../../quantity/one-of.js'
import type { FaultRow } from './fault-row.js'
import { PROBE_FAULTS } from './probe-fault-table.js'
import { ZONE_FAULTS } from './zone-fault-table.js'

/** A fault by its name. */
export type FaultName = keyof typeof PROBE_FAULTS | keyof typeof ZONE_FAULTS

/** The row of a fault; `undefined` for a name that nobody knows. */
export function faultRow(name: string): FaultRow | undefined {
  if (hasRow(PROBE_FAULTS, name)) return PROBE_FAULTS[name as keyof typeof PROBE_FAULTS]
  return hasRow(ZONE_FAULTS, name) ? ZONE_FAULTS[name as keyof typeof ZONE_FAULTS] : undefined
}

/** All names, probes first. */
export function faultNames(): readonly FaultName[] {
  return [...Object.keys(PROBE_FAULTS), ...Object.keys(ZONE_FAULTS)] as FaultName[]
}
