import type { DayPlan } from '../irrigation/plan/day-plan.js'
import type { DayPlanRequest } from '../irrigation/plan/plan-request.js'
import { InputError } from '../quantity/errors.js'
import { requireObject, requireRows } from '../quantity/guard.js'
import { asPercent, asPoints } from '../quantity/in-words.js'
import { lineOf } from './line-of.js'
import { drawPanels } from './panels.js'
import { contentPanel, differenceOf, differencePanel, shotPanel } from './plan-panels.js'
import { heightFor, WIDTH } from './size.js'
import type { LocalClock, PictureTitle, PictureWidth } from './terms.js'
import { timeTicks } from './time-axis.js'

/** A plan for a day, and what came of it so far. */
export interface PlanChart extends LocalClock, PictureTitle, PictureWidth {
  /** The plan, made by `planDay` or `replanDay`. */
  readonly plan: DayPlan
  /** What the plan was made for; its refill and full point are drawn. */
  readonly request?: Pick<DayPlanRequest, 'refillPoint' | 'fullPoint'>
  /** What the probe read. */
  readonly readings?: {
    /** Instants of the readings, seconds since 1970 in universal time, rising. Unit: s. Range: any. */
    readonly time: ArrayLike<number>
    /** Water content; NaN where a reading is missing. Unit: m³/m³. Range: any. */
    readonly waterContent: ArrayLike<number>
  }
  /** What was given: when, and how much for the container of the plan. */
  readonly given?: readonly { readonly time: number; readonly millilitres: number }[]
  /** No line is drawn across gaps in the readings longer than this. Unit: s. Range: any. */
  readonly maxStep: number
}

/**
 * A picture of a plan against its outcome, as SVG text: predicted and read water content above, planned shots beside those that were
 * given in the middle, readings less prediction below.
 *
 * @procedure Draws the plan; readings, shots that were given and the difference are drawn where there are any. The prediction is joined by
 * straight lines between its steps.
 * @param chart - What to draw.
 * @returns An SVG document as text, with a title and a description that tells the numbers.
 * @throws `DomainError` outside the ranges, `InputError` for a plan of fewer than two steps, or readings of another length than their times.
 * @source definition
 * @example
 * const plan = planDay({
 *   start: instant(1779148800), step: minutes(10), demand: new Array(144).fill(0.02),
 *   container: {
 *     substrateVolume: litres(14), containerCapacity: waterContent(0.62), minWaterContent: waterContent(0.15),
 *     bypass: fraction(0.1), drainLag: minutes(10),
 *   },
 *   waterContent: waterContent(0.6), refillPoint: waterContent(0.59), fullPoint: waterContent(0.62),
 *   drainFraction: percent(20), firstShot: instant(1779148800 + 7 * 3600), lastShot: instant(1779148800 + 17 * 3600),
 *   emitters: 2, emitterFlow: litresPerHour(2), lineFill: seconds(8), minRunTime: minutes(2), maxRunTime: minutes(15),
 *   minRest: minutes(15), maxPerDay: litres(8), trigger: { by: 'level' },
 * })
 * chartPlan({ title: 'Bench 3, invented', plan, hoursFromUtc: 0, maxStep: 900 }).includes('5 shots planned') // => true
 */
export function chartPlan(chart: PlanChart): string {
  requireObject(chart, 'chart')
  const { plan, readings, given, request, width = WIDTH } = chart
  requireObject(plan, 'plan')
  if (readings !== undefined) requireObject(readings, 'readings')
  if (given !== undefined) requireRows(given, 'given')
  if (request !== undefined) requireObject(request, 'request')
  const from = plan.time[0]!
  const to = plan.time[plan.time.length - 1]!
  if (!(to > from))
    throw new InputError('plan', `has ${plan.time.length} steps`, 'give a plan of at least two, made by planDay()')
  const read =
    readings === undefined
      ? undefined
      : lineOf('read', readings.time, readings.waterContent, 'waterContent', chart.maxStep)
  const difference = read === undefined ? undefined : differenceOf(read, plan)
  const planned = plan.shots.map(({ time, volume }) => ({ time: time as number, millilitres: volume * 1000 }))
  return drawPanels({
    title: chart.title,
    alternative: inWords(chart, planned, difference),
    xTitle: 'local time',
    xRange: [from, to],
    xTicks: timeTicks(from, to, chart.hoursFromUtc),
    panels: [
      contentPanel(plan, request, read),
      ...shotPanel(planned, given, (to - from) / 110),
      ...(difference === undefined ? [] : [differencePanel(difference)]),
    ],
    width,
    height: heightFor(width, difference === undefined ? 430 : 600),
  })
}

function inWords(
  { plan, given }: PlanChart,
  planned: readonly { millilitres: number }[],
  difference: { y: readonly number[] } | undefined,
): string {
  const sum = (shots: readonly { millilitres: number }[]) =>
    Math.round(shots.reduce((total, { millilitres }) => total + millilitres, 0))
  const min = plan.waterContent.reduce((a, b) => Math.min(a, b))
  const max = plan.waterContent.reduce((a, b) => Math.max(a, b))
  const outcome = given === undefined ? '' : ` ${given.length} shots given, ${sum(given)} mL.`
  const misses = difference?.y.filter(Number.isFinite) ?? []
  const worst = misses.reduce((worst, miss) => (Math.abs(miss) > Math.abs(worst) ? miss : worst), 0)
  const missed = misses.length === 0 ? '' : ` Readings differ from the prediction by at most ${asPoints(worst)}.`
  return `${planned.length} shots planned, ${sum(planned)} mL, of which ${asPercent(plan.drainFraction, 0)} should drain; predicted water content between ${min.toFixed(3)} and ${max.toFixed(3)} m³/m³.${outcome}${missed}`
}
