import fc from 'fast-check'
import {
  explainIrrigationFinding,
  hours,
  instant,
  litres,
  litresPerHour,
  type PlannedShot,
  seconds,
  timeToLevel,
  waterContent,
  waterContentAfterUse,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { expectDomainError } from '../support/refusals.js'

const slab = { waterContent: waterContent(0.55), substrateVolume: litres(3.75), use: litresPerHour(0.18) }

describe('a container that nobody waters', () => {
  it('falls to the level in the time that a count second by second takes', () => {
    let held = 0.55 * 3.75
    let passed = 0
    while (held / 3.75 > 0.45) {
      held -= 0.18 / 3600
      passed += 1
    }
    expect(Math.abs(timeToLevel({ ...slab, level: waterContent(0.45) }) - passed)).toBeLessThanOrEqual(1)
  })
  it('is there already where it holds less', () => {
    expect(timeToLevel({ ...slab, level: waterContent(0.6) })).toBe(0)
  })
  it('holds the level after the time to it, whatever the container', () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true })
    const some = fc.double({ min: 0.01, max: 100, noNaN: true })
    fc.assert(
      fc.property(share, share, some, some, (a, b, volume, use) => {
        const [level, from] = a < b ? [a, b] : [b, a]
        const pot = { waterContent: waterContent(from), substrateVolume: litres(volume), use: litresPerHour(use) }
        // A hair earlier: at the level zero itself rounding would take more than there is.
        const time = seconds(timeToLevel({ ...pot, level: waterContent(level) }) * (1 - 1e-12))
        expect(waterContentAfterUse({ ...pot, time })).toBeCloseTo(level, 9)
      }),
    )
  })
  it('is refused when the plants would take more than there is, and outside the ranges', () => {
    expect(() => waterContentAfterUse({ ...slab, time: hours(12) })).toThrow(/plants would take 2.16 L/)
    expectDomainError(() => timeToLevel({ ...slab, level: 1.5 as never }), { argument: 'level' })
    expectDomainError(() => timeToLevel({ ...slab, level: waterContent(0.4), use: 0 as never }), { argument: 'use' })
    expectDomainError(() => waterContentAfterUse({ ...slab, time: NaN as never }), { argument: 'time' })
  })
})

describe('the reason of a planned shot', () => {
  const shot: PlannedShot = {
    time: instant(1779174000),
    volume: litres(0.6),
    perEmitter: litres(0.3),
    runTime: seconds(548),
    reason: 'given',
    waterContent: waterContent(0.582),
  }
  it('has words of its own for each code, with the water content where it says something', () => {
    const codes = ['morning-rewet', 'refill-point', 'last-of-day', 'light-sum', 'set-time', 'given'] as const
    const words = codes.map((reason) => explainIrrigationFinding({ ...shot, code: reason }).message)
    expect(new Set(words).size).toBe(codes.length)
    expect(words.filter((sentence) => sentence.includes('58.2 %'))).toHaveLength(5)
  })
  it('is refused where no plan gives it', () => {
    expect(() => explainIrrigationFinding({ ...shot, code: 'toString' as never })).toThrow(/no code of this topic/)
  })
})
