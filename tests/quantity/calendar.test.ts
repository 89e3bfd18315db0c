import { dayOfYear, instant, percent } from 'porewater'
import { describe, expect, it } from 'vitest'
import { expectDomainError } from '../support/refusals.js'

describe('numbers of days and moments', () => {
  it('are taken from the first to the last of a leap year, in whole days (FAO-56, Annex 2, Table 2.5)', () => {
    expect([1, 60, 366].map(dayOfYear)).toEqual([1, 60, 366])
    for (const day of [0, 367, 1.5, -1, Number.NaN, Number.POSITIVE_INFINITY])
      expectDomainError(() => dayOfYear(day), { quantity: 'day of the year', unit: 'd', min: 1, max: 366 })
  })
  it('are taken from year 1 to year 9999 (RFC 3339 writes no others; the limits by the calendar of JavaScript)', () => {
    const first = new Date(0)
    first.setUTCFullYear(1, 0, 1)
    const last = Date.UTC(9999, 11, 31, 23, 59, 59) / 1000
    expect(instant(first.getTime() / 1000)).toBe(first.getTime() / 1000)
    expect(instant(last)).toBe(last)
    expect(instant(0.5)).toBe(0.5)
    expectDomainError(() => instant(first.getTime() / 1000 - 1), { quantity: 'instant', min: first.getTime() / 1000 })
    expectDomainError(() => instant(last + 1), { quantity: 'instant', max: last })
    // Milliseconds in place of seconds are the mistake that happens.
    expectDomainError(() => instant(Date.UTC(2026, 0, 1)), { hint: expect.stringMatching(/not milliseconds/) })
  })
})

describe('the ends of a span', () => {
  it('belong to it where they are closed', () => {
    expect([0, 100].map((share) => percent(share))).toEqual([0, 1])
  })
})
