import type { ContainerFlow } from '../../flow/container-flow.js'
import type { StoreState, WaterStore } from '../../flow/water-store.js'
import type { PlanFinding } from './plan-finding.js'
import type { DayPlanRequest } from './plan-request.js'

/** Differences below this are rounding, not water. */
export const DROP = 1e-9

/** Where a plan stands at a moment: plain data, from which it can be taken up again. */
export interface PlanProgress<State = StoreState> {
  /** How many steps are done. */
  readonly steps: number
  readonly state: State
  /** End of the last opening, if there was one. */
  readonly closed?: number | undefined
  readonly applied: number
  readonly drained: number
  readonly taken: number
  /** Water above capacity that was there without a shot: its drain is nobody's wish. */
  readonly surplus: number
  /** Whether the container has yet to be filled for the first time. */
  readonly rewetting: boolean
  /** Light since the last shot. */
  readonly light: number
}

/** A request and its container, with the model that predicts it and the numbers that are used at every step. */
export interface Planning<State> extends DayPlanRequest, WaterStore {
  readonly flow: ContainerFlow<State>
  readonly minVolume: number
  readonly maxVolume: number
  readonly firstStep: number
  /** Latest step at which a shot is allowed to begin. */
  readonly allowedStep: number
  /** Latest step at which a shot may begin, so that the container dries down as wanted. */
  readonly lastStep: number
  /** Steps at which a clock asks for a shot, with the time that it asks for. */
  readonly due: ReadonlyMap<number, number>
  /** Steps from the beginning of the plan to the first shot of the next day, or to its end where the night is not known. */
  readonly nightEnd: number
  /** What is wrong with the request, though it can be planned. */
  readonly doubts: readonly PlanFinding[]
  /** No shot at all: nothing can be believed. */
  readonly blocked: boolean
}

/** Demand in a step; a step of the night after the plan is expected to be as the same hour of the plan's own day. */
export function demandAt({ demand, step }: DayPlanRequest, i: number): number {
  return demand[i < demand.length ? i : i - Math.round(86400 / step)]!
}
