/** Width of a ready-made picture, unless another is asked for. Unit: px. */
export const WIDTH = 960
/** A picture narrower than this gives its names more rows. */
const NARROW = 600

/** Height of a picture that has so much at full width: narrow ones need more, because names stand below each other. Each picture checks its width later. */
export function heightFor(width: number, full: number): number {
  return typeof width === 'number' && isNarrow(width) ? Math.round(full + 70) : full
}

export function isNarrow(width: number): boolean {
  return width < NARROW
}
