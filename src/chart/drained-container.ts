import type { Container } from '../medium/container/container.js'
import { airSpaceAtContainerCapacity, containerCapacity } from '../medium/container/container-capacity.js'
import { waterProfile } from '../medium/container/water-profile.js'
import type { RetentionModel } from '../medium/curves/retention-model.js'
import type { Porosity, SuctionHead } from '../quantity/generated/kinds.js'
import type { PanelSeries } from './panel-chart.js'
import { stackPanels } from './stack-panels.js'

/** A container whose water has come to rest. */
export interface DrainedContainer {
  readonly container: Container
  readonly medium: RetentionModel
  readonly bottomSuction?: SuctionHead
  readonly porosity?: Porosity
}

/** Water, air and solids at each height, below a height that the title of the picture takes. */
export function drawContainer(
  drained: DrainedContainer,
  top: number,
  size: { readonly width: number; readonly height: number },
): string {
  const yRange = [0, drained.container.height] as const
  return stackPanels(
    {
      title: '',
      alternative: '',
      xTitle: 'share of the volume',
      xRange: [0, 1],
      panels: [{ yTitle: 'height above the bottom, cm', yRange, series: regionsOf(drained) }],
      ...size,
    },
    top,
  )
}

function regionsOf(drained: DrainedContainer): PanelSeries[] {
  const { height, waterContent } = waterProfile({ ...drained, points: 41 })
  const pores = drained.porosity ?? drained.medium.saturated
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
  return [
    region('water', 0, every(0), waterContent),
    region('air', 4, waterContent, every(pores)),
    ...(pores < 0.97 ? [region('solids', 5, every(pores), every(1))] : []),
    { name: '', x: waterContent, y: height, draw: 'line', look: 0 },
  ]
}

/** What its water and air come to. */
export function containerInWords(drained: DrainedContainer): string {
  const { container, medium, bottomSuction, porosity } = drained
  const { waterContent } = waterProfile({ ...drained, points: 2 })
  const capacity = containerCapacity(drained)
  const air = airSpaceAtContainerCapacity(drained) + (porosity ?? medium.saturated) - medium.saturated
  const name = bottomSuction === undefined || bottomSuction === 0 ? 'container capacity' : 'mean water content'
  return `In a container ${Number(container.height.toPrecision(4))} cm high: ${name} ${capacity.toFixed(3)} m³/m³, air ${air.toFixed(3)}; ${waterContent[0]?.toFixed(3)} m³/m³ at the bottom, ${waterContent[1]?.toFixed(3)} at the surface.`
}
