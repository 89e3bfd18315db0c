import { numberIn, optionOr } from '../quantity/guard.js'
import { PICTURE_WIDTH } from './domains.js'

/** Width of a ready-made picture, unless another is asked for. Unit: px. */
export const WIDTH = 960
/** A picture narrower than this gives its names more rows. */
const NARROW = 600

/** The width of a picture that works with it before panels check it. Unit: px. */
export function checkedWidth(width: number | undefined): number {
  return numberIn(optionOr(width, WIDTH), PICTURE_WIDTH, 'width')
}

/** Height of a picture that has so much at full width: narrow ones need more, because names stand below each other. */
export function heightFor(width: number, full: number): number {
  return isNarrow(width) ? Math.round(full + 70) : full
}

/** What is no number is not narrow here: panels refuse it by name. */
export function isNarrow(width: number): boolean {
  return typeof width === 'number' && width < NARROW
}
