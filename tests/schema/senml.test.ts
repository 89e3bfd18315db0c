import fc from 'fast-check'
import { instant } from 'porewater'
import {
  DocumentError,
  type ReadingKind,
  readingsFromSenml,
  resolveSenml,
  type SenmlRecord,
  senmlFromReadings,
  type TidyReading,
} from 'porewater/schema'
import { describe, expect, it } from 'vitest'
import type { KindName } from '../../src/text/generated/kind-types.js'
import { KINDS } from '../../src/text/generated/kinds.js'
import { between } from '../support/round-trip.js'

const MAC = 'urn:dev:ow:10e2073a01080063'
const now = instant(1_700_000_000)

function problemsOf(call: () => unknown) {
  try {
    call()
  } catch (error) {
    expect(error).toBeInstanceOf(DocumentError)
    return (error as DocumentError).problems
  }
  throw new Error('nothing was refused')
}

describe('the examples of RFC 8428, section 5.1', () => {
  it('5.1.1: a single data point, now', () => {
    expect(resolveSenml(`[{"n":"${MAC}","u":"Cel","v":23.1}]`, { now })).toEqual([
      { n: MAC, u: 'Cel', v: 23.1, t: now },
    ])
  })
  it('5.1.2: a base name, and seven values back from a base time in a pack of version 5', () => {
    expect(
      resolveSenml(`[{"bn":"${MAC}:","n":"voltage","u":"V","v":120.1},{"n":"current","u":"A","v":1.2}]`, { now }),
    ).toEqual([
      { n: `${MAC}:voltage`, u: 'V', v: 120.1, t: now },
      { n: `${MAC}:current`, u: 'A', v: 1.2, t: now },
    ])
    const pack = `[
      {"bn":"urn:dev:ow:10e2073a0108006:","bt":1.276020076001e+09,"bu":"A","bver":5,"n":"voltage","u":"V","v":120.1},
      {"n":"current","t":-5,"v":1.2},{"n":"current","t":-4,"v":1.3},{"n":"current","t":-3,"v":1.4},
      {"n":"current","t":-2,"v":1.5},{"n":"current","t":-1,"v":1.6},{"n":"current","v":1.7}]`
    const resolved = resolveSenml(pack)
    expect(resolved.map((one) => one.v)).toEqual([1.2, 1.3, 1.4, 1.5, 1.6, 120.1, 1.7])
    // "Tue Jun 8 18:01:16.001 UTC 2010 and at each second for the previous 5 seconds".
    const end = Date.UTC(2010, 5, 8, 18, 1, 16, 1) / 1000
    resolved.forEach((one, i) => {
      expect(one.t).toBeCloseTo(end - Math.max(0, 5 - i), 5)
    })
    // Section 4.6: the version must stand in every resolved record if it is not that of the RFC.
    expect(resolved.every((one) => one.bver === 5 && one.u === (one.n.endsWith('voltage') ? 'V' : 'A'))).toBe(true)
  })
  it('5.1.3 resolves to 5.1.4', () => {
    const pack = `[
      {"bn":"${MAC}","bt":1.320067464e+09,"bu":"%RH","v":20},{"u":"lon","v":24.30621},{"u":"lat","v":60.07965},
      {"t":60,"v":20.3},{"u":"lon","t":60,"v":24.30622},{"u":"lat","t":60,"v":60.07965},
      {"t":120,"v":20.7},{"u":"lon","t":120,"v":24.30623},{"u":"lat","t":120,"v":60.07966},
      {"u":"%EL","t":150,"v":98},
      {"t":180,"v":21.2},{"u":"lon","t":180,"v":24.30628},{"u":"lat","t":180,"v":60.07967}]`
    const printed = `[
      {"n":"${MAC}","u":"%RH","t":1.320067464e+09,"v":20},{"n":"${MAC}","u":"lon","t":1.320067464e+09,"v":24.30621},
      {"n":"${MAC}","u":"lat","t":1.320067464e+09,"v":60.07965},{"n":"${MAC}","u":"%RH","t":1.320067524e+09,"v":20.3},
      {"n":"${MAC}","u":"lon","t":1.320067524e+09,"v":24.30622},{"n":"${MAC}","u":"lat","t":1.320067524e+09,"v":60.07965},
      {"n":"${MAC}","u":"%RH","t":1.320067584e+09,"v":20.7},{"n":"${MAC}","u":"lon","t":1.320067584e+09,"v":24.30623},
      {"n":"${MAC}","u":"lat","t":1.320067584e+09,"v":60.07966},{"n":"${MAC}","u":"%EL","t":1.320067614e+09,"v":98},
      {"n":"${MAC}","u":"%RH","t":1.320067644e+09,"v":21.2},{"n":"${MAC}","u":"lon","t":1.320067644e+09,"v":24.30628},
      {"n":"${MAC}","u":"lat","t":1.320067644e+09,"v":60.07967}]`
    expect(resolveSenml(pack)).toEqual(JSON.parse(printed))
    // Resolving what is resolved changes nothing.
    expect(resolveSenml(printed)).toEqual(JSON.parse(printed))
  })
  it('5.1.5: text, truth and data', () => {
    const pack = `[{"bn":"${MAC}:","n":"temp","u":"Cel","v":23.1},{"n":"label","vs":"Machine Room"},{"n":"open","vb":false},{"n":"nfv-reader","vd":"aGkgCg"}]`
    expect(resolveSenml(pack, { now })).toEqual([
      { n: `${MAC}:temp`, u: 'Cel', v: 23.1, t: now },
      { n: `${MAC}:label`, vs: 'Machine Room', t: now },
      { n: `${MAC}:open`, vb: false, t: now },
      { n: `${MAC}:nfv-reader`, vd: 'aGkgCg', t: now },
    ])
  })
  it('5.1.6: the last record takes the base name of the third and the base time of the first', () => {
    const pack = `[{"bn":"2001:db8::2/","bt":1.320078429e+09,"n":"temperature","u":"Cel","v":25.2},{"n":"humidity","u":"%RH","v":30},
      {"bn":"2001:db8::1/","n":"temperature","u":"Cel","v":12.3},{"n":"humidity","u":"%RH","v":67}]`
    const t = 1320078429
    expect(resolveSenml(pack)).toEqual([
      { n: '2001:db8::2/temperature', u: 'Cel', v: 25.2, t },
      { n: '2001:db8::2/humidity', u: '%RH', v: 30, t },
      { n: '2001:db8::1/temperature', u: 'Cel', v: 12.3, t },
      { n: '2001:db8::1/humidity', u: '%RH', v: 67, t },
    ])
  })
  it('5.1.7: a first record of base fields only gives no record; times a tenth of a second ahead', () => {
    const pack = `[{"bn":"${MAC}:"},{"n":"temp","u":"Cel","v":23.1},{"n":"heat","u":"/","v":1},{"n":"fan","u":"/","v":0}]`
    expect(resolveSenml(pack, { now }).map((one) => one.n)).toEqual([`${MAC}:temp`, `${MAC}:heat`, `${MAC}:fan`])
    const lights = `[{"bt":1.320078429e+09,"bu":"/","n":"2001:db8::3","v":0.5},{"n":"2001:db8::4","v":0.5},
      {"n":"2001:db8::3","t":0.1,"v":0},{"n":"2001:db8::4","t":0.1,"v":0}]`
    expect(resolveSenml(lights).map((one) => [one.n, one.t, one.v])).toEqual([
      ['2001:db8::3', 1320078429, 0.5],
      ['2001:db8::4', 1320078429, 0.5],
      ['2001:db8::3', 1320078429.1, 0],
      ['2001:db8::4', 1320078429.1, 0],
    ])
  })
})

describe('the rules of RFC 8428, section 4', () => {
  const one = (record: object) => resolveSenml([{ n: 'a', v: 1, ...record }], { now })
  it('4.2, 4.5.4: base values and sums are added; a sum needs no value', () => {
    expect(
      resolveSenml(
        [
          { n: 'a', bv: 20, v: 0.5 },
          { n: 'a', v: -1, t: 1 },
        ],
        { now },
      ),
    ).toMatchObject([{ v: 20.5 }, { v: 19 }])
    expect(
      resolveSenml(
        [
          { n: 'a', bs: 100, s: 5 },
          { n: 'a', s: 7, t: 1 },
        ],
        { now },
      ),
    ).toMatchObject([{ s: 105 }, { s: 107 }])
  })
  it('4.2: exactly one value', () => {
    expect(problemsOf(() => one({ vs: 'x' }))).toMatchObject([{ path: '[0]', problem: 'has the values v and vs' }])
    expect(problemsOf(() => resolveSenml([{ n: 'a', t: 1 }], { now }))).toMatchObject([{ problem: 'has no value' }])
  })
  it('4.4: unknown fields are passed over, but those that end with an underscore and newer versions refuse the pack', () => {
    expect(one({ colour: 'green' })).toEqual([{ n: 'a', v: 1, t: now }])
    expect(problemsOf(() => one({ colour_: 'green' }))).toMatchObject([{ path: '[0].colour_' }])
    expect(problemsOf(() => one({ bver: 11 }))).toMatchObject([{ path: '[0].bver' }])
    expect(
      problemsOf(() =>
        resolveSenml(
          [
            { n: 'a', v: 1 },
            { n: 'a', v: 1, bver: 9 },
          ],
          { now },
        ),
      ),
    ).toMatchObject([{ path: '[1].bver' }])
    // RFC 9100, sections 2 and 3: version 26 is version 10 with the feature of secondary units (code 4).
    expect(one({ bver: 26 })).toMatchObject([{ bver: 26 }])
  })
  it('4.5.1: names', () => {
    for (const n of ['a b', '_a', '-a', '', 'ä', 'a?'])
      expect(
        problemsOf(() => one({ n })),
        n,
      ).toMatchObject([{ path: '[0].n' }])
    expect(problemsOf(() => resolveSenml([{ v: 1 }], { now }))).toMatchObject([{ path: '[0].n' }])
    expect(one({ n: '2001:db8::1/a.b-c_d' })).toHaveLength(1)
  })
  it('4.5.3: below 2^28 counts from now, and needs one', () => {
    expect(one({ t: 268435456 })[0]?.t).toBe(268435456)
    expect(one({ t: 268435455 })[0]?.t).toBe(now + 268435455)
    expect(one({ t: -60 })[0]?.t).toBe(now - 60)
    expect(problemsOf(() => resolveSenml([{ n: 'a', v: 1, t: -60 }]))).toMatchObject([{ path: '[0].t', value: '-60' }])
  })
  it('types of the fields, Table 2', () => {
    for (const wrong of [
      { v: '1' },
      { n: 1 },
      { u: null },
      { t: '0' },
      { vb: 1, v: undefined },
      { vd: 'a+b', v: undefined },
      { v: Number.NaN },
      { v: Infinity },
    ])
      expect(problemsOf(() => one(wrong)).length, JSON.stringify(wrong)).toBeGreaterThan(0)
    for (const pack of ['{}', '1', '"x"', 'null', '[1]', '[[]]', '[null]', '[', ''])
      problemsOf(() => resolveSenml(pack, { now }))
    expect(resolveSenml('[]')).toEqual([])
  })
})

describe('readings of a pack', () => {
  const value = (u: string | undefined, v: number, kind: ReadingKind) =>
    readingsFromSenml([{ n: 'x', t: 1.7e9, v, ...(u === undefined ? {} : { u }) }], { x: kind }).readings[0]?.value
  it('units of RFC 8428 section 12.1', () => {
    expect(value('Cel', 23.1, 'Temperature')).toBe(23.1)
    expect(value('K', 296.25, 'Temperature')).toBeCloseTo(23.1, 10)
    expect(value('%RH', 20, 'RelativeHumidity')).toBeCloseTo(0.2, 15)
    expect(value('/', 0.2, 'RelativeHumidity')).toBe(0.2)
    expect(value('S/m', 0.12, 'BulkEC')).toBeCloseTo(1.2, 12)
    expect(value('l', 2.5, 'Volume')).toBe(2.5)
    expect(value('m3', 0.0025, 'Volume')).toBeCloseTo(2.5, 12)
    expect(value('l/s', 0.001, 'Flow')).toBeCloseTo(3.6, 12)
    expect(value('m3/s', 1e-6, 'Flow')).toBeCloseTo(3.6, 12)
    expect(value('W/m2', 800, 'Irradiance')).toBe(800)
    expect(value('Pa', 980.665, 'SuctionHead')).toBeCloseTo(10, 10)
    expect(value('kg', 1.5, 'Mass')).toBeCloseTo(1500, 10)
    expect(value('/', 0.55, 'WaterContent')).toBe(0.55)
    // Note 2: "%" is a ratio and NOT a percentage.
    expect(value('%', 0.55, 'WaterContent')).toBe(0.55)
    expect(problemsOf(() => value('%', 55, 'WaterContent'))).toHaveLength(1)
    expect(value(undefined, 640, 'RawReading')).toBe(640)
  })
  it('secondary units of RFC 8798 section 3', () => {
    expect(value('/100', 55, 'WaterContent')).toBeCloseTo(0.55, 15)
    expect(value('/1000', 550, 'WaterContent')).toBeCloseTo(0.55, 15)
    expect(value('ppm', 2e5, 'Share')).toBeCloseTo(0.2, 15)
    expect(value('hPa', 1013.25, 'Pressure')).toBeCloseTo(101.325, 10)
    expect(value('mm/h', 3.2, 'ApplicationRate')).toBeCloseTo(3.2, 12)
    expect(value('h', 2, 'Duration')).toBe(7200)
    expect(value('min', 2, 'Duration')).toBe(120)
    expect(value('km/h', 36, 'WindSpeed')).toBeCloseTo(10, 12)
  })
  it('refuses a unit that is not that of the kind, and says which to send', () => {
    for (const [u, kind] of [
      ['Cel', 'WaterContent'],
      ['%RH', 'WaterContent'],
      ['m', 'Volume'],
      ['mS/cm', 'BulkEC'],
      [undefined, 'Temperature'],
      ['constructor', 'WaterContent'],
      ['lon', 'Latitude'],
      ['lat', 'Longitude'],
      ['rad', 'Latitude'],
    ] as const)
      expect(problemsOf(() => value(u, 0.5, kind))).toMatchObject([
        { path: '[0]', hint: expect.stringContaining('send') },
      ])
    expect(problemsOf(() => value('/', 1.2, 'WaterContent'))).toHaveLength(1)
  })
  it('finds the kind by the full name or its last part, and hands back what is not listed or no number', () => {
    const records = resolveSenml([
      { bn: 'urn:dev:ow:10e2073a01080063:', bt: 1.7e9, n: 'theta', u: '/', v: 0.5 },
      { n: 'bench/theta', u: '/', v: 0.4 },
      { n: 'door', vb: true },
      { n: 'other', v: 1 },
    ])
    const { readings, others } = readingsFromSenml(records, {
      theta: 'WaterContent',
      door: 'Share',
      'urn:dev:ow:10e2073a01080063:bench/theta': 'DegreeOfSaturation',
    })
    expect(readings.map((one) => one.kind)).toEqual(['WaterContent', 'DegreeOfSaturation'])
    expect(others.map((one) => one.n)).toEqual([
      'urn:dev:ow:10e2073a01080063:door',
      'urn:dev:ow:10e2073a01080063:other',
    ])
    expect(readingsFromSenml(records, {}).others).toHaveLength(4)
  })
})

describe('senmlFromReadings', () => {
  const sendable = (Object.keys(KINDS) as KindName[]).filter((kind) => {
    try {
      senmlFromReadings([{ time: now, source: 'a', kind, value: 1 }])
      return true
    } catch {
      return false
    }
  })
  it('covers the kinds for which the registry has a unit', () => {
    expect(sendable).toEqual(
      expect.arrayContaining([
        'WaterContent',
        'BulkEC',
        'Temperature',
        'Volume',
        'Flow',
        'SuctionHead',
        'Irradiance',
        'RelativeHumidity',
        'Illuminance',
        'Latitude',
      ]),
    )
    expect(sendable).not.toContain('PhotonFluxDensity')
  })
  it('sends what is read again to 1e-12', () => {
    fc.assert(
      fc.property(
        fc.array(
          fc.record({
            kind: fc.constantFrom(...sendable),
            value: between(1e-3, 1),
            after: fc.integer({ min: 0, max: 1e6 }),
          }),
          { minLength: 1, maxLength: 30 },
        ),
        (drawn) => {
          let time = 1_700_000_000
          const readings = drawn.map(({ kind, value, after }): TidyReading => {
            time += after
            return {
              time: instant(time),
              source: `urn:dev:ow:1:${kind}`,
              kind,
              value: kind === 'Permittivity' ? 1 + value : value,
            }
          })
          const pack = JSON.stringify(senmlFromReadings(readings, { baseName: 'urn:dev:ow:1:' }))
          const again = readingsFromSenml(resolveSenml(pack), Object.fromEntries(sendable.map((kind) => [kind, kind])))
          expect(again.others).toEqual([])
          expect(again.readings.map(({ value: _, ...rest }) => rest)).toEqual(
            readings.map(({ value: _, ...rest }) => rest),
          )
          again.readings.forEach(({ value }, i) => {
            const sent = readings[i]?.value as number
            // A temperature passes through kelvins, so that its digits are those of 273.15.
            expect(Math.abs(value - sent)).toBeLessThanOrEqual(
              1e-12 * Math.max(sent, readings[i]?.kind === 'Temperature' ? 273.15 : 0),
            )
          })
        },
      ),
      { numRuns: 200 },
    )
  })
  it('leaves missing readings out and saves the base time', () => {
    const readings: TidyReading[] = [
      { time: instant(1.7e9), source: 'a', kind: 'WaterContent', value: Number.NaN },
      { time: instant(1.7e9 + 60), source: 'a', kind: 'WaterContent', value: 0.5 },
      { time: instant(1.7e9 + 120), source: 'a', kind: 'RawReading', value: 640 },
    ]
    const expected: SenmlRecord[] = [
      { bt: 1.7e9 + 60, n: 'a', u: '/', v: 0.5 },
      { n: 'a', t: 60, v: 640 },
    ]
    expect(senmlFromReadings(readings)).toEqual(expected)
    expect(senmlFromReadings([])).toEqual([])
  })
  it('refuses what SenML cannot say, each by its place', () => {
    const good: TidyReading = { time: now, source: 'a', kind: 'WaterContent', value: 0.5 }
    const wrong = [
      { ...good, source: 'probe 1' },
      { ...good, kind: 'PhotonFluxDensity' as const },
      { ...good, time: instant(1000) },
      { ...good, value: 2 },
    ]
    expect(problemsOf(() => senmlFromReadings([good, ...wrong])).map((one) => one.path)).toEqual([
      '[1]',
      '[2]',
      '[3]',
      '[4]',
    ])
  })
})
