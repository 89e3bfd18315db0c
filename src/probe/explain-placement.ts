import { InputError } from '../quantity/errors.js'
import { requireObject } from '../quantity/guard.js'
import type { PlacementConflict } from './check-placement.js'

const MOVES: Readonly<Record<PlacementConflict['code'], (conflict: PlacementConflict, by: string) => string>> = {
  'outside-medium': ({ probe }) => `put ${probe} wholly into the medium, no part of its rods outside`,
  'rods-too-long': ({ probe }, by) =>
    `rods of ${probe} are ${by} too long to stand upright here, and raised they would be in air: insert them level from the side, or take shorter ones`,
  'near-wall': ({ probe }, by) => `move ${probe} ${by} towards the middle`,
  'near-bottom': ({ probe }, by) => `raise ${probe} by ${by}`,
  'near-surface': ({ probe }, by) => `put ${probe} ${by} deeper`,
  'near-object': ({ probe, to }, by) => `move ${probe} or ${to} apart by ${by}`,
  'near-probe': ({ probe, to }, by) => `move ${probe} or ${to} apart by ${by}`,
  'temperature-depth': ({ probe, to }, by) =>
    `put the temperature element of ${probe} ${by} ${to === 'surface' ? 'deeper' : 'higher'}: near the surface it shows sun and air, near the bottom the gutter`,
}

/**
 * What to move where two things in a container stand too close.
 *
 * @param conflict - One of the conflicts that `checkPlacement` found.
 * @procedure Looks up the sentence of the code and writes names and distances into it.
 * @returns One sentence for people.
 * @throws `InputError` for a code that `checkPlacement` does not give.
 * @source definition
 * @example
 * const near = { code: 'near-wall' as const, probe: 'A', to: 'wall', distance: centimetres(1.2), needed: centimetres(2), by: centimetres(0.8) }
 * explainPlacement(near) // => 'move A 0.8 cm towards the middle'
 */
export function explainPlacement(conflict: PlacementConflict): string {
  requireObject(conflict, 'conflict')
  const { code, by } = conflict
  if (!Object.hasOwn(MOVES, code))
    throw new InputError(
      'conflict',
      `"${code}" is no code of a placement`,
      `give one of ${Object.keys(MOVES).join(', ')}`,
    )
  return MOVES[code](conflict, `${by.toFixed(1)} cm`)
}
