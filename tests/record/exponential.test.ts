import fc from 'fast-check'
import { fitExponentialDryDown, hours, inHours, timeToRefillExponential, waterContent } from 'porewater'
import { describe, expect, it } from 'vitest'
import { checkPublished } from '../support/published.js'
import { expectDomainError, expectInputError } from '../support/refusals.js'
import { uniformFrom } from './random.js'

checkPublished('irrigation', 'drydown.exponential', ({ theta0, theta_inf, tau, refill }) => {
  const reach = timeToRefillExponential({
    from: waterContent(theta0),
    asymptote: waterContent(theta_inf),
    timeConstant: hours(tau),
    refillPoint: waterContent(refill),
  })
  return { t: reach.known ? inHours(reach.time) : reach.reason }
})

describe('a dry-down that slows down', () => {
  it('gives back the curve that made it', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.05, max: 0.3, noNaN: true }),
        fc.double({ min: 0.05, max: 0.4, noNaN: true }),
        fc.double({ min: 0.1, max: 5, noNaN: true }),
        (floor, fall, share) => {
          const time = Array.from({ length: 60 }, (_, i) => 1e6 + i * 600)
          const constant = share * 59 * 600
          const content = time.map((t) => floor + fall * Math.exp(-(t - 1e6) / constant))
          const fit = fitExponentialDryDown({ time, waterContent: content })
          expect(fit.known).toBe(true)
          if (!fit.known) return
          expect(fit.timeConstant / constant).toBeCloseTo(1, 4)
          expect(fit.asymptote).toBeCloseTo(floor, 4)
          expect(fit.first).toBeCloseTo(floor + fall, 6)
          expect(fit.last).toBeCloseTo(content[59]!, 6)
        },
      ),
    )
  })
  it('rules out only what lies a third of the fall below its asymptote, or below the interval of it', () => {
    const random = uniformFrom(3)
    const time = Array.from({ length: 60 }, (_, i) => i * 600)
    for (const noise of [0, 0.0005, 0.002]) {
      const content = time.map((t) => 0.4 + 0.1 * Math.exp(-t / 9000) + noise * (random() - 0.5))
      const fit = fitExponentialDryDown({ time, waterContent: content })
      if (!fit.known) throw new Error(fit.reason)
      expect(fit.floor).toBeLessThanOrEqual(fit.asymptoteLow)
      expect(fit.floor).toBeLessThanOrEqual(fit.asymptote - (fit.first - fit.last) / 3 + 1e-12)
    }
  })
  it('is not told from a straight line by readings that show no bend', () => {
    const random = uniformFrom(11)
    let believed = 0
    for (let k = 0; k < 100; k++) {
      const content = Array.from(
        { length: 40 },
        (_, i) => 0.6 - 0.001 * i + 0.002 * (random() + random() + random() - 1.5),
      )
      if (fitExponentialDryDown({ time: content.map((_, i) => i * 600), waterContent: content }).known) believed++
    }
    expect(believed).toBeLessThanOrEqual(3)
  })
  it('is refused for rising water, few readings and times that do not rise', () => {
    const time = Array.from({ length: 20 }, (_, i) => i * 600)
    expect(
      fitExponentialDryDown({ time, waterContent: time.map((t) => 0.5 - 0.1 * Math.exp(-t / 3000)) }),
    ).toMatchObject({
      known: false,
      reason: 'not-falling',
    })
    expect(fitExponentialDryDown({ time: [0, 1], waterContent: [0.5, 0.4] })).toMatchObject({ known: false })
    expectInputError(() => fitExponentialDryDown({ time: [0, 600, 300], waterContent: [0.5, 0.49, 0.48] }), 'time')
  })
  it('rules a level out by its floor only: below the asymptote alone nothing is ruled out', () => {
    const course = { from: waterContent(0.6), asymptote: waterContent(0.5), timeConstant: hours(5) }
    const reason = (refill: number, floor?: number) => {
      const found = timeToRefillExponential({
        ...course,
        refillPoint: waterContent(refill),
        ...(floor === undefined ? {} : { floor: waterContent(floor) }),
      })
      return found.known ? undefined : found.reason
    }
    expect(reason(0.5)).toBe('may-level-off-above')
    expect(reason(0.2)).toBe('may-level-off-above')
    expect(reason(0.5, 0.46)).toBe('may-level-off-above')
    expect(reason(0.46, 0.46)).toBe('may-level-off-above')
    expect(reason(0.459, 0.46)).toBe('levels-off-above')
    expect(reason(0.51, 0.46)).toBeUndefined()
    expect(timeToRefillExponential({ ...course, refillPoint: waterContent(0.6) })).toEqual({ known: true, time: 0 })
    // It stands where it would end.
    expect(timeToRefillExponential({ ...course, asymptote: course.from, refillPoint: waterContent(0.3) })).toEqual({
      known: false,
      reason: 'not-falling',
    })
    expect(
      timeToRefillExponential({ ...course, asymptote: waterContent(0.7), refillPoint: waterContent(0.5) }),
    ).toMatchObject({ known: false, reason: 'not-falling' })
    expectInputError(
      () => timeToRefillExponential({ ...course, floor: waterContent(0.51), refillPoint: waterContent(0.5) }),
      'floor',
    )
    expectDomainError(
      () => timeToRefillExponential({ ...course, timeConstant: hours(0), refillPoint: waterContent(0.5) }),
      { quantity: 'time constant of the dry-down' },
    )
  })
})
