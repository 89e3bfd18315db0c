import type { VapourPressureSlope } from '../../quantity/generated/kinds.js'
/** The standardized equation of ASCE-EWRI (2005) on plain numbers, shared by one day, one hour and long series. */

/** Stefan-Boltzmann constant, MJ K⁻⁴ m⁻² d⁻¹ and MJ K⁻⁴ m⁻² h⁻¹. */
export const SIGMA_DAY = 4.901e-9
export const SIGMA_HOUR = 2.042e-10

/** Numerator and denominator constants, and the share of net radiation that heats the soil. */
export const SHORT_HOUR = { numerator: 37, day: 0.24, night: 0.96, soilDay: 0.1, soilNight: 0.5 } as const
export const TALL_HOUR = { numerator: 66, day: 0.25, night: 1.7, soilDay: 0.04, soilNight: 0.2 } as const
export const SHORT_DAY = { numerator: 900, denominator: 0.34 } as const
export const TALL_DAY = { numerator: 1600, denominator: 0.38 } as const

/** Cloudiness function of measured over clear-sky radiation, which is held between 0.3 and 1 (Eq. 18 and 45). */
export function cloudinessAsce(ratio: number): number {
  return 1.35 * Math.min(1, Math.max(0.3, ratio)) - 0.35
}

/** Slope of the saturation curve in kPa/K at a temperature in °C (Eq. 5 and 36). */
export function slopeAsce(t: number): VapourPressureSlope {
  return ((2503 * Math.exp((17.27 * t) / (t + 237.3))) / ((t + 237.3) * (t + 237.3))) as VapourPressureSlope
}
