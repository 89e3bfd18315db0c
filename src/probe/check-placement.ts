import type { Length } from '../quantity/generated/kinds.js'
import { numberIn, optionOr, requireObject, requireRows } from '../quantity/guard.js'
import { oneOf } from '../quantity/one-of.js'
import { CLEARANCE } from './domains.js'
import {
  type Body,
  bodyOf,
  gapBetween,
  gapFromAbove,
  type PlaceInMedium,
  type PlacementContainer,
  type Point,
  pointOf,
  type StraightBody,
  type Walls,
  wallsOf,
} from './placement-shapes.js'
import type { ProbeFinding } from './probe-finding.js'

/** A probe in the medium. */
export interface PlacedProbe extends StraightBody {
  readonly name: string
  /** Where its temperature element is, if it has one. */
  readonly temperatureElement?: PlaceInMedium
}

/** Something else in the medium or on it. */
export interface PlacedObject extends StraightBody {
  readonly name: string
  /** A dripper wets all that lies below it, and is therefore looked at from above. */
  readonly kind: 'metal' | 'dripper' | 'drain-hole' | 'other'
}

/** A container with what is in it. */
export interface PlacementInput {
  /** Inner measures of the medium. */
  readonly container: PlacementContainer
  /** Probes, each by the row of its rods from end to end. */
  readonly probes: readonly PlacedProbe[]
  /** Stakes, drippers, drain holes and other objects; none when left out. */
  readonly objects?: readonly PlacedObject[]
  /** Distance that must be kept, 2 cm when left out; ask for more if the sensitive volume is larger. Unit: cm. Range: (0, 50]. */
  readonly clearance?: Length
  /** Stone wool and other pre-formed media get their own caution. */
  readonly medium?: 'loose' | 'pre-formed'
}

/** One distance that is too small. `explainProbeFinding` says what to move. */
export interface PlacementConflict {
  /** Stable short name for programs. */
  readonly code:
    | 'outside-medium'
    | 'rods-too-long'
    | 'near-wall'
    | 'near-bottom'
    | 'near-surface'
    | 'medium-too-low'
    | 'medium-too-narrow'
    | 'near-object'
    | 'near-probe'
    | 'temperature-depth'
  /** How much it matters: always a look. */
  readonly level: 'caution'
  /** Name of the probe. */
  readonly probe: string
  /** What it is too close to. */
  readonly to: string
  /** Distance between the surfaces; negative where they overlap. Unit: cm. Range: any. */
  readonly distance: Length
  /** Distance that is needed. Unit: cm. Range: any. */
  readonly needed: Length
  /** By how much it must be moved, or rods are too long, or the medium too small. Unit: cm. Range: any. */
  readonly by: Length
}

/** What is wrong with a placement, and what to mind while inserting. */
export interface PlacementCheck {
  /** Distances that are too small; empty when the placement is good. */
  readonly conflicts: readonly PlacementConflict[]
  /** What no geometry can see. */
  readonly cautions: readonly ProbeFinding[]
}

/**
 * Whether probes stand far enough from walls, metal, drippers, drain holes and each other, and their temperature elements deep enough.
 *
 * It is common practice to keep 2 cm, because most rods feel about that far (Baker and Lascano found most of the response of two rods
 * within about 1000 mm² around them). A wall or an air gap reads as too dry, metal and a dripper as too wet.
 *
 * @procedure Measures the distance from surface to surface between each probe and the walls, the bottom, all objects and all other probes, and lists those below the clearance with what to move. A temperature element belongs between a quarter and three quarters of the height.
 * @returns The conflicts, and cautions for the insertion.
 * @source common practice, no source; baker-1989, abstract (extent of the response)
 * @example
 * const place = (x: number, depth: number) => ({ x: centimetres(x), y: centimetres(11), depth: centimetres(depth) })
 * const { conflicts } = checkPlacement({
 *   container: { shape: 'tapered-pot', bottomDiameter: centimetres(18), topDiameter: centimetres(22), height: centimetres(20) },
 *   probes: [{ name: 'A', from: place(11, 10), to: place(19.5, 10), radius: centimetres(0.3) }],
 *   objects: [{ name: 'stake', kind: 'metal', from: place(14, 0), to: place(14, 8.5) }],
 * })
 * conflicts.map(({ code, distance }) => [code, distance]) // => [['near-wall', 1.19256], ['near-object', 1.2]]
 */
export function checkPlacement(input: PlacementInput): PlacementCheck {
  requireObject(input, 'input')
  const needed = numberIn(optionOr(input.clearance, 2), CLEARANCE, 'clearance')
  oneOf(optionOr(input.medium, 'loose'), ['loose', 'pre-formed'], 'medium')
  requireRows(input.probes, 'probes')
  requireRows(input.objects ?? [], 'objects')
  const walls = wallsOf(input.container)
  const probes = input.probes.map((probe) => ({ ...probe, body: bodyOf(probe) }))
  const objects = (input.objects ?? []).map((object) => ({ ...object, body: bodyOf(object) }))
  for (const [i, { kind }] of objects.entries()) oneOf(kind, KINDS, `objects[${i}].kind`)
  const conflicts: PlacementConflict[] = []
  const add: Add = (code, probe, to, distance, by = needed - distance, min = needed) =>
    conflicts.push({ code, level: 'caution', probe, to, ...lengths({ distance, needed: min, by }) })
  probes.forEach((probe, i) => {
    const { name, body } = probe
    againstWalls(name, body, walls, needed, add)
    for (const object of objects) {
      const gap = object.kind === 'dripper' ? gapFromAbove(body, object.body) : gapBetween(body, object.body)
      if (gap < needed) add('near-object', name, object.name, gap)
    }
    for (const other of probes.slice(i + 1)) {
      const gap = gapBetween(body, other.body)
      if (gap < needed) add('near-probe', name, other.name, gap)
    }
    if (probe.temperatureElement !== undefined) {
      const [, , depth] = pointOf(probe.temperatureElement, 'temperatureElement')
      const inside = Math.min(depth - walls.height / 4, (3 * walls.height) / 4 - depth)
      const to = depth < walls.height / 2 ? 'surface' : 'bottom'
      if (inside < 0)
        add('temperature-depth', name, to, Math.min(depth, walls.height - depth), -inside, walls.height / 4)
    }
  })
  return { conflicts, cautions: input.medium === 'pre-formed' ? [SLIT, ...CAUTIONS] : CAUTIONS }
}

type Add = (
  code: PlacementConflict['code'],
  probe: string,
  to: string,
  distance: number,
  by?: number,
  needed?: number,
) => void

function lengths<Name extends string>(numbers: Readonly<Record<Name, number>>): Readonly<Record<Name, Length>> {
  return numbers as Readonly<Record<Name, Length>>
}

function againstWalls(name: string, body: Body, walls: Walls, needed: number, add: Add): void {
  const { ends, radius } = body
  const { height, toSide } = walls
  // The distance to a wall of a convex container is smallest at an end of a straight body.
  const side = Math.min(...ends.map(toSide)) - radius
  const bottom = Math.min(...ends.map(([, , depth]) => height - depth)) - radius
  const [[, , begin], [, , finish]] = ends
  const deepest = Math.max(begin, finish)
  // Raised by what is missing below, rods that begin nearer to the surface than that would stand in air.
  const missing = needed - bottom
  if (missing > Math.min(begin, finish) + 1e-9 && missing > 0 && deepest - Math.min(begin, finish) > 0) {
    add('rods-too-long', name, 'bottom', bottom, missing - Math.min(begin, finish))
    return
  }
  if (side < 0 || bottom < 0) {
    add('outside-medium', name, side <= bottom ? 'wall' : 'bottom', Math.min(side, bottom))
    return
  }
  // What no move can mend is told as such, and not by moves that contradict each other.
  const narrow = needed - sideInTheMiddle(body, walls)
  if (side < needed && narrow > 1e-9) add('medium-too-narrow', name, 'wall', side, narrow)
  else if (side < needed) add('near-wall', name, 'wall', side)
  const low = 2 * needed + radius - height
  // Rods pushed in from above start at the surface; only rods that stay near it feel the air.
  if (low > 1e-9 && Math.min(bottom, deepest) < needed)
    add('medium-too-low', name, bottom < deepest ? 'bottom' : 'surface', Math.min(bottom, deepest), low)
  else if (bottom < needed) add('near-bottom', name, 'bottom', bottom)
  else if (deepest < needed) add('near-surface', name, 'surface', deepest)
}

/** The distance to the wall where the body is moved, not turned, until its middle is that of the container. */
function sideInTheMiddle({ ends: [a, b], radius }: Body, { middle: [x, y], toSide }: Walls): number {
  const [east, north] = [x - (a[0] + b[0]) / 2, y - (a[1] + b[1]) / 2]
  const moved = (end: Point) => toSide([end[0] + east, end[1] + north, end[2]])
  return Math.min(moved(a), moved(b)) - radius
}

const KINDS: readonly PlacedObject['kind'][] = ['metal', 'dripper', 'drain-hole', 'other']
const SLIT: ProbeFinding = { code: 'cut-a-slit', level: 'caution' }
const CAUTIONS: readonly ProbeFinding[] = [
  { code: 'air-gap', level: 'caution' },
  { code: 'stone-or-lump', level: 'caution' },
  { code: 'compaction', level: 'caution' },
  { code: 'before-roots', level: 'note' },
  { code: 'same-place', level: 'note' },
  { code: 'mains-off', level: 'caution' },
]
