import { sumsAboutMeans } from '../../numerics/sums-about-means.js'
import { InputError } from '../../quantity/errors.js'
import type { BulkEC, Permittivity, PoreWaterEC } from '../../quantity/generated/kinds.js'
import { numberIn, requireList, requireObject } from '../../quantity/guard.js'
import { APPARENT, CONDUCTIVITY, WATER_PERMITTIVITY } from '../domains.js'
import type { PoreWaterPermittivity } from '../terms.js'

/** Readings in one medium with one pore water at several water contents. */
export interface OffsetReadings extends PoreWaterPermittivity {
  /** Apparent permittivities. Unit: 1. Range: each in [1, 90]. */
  readonly apparent: readonly Permittivity[]
  /** Bulk conductivities of the same readings. Unit: dS/m. Range: each in [0, ∞). */
  readonly bulk: readonly BulkEC[]
}

/** The fitted offset and what speaks for it. */
export interface HilhorstOffset {
  /** Permittivity at which the bulk conductivity would be zero. Unit: 1. */
  readonly offset: number
  /** Conductivity of the pore water that the slope stands for. Unit: dS/m. */
  readonly poreWater: PoreWaterEC
  /** Standard error of the offset; 0 for two readings, which it cannot judge. Unit: 1. */
  readonly standardError: number
  /** Share of the spread of the permittivities that the line explains. Unit: 1. */
  readonly rSquared: number
  /** Number of readings. Unit: 1. */
  readonly readings: number
}

/**
 * Offset of the model of Hilhorst (2000) in an own medium.
 *
 * Wet the medium with one solution, let it drain and dry, and read at several water contents above 0.10 m³/m³ before the solution
 * concentrates. Readings close together fix nothing: look at the standard error.
 *
 * @equation `\varepsilon_b = \varepsilon_0 + \frac{\varepsilon_p}{\sigma_p}\,\sigma_b \quad\text{by least squares}`
 * @param readings - Permittivities and bulk conductivities of at least two readings, and the permittivity of the water.
 * @returns Offset, pore-water conductivity, standard error, r² and number of readings.
 * @throws `DomainError` outside the ranges; `InputError` for lists of unequal length, fewer than two readings, readings without spread, or a permittivity that falls as the conductivity rises.
 * @source hilhorst-2000 (procedure); least squares
 * @example
 * fitOffsetHilhorst2000({
 *   apparent: [15, 20, 25, 30].map(permittivity),
 *   bulk: [0.33, 0.49, 0.63, 0.79].map((ec) => decisiemensPerMetre<BulkEC>(ec)),
 *   water: permittivity(80),
 * }) // => { offset: 4.091696, poreWater: 2.433684, readings: 4 }
 */
export function fitOffsetHilhorst2000(readings: OffsetReadings): HilhorstOffset {
  const { x, y, n } = pairsOf(readings)
  const water = numberIn(readings.water, WATER_PERMITTIVITY, 'water')
  const { meanX, meanY, xx, xy, yy } = sumsAboutMeans(x, y)
  if (xx <= 1e-20 * n * meanX * meanX)
    throw new InputError('bulk', 'the readings have no spread', 'read at several water contents')
  const slope = xy / xx
  if (slope <= 0)
    throw new InputError(
      'apparent, bulk',
      'permittivity does not rise with bulk conductivity',
      'the pore water changed between the readings; use one solution and read before it concentrates',
    )
  const left = Math.max(0, yy - slope * xy)
  const standardError = n > 2 ? Math.sqrt((left / (n - 2)) * (1 / n + (meanX * meanX) / xx)) : 0
  return {
    offset: meanY - slope * meanX,
    poreWater: (water / slope) as PoreWaterEC,
    standardError,
    rSquared: 1 - left / yy,
    readings: n,
  }
}

/** The readings as pairs of numbers: what conducts, and what it shows. */
function pairsOf(readings: OffsetReadings): { x: number[]; y: number[]; n: number } {
  requireObject(readings, 'readings')
  requireList(readings.apparent, 'apparent')
  requireList(readings.bulk, 'bulk')
  const n = readings.apparent.length
  if (n !== readings.bulk.length || n < 2)
    throw new InputError(
      'apparent, bulk',
      `${n} permittivities and ${readings.bulk.length} conductivities`,
      'give both for the same readings, at least two',
    )
  const x = readings.bulk.map((value) => numberIn(value, CONDUCTIVITY, 'bulk'))
  const y = readings.apparent.map((value) => numberIn(value, APPARENT, 'apparent'))
  return { x, y, n }
}
