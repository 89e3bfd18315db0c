import { keepRates, STAGE } from '../equations/flow-rates.js'
import type { Passed } from './passed.js'
import { goesAstray } from './possible.js'
import { failed, goOn, type OnStep, type StepOutcome } from './step-ends.js'
import type { StepWork } from './step-work.js'

/**
 * The first stage as a step of its own, an implicit Euler step. Where a cell runs out of water the second stage would ask it for more
 * than it has, however short the step.
 */
export function firstStageAlone(work: StepWork, dt: number, passed: Passed, onStep: OnStep): StepOutcome {
  const { equations, tolerance, suctions, held, first, before, halfway, flows, early, begun, firstFree, endFree } = work
  const { volumes } = equations.grid
  let off = 0
  for (let i = firstFree; i < endFree; i++)
    off = Math.max(off, (STAGE * dt * Math.abs(first[i]! - before[i]!)) / (2 * volumes[i]!))
  if (off > tolerance) return failed(work)
  keepRates(flows, early)
  if (goesAstray(equations, held, flows, STAGE * dt, suctions, halfway)) return failed(work)
  // What was read last is a trial of the second stage, which led nowhere.
  equations.store(halfway)
  goOn(work, halfway, STAGE * dt, passed, onStep)
  before.set(first)
  keepRates(begun, early)
  const factor = 0.9 * (tolerance / off) ** (1 / 2)
  return { done: STAGE * dt, factor: Math.min(Math.max(factor, 0.5), 4) }
}
