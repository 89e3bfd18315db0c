import type { WaterStore } from '../../flow/water-store.js'
import type { Instant } from '../../quantity/calendar.js'
import { missed, type PlanFinding } from './plan-finding.js'
import type { DayPlanRequest } from './plan-request.js'
import { stepOf } from './plan-trigger.js'
import { DROP } from './planning.js'

/** So far above capacity a container can be for a while after a shot, in m³/m³. Common practice, no source. */
const ABOVE = 0.1
/** So far below the lowest content of a living plant's container a sound probe may read, in m³/m³. Common practice, no source. */
const BELOW = 0.02
/** Less than this no medium with a plant in it reads, whatever its lowest content, in m³/m³. Common practice, no source. */
const NOTHING = 0.01

/** What is wrong with a water content, if anything is: a danger where no living plant's container can hold it. */
export function waterContentDoubt(
  waterContent: number,
  { containerCapacity, minWaterContent }: WaterStore,
  about: string,
): PlanFinding | undefined {
  if (waterContent > containerCapacity + DROP) {
    const impossible = waterContent > containerCapacity + ABOVE
    const level = impossible ? 'danger' : 'caution'
    const code = impossible ? 'impossible-water-content' : 'water-content-above-capacity'
    return missed(code, about, waterContent, containerCapacity, 'm³/m³', level, 'above-capacity')
  }
  if (waterContent >= Math.max(minWaterContent - BELOW, NOTHING)) return undefined
  const [code, because] = ['impossible-water-content', 'below-min-water-content'] as const
  return missed(code, about, waterContent, minWaterContent, 'm³/m³', 'danger', because)
}

/** What is odd in a request that can be planned all the same. */
export function doubtsOf(request: DayPlanRequest, due: ReadonlyMap<number, number>): PlanFinding[] {
  const { container, waterContent } = request
  const doubt = waterContentDoubt(waterContent, container, 'waterContent')
  return [...(doubt === undefined ? [] : [doubt]), ...demandDoubt(request), ...timesDropped(request, due)]
}

/** A container whose plants drink its whole volume in a day is watered with a wrong unit, or is far too small to plan for. */
function demandDoubt({ demand, step, container }: DayPlanRequest): PlanFinding[] {
  let total = 0
  for (let i = 0; i < demand.length; i++) total += demand[i]!
  const daily = total / Math.max(1, (step * demand.length) / 86400)
  const { substrateVolume } = container
  return daily > substrateVolume ? [missed('unusual-demand', 'demand', daily, substrateVolume, 'L', 'danger')] : []
}

/** Set times that lie outside the plan, or beside another one in the same step. Those in the plan are told when it is made. */
function timesDropped(request: DayPlanRequest, due: ReadonlyMap<number, number>): PlanFinding[] {
  if (request.trigger.by !== 'clock') return []
  return request.trigger.times.flatMap((time) => {
    const step = stepOf(request, time)
    const outside = step < 0 || step >= request.demand.length
    return outside || due.get(step) !== time ? [timeDropped(time, outside ? 'outside-plan' : 'rest')] : []
  })
}

/** A set time at which no shot is given, and why. */
export function timeDropped(time: number, because: NonNullable<PlanFinding['because']>): PlanFinding {
  return { code: 'set-time-dropped', level: 'caution', about: 'trigger.times', time: time as Instant, because }
}
