import {
  entriesOfRecord,
  explainControlFinding,
  explainZoneFinding,
  followZone,
  hours,
  InputError,
  proposeDay,
  reviewZone,
  runReducer,
  type ZoneRecord,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { inWords } from '../../src/quantity/in-words.js'
import { asMillilitres } from '../../src/zone/report/report-words.js'
import { benchRecord, benchZone, MIDNIGHT } from './bench.js'

/** Faults that somebody found who used the zone for the first time, each named after what happened. */
const zone = benchZone()
const lastOf = (record: ZoneRecord) => reviewZone({ zone, record }).days.at(-1)!

describe('what a stranger met', () => {
  it('five readings of a healthy probe that agreed by chance had its forecast say at midnight that drain was not over', () => {
    const record = benchRecord({ days: 5 })
    const [from, to] = [MIDNIGHT + 4 * 86400 + 83400, MIDNIGHT + 4 * 86400 + 84600]
    const alike = Array.from(record.probes.B!).filter(
      (_, i) => record.time[i]! >= from && record.time[i]! <= to,
    ) as number[]
    // They lie within a quarter of the noise, 0.0008 / √12.
    expect(alike).toHaveLength(5)
    expect(Math.max(...alike) - Math.min(...alike)).toBeLessThan(0.0002)
    const day = lastOf(record)
    expect(day.probes[1]!.counts).toMatchObject({ pass: 288, suspect: 0 })
    // The last shot was seven hours ago.
    expect(day.probes.map(({ timeToRefill: refill, nextHour }) => [refill.known, nextHour.known])).toEqual([
      [true, true],
      [true, true],
    ])
  })
  it('a log in hundreds of litres had the plan of the next day give a hundredth of the use', () => {
    const record = benchRecord({ days: 3 })
    const by = (scale: number): ZoneRecord => {
      const { watering } = record
      const times = (list: ArrayLike<number | null>) => Array.from(list, (x) => scale * (x as number))
      return {
        ...record,
        watering: { ...watering!, given: times(watering!.given), drained: times(watering!.drained!) },
      }
    }
    const day = lastOf(by(0.01))
    expect(day.balance.use).toEqual({ known: false, reason: 'rises-exceed-log' })
    expect(day.balance.given).toMatchObject({ known: true })
    const plan = proposeDay({ zone, day })
    expect(plan).toMatchObject({ known: true, value: { useFrom: 'climate' } })
    expect(plan.known && plan.value.expectedUse).toBe(day.climate.known && day.climate.value.perContainer)
    const { climate: _, ...rest } = by(0.01)
    expect(proposeDay({ zone, day: lastOf(rest) })).toEqual({ known: false, reason: 'use-not-known' })
    // A probe in the wet spot of a large container may rise several times as much as the container.
    expect(lastOf(by(0.25)).balance.use).toMatchObject({ known: true })
  })
  it('a probe that repeats one number is doubted from the first of nine on', () => {
    const record = benchRecord({ days: 3 })
    const noon = MIDNIGHT + 2 * 86400 + 21 * 3600
    const frozen = (readings: number) => {
      const B = Array.from(record.probes.B!, (x, i) => {
        const k = (record.time[i]! - noon) / 300
        return k >= 0 && k < readings ? 0.55 : x
      })
      return lastOf({ ...record, probes: { ...record.probes, B } }).probes[1]!.counts
    }
    expect(frozen(8).suspect + frozen(8).fail).toBe(0)
    expect(frozen(9).suspect + frozen(9).fail).toBe(9)
    expect(frozen(30).pass).toBe(258)
  })
  it('a probe that sent per cent from the last midnight on was only said to have no late reading', () => {
    const record = benchRecord({ days: 3 })
    const B = Array.from(record.probes.B!, (x, i) =>
      record.time[i]! >= MIDNIGHT + 2 * 86400 ? 100 * (x as number) : x,
    )
    const [first] = lastOf({ ...record, probes: { ...record.probes, B } }).findings
    expect(first).toMatchObject({ code: 'looks-like-percent', probe: 'B' })
  })
  it('a probe that scattered by four points moved the plan by a sixth', () => {
    const record = benchRecord({ days: 5 })
    let state = 1
    const scatter = () => {
      state = (Math.imul(state, 1664525) + 1013904223) >>> 0
      return 0.08 * (state / 2 ** 32 - 0.5)
    }
    const B = Array.from(record.probes.B!, (x) => (x as number) + scatter())
    const day = lastOf({ ...record, probes: { ...record.probes, B } })
    expect(day.findings[0]).toMatchObject({ code: 'rises-alone', level: 'danger', probe: 'B' })
    expect(day.probes.map(({ used }) => used)).toEqual([true, false])
    const given = (one: typeof day) => {
      const plan = proposeDay({ zone, day: one })
      return plan.known ? plan.value.given : Number.NaN
    }
    expect(given(day)).toBeCloseTo(given(lastOf(record)), 1)
  })
  it('rises without an opening are held against no probe that is alone with a dead one, nor where both rose', () => {
    const record = benchRecord({ days: 3 })
    const log = record.watering!
    const pick = (list: ArrayLike<number | null>) => Array.from(list).filter((_, i) => i < 20 || i % 2 === 0)
    const watering = Object.fromEntries(Object.entries(log).map(([name, list]) => [name, pick(list)])) as never
    const dead = Array.from(record.probes.B!, () => null)
    for (const B of [dead, record.probes.B!]) {
      const day = lastOf({ ...record, watering, probes: { ...record.probes, B } })
      expect(day.probes[0]!.answers!.withoutLog).toHaveLength(5)
      expect(day.findings.filter(({ code }) => code === 'rises-alone')).toEqual([])
      expect(day.probes[0]!.used).toBe(true)
    }
  })
  it('hourly readings of healthy probes were told as pulled every evening', () => {
    const record = benchRecord({ days: 5 })
    const pick = (list: ArrayLike<number | null>) => Array.from(list).filter((_, i) => i % 12 === 0)
    const hourly = benchZone({ readingStep: hours(1) })
    const of = (change: (x: number, i: number) => number) => {
      const probes = { A: pick(record.probes.A!), B: pick(record.probes.B!).map((x, i) => change(x as number, i)) }
      const time = pick(record.time) as number[]
      const { days } = reviewZone({
        zone: hourly,
        record: { ...record, rootTemperature: pick(record.rootTemperature!), time, probes },
      })
      return days.flatMap(({ findings }) => findings).filter(({ code }) => code === 'level-stepped')
    }
    expect(of((x) => x)).toEqual([])
    // Pulled out at four o'clock in the night it still is told.
    expect(of((x, i) => (i >= 76 ? x - 0.4 : x))).toMatchObject([{ probe: 'B' }])
  })
  it('a shot into a full container was told as a valve that did not open', () => {
    const one = { code: 'shots-without-rise', level: 'caution', probe: 'A', times: [MIDNIGHT] } as const
    expect(explainZoneFinding(one).message).toMatch(/or a container that was full$/)
  })
  it('numbers came as no grower says them', () => {
    expect([0.05, 0.6, 0, -0.0525, 55.6].map((x) => inWords(x, 'm³/m³', { level: x > 0.5 }))).toEqual([
      '5 points',
      '60 %',
      '0 points',
      '−5.25 points',
      '55.6',
    ])
    expect([45, 1500, 10800, 129600, 604800, -600].map((x) => inWords(x, 's'))).toEqual([
      '45 s',
      '25 min',
      '3 h',
      '36 h',
      '7 d',
      '−10 min',
    ])
    expect(inWords(0.002, 'm³/m³/h')).toBe('0.2 points an hour')
    expect(inWords(-0.0014, 'm³/m³/d')).toBe('−0.14 points a day')
    expect(inWords(0.25, 'share of the flow')).toBe('25 % of the flow')
    expect(inWords(2.41, 'dS/m')).toBe('2.41 dS/m')
    expect([-0.0001, 0.0004, -0.0006, 0.03].map(asMillilitres)).toEqual(['0', '0', '−1', '30'])
    const lost = {
      code: 'no-readings' as const,
      level: 'caution' as const,
      weight: 0.7,
      since: 0,
      check: 'look-at-gateway' as const,
      evidence: [{ code: 'readings-lost' as const, value: 0.52, unit: '1', usual: 0, about: 'A' }],
    }
    expect(explainControlFinding(lost).message).toMatch(/\(readings lost of A 52 %, usually 0 %\)/)
  })
})

describe('a kept state whose numbers nobody can have read', () => {
  const follower = followZone(zone)
  const entries = entriesOfRecord(benchRecord({ days: 4 }))
  const { state } = runReducer({ reducer: follower, inputs: entries.slice(0, 2350) })
  it.each([
    ['from', (one: Kept) => ({ ...one, dryDown: { ...one.dryDown, from: 1e300 } })],
    ['levels', (one: Kept) => ({ ...one, dryDown: { ...one.dryDown, levels: [-1e300] } })],
    ['recent', (one: Kept) => ({ ...one, dryDown: { ...one.dryDown, recent: [[one.dryDown.start, 1e9, 1]] } })],
    [
      'level',
      (one: Kept) => ({ ...one, dryDown: { ...one.dryDown, replay: [{ time: one.dryDown.start, level: 1e9 }] } }),
    ],
    ['falls', (one: Kept) => ({ ...one, falls: one.falls.map((x) => (x === null ? x : 1e300)) })],
    ['usualFall', (one: Kept) => ({ ...one, usualFall: 1e300 })],
  ])('had a forecast of 1e301 mL from it: %s', (_, change) => {
    const kept = JSON.parse(JSON.stringify(state))
    expect(follower.restore(kept)).toEqual(state)
    kept.memory.drying.B = change(kept.memory.drying.B)
    expect(() => follower.restore(kept)).toThrow(InputError)
  })
})

interface Kept {
  readonly dryDown: { readonly start: number }
  readonly falls: readonly (number | null)[]
}
