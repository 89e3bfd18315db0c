import { numberIn } from '../quantity/guard.js'
import { PICTURE_WIDTH } from './domains.js'
/** Width of a ready-made picture, unless another is asked for. Unit: px. */
export const WIDTH = 960
/** A picture narrower than this gives its names more rows. */
const NARROW = 600

/** Height of a picture that has so much at full width, once its width was checked: narrow ones need more, because names stand below each other. */
export function heightFor(width: number, full: number): number {
  return numberIn(width, PICTURE_WIDTH, 'width') < NARROW ? Math.round(full + 70) : full
}

export function isNarrow(width: number): boolean {
  return width < NARROW
}
