import { logNormalTail, scaledErfc } from '../numerics/normal-tail.js'
import { type Bounded, type ExponentialColumn, steadyConductivity, steadyRounding } from './exponential-profile.js'

/**
 * Relative conductivity soon after the flux changed: the same problem as the series, solved by images. With q = √(s + ¼), its Laplace
 * transform is a sum of exponentials of -q times the way from the surface, directly, by the bottom, and after further echoes:
 * the first two are written out here and the others are bounded.
 */
export function conductivityByImages(column: ExponentialColumn, height: number, time: number): Bounded {
  const { height: top, bottom, before, since } = column
  const direct = fromSurface(top - height, time)
  const echo = fromSurface(top + height, time)
  const change = since - before
  const fall = Math.exp(-height)
  // Of no change nothing is left out, even where echoes have no bound.
  const off = change === 0 ? 0 : Math.abs(change) * (echoes(top, height, time) + direct.error + fall * echo.error)
  return {
    value: steadyConductivity(before, bottom, height) + change * (direct.value - fall * echo.value),
    error: off + steadyRounding(before, bottom, height),
  }
}

/** What has arrived of a unit change of flux at a distance below the surface of a column without bottom. */
export function fromSurface(distance: number, time: number): Bounded {
  const root = Math.sqrt(time)
  const ahead = (distance - time) / (2 * root)
  const behind = (distance + time) / (2 * root)
  const front = Math.exp(-ahead * ahead)
  const tail = Math.exp(logNormalTail(Math.SQRT2 * ahead))
  const spread = (front * root) / Math.sqrt(Math.PI)
  const back = front * ((1 + distance + time) / 2) * scaledErfc(behind)
  // Rounding of the exponents grows with them, and the parts cancel.
  return { value: tail + spread - back, error: 1e-15 * (4 + 4 * ahead * ahead) * (tail + spread + back) }
}

/**
 * Bound of all further echoes. Each has gone two heights more than the one before and is at most doubled by its reflection, as
 * (q - ½)/(q + ½) stands for a delta less a positive kernel of area one; none is more than 3/2 of exp(-d²/4t - t/4), or of
 * exp(-d/2) where d is below t.
 */
function echoes(top: number, height: number, time: number): number {
  const way = 3 * top - height
  const fading = 2 * top > time ? Math.max(top, (3 * top * top) / time) : top
  if (fading < 2 * Math.LN2) return Infinity
  const fall = way > time ? (way * way) / (4 * time) + time / 4 : way / 2
  return 12 * Math.exp((top - height) / 2 - fall)
}
