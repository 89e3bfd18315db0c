import { InputError } from '../../quantity/errors.js'
import type { Length } from '../../quantity/generated/kinds.js'
import { requireList, requireRows } from '../../quantity/guard.js'
import { type Container, containerOf } from './container.js'

/**
 * Containers stacked so that water passes from one to the next, as one container of one medium: a cube on a slab.
 *
 * The upper part stands above the lower one, so it drains as if the whole were one tall container. Where two parts touch badly the
 * upper one keeps a perched layer of its own. For parts of different media see `layersAtRest`.
 *
 * @equation `A(z) = A_i(z - z_i), \quad H = \sum_i H_i, \quad V = \sum_i V_i`
 * @param parts - The parts, from the bottom up.
 * @returns The whole.
 * @throws `InputError` when there is no part.
 * @source definition
 * @example
 * const slab = boxContainer({ length: centimetres(100), width: centimetres(15), height: centimetres(7.5) })
 * const cube = boxContainer({ length: centimetres(10), width: centimetres(10), height: centimetres(6.5) })
 * stackedContainer([slab, cube]).height // => 14
 */
export function stackedContainer(parts: readonly Container[]): Container {
  requireRows(parts, 'parts')
  if (parts.length === 0) throw new InputError('parts', 'the stack is empty', 'give at least one container')
  const bases: number[] = []
  const kinks: number[] = []
  let height = 0
  let litres = 0
  for (const part of parts) {
    requireList(part.breakpoints, 'breakpoints')
    bases.push(height)
    if (height > 0) kinks.push(height)
    for (const kink of part.breakpoints) kinks.push(height + kink)
    height += part.height
    litres += part.volume
  }
  const section = (z: number) => {
    let i = parts.length - 1
    while (z < bases[i]!) i--
    const part = parts[i]!
    // Adding and taking away a base may round beyond the part's top.
    return part.area(Math.min(z - bases[i]!, part.height) as Length) * 10000
  }
  return containerOf('stack', height, litres * 1000, section, kinks)
}
