import type { Instant } from '../../quantity/calendar.js'
import { INSTANT, SEED } from '../../quantity/domains.js'
import { booleanOf, numberIn, optionOr, requireObject, requireRows, wholeNumberIn } from '../../quantity/guard.js'
import { type NamesOf, onlyNames } from '../../quantity/one-of.js'
import type { RehearsedController } from '../controllers/rehearsed-controller.js'
import { DAYS, POLL_EVERY } from '../domains.js'
import { type CheckedFault, checkedFault, type RehearsalFault } from '../faults/fault.js'
import { type CheckedLimits, checkedLimits, type RehearsalLimits } from '../scenario/rehearsal-limits.js'
import type { RehearsalScenario } from '../scenario/rehearsal-scenario.js'
import { checkedZone, type RehearsalZone } from '../scenario/zone.js'
import type { CalledEvery } from '../terms.js'

/** One history to be simulated. */
export interface Rehearsal<State, Input, Output> extends CalledEvery {
  /** What waters. */
  readonly controller: RehearsedController<State, Input, Output>
  /** Where it waters. */
  readonly zone: RehearsalZone
  /** What it is judged by. */
  readonly limits: RehearsalLimits
  /** For how long. Unit: d. Range: integers [1, 60]. */
  readonly days: number
  /** Which history: weather, noise, offsets and everything else that is drawn by lot. Unit: 1. Range: integers [0, 4294967295]. */
  readonly seed: number
  /** What goes wrong, and what people do; nothing by default. */
  readonly faults?: readonly RehearsalFault[]
  /** Local midnight at which it begins; 19 May 2026 by default. Unit: s. Range: [-62135596800, 253402300799]. */
  readonly start?: Instant
  /** Whether to keep the course; it is kept by default. */
  readonly keepCourse?: boolean
}

/** Those of a scenario as well: a rehearsal may be spread from one. */
const NAMES: NamesOf<Rehearsal<unknown, unknown, unknown> & RehearsalScenario> = {
  controller: 1,
  zone: 1,
  limits: 1,
  days: 1,
  seed: 1,
  faults: 1,
  start: 1,
  keepCourse: 1,
  lower: 1,
  upper: 1,
  shot: 1,
  usualPerDay: 1,
  pollEvery: 1,
}

/** A rehearsal that was found to make sense. */
export interface CheckedRehearsal {
  readonly zone: RehearsalZone
  readonly limits: CheckedLimits
  readonly end: number
  readonly days: number
  readonly seed: number
  readonly faults: readonly CheckedFault[]
  readonly start: number
  readonly poll: number
  readonly keepCourse: boolean
}

/** 19 May 2026. */
const DEFAULT_START = 1779148800

export function checkedRehearsal<State, Input, Output>(rehearsal: Rehearsal<State, Input, Output>): CheckedRehearsal {
  onlyNames(rehearsal as typeof rehearsal & RehearsalScenario, NAMES, 'rehearsal')
  for (const part of ['zone', 'limits', 'controller'] as const) requireObject(rehearsal[part], part)
  requireObject(rehearsal.zone.has, 'zone.has')
  requireObject(rehearsal.controller.reducer, 'controller.reducer')
  requireRows(rehearsal.faults ?? [], 'faults')
  const days = wholeNumberIn(rehearsal.days, DAYS, 'days')
  const zone = checkedZone(rehearsal.zone)
  return {
    zone,
    limits: checkedLimits(rehearsal.limits),
    days,
    end: days * 86400,
    seed: wholeNumberIn(rehearsal.seed, SEED, 'seed'),
    faults: (rehearsal.faults ?? []).map((fault) => checkedFault(fault, zone.probes)),
    start: rehearsal.start === undefined ? DEFAULT_START : numberIn(rehearsal.start, INSTANT, 'start'),
    poll: rehearsal.pollEvery === undefined ? 60 : numberIn(rehearsal.pollEvery, POLL_EVERY, 'pollEvery'),
    keepCourse: booleanOf(optionOr(rehearsal.keepCourse, true), 'keepCourse'),
  }
}
