import { domainWith } from '../../quantity/domain.js'
import { InputError } from '../../quantity/errors.js'
import type { Mass, Volume } from '../../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../../quantity/guard.js'
import { READ_MASS, READ_WATER } from '../domains.js'
import type { MediumFinding } from '../medium-finding.js'
import { type ErrorBudget, firstOrderBudget, type UncertainReading } from './first-order-budget.js'

/** How well the balance and the jug read. */
export interface BenchUncertainty {
  /** Standard uncertainty of a weighing. Unit: g. Range: [0, ∞). */
  readonly mass: Mass
  /** Standard uncertainty of the volume of medium, mostly the level of filling. Unit: L. Range: [0, ∞). */
  readonly substrateVolume: Volume
  /** Standard uncertainty of a volume of water poured in or drained. Unit: L. Range: [0, ∞). */
  readonly waterVolume: Volume
}

/** Error budgets of the three shares of a bench test. They hold what the readings add, not how much pots differ. */
export interface BenchBudgets {
  readonly airSpace: ErrorBudget
  readonly containerCapacity: ErrorBudget
  readonly totalPorosity: ErrorBudget
}

/** The standard uncertainties of a bench, for a volume of medium. */
export function checkUncertainty(uncertainty: BenchUncertainty, volume: number): BenchUncertainty {
  requireObject(uncertainty, 'uncertainty')
  const { mass, substrateVolume, waterVolume } = uncertainty
  numberIn(mass, domainWith(READ_MASS, { quantity: 'uncertainty of a weighing' }), 'uncertainty.mass')
  numberIn(
    substrateVolume,
    domainWith(READ_WATER, { quantity: 'uncertainty of the volume of medium' }),
    'uncertainty.substrateVolume',
  )
  numberIn(
    waterVolume,
    domainWith(READ_WATER, { quantity: 'uncertainty of a volume of water' }),
    'uncertainty.waterVolume',
  )
  if (substrateVolume > volume / 4) {
    throw new InputError(
      'uncertainty',
      `the volume of medium of ${volume} L is known only to ${substrateVolume} L`,
      'to first order a budget needs a quarter or better; measure the volume by filling it with water',
    )
  }
  return { mass, substrateVolume, waterVolume }
}

/** Refuses readings that must fall one after the other and do not. */
export function refuseRise(names: readonly string[], values: readonly number[]): void {
  for (let i = 1; i < values.length; i++) {
    if (values[i]! <= values[i - 1]!) continue
    throw new InputError(
      `${names[i]}`,
      `${values[i]} is above the ${names[i - 1]} of ${values[i - 1]}`,
      'check for swapped readings, and weigh every time with the same pot and tray',
    )
  }
}

type Values = Record<string, number>

/** The budgets of air space, capacity and their sum. */
export function budgetsOf<Air extends Values, Capacity extends Values>(
  readings: { readonly [Name in keyof (Air & Capacity)]: UncertainReading },
  airSpace: (values: Air) => number,
  containerCapacity: (values: Capacity) => number,
): BenchBudgets {
  return {
    airSpace: firstOrderBudget<Air & Capacity>(readings, airSpace),
    containerCapacity: firstOrderBudget<Air & Capacity>(readings, containerCapacity),
    totalPorosity: firstOrderBudget<Air & Capacity>(readings, (v) => airSpace(v) + containerCapacity(v)),
  }
}

/** What the sum of air and water says of the readings; with a bulk density also what the solids would weigh. */
export function findingsOfShares(totalPorosity: number, bulkDensity?: number): MediumFinding[] {
  const about = 'totalPorosity'
  if (totalPorosity > 1) return [{ code: 'more-than-full', level: 'danger', about, value: totalPorosity, unit: '1' }]
  if (bulkDensity === undefined) return []
  const solids = bulkDensity / (1 - totalPorosity)
  const { min, max } = POSSIBLE_SOLIDS
  if (solids >= min && solids <= max) return []
  return [{ code: 'odd-solids', level: 'caution', about, value: solids, min, max, unit: 'g/cm³' }]
}

/** Densities of solids, g/cm³: horticultural materials have 0.35 to 2.1 (Fonteno 1990), minerals about 2.65. */
const POSSIBLE_SOLIDS = { min: 0.35, max: 2.7 }
