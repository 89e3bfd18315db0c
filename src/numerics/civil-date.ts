/**
 * Dates of the Gregorian calendar as whole days since 1970-01-01, in whole-number arithmetic: years run from March, so that the leap
 * day is the last of a year. The language's own dates would bring a clock into the core.
 */

/** Days from 1970-01-01 to a date; months and days beyond their length run on. */
export function dayOfCivilDate(year: number, month: number, day: number): number {
  const y = month <= 2 ? year - 1 : year
  const era = Math.floor(y / 400)
  const yearOfEra = y - era * 400
  const dayOfYear = Math.floor((153 * (month > 2 ? month - 3 : month + 9) + 2) / 5) + day - 1
  return era * 146097 + yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear - 719468
}

/** The date of a day since 1970-01-01, as `2026-05-19`. */
export function civilDateText(day: number): string {
  const shifted = day + 719468
  const era = Math.floor(shifted / 146097)
  const dayOfEra = shifted - era * 146097
  const yearOfEra = Math.floor(
    (dayOfEra - Math.floor(dayOfEra / 1460) + Math.floor(dayOfEra / 36524) - Math.floor(dayOfEra / 146096)) / 365,
  )
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100))
  const fromMarch = Math.floor((5 * dayOfYear + 2) / 153)
  const month = fromMarch < 10 ? fromMarch + 3 : fromMarch - 9
  const year = yearOfEra + era * 400 + (month <= 2 ? 1 : 0)
  const two = (n: number) => String(n).padStart(2, '0')
  return `${String(year).padStart(4, '0')}-${two(month)}-${two(dayOfYear - Math.floor((153 * fromMarch + 2) / 5) + 1)}`
}
