import { DomainError, InputError } from '../../quantity/errors.js'
import type { MassFraction, MeasuredEC } from '../../quantity/generated/kinds.js'
import { plain, requireObject } from '../../quantity/guard.js'
import { asName, hasRow } from '../../quantity/one-of.js'

/** Mass percents of the columns of the table. */
const PERCENTS: readonly number[] = [0.5, 1, 2, 5, 10, 15, 20, 25, 30, 40]
/** Conductivity at 20 °C in dS/m, from 0.5 % on; a shorter list ends where the print ends. */
const TABLE = {
  NH4Cl: [10.5, 20.4, 40.3, 95.3, 180],
  '(NH4)2SO4': [7.4, 14.2, 25.7, 57.4, 105, 147, 185, 215],
  CaCl2: [8.1, 15.7, 29.4, 67, 117, 157, 177, 183, 172, 106],
  CuSO4: [2.9, 5.4, 9.3, 19, 32.2, 42.3],
  HCl: [45.1, 92.9, 183],
  HNO3: [28.4, 56.1, 108],
  MgCl2: [8.6, 16.6, 31.2, 66.9, 108, 129, 134, 122, 98],
  MgSO4: [4.1, 7.6, 13.3, 27.4, 42.7, 54.2, 51.1, 44.1],
} as const satisfies Record<string, readonly number[]>

/** One salt or acid alone in water at 20 °C. */
export interface SaltSolution {
  /** Formula, one of NH4Cl, (NH4)2SO4, CaCl2, CuSO4, HCl, HNO3, MgCl2, MgSO4. */
  readonly salt: keyof typeof TABLE
  /** Mass of salt per mass of solution; the row of CaCl2 goes to 0.4, others end earlier. Unit: 1. Range: [0.005, 0.4]. */
  readonly massFraction: MassFraction
}

/**
 * Electrical conductivity of a solution of one salt or acid at 20 °C.
 *
 * It grows less than in proportion: from 0.5 to 1 % by 85 to 98 %. For the salts of which print was seen; potassium and nitrate
 * salts are missing for that reason only. Acids and concentrated fertiliser burn: wear protection, add acid to water, follow the
 * safety data sheet and local rules.
 *
 * @procedure Looks up the mass percent in the printed table, with a straight line between two columns.
 * @returns Conductivity at 20 °C. Unit: dS/m.
 * @throws `DomainError` below 0.5 % and above the end of the row; `InputError` for a salt that is not in the table.
 * @source lide-nd (after Weast 1989, p. D-221)
 * @example
 * conductivityOfSalt({ salt: 'CaCl2', massFraction: percent(0.5) }) // => 8.1
 */
export function conductivityOfSalt(solution: SaltSolution): MeasuredEC {
  requireObject(solution, 'solution')
  if (!hasRow(TABLE, solution.salt))
    throw new InputError(
      'salt',
      `${asName(solution.salt)} is not in the table`,
      `take one of ${Object.keys(TABLE).join(', ')}`,
    )
  const row: readonly number[] = TABLE[solution.salt]
  const percent = plain(solution.massFraction) * 100
  const last = PERCENTS[row.length - 1]!
  // A share times 100 may miss the printed percent by its rounding.
  const nearest = PERCENTS.findIndex((printed) => Math.abs(printed - percent) <= 1e-9)
  if (nearest >= 0 && nearest < row.length) return row[nearest]! as MeasuredEC
  if (!(percent > PERCENTS[0]! && percent < last))
    throw new DomainError(
      solution.massFraction,
      {
        quantity: `mass fraction of ${solution.salt}`,
        unit: '1',
        min: PERCENTS[0]! / 100,
        max: last / 100,
        ends: '[]',
        hint: 'the printed table ends there; below 0.5 % use the limiting law or measure',
      },
      'massFraction',
    )
  const above = PERCENTS.findIndex((printed) => printed > percent)
  const [low, high] = [PERCENTS[above - 1]!, PERCENTS[above]!]
  const share = (percent - low) / (high - low)
  return (row[above - 1]! * (1 - share) + row[above]! * share) as MeasuredEC
}
