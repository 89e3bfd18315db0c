import { InputError } from '../../quantity/errors.js'
import type { Area, Length } from '../../quantity/generated/kinds.js'
import { numberIn, requireList, requireObject } from '../../quantity/guard.js'
import { HEIGHT, SECTION_AREA } from '../domains.js'
import { type Container, containerOf } from './container.js'

/** Sections of a container of any shape. */
export interface MeasuredSections {
  /** Heights above the bottom, rising from zero. Unit: cm. Range: each in [0, ∞). */
  readonly heights: readonly Length[]
  /** Area of the section at each height. Unit: m². Range: each in [0, ∞). */
  readonly areas: readonly Area[]
}

/**
 * A container of any shape from a table of heights and section areas, which run straight between the heights.
 *
 * @equation `A(z) = A_i + (A_{i+1} - A_i) \frac{z - z_i}{z_{i+1} - z_i}, \quad V = \sum_i \frac{A_i + A_{i+1}}{2} (z_{i+1} - z_i)`
 * @returns The container.
 * @throws `DomainError` outside the ranges; `InputError` when lengths differ, heights do not rise from zero or all areas are zero.
 * @source definition
 * @example
 * measuredContainer({
 *   heights: [0, 10, 25].map(centimetres),
 *   areas: [300, 420, 450].map(squareCentimetres),
 * }).volume // => 10.125
 */
export function measuredContainer(input: MeasuredSections): Container {
  requireObject(input, 'input')
  requireList(input.areas, 'areas')
  requireList(input.heights, 'heights')
  const { heights, areas } = input
  if (heights.length < 2 || heights.length !== areas.length)
    throw new InputError(
      'heights, areas',
      `there are ${heights.length} heights and ${areas.length} areas`,
      'give as many areas as heights, two at least',
    )
  let cubic = 0
  for (let i = 0; i < heights.length; i++) {
    const height = numberIn(heights[i]!, HEIGHT, 'heights')
    const area = numberIn(areas[i]!, SECTION_AREA, 'areas')
    const before = i > 0 ? heights[i - 1]! : 0
    if (i === 0 ? height !== 0 : height <= before)
      throw new InputError(
        'heights',
        `height ${i} is ${height} cm after ${before} cm`,
        'begin with 0 and let heights rise',
      )
    if (i > 0) cubic += ((areas[i - 1]! + area) / 2) * (height - before) * 10000
  }
  if (cubic === 0) throw new InputError('areas', 'all of them are zero', 'give the areas of the sections')
  // Copies, so that the container does not change with the caller's lists.
  const levels: readonly number[] = [...heights]
  const sections: readonly number[] = areas.map((area) => area * 10000)
  const section = (z: number) => {
    let i = 1
    while (z > levels[i]!) i++
    const [low, high] = [levels[i - 1]!, levels[i]!]
    const [from, to] = [sections[i - 1]!, sections[i]!]
    return from + ((to - from) * (z - low)) / (high - low)
  }
  return containerOf('measured', levels[levels.length - 1]!, cubic, section, levels.slice(1, -1))
}
