import { rowOf } from '../../medium/tables/sourced-row.js'
import type {
  Duration,
  Flow,
  Share,
  SolutionEC,
  Volume,
  WaterContent,
  WaterContentChange,
} from '../../quantity/generated/kinds.js'
import { requireObject } from '../../quantity/guard.js'
import { checkedLimits, type RehearsalLimits } from './rehearsal-limits.js'
import { storedMedium } from './rehearsal-medium.js'
import { SCENARIO_MEDIA, type ScenarioMedium, type ScenarioName } from './scenario-table.js'
import { checkedZone, type RehearsalZone } from './zone.js'

/** A ready-made zone with limits, to begin with. */
export interface RehearsalScenario {
  readonly zone: RehearsalZone
  readonly limits: RehearsalLimits
  /** Water content at which to water again. Unit: m³/m³. */
  readonly lower: WaterContent
  /** Water content that a shot should not exceed. Unit: m³/m³. */
  readonly upper: WaterContent
  /** A shot that suits both. Unit: L. */
  readonly shot: Volume
  /** What plants and drain take on a usual day. Unit: L. */
  readonly usualPerDay: Volume
}

/**
 * A zone of twelve containers of 10 L with two probes, drippers of together 6 L/h, plants that use 3 L a day, and limits that fit: a
 * scenario to rehearse in until you have described your own zone. Only the container capacities come from tables; the rest is invented.
 *
 * @procedure Takes the container capacity of the medium and sets every level at a distance below it.
 * @param medium - The medium: `stone-wool`, `coir-dust`, `sphagnum-peat-moss` or `pine-bark`.
 * @returns Zone, limits, and levels for a controller.
 * @throws `InputError` for another medium.
 * @source invented, but for the container capacities of `substratesPorometer2012` and `substrateRanges`
 * @example
 * const scenario = rehearsalScenario('pine-bark')
 * scenario.lower // => 0.42
 * scenario.limits.maxPerDay // => 6
 */
export function rehearsalScenario(medium: ScenarioName): RehearsalScenario {
  const row = rowOf<ScenarioMedium>(SCENARIO_MEDIA, medium, 'medium')
  const capacity = row.containerCapacity
  const below = (by: number) => Math.round((capacity - by) * 1e6) / 1e6
  return {
    zone: {
      medium: storedMedium({
        substrateVolume: 10 as Volume,
        containerCapacity: capacity as WaterContent,
        minWaterContent: row.minWaterContent as WaterContent,
        bypass: row.bypass as Share,
        drainLag: row.drainLag as Duration,
      }),
      containers: 12,
      probes: 2,
      waterContent: below(0.04) as WaterContent,
      flow: 6 as Flow,
      lineFill: 5 as Duration,
      dailyUse: 3 as Volume,
      evenShare: 0.12 as Share,
      sunrise: 6,
      sunset: 20,
      probeLag: 240 as Duration,
      probeNoise: 0.0015 as WaterContentChange,
      probeOffset: 0.005 as WaterContentChange,
      placeSpread: 0.08 as Share,
      dripperSpread: 0.04 as Share,
      weatherSpread: 0.15 as Share,
      readingStep: 60 as Duration,
      feedEC: 2.5 as SolutionEC,
      has: { flowMeter: true, drainGauge: true, valveContact: false, mainValve: false },
    },
    limits: scenarioLimits(row, below),
    lower: below(0.06) as WaterContent,
    upper: below(0.03) as WaterContent,
    shot: 0.2 as Volume,
    // Of each shot a share runs past, and one of 120 s fills the line for 5 s.
    usualPerDay: (Math.round((3 / (1 - row.bypass) / 0.958) * 100) / 100) as Volume,
  }
}

function scenarioLimits({ minWaterContent }: ScenarioMedium, below: (by: number) => number): RehearsalLimits {
  return {
    maxPerDay: 6 as Volume,
    maxRunTime: 300 as Duration,
    allowedHours: [{ from: 21600 as Duration, to: 72000 as Duration }],
    stressBelow: below(0.14) as WaterContent,
    fullAbove: below(0.005) as WaterContent,
    // A container that has dried out is to be believed: only what no medium can hold is not.
    minBelievable: (Math.round((minWaterContent - 0.03) * 1e6) / 1e6) as WaterContent,
    maxBelievable: below(-0.08) as WaterContent,
  }
}

/** A scenario whose zone and limits make sense. */
export function checkedScenario(scenario: RehearsalScenario): RehearsalScenario {
  requireObject(scenario.zone, 'scenario.zone')
  requireObject(scenario.limits, 'scenario.limits')
  checkedZone(scenario.zone)
  checkedLimits(scenario.limits)
  return scenario
}
