/** A number with its unit: whole numbers in full, others in six digits. */
export function numberWithUnit(value: number, unit: string | undefined): string {
  const text = String(sixDigits(value))
  return hasName(unit) ? `${text} ${unit}` : text
}

export function sixDigits(value: number): number {
  return Number.isInteger(value) ? value : Number(value.toPrecision(6))
}

/** Whether a unit is one to be printed: a ratio has none, and some functions take whatever unit they are given. */
export function hasName(unit: string | undefined): unit is string {
  return (
    unit !== undefined && unit !== '' && unit !== '1' && unit !== 'any' && unit !== 'raw' && !unit.startsWith('that of')
  )
}
