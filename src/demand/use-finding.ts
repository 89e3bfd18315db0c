import { InputError } from '../quantity/errors.js'
import type { Finding } from '../quantity/finding.js'
import { requireObject } from '../quantity/guard.js'

/** What is doubtful in a use that was computed or fitted, without words; `explainUseFinding` has them. */
export interface UseFinding {
  /** Which doubt it is. */
  readonly code:
    | 'above-latent-heat'
    | 'cannot-tell-radiation'
    | 'cannot-tell-dryness'
    | 'cannot-tell-cause'
    | 'causes-move-together'
    | 'fails-new-days'
  /** How much it matters: a `danger` must not be acted on unseen. */
  readonly level: Finding['level']
  /** The input, the result or the cause that it is about. */
  readonly about: string
  /** The coefficient, the correlation, or the share of the variance that is explained. Unit: that of `unit`. Range: any. */
  readonly value: number
  /** What it should not pass. Unit: that of `unit`. Range: any. */
  readonly limit: number
  /** Unit of both numbers. */
  readonly unit: 'mL/m² per J/cm²' | 'use/cause' | '1'
}

/** Doubts that belong to a fit. */
export interface DoubtedFit {
  /** What the record cannot tell; `explainUseFinding` has the words. */
  readonly findings: readonly UseFinding[]
}

const WORDS: Readonly<Record<UseFinding['code'], (finding: UseFinding) => string>> = {
  'above-latent-heat': ({ value, limit, unit }) =>
    `${value} ${unit} is above the ${limit.toFixed(2)} that this radiation can evaporate: check the unit, or count heating and dry air apart`,
  'cannot-tell-radiation': () => 'the interval of the use for each J/cm² holds zero: the record cannot tell it',
  'cannot-tell-dryness': () => 'the interval of the use for each kPa·h holds zero: the record cannot tell it',
  'cannot-tell-cause': ({ about }) =>
    `the interval of the coefficient of ${about} holds zero: the record cannot tell it`,
  'causes-move-together': ({ value }) =>
    `radiation and dryness move together (r = ${value.toFixed(2)}): their shares are uncertain, their sum less so`,
  'fails-new-days': ({ value }) =>
    `on days outside the fit it explains ${(100 * value).toFixed(0)} % of the variance: the crop or the house has changed`,
}

/**
 * Puts a doubt about water use into words: what is wrong, by how much, and what to look at.
 *
 * @procedure Looks up the sentence of the code and writes its numbers into it.
 * @param finding - One of the findings of `waterUseFromRadiationSum`, `fitDailyUse` or `followingLevel`.
 * @returns A finding with the sentence for people.
 * @throws `InputError` for a code that these procedures do not give.
 * @source common practice, no source
 * @example
 * const { findings } = waterUseFromRadiationSum({ radiationSum: joulesPerSquareCentimetre(1500), usePerJoule: 5 })
 * const [said] = findings.map(explainUseFinding)
 * said?.message // => '5 mL/m² per J/cm² is above the 4.08 that this radiation can evaporate: check the unit, or count heating and dry air apart'
 */
export function explainUseFinding(finding: UseFinding): Finding {
  requireObject(finding, 'finding')
  const { code, level, about, value, unit } = finding
  if (!Object.hasOwn(WORDS, code))
    throw new InputError('finding', `"${code}" is no code of water use`, `give one of ${Object.keys(WORDS).join(', ')}`)
  const source = code === 'above-latent-heat' ? 'allen-1998, Table 3' : 'common practice, no source'
  return { code, level, message: WORDS[code](finding), about, value, unit, source }
}
