import { WATER_CONTENT } from '../../quantity/domains.js'
import type { WaterContent } from '../../quantity/generated/kinds.js'
import { numberIn } from '../../quantity/guard.js'
import type { GivenShot } from './day-so-far.js'
import { waterContentDoubt } from './plan-doubts.js'
import { heldAt } from './plan-engine.js'
import { missed, type PlanFinding } from './plan-finding.js'
import type { PlanRun } from './plan-run.js'
import type { Planning, PlanProgress } from './planning.js'

/** Scatter of a sound probe, in m³/m³. Common practice, no source. */
const SCATTER = 0.03

/** Where a plan stands, and what is doubted in it by then. */
export interface Reached<State> {
  readonly end: PlanProgress<State>
  readonly planning: Planning<State>
}

/** Puts a measured water content in the place of the predicted one, if it can be believed. */
export function atOnce<State>(
  planning: Planning<State>,
  { end }: Pick<PlanRun<State>, 'end'>,
  measured: WaterContent | undefined,
  given: readonly GivenShot[],
): Reached<State> {
  if (measured === undefined) return { end, planning }
  const waterContent = numberIn(measured, WATER_CONTENT, 'soFar.waterContent')
  const doubt = measuredDoubt(planning, end, waterContent, given)
  if (doubt === undefined) return { end: heldAt(planning, end, waterContent), planning }
  const blocked = planning.blocked || doubt.level === 'danger'
  const doubted = { ...planning, blocked, doubts: [...planning.doubts, doubt] }
  return {
    end: doubt.code === 'water-content-above-capacity' ? heldAt(planning, end, waterContent) : end,
    planning: doubted,
  }
}

function measuredDoubt<State>(
  planning: Planning<State>,
  end: PlanProgress<State>,
  waterContent: number,
  given: readonly GivenShot[],
): PlanFinding | undefined {
  const { substrateVolume } = planning
  const about = 'soFar.waterContent'
  const doubt = waterContentDoubt(waterContent, planning, about)
  if (doubt?.because === 'above-capacity') return doubt
  let use = 0
  for (let i = 0; i < end.steps; i++) use += planning.demand[i]!
  const water = given.reduce((sum, { volume }) => sum + volume, 0)
  const dry = planning.waterContent - (2 * use) / substrateVolume - SCATTER
  const wet = planning.waterContent + water / substrateVolume + SCATTER
  if (doubt === undefined && waterContent >= dry && waterContent <= wet) return undefined
  return missed('measured-content-doubted', about, waterContent, planning.flow.waterContent(end.state), 'm³/m³')
}
