import fc from 'fast-check'
import {
  fraction,
  inMillilitres,
  litres,
  litresPerHour,
  minutes,
  runTime,
  seconds,
  shotsPerDay,
  shotVolume,
  waterContentChange,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { checkPublished } from '../support/published.js'
import { expectDomainError } from '../support/refusals.js'

checkPublished('irrigation', 'shot.volume', ({ dtheta, Vs, DF }) => ({
  V: shotVolume({ substrateVolume: litres(Vs), rise: waterContentChange(dtheta), drainFraction: fraction(DF) }),
}))
checkPublished('irrigation', 'run.time', ({ V, q, n, fill }) => ({
  t: runTime({ volume: litres(V), emitterFlow: litresPerHour(q), emitters: n, lineFill: seconds(fill) }),
}))

const volumes = fc.double({ min: 0.001, max: 1000, noNaN: true }).map(litres)
const rises = fc.double({ min: 0, max: 1, noNaN: true }).map(waterContentChange)
const drains = fc.double({ min: 0, max: 0.99, noNaN: true })

describe('the volume of a shot', () => {
  it('is what is kept and what drains', () => {
    fc.assert(
      fc.property(volumes, rises, drains, (substrateVolume, rise, drain) => {
        const shot = shotVolume({ substrateVolume, rise, drainFraction: fraction(drain) })
        expect(Math.abs(shot - (rise * substrateVolume + drain * shot))).toBeLessThanOrEqual(1e-12 * shot)
      }),
    )
  })
  it('grows with the drain that is wanted and scales with the substrate', () => {
    fc.assert(
      fc.property(volumes, rises, drains, drains, (substrateVolume, rise, a, b) => {
        const of = (drain: number, scale = 1) =>
          shotVolume({ substrateVolume: litres(substrateVolume * scale), rise, drainFraction: fraction(drain) })
        expect(of(Math.max(a, b))).toBeGreaterThanOrEqual(of(Math.min(a, b)))
        expect(of(a, 2)).toBeCloseTo(2 * of(a), 9)
      }),
    )
  })
  it('is the one of the design example', () => {
    expect(
      inMillilitres(
        shotVolume({ substrateVolume: litres(11.25), rise: waterContentChange(0.03), drainFraction: fraction(0.15) }),
      ),
    ).toBeCloseTo(397.06, 2)
  })
  it('is refused without medium, for a fall, and where all would drain', () => {
    const good = { substrateVolume: litres(10), rise: waterContentChange(0.03), drainFraction: fraction(0.15) as never }
    expectDomainError(() => shotVolume({ ...good, substrateVolume: litres(0) }), { argument: 'substrateVolume' })
    expectDomainError(() => shotVolume({ ...good, rise: waterContentChange(-0.01) }), {
      argument: 'rise',
    })
    expectDomainError(() => shotVolume({ ...good, drainFraction: fraction(1) }), {
      argument: 'drainFraction',
      max: 1,
      ends: '[)',
    })
  })
})

describe('the run time', () => {
  it('gives the volume back at that flow', () => {
    fc.assert(
      fc.property(
        volumes,
        fc.double({ min: 0.1, max: 50, noNaN: true }).map(litresPerHour),
        fc.integer({ min: 1, max: 500 }),
        (volume, emitterFlow, emitters) => {
          expect(((runTime({ volume, emitterFlow, emitters }) / 3600) * emitterFlow * emitters) / volume).toBeCloseTo(
            1,
            12,
          )
        },
      ),
    )
  })
  it('is zero for no water, whatever the line needs', () => {
    expect(runTime({ volume: litres(0), emitterFlow: litresPerHour(2), emitters: 1, lineFill: minutes(1) })).toBe(0)
  })
})

describe('shots a day', () => {
  it('are just enough', () => {
    fc.assert(
      fc.property(
        volumes,
        fc.double({ min: 0.01, max: 10, noNaN: true }).map(litres),
        drains,
        (dailyUse, shot, drain) => {
          const n = shotsPerDay({ dailyUse, shot, drainFraction: fraction(drain) })
          const needed = dailyUse / (1 - drain)
          expect(n * shot).toBeGreaterThanOrEqual(needed * (1 - 1e-6))
          expect((n - 1) * shot).toBeLessThan(needed)
        },
      ),
    )
  })
  it('do not become one more by rounding', () => {
    expect(shotsPerDay({ dailyUse: litres(0.3), shot: litres(0.1), drainFraction: fraction(0) })).toBe(3)
    expect(shotsPerDay({ dailyUse: litres(0), shot: litres(0.1), drainFraction: fraction(0) })).toBe(0)
  })
})
