import type { MediumTable } from './medium-table.js'

/** Difference of suction over an element, in its lengths and in shares of the smaller suction, up to which it is a straight line. */
export const LENGTHS = 4
export const SHARES = 0.4
/** Suction, in lengths of the element, beyond which the curves bend too little within it to matter. */
export const DRY = 100

/** Water content by which the mean over half an element may lie outside the contents at its ends. */
const OVERSHOOT = 2e-4

/** Whether elements of a length are short enough for parabolas: looks at stretches that are trusted, on a ladder from wet to dry. */
export function isCurved(length: number, table: MediumTable): boolean {
  const waterContent = new Float64Array(3)
  const capacity = new Float64Array(3)
  for (const span of [length, 2 * length, LENGTHS * length])
    for (let from = -span; from < DRY * length; from += Math.max(span / 8, 0.2 * from)) {
      for (let k = 0; k < 3; k++) table.readWaterContent(from + (k * span) / 2, waterContent, capacity, k)
      const [wet, middle, dry] = [waterContent[0]!, waterContent[1]!, waterContent[2]!]
      if (Math.max(8 * middle - 7 * wet - dry, 7 * dry + wet - 8 * middle) > 12 * OVERSHOOT) return false
    }
  return true
}
