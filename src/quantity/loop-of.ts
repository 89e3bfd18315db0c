import { ROW_LOOPS } from './generated/loops.js'
import type { RowLoop } from './row-loop.js'

/** Conversions of different names mostly have loops of their own, and one conversion always the same: which, no result shows. */
export function loopOf(convert: (reading: number) => number): RowLoop {
  const name = String(convert.name)
  let sum = 0
  for (let i = 0; i < name.length; i++) sum = (7 * sum + name.charCodeAt(i)) >>> 0
  return ROW_LOOPS[sum % ROW_LOOPS.length]!
}
