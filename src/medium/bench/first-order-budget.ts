/** What one reading adds to the uncertainty of a result. */
export interface BudgetLine {
  /** Name of the reading. */
  readonly input: string
  /** Standard uncertainty of the result from this reading alone. Unit: as the result. */
  readonly contribution: number
  /** Its share of the variance of the result. Unit: 1. */
  readonly shareOfVariance: number
}

/** Standard uncertainty of a result and where it comes from, the largest part first. */
export interface ErrorBudget {
  /** Unit: as the result. */
  readonly standardUncertainty: number
  readonly lines: readonly BudgetLine[]
}

/** A reading with its standard uncertainty. */
export interface UncertainReading {
  readonly value: number
  readonly uncertainty: number
}

/**
 * The first-order budget of a result whose readings are independent. Each contribution is half the difference of the result at
 * the reading plus and minus its uncertainty: Guide to the Expression of Uncertainty in Measurement (JCGM 100:2008), 5.1.3 note 2.
 * A reading that does not enter adds exactly nothing, which a slope by small differences would not promise; slopes, correlations
 * and degrees of freedom are the matter of `propagateFirstOrder`.
 */
export function firstOrderBudget<Values extends Record<string, number>>(
  readings: { readonly [Name in keyof Values]: UncertainReading },
  result: (values: Values) => number,
): ErrorBudget {
  const given: [string, UncertainReading][] = Object.entries(readings)
  const values = Object.fromEntries(given.map(([name, { value }]) => [name, value])) as Values
  const parts = given.map(([input, { value, uncertainty }]) => {
    const moved = (by: number) => result({ ...values, [input]: value + by })
    return { input, contribution: Math.abs(moved(uncertainty) - moved(-uncertainty)) / 2 }
  })
  const variance = parts.reduce((sum, { contribution }) => sum + contribution ** 2, 0)
  return {
    standardUncertainty: Math.sqrt(variance),
    lines: parts
      .filter(({ contribution }) => contribution > 0)
      .map((part) => ({ ...part, shareOfVariance: part.contribution ** 2 / variance }))
      .sort((a, b) => b.contribution - a.contribution),
  }
}
