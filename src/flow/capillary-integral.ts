import type { ConductiveModel } from '../medium/curves/retention-model.js'
import { integrate } from '../numerics/quadrature.js'
import { ConvergenceError } from '../quantity/errors.js'
import type { SuctionHead } from '../quantity/generated/kinds.js'

/** Steps of ten in suction: pieces in which a conductivity changes by a moderate factor. */
const DECADES = 12

/** Height in cm at which a suction is reached while a flux of `share` of the saturated conductivity rises. */
export function riseTo(medium: ConductiveModel, share: number, suction: number): number {
  if (share === 0) return suction
  const ends = [0]
  for (let k = DECADES; k >= 0; k--) ends.push(suction * 10 ** -k)
  for (const kink of medium.breakpoints) ends.push(Math.min(kink, suction))
  return integrate((s) => risePerSuction(medium, share, s), ends.sort(ascending), 1e-12)
}

/** The height that the rising flux comes to at any suction; refused where the conductivity falls too slowly to end it. */
export function riseWithoutEnd(medium: ConductiveModel, share: number): number {
  let from = 1
  let height = riseTo(medium, share, from)
  let before = 0
  for (let decade = 0; decade < 280; decade++) {
    const to = from * 10
    const piece = riseBetween(medium, share, from, to)
    height += piece
    // The pieces fall at least as fast as the last two, once the conductivity is a power of the suction: all that follow are at most nine of them.
    if (piece <= 0.9 * before && piece <= 1e-14 * height) return height
    before = piece
    from = to
  }
  throw new ConvergenceError(
    'capillary rise',
    280,
    before,
    'the conductivity falls so slowly that the rise has no limit',
  )
}

function riseBetween(medium: ConductiveModel, share: number, from: number, to: number): number {
  const inside = medium.breakpoints.map((kink) => Math.min(Math.max(kink, from), to))
  return integrate((s) => risePerSuction(medium, share, s), [from, ...inside, to].sort(ascending), 1e-12, 1e-290)
}

function risePerSuction(medium: ConductiveModel, share: number, suction: number): number {
  return 1 / (1 + share / medium.relativeConductivity(suction as SuctionHead))
}

function ascending(a: number, b: number): number {
  return a - b
}
