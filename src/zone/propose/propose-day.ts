import type { DayPlan, PlannedShot } from '../../irrigation/plan/day-plan.js'
import { demandCourse } from '../../irrigation/plan/demand-course.js'
import { planDay } from '../../irrigation/plan/plan-day.js'
import type { PlanFinding } from '../../irrigation/plan/plan-finding.js'
import { attempt } from '../../quantity/attempt.js'
import type { Instant } from '../../quantity/calendar.js'
import type { Duration, Share, Volume, WaterContent } from '../../quantity/generated/kinds.js'
import { type NamesOf, onlyNames } from '../../quantity/one-of.js'
import { checkZone } from '../checked-zone.js'
import { type DayDifference, differencesOf } from '../day/day-differences.js'
import type { OfZoneDay } from '../day/terms.js'
import type { ZoneDay, ZoneLevel } from '../day/zone-day.js'
import { type Known, known, unknown } from '../findings/known.js'
import { checkDay } from '../restore/checked-day.js'
import { LIGHT_STEP } from '../weather/light-of-day.js'
import type { Zone } from '../zone.js'
import { type ExpectedUse, expectedUse } from './expected-use.js'
import { type SpellOfLight, spellsOfLight } from './spells-of-light.js'
import { nextDay, restOfDay, type TimeToPlan } from './time-to-plan.js'

/** What is proposed for a day or for the rest of one, and what is expected to come of it: plain data. */
export interface ProposedDay extends ExpectedUse {
  /** Local date. */
  readonly date: string
  /** Where the light over the day comes from: that of the reviewed day. */
  readonly lightFrom: ZoneDay['light']['source']
  /** The openings of the valve; `explainIrrigationFinding` says why each is given. */
  readonly shots: readonly PlannedShot[]
  /** Water of these shots, without what was given before. Unit: L. */
  readonly given: number
  /** Water that should drain. Unit: L. */
  readonly drained: number
  /** Share that should drain; zero where nothing is given. Unit: 1. */
  readonly drainFraction: number
  /** End of each step of the prediction. Unit: s. */
  readonly time: readonly number[]
  /** Predicted mean water content at the end of each step. Unit: m³/m³. */
  readonly waterContent: readonly number[]
  /** What was wanted and cannot be had; `explainIrrigationFinding` has the words. */
  readonly compromises: readonly PlanFinding[]
  /** What is different from the reviewed day; nothing where the rest of that day is proposed. */
  readonly differences: readonly DayDifference[]
}

/** A reviewed day, from which the next is proposed, or the rest of it while it is under way. */
export interface ProposeDayInput extends OfZoneDay {}

const NAMES: NamesOf<ProposeDayInput> = { day: 1, zone: 1 }

/** Share of the use that light does not drive. */
const EVEN_SHARE = 0.15 as Share
/** Share of a shot that runs past the medium, and the lag of drain: common practice, no source. */
const BYPASS = 0.1 as Share
const DRAIN_LAG = 900 as Duration

/**
 * Proposes the shots of the next day of a zone, within the limits of its set-up, from the review of a day; while that day is under way, the
 * shots of the rest of it.
 *
 * A proposal is advice and not an order. Whatever opens a valve must hold limits of its own: a maximum run time, a daily maximum, a leak
 * check, and a safe state when readings are missing. Without a probe that can be trusted nothing is proposed.
 *
 * @procedure Expects the use that the days so far have taught, until seven are known that of the day by its water balance or else by its
 * climate, with the light of the day; plans shots from the level at its end with `planDay`, where lamps burn over midnight once for each spell of light; compares them with those of the day. While the day is
 * under way, what was given counts against the limit of the day, the valve rests after its last opening, and the last 24 hours stand for the day.
 * @returns The proposal with what differs from the day, or the reason why there is none.
 * @throws `DomainError` for a number of the zone outside its range, `InputError` for parts that contradict each other, or a day that was changed
 *   since its review.
 * @source definition: water balance of a container; common practice, no source, for the rest
 * @example
 * const zone: Zone = {
 *   name: 'bench 4',
 *   container: { substrateVolume: litres(14), height: centimetres(12), plants: 2 },
 *   plantDensity: plantsPerSquareMetre(2.5), cropCoefficient: cropCoefficient(1),
 *   emitters: { count: 2, flow: litresPerHour(2), lineFill: seconds(8) },
 *   probes: [{ name: 'A' }],
 *   place: { latitude: latitude(47.5), elevation: metresAboveSeaLevel(420), clock: [{ from: 0, ahead: 0 }] },
 *   readingStep: minutes(5),
 *   limits: {
 *     maxPerDay: litres(8), minRunTime: minutes(2), maxRunTime: minutes(20), minRest: minutes(20),
 *     drainFraction: percent(20), allowedFall: waterContentChange(0.03), lowerLimit: waterContent(0.1),
 *     minBelievable: waterContent(0.05), maxBelievable: waterContent(0.9), minRise: waterContentChange(0.01),
 *     firstShotAfterLight: hours(1), lastShotBeforeDark: hours(3),
 *   },
 * }
 * const time = Array.from({ length: 576 }, (_, i) => i * 300)
 * const A = time.map((t) => 0.6 - (0.02 * (t % 14400)) / 14400 + 0.0004 * Math.sin(t * t))
 * const watering = { time: [0, 1, 2, 3, 4, 5].map((k) => 86400 + 14400 * k), given: Array(6).fill(0.4), drained: Array(6).fill(0.08) }
 * const { days } = reviewZone({ zone, record: { time, probes: { A }, watering } })
 * const proposal = proposeDay({ zone, day: days[1]! })
 * proposal.known && proposal.value.date // => '1970-01-03'
 * proposal.known && proposal.value.expectedUse // => 2.03
 */
export function proposeDay(input: ProposeDayInput): Known<ProposedDay> {
  onlyNames(input, NAMES, 'input')
  const zone = checkZone(input.zone)
  const day = checkDay(zone, input.day)
  if (!day.level.known) return day.level
  const use = expectedUse(day)
  if (use === undefined) return unknown('use-not-known')
  const planning = day.underWay === undefined ? nextDay(zone, day) : restOfDay(zone, day, day.underWay)
  return planning.known ? planned(zone, day, day.level.value, planning.value, use) : planning
}

function planned(zone: Zone, day: ZoneDay, level: ZoneLevel, next: TimeToPlan, use: ExpectedUse): Known<ProposedDay> {
  const { light } = day
  const steps = Math.round((next.to - next.from) / LIGHT_STEP)
  // The same hour of the local clock has the same light; a day of 25 hours repeats its last hour.
  const course = Array.from({ length: steps }, (_, i) => light.course[Math.min(i, light.course.length - 1)]!)
  const spells = spellsOfLight(zone, day, next)
  if (spells.length === 0) return unknown('no-time-for-shots')
  const found = attempt(() => {
    const demand = demandCourse({ total: use.expectedUse as Volume, light: course, evenShare: EVEN_SHARE })
    return plansOf(zone, level, next, spells, demand)
  })
  if (!found.ok) return unknown('plan-not-possible')
  const plans = found.value
  const [given, drained] = [sum(plans.map(({ applied }) => applied)), sum(plans.map((plan) => plan.drained))]
  const proposal = {
    date: next.date,
    ...use,
    lightFrom: light.source,
    shots: plans.flatMap(({ shots }) => shots),
    given,
    drained,
    drainFraction: plans.length === 1 ? plans[0]!.drainFraction : given > 0 ? Math.min(1, drained / given) : 0,
    time: plans.flatMap(({ time }) => Array.from(time)),
    waterContent: plans.flatMap(({ waterContent }) => Array.from(waterContent)),
    compromises: plans.flatMap(({ findings }) => findings),
  }
  return known({ ...proposal, differences: day.underWay === undefined ? differencesOf(day, proposal) : [] })
}

/** A plan for each spell of light, from the level that the one before leaves; what the later ones need is kept for them. */
function plansOf(
  zone: Zone,
  level: ZoneLevel,
  next: TimeToPlan,
  spells: readonly SpellOfLight[],
  demand: Float64Array,
): DayPlan[] {
  const plans: DayPlan[] = []
  let left = Math.max(0, zone.limits.maxPerDay - next.given)
  let mean = level.mean
  for (const { begin, end, firstShot, lastShot } of spells) {
    const [own, later] = [sum(demand.subarray(begin, end)), sum(demand.subarray(end))]
    const share = own + later > 0 ? own / (own + later) : 1
    const maxPerDay = later > 0 ? Math.max(share * left, left - later / (1 - zone.limits.drainFraction)) : left
    const plan = planDay({
      start: (next.from + begin * LIGHT_STEP) as Instant,
      step: LIGHT_STEP as Duration,
      demand: demand.subarray(begin, end),
      ...levelsToPlan(zone, level, mean),
      firstShot: firstShot as Instant,
      lastShot: lastShot as Instant,
      ...limitsToPlan(zone),
      maxPerDay: maxPerDay as Volume,
      trigger: { by: 'level' },
    })
    plans.push(plan)
    left -= plan.applied
    mean = plan.waterContent[plan.waterContent.length - 1] ?? mean
  }
  return plans
}

function sum(list: ArrayLike<number>): number {
  let total = 0
  for (let i = 0; i < list.length; i++) total += list[i]!
  return total
}

function levelsToPlan({ container, limits }: Zone, level: ZoneLevel, mean: number) {
  const fullPoint = level.limits.fullPoint as WaterContent
  return {
    container: {
      substrateVolume: container.substrateVolume,
      containerCapacity: fullPoint,
      minWaterContent: limits.lowerLimit,
      bypass: BYPASS,
      drainLag: DRAIN_LAG,
    },
    waterContent: Math.min(fullPoint, mean) as WaterContent,
    refillPoint: level.limits.refillPoint as WaterContent,
    fullPoint,
  }
}

function limitsToPlan({ emitters, limits }: Zone) {
  return {
    drainFraction: limits.drainFraction,
    emitters: emitters.count,
    emitterFlow: emitters.flow,
    lineFill: emitters.lineFill,
    minRunTime: limits.minRunTime,
    maxRunTime: limits.maxRunTime,
    minRest: limits.minRest,
    ...(limits.maxPerShot !== undefined && { maxPerShot: limits.maxPerShot }),
  }
}
