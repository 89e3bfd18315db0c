import { InputError } from '../quantity/errors.js'
import type { WaterContent } from '../quantity/generated/kinds.js'
import { requireObject } from '../quantity/guard.js'
import { notAbove } from '../quantity/not-above.js'
import type { RehearsalOutcome } from '../rehearsal/outcome/rehearsal-outcome.js'
import { rates, thinned } from './course.js'
import type { Panel, PanelMark, PanelSpan } from './panel-chart.js'
import { drawPanels } from './panels.js'
import { checkedWidth, heightFor, isNarrow } from './size.js'
import type { LocalClock, PictureWidth } from './terms.js'
import { timeTicks } from './time-axis.js'

/** A rehearsal to be drawn. */
export interface RehearsalChart extends LocalClock, PictureWidth {
  /** Title of the picture; say in it that the zone is invented. */
  readonly title: string
  /** What came of it, made by `rehearse` with its course kept. */
  readonly outcome: RehearsalOutcome
  /** Water content at which to water again. Unit: m³/m³. Range: any. */
  readonly lower?: WaterContent
  /** Water content that a shot should not exceed. Unit: m³/m³. Range: any. */
  readonly upper?: WaterContent
  /** Water content below which plants suffer. Unit: m³/m³. Range: any. */
  readonly stressBelow?: WaterContent
}

/** So many alarms are marked by name, fewer in a narrow picture; all of them are counted in the description. */
const NAMED = 5
const NAMED_NARROW = 2
/** Least width of a bar with its gap. Unit: px. */
const BAR = 5

/**
 * A picture of a rehearsal, as SVG text: the true water content with what the probes said and the limits above, water given and drained by
 * hours below; faults are shaded, alarms are marked where they are first raised.
 *
 * @procedure Draws the course with at most two points a pixel, the extremes among them; readings outside 0 to 1 m³/m³ are left out
 * of the picture and counted in its description.
 * @param chart - What to draw.
 * @returns An SVG document as text, with a title and a description that tells the numbers.
 * @throws `DomainError` outside the ranges, `InputError` when the course was not kept.
 * @source definition
 * @example
 * const scenario = rehearsalScenario('coir-dust')
 * const outcome = rehearse({ zone: scenario.zone, limits: scenario.limits, controller: carefulPerson(scenario), days: 2, seed: 7 })
 * const picture = chartRehearsal({ title: 'Two days of a careful person (invented)', outcome, hoursFromUtc: 0 })
 * picture.includes('no fault') // => true
 */
export function chartRehearsal(chart: RehearsalChart): string {
  requireObject(chart, 'chart')
  const { outcome, lower, upper, stressBelow } = chart
  requireObject(outcome, 'outcome')
  const { course } = outcome
  const width = checkedWidth(chart.width)
  if (course === undefined || course.time.length < 2)
    throw new InputError('outcome', 'has no course', 'rehearse without `keepCourse: false`')
  notAbove('lower', lower ?? 0, 'upper', upper ?? 1)
  const from = course.time[0]!
  const to = course.time.at(-1)! + course.step
  const buckets = Math.max(50, Math.round(width - 100))
  // Bars of whole hours that are wide enough to be told apart.
  const hours = Math.ceil(((to - from) / 3600) * (BAR / (width - 108)))
  const bars = (counted: Float64Array) => rates(course.time, counted, course.step, hours)
  const panels: Panel[] = [
    {
      yTitle: 'water content, m³/m³',
      series: [
        ...course.readings.map((value, i) => ({
          ...thinned(course.time, value, buckets),
          name: `probe ${i + 1}`,
          draw: 'line' as const,
          look: i + 1,
        })),
        { ...thinned(course.time, course.waterContent, buckets), name: 'true mean', draw: 'line', look: 0 },
      ],
      rules: [
        ...(upper === undefined ? [] : [{ name: 'upper limit', y: upper }]),
        ...(lower === undefined ? [] : [{ name: 'lower limit', y: lower }]),
        ...(stressBelow === undefined ? [] : [{ name: 'stress', y: stressBelow }]),
      ],
      ...(lower !== undefined && upper !== undefined ? { band: [lower, upper] as const } : {}),
      weight: 3,
    },
    ...barPanel('given, mL/h', 'given', bars(course.given), 0, hours),
    ...barPanel('drain, mL/h', 'drain', bars(course.drained), 1, hours),
  ]
  return drawPanels({
    title: chart.title,
    alternative: inWords(outcome),
    xTitle: 'local time',
    xRange: [from, to],
    xTicks: timeTicks(from, to, chart.hoursFromUtc),
    spans: spansOf(outcome, from, to),
    marks: marksOf(outcome, from, isNarrow(width) ? NAMED_NARROW : NAMED),
    panels,
    width,
    height: heightFor(width, 620),
  })
}

function barPanel(
  yTitle: string,
  name: string,
  bars: { x: number[]; y: number[] },
  look: number,
  hours: number,
): Panel[] {
  // A week without drain has no panel for it.
  if (bars.x.length === 0) return []
  return [{ yTitle, series: [{ name, ...bars, draw: 'bars', look, barWidth: 3000 * hours }] }]
}

function spansOf({ faults }: RehearsalOutcome, from: number, to: number): PanelSpan[] {
  return faults.map((fault) => ({
    name: fault.fault.replace(/-/g, ' '),
    from: from + fault.from,
    to: fault.until === undefined ? to : Math.min(to, from + fault.until),
  }))
}

/** Where each alarm is raised first. */
function marksOf({ alarms }: RehearsalOutcome, from: number, max: number): PanelMark[] {
  const first = new Map<string, number>()
  for (const { alarm, time } of alarms) if (!first.has(alarm)) first.set(alarm, time)
  return [...first].slice(0, max).map(([name, time]) => ({ name: name.replace(/-/g, ' '), x: from + time }))
}

function inWords(outcome: RehearsalOutcome): string {
  const { faults, openings, alarms, course } = outcome
  const wrong = faults.length === 0 ? 'no fault' : faults.map(({ fault }) => fault).join(' and ')
  const outside = course!.readings.reduce(
    (sum, value) => sum + value.filter((one) => !(one >= 0 && one <= 1)).length,
    0,
  )
  const unseen = outside === 0 ? '' : ` ${outside} readings lie outside the picture.`
  return (
    `Rehearsal with ${wrong}, seed ${outcome.seed}: true water content between ${outcome.driest.toFixed(3)} and ` +
    `${outcome.wettest.toFixed(3)} m³/m³, ${openings.length} openings, ${outcome.given.toFixed(2)} L a container, ` +
    `${outcome.worstDay.toFixed(2)} L in the worst 24 h, ${(outcome.stressTime / 3600).toFixed(1)} h of stress, ` +
    `${alarms.length} alarms.${unseen}`
  )
}
