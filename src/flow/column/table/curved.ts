import type { ColumnGrid } from '../grid/grid.js'
import type { LayerMedium } from './layer-medium.js'
import type { MediumTable } from './medium-table.js'

/** Difference of suction over an element, in its lengths and in shares of the smaller suction, up to which it is a straight line. */
export const LENGTHS = 4
export const SHARES = 0.4
/** Suction, in lengths of the element, beyond which the curves bend too little within it to matter. */
export const DRY = 100

/** Water content by which the mean over half an element may lie outside the contents at its ends. */
const OVERSHOOT = 3e-4

/** Halvings by which the longest element that is short enough is found. */
const HALVINGS = 8

/** Which elements are short enough for parabolas on all curves of their layer. */
export function curvedElements({ lengths, layers, boundaries }: ColumnGrid, media: readonly LayerMedium[]): Uint8Array {
  const limits = media.map(({ table, wetting }, layer) => {
    const own = lengths.subarray(boundaries[layer]!, boundaries[layer + 1]!)
    const fits = (length: number) => [table, wetting ?? table].every((curve) => isCurved(length, curve))
    const max = own.reduce((longer, length) => Math.max(longer, length), 0)
    return maxThatFits(
      fits,
      own.reduce((min, length) => Math.min(min, length), max),
      max,
    )
  })
  return Uint8Array.from(lengths, (length, e) => (length <= limits[layers[e]!]! ? 1 : 0))
}

/** The longest length between two others that fits, to within a share of their difference; zero where none does. */
function maxThatFits(fits: (length: number) => boolean, min: number, max: number): number {
  if (fits(max)) return max
  if (!fits(min)) return 0
  let [low, high] = [min, max]
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (low + high) / 2
    if (fits(middle)) low = middle
    else high = middle
  }
  return low
}

/** Whether elements of a length are short enough for parabolas: looks at stretches that are trusted, on a ladder from wet to dry. */
function isCurved(length: number, table: MediumTable): boolean {
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
