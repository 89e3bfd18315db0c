import type { Container } from '../../../medium/container/container.js'
import type { Length } from '../../../quantity/generated/kinds.js'

/**
 * A column of one or more layers cut into cells around nodes, the first at the bottom, the last at the surface. An element is what lies
 * between two nodes; it belongs to one layer, and where two layers meet there is a node. Units: cm, cm², cm³.
 */
export interface ColumnGrid {
  readonly nodes: number
  /** Height of each node. */
  readonly heights: Float64Array
  /** Length of each element. */
  readonly lengths: Float64Array
  /** Area of the section half-way up each element. */
  readonly sections: Float64Array
  /** Volumes of the lower and the upper half of each element, which belong to the cells of the nodes below and above it. */
  readonly lowerHalves: Float64Array
  readonly upperHalves: Float64Array
  /** Volume of the cell around each node. */
  readonly volumes: Float64Array
  /** One over that volume: a division takes as long as several products. Unit: 1/cm³. */
  readonly perVolume: Float64Array
  /** Layer of each element, and the first node of each layer, with the last node of all at the end. */
  readonly layers: Uint16Array
  readonly boundaries: readonly number[]
  readonly bottom: number
  readonly surface: number
  readonly volume: number
}

/** Fewest elements in a layer. */
const FEWEST = 4

/** Distance between the lowest nodes of a layer, as a share of the mean. */
const CLOSEST = 0.8

/** The grid of some containers that stand one on the other, with about so many nodes in all. */
export function columnGrid(containers: readonly Container[], wanted: number): ColumnGrid {
  const total = containers.reduce((sum, { height }) => sum + height, 0)
  const single = containers.length === 1
  const counts = containers.map(({ height }) =>
    single ? wanted - 1 : Math.max(FEWEST, Math.round(((wanted - 1) * height) / total)),
  )
  const elements = counts.reduce((sum, count) => sum + count, 0)
  const grid = emptyGrid(elements, containers)
  let node = 0
  let base = 0
  containers.forEach((container, layer) => {
    const count = counts[layer]!
    for (let k = 0; k < count; k++) fillElement(grid, container, layer, base, node + k, k, count)
    node += count
    base += container.height
    grid.boundaries.push(node)
  })
  grid.heights[elements] = base
  for (let e = 0; e < elements; e++) {
    grid.volumes[e]! += grid.lowerHalves[e]!
    grid.volumes[e + 1]! += grid.upperHalves[e]!
  }
  for (let i = 0; i <= elements; i++) grid.perVolume[i] = 1 / grid.volumes[i]!
  return grid
}

function emptyGrid(elements: number, containers: readonly Container[]) {
  const room = (size: number) => new Float64Array(size)
  const top = containers.at(-1)!
  return {
    nodes: elements + 1,
    heights: room(elements + 1),
    lengths: room(elements),
    sections: room(elements),
    lowerHalves: room(elements),
    upperHalves: room(elements),
    volumes: room(elements + 1),
    perVolume: room(elements + 1),
    layers: new Uint16Array(elements),
    boundaries: [0],
    bottom: containers[0]!.area(0 as Length) * 10000,
    surface: top.area(top.height) * 10000,
    volume: containers.reduce((sum, { volume }) => sum + volume * 1000, 0),
  }
}

function fillElement(
  grid: ReturnType<typeof emptyGrid>,
  container: Container,
  layer: number,
  base: number,
  e: number,
  k: number,
  count: number,
): void {
  const { height } = container
  const from = height * placeOf(k / count)
  const to = height * placeOf((k + 1) / count)
  const middle = (from + to) / 2
  grid.heights[e] = base + from
  grid.lengths[e] = to - from
  grid.sections[e] = container.area(middle as Length) * 10000
  grid.lowerHalves[e] = volumeBetween(container, from, middle)
  grid.upperHalves[e] = volumeBetween(container, middle, to)
  grid.layers[e] = layer
  if (k === count - 1) fitVolume(grid, container, e - k, count)
}

/**
 * Where a share of the nodes of a layer ends, as a share of its height: nodes stand closest at the bottom, where water gathers
 * and curves bend most, and a little wider above the middle.
 */
function placeOf(share: number): number {
  return share * (CLOSEST + (1 - CLOSEST) * share * (2 - share))
}

/** Shapes with bends are met up to the error of the rule; the whole must be the volume that everything else counts with. */
function fitVolume(grid: ReturnType<typeof emptyGrid>, container: Container, first: number, count: number): void {
  let sum = 0
  for (let e = first; e < first + count; e++) sum += grid.lowerHalves[e]! + grid.upperHalves[e]!
  const scale = (container.volume * 1000) / sum
  for (let e = first; e < first + count; e++) {
    grid.lowerHalves[e]! *= scale
    grid.upperHalves[e]! *= scale
  }
}

/** Simpson's rule is exact for every shape whose walls are straight. */
function volumeBetween(container: Container, from: number, to: number): number {
  const area = (z: number) => container.area(Math.min(Math.max(z, 0), container.height) as Length) * 10000
  return ((area(from) + 4 * area((from + to) / 2) + area(to)) * (to - from)) / 6
}
