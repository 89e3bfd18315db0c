import type { WaterStore } from '../../flow/water-store.js'
import { missed, type PlanFinding } from './plan-finding.js'
import type { DayPlanRequest } from './plan-request.js'
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
  const above = waterContent > containerCapacity + DROP
  if (!above && waterContent >= Math.max(minWaterContent - BELOW, NOTHING)) return undefined
  const impossible = !above || waterContent > containerCapacity + ABOVE
  return missed(
    impossible ? 'impossible-water-content' : 'water-content-above-capacity',
    about,
    waterContent,
    above ? containerCapacity : minWaterContent,
    'm³/m³',
    impossible ? 'danger' : 'caution',
    above ? 'above-capacity' : 'below-min-water-content',
  )
}

/** What is odd in a request that can be planned all the same. */
export function doubtsOf(request: DayPlanRequest & WaterStore, allDemand: number): PlanFinding[] {
  return [
    waterContentDoubt(request.waterContent, request, 'waterContent') ?? [],
    demandDoubt(request, allDemand),
  ].flat()
}

/** A container whose plants drink its whole volume in a day is watered with a wrong unit, or is far too small to plan for. */
function demandDoubt({ demand, step, substrateVolume }: DayPlanRequest & WaterStore, all: number): PlanFinding[] {
  const daily = all / Math.max(1, (step * demand.length) / 86400)
  return daily > substrateVolume ? [missed('unusual-demand', 'demand', daily, substrateVolume, 'L', 'danger')] : []
}
