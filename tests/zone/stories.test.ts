import { explainControlFinding, explainZoneFinding, reviewZone, type ZoneRecord } from 'porewater'
import { describe, expect, it } from 'vitest'
import { inWords } from '../../src/quantity/in-words.js'
import { asMillilitres } from '../../src/zone/report-words.js'
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
    expect(day.probes.map(({ refill, nextHour }) => [refill.known, nextHour.known])).toEqual([
      [true, true],
      [true, true],
    ])
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
