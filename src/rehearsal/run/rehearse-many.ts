import { SEED } from '../../quantity/domains.js'
import { InputError } from '../../quantity/errors.js'
import { optionOr, requireRows, wholeNumberIn } from '../../quantity/guard.js'
import { type NamesOf, onlyNames } from '../../quantity/one-of.js'
import type { RehearsedController } from '../controllers/rehearsed-controller.js'
import { DAYS, SEEDS } from '../domains.js'
import { drawFaults } from '../faults/draw-faults.js'
import type { FaultName } from '../faults/fault-table.js'
import { type RehearsalSummary, summaryOf } from '../outcome/rehearsal-summary.js'
import type { RehearsalScenario } from '../scenario/rehearsal-scenario.js'
import type { CalledEvery } from '../terms.js'
import { rehearse } from './rehearse.js'

/** Many histories to be simulated. */
export interface ManyRehearsals<State, Input, Output> extends CalledEvery {
  /** What waters a scenario; it is made anew for each. */
  readonly controllerFor: (scenario: RehearsalScenario) => RehearsedController<State, Input, Output>
  /** Where, made by `rehearsalScenario`. */
  readonly scenarios: readonly RehearsalScenario[]
  /** What goes wrong: each entry is the faults of one rehearsal, an empty one a healthy week. */
  readonly faults: readonly (readonly FaultName[])[]
  /** Histories for each entry and scenario. Unit: 1. Range: integers [1, 1000000]. */
  readonly seeds: number
  /** The first seed, zero by default; the others follow. Unit: 1. Range: integers [0, 4294967295]. */
  readonly firstSeed?: number
  /** Days of each. Unit: d. Range: integers [1, 60]. */
  readonly days: number
}

const NAMES: NamesOf<ManyRehearsals<unknown, unknown, unknown>> = {
  controllerFor: 1,
  scenarios: 1,
  faults: 1,
  seeds: 1,
  firstSeed: 1,
  days: 1,
  pollEvery: 1,
}

/**
 * Rehearses a controller over faults, scenarios and seeds, and sums up: one row for each entry of faults.
 *
 * @procedure Draws the times of the faults by `drawFaults` from each seed, calls `rehearse`, and takes worst and mean over scenarios and seeds.
 * @returns One row an entry of faults, in their order; each names the scenario and seed of its worst histories.
 * @throws `DomainError` outside the ranges, `InputError` for unknown faults and where there is nothing to rehearse.
 * @source definition
 * @example
 * const scenarios = [rehearsalScenario('coir-dust')]
 * const faults = [[], ['probes-silent']] as const
 * const rows = rehearseMany({ controllerFor: carefulPerson, scenarios, faults, seeds: 2, days: 2 })
 * rows.map((row) => row.runs) // => [2, 2]
 * rows.every((row) => row.worstDayShare <= 1.05) // => true
 */
export function rehearseMany<State, Input, Output>(many: ManyRehearsals<State, Input, Output>): RehearsalSummary[] {
  onlyNames(many, NAMES, 'many')
  const seeds = wholeNumberIn(many.seeds, SEEDS, 'seeds')
  const first = wholeNumberIn(optionOr(many.firstSeed, 0), SEED, 'firstSeed')
  const days = wholeNumberIn(many.days, DAYS, 'days')
  requireRows(many.scenarios, 'scenarios')
  requireRows(many.faults, 'faults')
  if (many.scenarios.length === 0 || many.faults.length === 0)
    throw new InputError(
      'scenarios',
      'or faults are none',
      'give at least one scenario, and one list of faults, which may be empty',
    )
  return many.faults.map((names) =>
    summaryOf(
      names,
      many.scenarios.flatMap((scenario, place) =>
        Array.from({ length: seeds }, (_, i) => {
          const seed = (first + i) % 4294967296
          const faults = drawFaults({ faults: names, seed, days, probes: scenario.zone.probes })
          const controller = many.controllerFor(scenario)
          const pollEvery = many.pollEvery === undefined ? {} : { pollEvery: many.pollEvery }
          const outcome = rehearse({
            zone: scenario.zone,
            limits: scenario.limits,
            controller,
            days,
            seed,
            faults,
            keepCourse: false,
            ...pollEvery,
          })
          return { outcome, scenario, place }
        }),
      ),
    ),
  )
}
