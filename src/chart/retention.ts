import type { Container } from '../medium/container/container.js'
import { airSpaceAtContainerCapacity, containerCapacity } from '../medium/container/container-capacity.js'
import { waterProfile } from '../medium/container/water-profile.js'
import type { RetentionModel } from '../medium/curves/retention-model.js'
import type { RetentionPoint } from '../medium/fit/retention-points.js'
import { InputError } from '../quantity/errors.js'
import type { Porosity, SuctionHead } from '../quantity/generated/kinds.js'
import { requireList, requireObject, requireRows } from '../quantity/guard.js'
import { framed } from './frame.js'
import type { PanelSeries } from './panel-chart.js'
import { stackPanels } from './panels.js'
import { checkedWidth, isNarrow } from './size.js'
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
  const [low, high] = chart.suctions ?? ([1, 16000] as const)
  if (!(low > 0 && high > low && high / low < 1e30))
    throw new InputError('suctions', `run from ${low} to ${high} cm`, 'give the lower end first, both above zero')
  const { container } = chart
  const alternative = [
    ...chart.curves.map((curve) => curveInWords(curve)),
    ...(container === undefined ? [] : [containerInWords(chart, first.medium, container)]),
  ].join(' ')
  const width = checkedWidth(chart.width)
  // In a narrow picture the container stands below the curves.
  const narrow = isNarrow(width)
  const wide = container === undefined || narrow ? width : width - BESIDE
  const bottom = chart.bottomSuction ?? 0
  const shown = (suction: number) => Math.min(Math.max(low, suction), high)
  const inPicture = (top: number) =>
    stackPanels(
      {
        title: chart.title,
        alternative,
        xTitle: 'suction, cm of water',
        xRange: [low, high],
        xScale: 'logarithmic',
        panels: [
          {
            yTitle: 'water content, m³/m³',
            yRange: [0, first.medium.saturated],
            series: chart.curves.flatMap((curve, i) => seriesOf(curve, i, low, high)),
          },
        ],
        spans:
          container === undefined
            ? []
            : [
                {
                  name: 'in the container',
                  from: shown(bottom),
                  to: shown(bottom + container.height),
                },
              ],
        width: wide,
        height: HEIGHT,
      },
      top,
    )
  const height = container !== undefined && narrow ? HEIGHT + BELOW : HEIGHT
  return framed({ title: chart.title, alternative, width, height }, (top) => {
    if (container === undefined) return inPicture(top)
    const place = narrow ? `translate(0 ${HEIGHT - top + 10})` : `translate(${wide} 0)`
    const size = narrow ? { width, height: BELOW + top - 10 } : { width: BESIDE, height: HEIGHT }
    return inPicture(top) + element('g', { transform: place }, drawContainer(chart, first.medium, container, top, size))
  })
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

function drawContainer(
  chart: RetentionChart,
  medium: RetentionModel,
  container: Container,
  top: number,
  size: { readonly width: number; readonly height: number },
): string {
  const { height, waterContent } = waterProfile({ ...restOf(chart), container, medium, points: 41 })
  const pores = chart.porosity ?? medium.saturated
  const up = Array.from(height)
  const down = up.slice().reverse()
  const region = (name: string, look: number, from: ArrayLike<number>, to: ArrayLike<number>): PanelSeries => ({
    name,
    look,
    draw: 'region',
    x: [...Array.from(from), ...Array.from(to).reverse()],
    y: [...up, ...down],
  })
  const every = (value: number) => up.map(() => value)
  return stackPanels(
    {
      title: '',
      alternative: '',
      xTitle: 'share of the volume',
      xRange: [0, 1],
      panels: [
        {
          yTitle: 'height above the bottom, cm',
          yRange: [0, container.height],
          series: [
            region('water', 0, every(0), waterContent),
            region('air', 4, waterContent, every(pores)),
            ...(pores < 0.97 ? [region('solids', 5, every(pores), every(1))] : []),
            { name: '', x: waterContent, y: height, draw: 'line' as const, look: 0 },
          ],
        },
      ],
      ...size,
    },
    top,
  )
}

function restOf({ bottomSuction, porosity }: RetentionChart) {
  return { ...(bottomSuction === undefined ? {} : { bottomSuction }), ...(porosity === undefined ? {} : { porosity }) }
}

function curveInWords({ name, medium, points }: RetentionCurve): string {
  const at = (suction: number) => medium.waterContent(suction as SuctionHead).toFixed(3)
  const measured = points === undefined || points.length === 0 ? '' : `, with ${points.length} measured points`
  return `${name}: ${medium.saturated.toFixed(3)} m³/m³ saturated, ${at(10)} at 10 cm of suction, ${at(100)} at 100 cm, ${at(15000)} at 15,000 cm${measured}.`
}

function containerInWords(chart: RetentionChart, medium: RetentionModel, container: Container): string {
  const state = { container, medium, ...restOf(chart) }
  const { waterContent } = waterProfile({ ...state, points: 2 })
  const capacity = containerCapacity(state)
  const air = airSpaceAtContainerCapacity(state) + (chart.porosity ?? medium.saturated) - medium.saturated
  const name =
    chart.bottomSuction === undefined || chart.bottomSuction === 0 ? 'container capacity' : 'mean water content'
  return `In a container ${Number(container.height.toPrecision(4))} cm high: ${name} ${capacity.toFixed(3)} m³/m³, air ${air.toFixed(3)}; ${waterContent[0]?.toFixed(3)} m³/m³ at the bottom, ${waterContent[1]?.toFixed(3)} at the surface.`
}
