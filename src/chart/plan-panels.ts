import type { DayPlan } from '../irrigation/plan/day-plan.js'
import type { DayPlanRequest } from '../irrigation/plan/plan-request.js'
import { betweenLimits } from './between-limits.js'
import type { Panel, PanelSeries } from './panel-chart.js'

/** A shot as a bar. */
export interface ShotBar {
  readonly time: number
  readonly millilitres: number
}

/** The predicted water content with the two limits of the request and what the probe read. */
export function contentPanel(
  plan: DayPlan,
  request: Pick<DayPlanRequest, 'refillPoint' | 'fullPoint'> | undefined,
  read: PanelSeries | undefined,
): Panel {
  const predicted: PanelSeries = { name: 'predicted', x: plan.time, y: plan.waterContent, draw: 'line', look: 1 }
  return {
    yTitle: 'water content, m³/m³',
    series: read === undefined ? [predicted] : [predicted, { ...read, look: 0 }],
    ...betweenLimits(request),
    weight: 3,
  }
}

/** Planned and given bars stand beside each other, so that one cannot hide the other. */
export function shotPanel(
  planned: readonly ShotBar[],
  given: readonly ShotBar[] | undefined,
  barWidth: number,
): Panel[] {
  const bars = (name: string, look: number, shots: readonly ShotBar[], shift: number): PanelSeries => ({
    name,
    look,
    x: shots.map(({ time }) => time + shift),
    y: shots.map(({ millilitres }) => millilitres),
    draw: 'bars',
    barWidth,
  })
  if (planned.length + (given ?? []).length === 0) return []
  const series =
    given === undefined
      ? [bars('planned', 1, planned, 0)]
      : [bars('planned', 1, planned, -barWidth / 2), bars('given', 0, given, barWidth / 2)]
  return [{ yTitle: 'shot, mL', series, weight: 1.3 }]
}

/** What the probe read less what was predicted. */
export function differencePanel(difference: { x: number[]; y: number[] }): Panel {
  return {
    yTitle: 'read less predicted, m³/m³',
    series: [{ name: 'difference', ...difference, draw: 'line', look: 0 }],
    rules: [{ name: '', y: 0 }],
    yRange: [-0.01, 0.01],
    weight: 1.6,
  }
}

/** Readings less the prediction between whose steps they lie. */
export function differenceOf(read: PanelSeries, { time, waterContent }: DayPlan): { x: number[]; y: number[] } {
  const x = Array.from(read.x)
  let step = 0
  const y = x.map((now, i) => {
    while (step < time.length - 2 && time[step + 1]! < now) step += 1
    const [a, b] = [time[step]!, time[step + 1]!]
    if (!(now >= a && now <= b)) return Number.NaN
    const [low, high] = [waterContent[step]!, waterContent[step + 1]!]
    return read.y[i]! - (low + ((high - low) * (now - a)) / (b - a))
  })
  return { x, y }
}
