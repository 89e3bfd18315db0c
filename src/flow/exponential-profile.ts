/**
 * Flow in a column of exponential medium over a level of known suction, everything without dimension as in Srivastava and Yeh (1991):
 * heights times alpha, time times alpha K_s over the range of water contents, fluxes and conductivities over K_s.
 */
export interface ExponentialColumn {
  /** Height of the column. */
  readonly height: number
  /** Relative conductivity at the bottom: 1 at a water table. */
  readonly bottom: number
  /** Downward flux through the surface before time zero, and since then. */
  readonly before: number
  readonly since: number
}

/** A number with a bound of its error. */
export interface Bounded {
  readonly value: number
  readonly error: number
}

/** Relative conductivity at a height under a steady downward flux; written so that nothing cancels when the flux is downward. */
export function steadyConductivity(flux: number, bottom: number, height: number): number {
  return bottom * Math.exp(-height) - flux * Math.expm1(-height)
}

/** Bound of the rounding in a steady conductivity: where water evaporates, two terms cancel. */
export function steadyRounding(flux: number, bottom: number, height: number): number {
  return 1e-14 * steadyConductivity(Math.abs(flux), bottom, height)
}
