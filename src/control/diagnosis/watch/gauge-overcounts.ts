import { KNOWN_RISES } from './step-of-probe.js'
import type { ProbeWatch } from './watch-probe.js'

/** What usually drains of a shot, and of how many that was learnt. Unit: 1. */
export interface DrainedShare {
  readonly drained: number
  readonly drainedShots: number
}

/** What probes show of a shot and what drains of it are no more than this together: their places may get a half more. Chosen. Unit: 1. */
const ALL = 1.5

/** Whether a gauge usually counts more than shots can have brought, beside what the probes show of them. */
export function gaugeOvercounts({ drained, drainedShots }: DrainedShare, probes: readonly ProbeWatch[]): boolean {
  if (drained > 1) return true
  const known = probes.filter(({ rises }) => rises >= KNOWN_RISES)
  if (known.length === 0 || drainedShots < 8) return false
  return drained + known.reduce((sum, { usualRise }) => sum + usualRise / known.length, 0) > ALL
}
