import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { civilDateText, dayOfCivilDate } from '../../src/numerics/civil-date.js'

describe('dates of the Gregorian calendar, against the language’s own', () => {
  it('gives the date of a day, and the day of a date', () => {
    fc.assert(
      fc.property(fc.integer({ min: -700_000, max: 2_900_000 }), (day) => {
        const date = new Date(day * 86400_000)
        fc.pre(date.getUTCFullYear() >= 0 && date.getUTCFullYear() <= 9999)
        expect(civilDateText(day)).toBe(date.toISOString().slice(0, 10))
        expect(dayOfCivilDate(date.getUTCFullYear(), date.getUTCMonth() + 1, date.getUTCDate())).toBe(day)
      }),
    )
  })
  it('does so where centuries and four of them begin, on the first of March, and on the days before', () => {
    for (let year = 100; year < 10_000; year += 100)
      for (const month of [1, 3])
        for (const before of [0, 1, 2]) {
          const date = new Date(Date.UTC(year, month - 1, 1 - before))
          const day = date.getTime() / 86400_000
          expect(civilDateText(day)).toBe(date.toISOString().slice(0, 10))
          expect(dayOfCivilDate(date.getUTCFullYear(), date.getUTCMonth() + 1, date.getUTCDate())).toBe(day)
        }
  })
  it.each([
    ['1970-01-01', 0],
    ['2000-02-29', 11016],
    ['2026-11-26', 20783],
  ])('%s', (date, day) => expect(civilDateText(day)).toBe(date))
})
