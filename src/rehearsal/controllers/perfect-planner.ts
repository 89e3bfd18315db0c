import { requireObject } from '../../quantity/guard.js'
import { checkedLimits, isAllowedHour } from '../scenario/rehearsal-limits.js'
import { checkedScenario, type RehearsalScenario } from '../scenario/rehearsal-scenario.js'
import type { RehearsalTruth, RehearsedController, ValveOrder } from './rehearsed-controller.js'

/** What the perfect planner remembers. */
export interface PlannerState {
  /** When the shots of the last 24 h began, from the start of the rehearsal, and what had passed the valve by then. Unit: s, L. */
  readonly shots: readonly { readonly time: number; readonly given: number }[]
}

/** Time after a shot in which it gives no other, so that the water can spread. Unit: s. */
const REST = 600

/**
 * A controller that knows the true water content, for comparison: nobody can water a zone with less, and keep it as wet. It gives a
 * shot in the allowed hours whenever the zone is truly at the lower limit, inside the limit of a day; of faults it knows nothing more.
 *
 * @procedure Opens for one shot where the true mean is at the lower limit or below, ten minutes or more after the last one, unless what
 * truly passed the valve in the last 24 h leaves no room.
 * @param scenario - Zone, limits and levels, made by `rehearsalScenario`.
 * @returns A controller for `rehearse`.
 * @throws `DomainError` and `InputError` for a zone or limits that make no sense, as `rehearse` does.
 * @source definition
 * @example
 * const scenario = rehearsalScenario('coir-dust')
 * const outcome = rehearse({ zone: scenario.zone, limits: scenario.limits, controller: perfectPlanner(scenario), days: 2, seed: 7, keepCourse: false })
 * outcome.stressTime // => 0
 */
export function perfectPlanner(
  scenario: RehearsalScenario,
): RehearsedController<PlannerState, RehearsalTruth, ValveOrder> {
  requireObject(scenario, 'scenario')
  const { allowedHours: hours, maxPerDay } = checkedLimits(checkedScenario(scenario).limits)
  const { lower, shot, zone } = scenario
  const run = (shot / zone.flow) * 3600
  return {
    reducer: {
      start: { shots: [] },
      step: (state, { time, hour, waterContent, given }) => {
        const since = time - (state.shots.at(-1)?.time ?? Number.NEGATIVE_INFINITY)
        if (since < run) return [state, { open: true, closeAfter: run - since }]
        if (waterContent > lower || since < REST || !isAllowedHour(hours, hour)) return [state, { open: false }]
        const shots = state.shots.filter((before) => time - before.time < 86400 + run)
        if (given - (shots[0]?.given ?? given) + shot > maxPerDay + 1e-9) return [state, { open: false }]
        return [{ shots: [...shots, { time, given }] }, { open: true, closeAfter: run }]
      },
    },
    input: (_, truth) => truth,
    order: (order) => order,
    // It is to be perfect: torn notes begin anew, and what is not there stops nothing.
    restore: (stored) => (isNotes(stored) ? stored : { shots: [] }),
  }
}

function isNotes(stored: unknown): stored is PlannerState {
  return typeof stored === 'object' && stored !== null && Array.isArray((stored as { readonly shots?: unknown }).shots)
}
