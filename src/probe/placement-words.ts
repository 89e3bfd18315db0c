import type { WordsOf } from '../quantity/explained.js'
import type { PlacementConflict } from './check-placement.js'

const by = (conflict: PlacementConflict) => `${conflict.by.toFixed(1)} cm`

/** What to move where two things in a container stand too close. */
export const PLACEMENT_WORDS: WordsOf<PlacementConflict> = {
  'outside-medium': [
    ({ probe }) => `push ${probe} all the way into the medium, so that no part of its rods is outside`,
  ],
  'rods-too-long': [
    (found) =>
      `the rods of ${found.probe} are ${by(found)} too long to stand upright here, and raising them would leave them in air: insert them level from the side, or use shorter ones`,
  ],
  'near-wall': [(found) => `move ${found.probe} ${by(found)} towards the middle`],
  'near-bottom': [(found) => `raise ${found.probe} by ${by(found)}`],
  'near-surface': [(found) => `put ${found.probe} ${by(found)} deeper`],
  'medium-too-low': [
    (found) =>
      `the medium is ${by(found)} too shallow to keep this distance above and below ${found.probe}: put it half way down, and bear in mind that it senses the air or the gutter`,
  ],
  'medium-too-narrow': [
    (found) =>
      `even in the middle ${found.probe} would be ${by(found)} too close to a wall: turn it, or use one with shorter rods`,
  ],
  'near-object': [(found) => `move ${found.probe} and ${found.to} further apart, by ${by(found)}`],
  'near-probe': [(found) => `move ${found.probe} and ${found.to} further apart, by ${by(found)}`],
  'temperature-depth': [
    (found) =>
      `put the temperature element of ${found.probe} ${by(found)} ${found.to === 'surface' ? 'deeper' : 'higher'}: near the surface it shows sun and air, near the bottom the gutter`,
  ],
}
