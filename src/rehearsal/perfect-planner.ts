import { requireObject } from '../quantity/require-object.js'
import { type CheckedLimits, isAllowedHour } from './rehearsal-limits.js'
import { checkedScene, type RehearsalScene } from './rehearsal-scene.js'
import type { RehearsalTruth, RehearsedController, ValveOrder } from './rehearsed-controller.js'

/** What the perfect planner remembers. */
export interface PlannerState {
  /** When its last shot began, from the start of the rehearsal; null before the first. Unit: s. */
  readonly shotAt: number | null
}

/** Time after a shot in which it gives no other, so that the water can spread. Unit: s. */
const REST = 600

/**
 * A controller that knows the true water content, for comparison: nobody can water a zone with less, and keep it as wet. It knows
 * nothing of faults and no limit of a day; it gives a shot in the allowed hours whenever the zone is truly at the lower limit.
 *
 * @procedure Opens for one shot where the true mean is at the lower limit or below, ten minutes or more after the last one.
 * @param scene - Zone, limits and levels, made by `rehearsalScene`.
 * @returns A controller for `rehearse`.
 * @throws `DomainError` and `InputError` for a zone or limits that make no sense, as `rehearse` does.
 * @source definition
 * @example
 * ```ts
 * const scene = rehearsalScene('coir dust')
 * const outcome = rehearse({ zone: scene.zone, limits: scene.limits, controller: perfectPlanner(scene), days: 2, seed: 7, keepCourse: false })
 * outcome.stressTime // => 0
 * ```
 */
export function perfectPlanner(scene: RehearsalScene): RehearsedController<PlannerState, RehearsalTruth, ValveOrder> {
  requireObject(scene, 'scene')
  const { opensFrom = 0, opensUntil = 24 } = checkedScene(scene).limits
  const hours = { opensFrom, opensUntil } as CheckedLimits
  const { lower } = scene
  const run = (scene.shot / scene.zone.flow) * 3600
  return {
    reducer: {
      start: { shotAt: null },
      step: (state, { time, hour, waterContent }) => {
        const since = state.shotAt === null ? Number.POSITIVE_INFINITY : time - state.shotAt
        if (since < run) return [state, { open: true, closeAfter: run - since }]
        if (waterContent > lower || since < REST || !isAllowedHour(hours, hour)) return [state, { open: false }]
        return [{ shotAt: time }, { open: true, closeAfter: run }]
      },
    },
    input: (_, truth) => truth,
    order: (order) => order,
  }
}
