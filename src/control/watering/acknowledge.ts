import { NO_PULSES } from './delivery/pulses.js'
import { forgottenPace } from './delivery/tally.js'
import { LATCHED_CODES, type LatchedCode } from './findings/latched-codes.js'
import type { Limits } from './settings/checked-settings.js'
import type { WateringFill, WateringState } from './state/state.js'

/** Findings after which probes may stand elsewhere, or be others. */
const SETS = ['shots-without-rise', 'reading-fell-too-fast', 'reads-too-high', 'use-too-small', 'use-too-large']

/** Codes that wait for a person. */
export const acknowledgedCodes = (): readonly string[] => [...SETS, 'clock-doubtful', ...LATCHED_CODES]

/** Whether a list holds only codes that can be acknowledged. */
export function canAcknowledge(codes: unknown): codes is readonly string[] {
  if (!Array.isArray(codes) || codes.length > 100) return false
  const known = acknowledgedCodes()
  return codes.every((code) => known.includes(code))
}

/** Nothing is known of what probes say of a full zone. */
function notSet(fill: WateringFill): WateringFill {
  const none = fill.bias.map(() => 0)
  return {
    ...fill,
    atFull: fill.atFull.map(() => null),
    levelAtFull: null,
    bias: none,
    drift: none,
    apart: none,
    slip: 0,
    usual: 1,
  }
}

/** The state once a person has looked and put right what the codes name. */
export function acknowledged(state: WateringState, codes: readonly string[], limits: Limits): WateringState {
  const { clock, zone, fill, counters } = state
  const has = (code: string) => codes.includes(code)
  const probes = state.probes.map((probe) => ({
    ...probe,
    ...(has('shots-without-rise') && { misses: 0, latched: false, before: null }),
    ...(has('reading-fell-too-fast') && { fellFrom: null }),
  }))
  const latched = counters.latched.filter((code: LatchedCode) => !has(code))
  return {
    ...state,
    clock:
      has('clock-doubtful') && clock.raw !== null
        ? { ...clock, base: clock.raw - clock.elapsed, bad: 0, doubt: 0, agreed: clock.elapsed, pace: 0, paces: 0 }
        : clock,
    tally: has('clock-doubtful') ? forgottenPace(state.tally, limits.decideEvery) : state.tally,
    probes,
    // Probes that somebody put right are set anew by the next full zone.
    fill: SETS.some(has) ? notSet(fill) : fill,
    zone:
      has('use-too-small') || has('use-too-large')
        ? { ...zone, verdict: 'plausible', use: 0, given: 0, level: null }
        : zone,
    counters: {
      ...counters,
      latched,
      drains: has('drain-while-dry') ? 0 : counters.drains,
      pulses: ['no-flow', 'flow-too-large', 'flow-too-small'].some(has) ? NO_PULSES : counters.pulses,
      delivery: has('flow-too-small')
        ? { ...counters.delivery, shots: 0, seen: 0, beyond: 0, partial: false }
        : counters.delivery,
    },
  }
}
