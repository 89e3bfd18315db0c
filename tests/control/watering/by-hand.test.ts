import { litres } from 'porewater'
import { describe, expect, it } from 'vitest'
import { clock, decide, givenUpTo, moment, openings, settings, settled } from './zone.js'

describe('water by hand', () => {
  it('counts in the limit of the day, whatever the probes say', () => {
    const { state, now } = settled(0.52)
    const dry = (at: number, i: number) => moment(at, 0.45 + 0.001 * (i % 2))
    const byHand = (i: number) => (i === 0 ? { byHand: litres(3.9) } : {})
    const { told } = decide(now, now + 240, 60, (at, i) => ({ ...dry(at, i), ...byHand(i) }), {}, state)
    const last = told.at(-1)!.decision
    expect(last.givenInDay).toBeGreaterThanOrEqual(3.9)
    expect(openings(told)).toEqual([])
    expect(last.reason).toBe('day-used-up')
  })
  it('that cannot be is told and not counted', () => {
    const { state, now } = settled()
    for (const byHand of [-1, Number.NaN, Infinity, 400, '2', {}]) {
      const { told } = decide(now, now + 60, 60, (at) => ({ ...moment(at, 0.55), byHand: byHand as never }), {}, state)
      expect(told[0]?.decision.findings.map(({ code }) => code)).toContain('by-hand-refused')
      expect(told[0]?.decision.givenInDay).toBe(0)
    }
  })
})

describe('a state that is lost after the water of a day was given', () => {
  it('gives no second day in the same hours', () => {
    // Dry readings from morning on; the state is lost once the day is used up.
    const dry = (now: number, i: number) =>
      moment(now, 0.45 + 0.002 * (i % 2), { override: { action: 'water', until: now + 600 } })
    const first = decide(clock(0), clock(24 + 12), 60, dry)
    const second = decide(clock(24 + 12), clock(24 + 18), 60, dry)
    const given = givenUpTo([...first.told, ...second.told], clock(24 + 18))
    expect(given).toBeGreaterThan(0.6 * settings.maxPerDay)
    expect(given).toBeLessThanOrEqual(1.05 * settings.maxPerDay)
  })
})
