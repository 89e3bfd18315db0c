import type { Container } from '../medium/container/container.js'
import type { RetentionModel } from '../medium/curves/retention-model.js'
import type { RetentionPoint } from '../medium/fit/retention-points.js'
import { InputError } from '../quantity/errors.js'
import type { Porosity, SuctionHead } from '../quantity/generated/kinds.js'
import { numberIn, requireList, requireObject, requireRows } from '../quantity/guard.js'
import { PICTURE_WIDTH } from './domains.js'
import { containerInWords, drawContainer } from './drained-container.js'
import { framed } from './frame.js'
import type { PanelSeries, PanelSpan } from './panel-chart.js'
import { isNarrow, WIDTH } from './size.js'
import { stackPanels } from './stack-panels.js'
import { element } from './svg.js'
import type { LegendName, PictureTitle, PictureWidth } from './terms.js'

/** One medium: its curve, and the points it was fitted to. */
export interface RetentionCurve extends LegendName {
  /** How the medium holds water. */
  readonly medium: RetentionModel
  /** Measured points; those without suction are drawn at the left edge. */
  readonly points?: readonly RetentionPoint[]
}

/** Retention curves, and a container in which the first medium has drained. */
export interface RetentionChart extends PictureTitle, PictureWidth {
  /** The media; the first is the one in the container. */
  readonly curves: readonly RetentionCurve[]
  /** The container that has drained, drawn beside the curves with its water and its air. */
  readonly container?: Container
  /** Suction at the bottom of the container; left out, none: it has just drained. Unit: cm. Range: [0, ∞). */
  readonly bottomSuction?: SuctionHead
  /** Total porosity of the first medium; left out, its saturated water content. Unit: 1. Range: (0, 1]. */
  readonly porosity?: Porosity
  /** Ends of the axis of suction; left out, from 1 cm to 16,000 cm. Unit: cm. */
  readonly suctions?: readonly [low: SuctionHead, high: SuctionHead]
}

const [HEIGHT, BESIDE, BELOW] = [440, 340, 380]
const STEPS = 160

/**
 * A picture of retention curves, as SVG text: water content against suction on a logarithmic axis, with the points they were fitted to.
 * With a container, the suctions that occur in it are shaded, and beside the curves stand its water, air and solids at each height when
 * it has drained.
 *
 * @procedure Takes the curves at 161 suctions evenly on the logarithmic axis, and the container at 41 heights.
 * @param chart - What to draw.
 * @returns An SVG document as text, with a title and a description that tells the numbers.
 * @throws `InputError` without a curve or for ends of the axis that are no range above zero; `DomainError` as `containerCapacity`.
 * @source definition
 * @example
 * const medium = vanGenuchten1980({
 *   residual: waterContent(0.12), saturated: waterContent(0.93), alpha: perCentimetre(0.1), n: 1.6,
 * })
 * const container = cylinderContainer({ diameter: centimetres(20), height: centimetres(18) })
 * const picture = chartRetention({ title: 'Coir, invented', curves: [{ name: 'coir', medium }], container })
 * picture.includes('container capacity 0.772 m³/m³') // => true
 */
export function chartRetention(chart: RetentionChart): string {
  requireObject(chart, 'chart')
  requireRows(chart.curves, 'curves')
  for (const { medium } of chart.curves) requireList(medium?.breakpoints, 'medium.breakpoints')
  if (chart.suctions !== undefined) requireList(chart.suctions, 'suctions')
  const [first] = chart.curves
  if (first === undefined) throw new InputError('curves', 'there is none', 'give at least one medium')
  const ends = endsOf(chart)
  const { container } = chart
  const alternative = [
    ...chart.curves.map((curve) => curveInWords(curve)),
    ...(container === undefined ? [] : [containerInWords({ ...restOf(chart), container, medium: first.medium })]),
  ].join(' ')
  const width = numberIn(chart.width ?? WIDTH, PICTURE_WIDTH, 'width')
  // In a narrow picture the container stands below the curves.
  const narrow = isNarrow(width)
  const wide = container === undefined || narrow ? width : width - BESIDE
  const inPicture = (top: number) => drawCurves(chart, first.medium, ends, wide, top)
  const height = container !== undefined && narrow ? HEIGHT + BELOW : HEIGHT
  return framed({ title: chart.title, alternative, width, height }, (top) => {
    if (container === undefined) return inPicture(top)
    const place = narrow ? `translate(0 ${HEIGHT - top + 10})` : `translate(${wide} 0)`
    const size = narrow ? { width, height: BELOW + top - 10 } : { width: BESIDE, height: HEIGHT }
    return (
      inPicture(top) +
      element(
        'g',
        { transform: place },
        drawContainer({ ...restOf(chart), container, medium: first.medium }, top, size),
      )
    )
  })
}

function endsOf(chart: RetentionChart): readonly [low: number, high: number] {
  const [low, high] = chart.suctions ?? ([1, 16000] as const)
  if (!(low > 0 && high > low && high / low < 1e30))
    throw new InputError('suctions', `run from ${low} to ${high} cm`, 'give the lower end first, both above zero')
  return [low, high]
}

function drawCurves(
  chart: RetentionChart,
  { saturated }: RetentionModel,
  [low, high]: readonly [low: number, high: number],
  width: number,
  top: number,
): string {
  const yTitle = 'water content, m³/m³'
  const series = chart.curves.flatMap((curve, i) => seriesOf(curve, i, low, high))
  return stackPanels(
    {
      title: '',
      alternative: '',
      xTitle: 'suction, cm of water',
      xRange: [low, high],
      xScale: 'logarithmic',
      panels: [{ yTitle, yRange: [0, saturated], series }],
      spans: spansOf(chart, low, high),
      width,
      height: HEIGHT,
    },
    top,
  )
}

function spansOf(
  { container, bottomSuction = 0 as SuctionHead }: RetentionChart,
  low: number,
  high: number,
): PanelSpan[] {
  if (container === undefined) return []
  const within = (suction: number) => Math.min(Math.max(low, suction), high)
  const [from, to] = [within(bottomSuction), within(bottomSuction + container.height)]
  return [{ name: 'in the container', from, to }]
}

function seriesOf({ name, medium, points }: RetentionCurve, look: number, low: number, high: number): PanelSeries[] {
  const x = Array.from({ length: STEPS + 1 }, (_, i) => low * (high / low) ** (i / STEPS))
  const y = x.map((suction) => medium.waterContent(suction as SuctionHead))
  const curve: PanelSeries = { name, x, y, draw: 'line', look }
  if (points === undefined || points.length === 0) return [curve]
  const measured: PanelSeries = {
    name: `${name}, measured`,
    x: points.map(({ suction }) => Math.max(low, suction)),
    y: points.map((point) => point.waterContent),
    draw: 'points',
    look,
  }
  return [curve, measured]
}

function restOf({ bottomSuction, porosity }: RetentionChart) {
  return { ...(bottomSuction === undefined ? {} : { bottomSuction }), ...(porosity === undefined ? {} : { porosity }) }
}

function curveInWords({ name, medium, points }: RetentionCurve): string {
  const at = (suction: number) => medium.waterContent(suction as SuctionHead).toFixed(3)
  const measured = points === undefined || points.length === 0 ? '' : `, with ${points.length} measured points`
  return `${name}: ${medium.saturated.toFixed(3)} m³/m³ saturated, ${at(10)} at 10 cm of suction, ${at(100)} at 100 cm, ${at(15000)} at 15,000 cm${measured}.`
}
