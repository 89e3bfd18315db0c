import { WATER_CONTENT } from '../../quantity/domains.js'
import type {
  CropCoefficient,
  CropET,
  DepletionFraction,
  Share,
  WaterContent,
  WaterDepth,
} from '../../quantity/generated/kinds.js'
import { booleanOf, numberIn, optionOr, optionsOf, requireRows } from '../../quantity/guard.js'
import { CROP_COEFFICIENT, DEPLETION, REFERENCE_ET, WATER_DEPTH } from '../domains.js'
import type { DayDepletion, ReferenceDay, SoilWater } from '../terms.js'
import {
  adjustedDepletionFraction,
  type RootZone,
  readilyAvailableWater,
  totalAvailableWater,
  waterStressCoefficient,
} from './available-water.js'

/** One day of a root zone. Rain and irrigation come early in the day. */
export interface RootZoneDay extends ReferenceDay {
  /** Basal coefficient, or the single coefficient. Unit: 1. Range: [0, 3]. */
  readonly basalCoefficient: CropCoefficient
  /** Evaporation coefficient, with a basal coefficient; 0 by default. Unit: 1. Range: [0, 3]. */
  readonly evaporationCoefficient?: CropCoefficient
  /** Rain less what runs off; 0 by default. Unit: mm. Range: [0, 10000]. */
  readonly rain?: WaterDepth
  /** Irrigation over the whole ground; 0 by default. Unit: mm. Range: [0, 10000]. */
  readonly irrigation?: WaterDepth
  /** Water that rises from below; 0 by default. Unit: mm. Range: [0, 10000]. */
  readonly capillaryRise?: WaterDepth
  /** Depth of the roots on the day. Unit: cm. Range: (0, 2000]. */
  readonly rootDepth: RootZone['rootDepth']
}

/** The soil, the crop and the days. */
export interface RootZoneBalanceInput extends SoilWater {
  /** Tabled depletion fraction. Unit: 1. Range: [0, 1). */
  readonly depletionFraction: DepletionFraction
  /** Whether the fraction follows the demand of each day; false by default. */
  readonly adjustDepletionFraction?: boolean
  /** Depletion before the first day. Unit: mm. Range: [0, 10000]. */
  readonly startDepletion: WaterDepth
  /** Days in order. */
  readonly days: readonly RootZoneDay[]
}

/** What a day did to the root zone. */
export interface RootZoneDayResult extends DayDepletion {
  /** Total available water. Unit: mm. */
  readonly totalAvailable: WaterDepth
  /** Readily available water. Unit: mm. */
  readonly readilyAvailable: WaterDepth
  /** Water stress coefficient. Unit: 1. */
  readonly stress: Share
  /** Crop coefficient with stress. Unit: 1. */
  readonly cropCoefficient: CropCoefficient
  /** Crop evapotranspiration with stress. Unit: mm/d. */
  readonly cropET: CropET
  /** Water that drained below the roots. Unit: mm. */
  readonly percolation: WaterDepth
}

/**
 * Water balance of a root zone day by day, with stress when it runs dry.
 *
 * Water comes early in the day: what exceeds the depletion of the evening before drains, and stress follows from the depletion that
 * is left. The depletion does not pass the available water.
 *
 * @equation `D_{r,i} = D_{r,i-1} - P - I - CR + ET_{c,adj} + DP, \qquad ET_{c,adj} = (K_s K_{cb} + K_e)\,ET_o`
 * @returns One result for each day.
 * @throws `DomainError` outside the ranges, `InputError` when the wilting point is not below field capacity.
 * @source allen-1998, Eq. 80 to 88, Examples 37 and 38, numbers as listed in Annex 8, Box 8.1
 * @example
 * rootZoneBalance({
 *   fieldCapacity: waterContent(0.32), wiltingPoint: waterContent(0.12), depletionFraction: fraction(0.4),
 *   startDepletion: millimetresOfDepth(67),
 *   days: [{ referenceET: millimetresPerDay(5), basalCoefficient: cropCoefficient(1.2), rootDepth: metres(0.8) }],
 * })[0] // => { stress: 0.97, cropET: 5.8, depletionAtEnd: 72.8 }
 */
export function rootZoneBalance(input: RootZoneBalanceInput): RootZoneDayResult[] {
  const fieldCapacity = numberIn(optionsOf(input).fieldCapacity, WATER_CONTENT, 'fieldCapacity') as WaterContent
  const wiltingPoint = numberIn(input.wiltingPoint, WATER_CONTENT, 'wiltingPoint') as WaterContent
  const tabled = numberIn(input.depletionFraction, DEPLETION, 'depletionFraction') as DepletionFraction
  let depletion = numberIn(input.startDepletion, WATER_DEPTH, 'startDepletion')
  const adjusts = booleanOf(optionOr(input.adjustDepletionFraction, false), 'adjustDepletionFraction')
  requireRows(input.days, 'days')
  return input.days.map((day) => {
    const reference = numberIn(day.referenceET, REFERENCE_ET, 'referenceET')
    const basal = numberIn(day.basalCoefficient, CROP_COEFFICIENT, 'basalCoefficient')
    const evaporation = numberIn(optionOr(day.evaporationCoefficient, 0), CROP_COEFFICIENT, 'evaporationCoefficient')
    const full = ((basal + evaporation) * reference) as CropET
    const depletionFraction = adjusts ? adjustedDepletionFraction({ tabled, cropET: full }) : tabled
    const totalAvailable = totalAvailableWater({ fieldCapacity, wiltingPoint, rootDepth: day.rootDepth })
    const water =
      numberIn(optionOr(day.rain, 0), WATER_DEPTH, 'rain') +
      numberIn(optionOr(day.irrigation, 0), WATER_DEPTH, 'irrigation') +
      numberIn(optionOr(day.capillaryRise, 0), WATER_DEPTH, 'capillaryRise')
    const percolation = Math.max(0, water - depletion) as WaterDepth
    const depletionAtStart = Math.max(0, depletion - water) as WaterDepth
    const stress = waterStressCoefficient({ totalAvailable, depletion: depletionAtStart, depletionFraction })
    const wanted = (stress * basal + evaporation) * reference
    const cropET = Math.min(wanted, Math.max(0, totalAvailable - depletionAtStart)) as CropET
    depletion = depletionAtStart + cropET
    return {
      totalAvailable,
      readilyAvailable: readilyAvailableWater({ totalAvailable, depletionFraction }),
      depletionAtStart,
      depletionAtEnd: depletion as WaterDepth,
      stress,
      cropCoefficient: (cropET / reference) as CropCoefficient,
      cropET,
      percolation,
    }
  })
}
