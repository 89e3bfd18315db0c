import { InputError } from '../../quantity/errors.js'
import type { AmountConcentration, SolutionEC } from '../../quantity/generated/kinds.js'
import { numberIn, optionsOf } from '../../quantity/guard.js'
import { asName, hasRow } from '../../quantity/one-of.js'
import type { Validity } from '../../quantity/validity.js'
import { CONCENTRATION } from '../domains.js'

/** Limiting molar conductivities of ions of one charge at 25 °C in S·cm²/mol. */
const CATIONS = { H: 349.65, Li: 38.66, Na: 50.08, K: 73.48, NH4: 73.5 } as const
const ANIONS = { OH: 198, F: 55.4, Cl: 76.31, Br: 78.1, NO3: 71.42, HCO3: 44.5, H2PO4: 36 } as const

/** Where the limiting law is good to about 1 %. */
export const validityOnsager1927: Validity = {
  of: 'conductivityOnsager1927',
  note: 'salts of one charge each, alone in water at 25 °C',
  inputs: { concentration: { min: 0, max: 10, unit: 'mmol/L' } },
}

/** One salt of two ions of one charge in water at 25 °C. */
export interface DiluteSalt {
  /** Positive ion, one of H, Li, Na, K, NH4. */
  readonly cation: keyof typeof CATIONS
  /** Negative ion, one of OH, F, Cl, Br, NO3, HCO3, H2PO4. */
  readonly anion: keyof typeof ANIONS
  /** Concentration of the salt. Unit: mmol/L. Range: [0, 100]. */
  readonly concentration: AmountConcentration
}

/** Conductivity of a dilute salt and what led to it. */
export interface DiluteSaltConductivity {
  /** Conductivity at 25 °C. Unit: dS/m. */
  readonly conductivity: SolutionEC
  /** Molar conductivity at that concentration. Unit: S·cm²/mol. */
  readonly molar: number
  /** Molar conductivity without neighbours. Unit: S·cm²/mol. */
  readonly limiting: number
}

/**
 * Electrical conductivity of a dilute salt of two ions of one charge at 25 °C by the limiting law of Debye, Hückel and Onsager.
 *
 * With c in mol/L; 1 S·cm²/mol times 1 mol/L is 1 mS/cm. 0.66 % low for 0.01 mol/kg potassium chloride.
 *
 * @equation `\Lambda = \Lambda_0 - (60.20 + 0.229\,\Lambda_0)\sqrt{c}, \quad \sigma = \Lambda c`
 * @returns Conductivity, molar conductivity and its limit.
 * @throws `DomainError` outside the range; `InputError` for an ion that is not in the list.
 * @validity One salt of one charge each, below 10 mmol/L, 25 °C.
 * @source onsager-1927; limiting conductivities of the CRC Handbook of Chemistry and Physics [not confirmed, source not seen]
 * @example
 * conductivityOnsager1927({ cation: 'K', anion: 'Cl', concentration: millimolesPerLitre(1) }) // => { conductivity: 0.1468016, molar: 146.801587, limiting: 149.79 }
 */
export function conductivityOnsager1927(salt: DiluteSalt): DiluteSaltConductivity {
  const molesPerLitre = numberIn(optionsOf(salt).concentration, CONCENTRATION, 'concentration') / 1000
  if (!hasRow(CATIONS, salt.cation) || !hasRow(ANIONS, salt.anion))
    throw new InputError(
      'cation, anion',
      `${asName(salt.cation)} and ${asName(salt.anion)} are not both known here`,
      `take a cation of ${Object.keys(CATIONS).join(', ')} and an anion of ${Object.keys(ANIONS).join(', ')}`,
    )
  const limiting = CATIONS[salt.cation] + ANIONS[salt.anion]
  const molar = limiting - (60.2 + 0.229 * limiting) * Math.sqrt(molesPerLitre)
  return { conductivity: (molar * molesPerLitre) as SolutionEC, molar, limiting }
}
