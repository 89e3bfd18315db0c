import type { Container } from '../medium/container/container.js'
import type { Length } from '../quantity/length.js'

/** A container cut into layers around nodes, the first at the bottom, the last at the surface. Units: cm, cm², cm³. */
export interface ColumnGrid {
  readonly nodes: number
  /** Distance between two nodes. */
  readonly spacing: number
  /** Height of each node. */
  readonly heights: Float64Array
  /** Volume of the layer around each node. */
  readonly volumes: Float64Array
  /** Area of the section half-way between a node and the next. */
  readonly sections: Float64Array
  readonly bottom: number
  readonly surface: number
  readonly volume: number
}

/** Equal layers, half as thick at bottom and surface, whose volumes are those of the container. */
export function columnGrid(container: Container, nodes: number): ColumnGrid {
  const { height } = container
  const spacing = height / (nodes - 1)
  const area = (z: number) => container.area(Math.min(Math.max(z, 0), height) as Length) * 10000
  // Simpson's rule is exact for every shape whose walls are straight.
  const between = (from: number, to: number) => ((area(from) + 4 * area((from + to) / 2) + area(to)) * (to - from)) / 6
  const heights = new Float64Array(nodes)
  const volumes = new Float64Array(nodes)
  const sections = new Float64Array(nodes - 1)
  for (let i = 0; i < nodes; i++) {
    const z = i === nodes - 1 ? height : i * spacing
    heights[i] = z
    if (i > 0) volumes[i]! += between(z - spacing / 2, z)
    if (i < nodes - 1) {
      volumes[i]! += between(z, z + spacing / 2)
      sections[i] = area(z + spacing / 2)
    }
  }
  // Shapes with bends are met up to the error of the rule; the whole must be the volume that everything else counts with.
  const sum = volumes.reduce((total, part) => total + part, 0)
  const volume = container.volume * 1000
  for (let i = 0; i < nodes; i++) volumes[i]! *= volume / sum
  return { nodes, spacing, heights, volumes, sections, bottom: area(0), surface: area(height), volume }
}
