import fc from 'fast-check'
import {
  type DayOfUse,
  fallAhead,
  forecastDailyUse,
  forecastLevel,
  forecastTimeToLevel,
  hours,
  type LevelState,
  litres,
  minutes,
  runReducer,
  type Volume,
  type WaterContent,
  waterContent,
  waterContentChange,
  waterUseAhead,
  waterUseOfNextDay,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { randomNumbers } from '../../src/numerics/random.js'

const settings = { minRise: waterContentChange(0.01), maxRiseTime: minutes(40), maxStep: minutes(16) }
const forecaster = forecastLevel(settings)

/** Days with a shot every hour from 8 to 17 h and a fall that follows the clock, a little quicker or slower each day. */
function days(count: number, seed: number, { step = 300, offset = 0, noise = 0.0002 } = {}) {
  const { normal } = randomNumbers(seed)
  const readings: { time: number; waterContent: number }[] = []
  let level = 0.6
  let pace = 1
  for (let time = 0; time < count * 86400; time += step) {
    const clock = (time / 3600) % 24
    if (time % 86400 === 0) pace = 1 + 0.1 * normal()
    level -= ((pace * (clock > 7 && clock < 19 ? 0.012 : 0.004)) / 3600) * step
    if (clock >= 8 && clock <= 17 && time % 3600 === 0) level = Math.max(level, Math.min(0.6, level + 0.03))
    readings.push({ time, waterContent: level + noise * normal() + offset })
  }
  return readings
}

const run = (readings: readonly { time: number; waterContent: number }[]) =>
  runReducer({ reducer: forecaster, inputs: readings }).state

describe('lamps whose hours move', () => {
  /** Lamps burn for 14 h, two hours later every tenth day; under them the level falls three times as fast. A shot in the dark of each day. */
  function underLamps(count: number, seed: number) {
    const { normal } = randomNumbers(seed)
    let [level, pace] = [0.6, 1]
    return Array.from({ length: count * 288 }, (_, i) => {
      const [day, clock] = [Math.floor(i / 288), (i % 288) / 12]
      const on = 2 * (Math.floor(day / 10) % 12)
      const lit = (clock - on + 24) % 24 < 14
      if (i % 288 === 0) pace = 1 + 0.08 * normal()
      level -= (pace * (lit ? 0.006 : 0.002)) / 12
      if (Math.round(12 * ((on + 23) % 24)) === i % 288) level = 0.6
      return { time: 300 * i, waterContent: level + 0.0002 * normal() }
    })
  }
  it('are followed: forecasts stay within minutes, just after a move and later, and the wide band holds', () => {
    const [fresh, late]: [number[], number[]] = [[], []]
    let [inside, asked] = [0, 0]
    for (let seed = 1; seed <= 6; seed++) {
      const readings = underLamps(70, seed)
      let state = forecaster.start
      readings.forEach((reading, i) => {
        state = forecaster.step(state, reading)[0]
        const since = Math.floor(i / 288) % 10
        if (i < 20 * 288 || i % 288 !== 144) return
        const level = reading.waterContent - 0.015
        const left = readings.slice(i, i + 144).findIndex((one) => one.waterContent <= level)
        const shot = readings
          .slice(i, i + 144)
          .findIndex((one, k) => k > 0 && one.waterContent > readings[i + k - 1]!.waterContent + 0.01)
        const found = forecastTimeToLevel({ state, level: waterContent(level) })
        if (!found.known || left < 0 || (shot >= 0 && left > shot)) return
        asked++
        const { earliest, latest } = found.band90
        if (300 * left >= earliest - 300 && 300 * left <= (latest ?? Infinity) + 300) inside++
        ;(since < 2 ? fresh : since >= 4 ? late : []).push(Math.abs(found.time - 300 * left) / 3600)
      })
    }
    const middle = (list: number[]) => list.sort((a, b) => a - b)[list.length >> 1]!
    expect(asked).toBeGreaterThan(100)
    expect(inside / asked).toBeGreaterThan(0.85)
    expect(middle(fresh)).toBeLessThan(0.3)
    expect(middle(late)).toBeLessThan(0.3)
  })
})

describe('time to a level', () => {
  it('of a fall that follows the clock exactly is that of the clock', () => {
    // 0.004 an hour from 18:00 to 06:00, then 0.01: worked out by hand.
    const inputs = Array.from({ length: 8 * 96 }, (_, k) => {
      const clock = ((k * 900) / 3600 + 18) % 24
      const night = Math.min(clock >= 18 ? clock - 18 : clock + 6, 12)
      const day = clock >= 6 && clock < 18 ? clock - 6 : 0
      return { time: k * 900 + 18 * 3600, waterContent: 0.7 - 0.004 * night - 0.01 * (clock >= 18 ? 0 : day) }
    })
    // It stands at 02:00 in the eighth night: 0.7 - 8 × 0.004. To 0.632 are 4 h of night with 0.016 and 2 h of day with 0.02.
    const { state, outputs } = runReducer({ reducer: forecaster, inputs: inputs.slice(0, 7 * 96 + 33) })
    expect(outputs.at(-1)).toBe('drying')
    const found = forecastTimeToLevel({ state, level: waterContent(0.632) })
    expect(found).toMatchObject({ known: true })
    if (!found.known) return
    expect(found.from).toBeCloseTo(0.668, 9)
    expect(found.time / 3600).toBeCloseTo(6, 1)
    expect(found.band90.earliest).toBeLessThanOrEqual(found.band50.earliest)
    expect(found.band50.earliest).toBeLessThanOrEqual(found.time)
    expect(found.band50.latest).toBeGreaterThanOrEqual(found.time)
    expect(found.band90.latest).toBeGreaterThanOrEqual(found.band50.latest ?? Infinity)
    const fall = fallAhead({ state, ahead: hours(6) })
    expect(fall.known && fall.fall).toBeCloseTo(0.036, 3)
    expect(forecastTimeToLevel({ state, level: waterContent(0.7) })).toMatchObject({ known: true, time: 0 })
    expect(forecastTimeToLevel({ state, level: waterContent(0.01) })).toMatchObject({
      known: false,
      reason: 'beyond-two-days',
    })
  })

  it('says why it is not known', () => {
    expect(forecastTimeToLevel({ state: forecaster.start, level: waterContent(0.5) })).toEqual({
      known: false,
      reason: 'no-reading',
    })
    const readings = days(5, 1)
    const reasons = new Set<string>()
    let state = forecaster.start
    for (const reading of readings) {
      const [next, phase] = forecaster.step(state, reading)
      state = next
      const found = forecastTimeToLevel({ state, level: waterContent(0.45) })
      reasons.add(found.known ? 'known' : found.reason)
      if (phase !== 'drying') expect(found).toEqual({ known: false, reason: phase })
    }
    expect([...reasons].sort()).toEqual(['draining', 'few-dry-downs', 'known', 'shot'])
  })

  it('holds half and nine tenths of the outcomes of nights that differ at random', () => {
    let [asked, in50, in90] = [0, 0, 0]
    const readings = days(200, 5)
    let state: LevelState = forecaster.start
    readings.forEach((reading, i) => {
      state = forecaster.step(state, reading)[0]
      if (i < 30 * 288 || reading.time % 86400 !== 79200) return
      const found = forecastTimeToLevel({ state, level: (reading.waterContent - 0.02) as WaterContent })
      const reached = readings
        .slice(i + 1, i + 150)
        .find(({ waterContent: content }) => content <= reading.waterContent - 0.02)
      if (!found.known || reached === undefined) return
      const real = reached.time - reading.time
      asked++
      if (real >= found.band50.earliest - 150 && real <= (found.band50.latest ?? Infinity) + 150) in50++
      if (real >= found.band90.earliest - 150 && real <= (found.band90.latest ?? Infinity) + 150) in90++
    })
    expect(asked).toBeGreaterThan(160)
    expect(in50 / asked).toBeGreaterThan(0.4)
    expect(in50 / asked).toBeLessThan(0.65)
    expect(in90 / asked).toBeGreaterThan(0.84)
    expect(in90 / asked).toBeLessThan(0.97)
  })

  it('is the same for a probe that stands off by a constant', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -0.3, max: 0.3, noNaN: true }),
        fc.integer({ min: 0, max: 1000 }),
        (offset, seed) => {
          const plain = run(days(6, seed))
          const shifted = run(days(6, seed, { offset }))
          expect(shifted.dryDowns).toBe(plain.dryDowns)
          const [a, b] = [
            forecastTimeToLevel({ state: plain, level: waterContent(0.45) }),
            forecastTimeToLevel({ state: shifted, level: (0.45 + offset) as WaterContent }),
          ]
          expect(b.known).toBe(a.known)
          if (a.known && b.known) {
            expect(Math.abs(b.time - a.time)).toBeLessThan(0.01)
            expect(Math.abs(b.band90.earliest - a.band90.earliest)).toBeLessThan(0.01)
          }
          const [fallA, fallB] = [fallAhead({ state: plain }), fallAhead({ state: shifted })]
          if (fallA.known && fallB.known) expect(fallB.fall).toBeCloseTo(fallA.fall, 9)
        },
      ),
      { numRuns: 20 },
    )
  })

  it('goes on bit for bit from a state that was kept as JSON, and never has a number that JSON cannot hold', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 6 * 288 - 1 }), fc.integer({ min: 0, max: 1000 }), (cut, seed) => {
        const readings = days(6, seed).map((one, i) => (i % 97 === 3 ? { ...one, waterContent: Number.NaN } : one))
        const whole = run(readings)
        const kept = JSON.stringify(run(readings.slice(0, cut)))
        const state = forecaster.restore(JSON.parse(kept))
        expect(JSON.stringify(state)).toBe(kept)
        const rest = runReducer({ reducer: forecaster, inputs: readings.slice(cut), state }).state
        expect(rest).toStrictEqual(whole)
      }),
      { numRuns: 15 },
    )
  })

  it('uses the volume of the medium in proportion', () => {
    const state = run(days(6, 3))
    const [one, ten] = [1, 10].map((volume) => waterUseAhead({ state, substrateVolume: litres(volume) }))
    if (!one?.known || !ten?.known) throw new Error('not known')
    expect(ten.use).toBeCloseTo(10 * one.use, 12)
    expect(ten.band90[1]).toBeCloseTo(10 * one.band90[1], 12)
  })

  it('is not stopped by a gap, a clock that goes back, a repeated time or a wild reading', () => {
    const readings = days(8, 9)
    const rough = [
      ...readings.slice(0, 900),
      ...readings.slice(1100, 1300),
      ...readings.slice(1250, 1400),
      { time: Number.NaN, waterContent: 0.5 },
      { time: 1400 * 300, waterContent: Infinity },
      ...readings.slice(1400).map((one, i) => (i === 200 ? { ...one, waterContent: 0.9 } : one)),
    ]
    const state = run(rough)
    expect(state.dryDowns).toBeGreaterThan(4)
    expect(JSON.parse(JSON.stringify(state))).toStrictEqual(state)
  })

  it('works with a reading an hour, and with one a minute', () => {
    for (const step of [60, 900, 3600]) {
      const quick = forecastLevel({ ...settings, maxStep: hours(2), maxRiseTime: hours(2) })
      const readings = days(10, 4, { step })
      const { state } = runReducer({ reducer: quick, inputs: readings.slice(0, Math.round((9.95 * 86400) / step)) })
      const fall = fallAhead({ state, ahead: hours(1) })
      // The night falls by 0.004 an hour, times a pace that differs by a tenth.
      expect(fall.known && fall.fall).toBeGreaterThan(0.003)
      expect(fall.known && fall.fall).toBeLessThan(0.005)
      expect(JSON.stringify(state).length).toBeLessThan(8000)
    }
  })

  it('refuses milliseconds, senseless limits and states that were changed', () => {
    expect(() => forecaster.step(forecaster.start, { time: 1.6e12, waterContent: 0.5 })).toThrow('milliseconds')
    expect(() => forecastLevel({ ...settings, drainTime: minutes(2000) })).toThrow('drainTime')
    const state = run(days(4, 2))
    expect(() => forecastTimeToLevel({ state, level: 5 as WaterContent })).toThrow('level')
    expect(() => fallAhead({ state, ahead: hours(30) })).toThrow('ahead')
    const kept = JSON.parse(JSON.stringify(state)) as Record<string, unknown>
    const changed: [string, unknown][] = [
      ['usualFall', 'a'],
      ['usualFall', null],
      ['usualFall', -1],
      ['dryDowns', 1.5],
      ['falls', [1]],
      ['falls', Array.from({ length: 48 }, () => 'x')],
      ['rings', []],
      ['rings', [1, 2, 3, 4]],
      ['shots', {}],
      ['dryDown', { start: 3 }],
      ['settled', 'soon'],
    ]
    for (const [field, value] of changed)
      expect(() => forecaster.restore({ ...kept, [field]: value })).toThrow(`state.${field}`)
    for (const field of Object.keys(kept))
      expect(() => forecaster.restore({ ...kept, [field]: undefined })).toThrow(`state.${field}`)
    for (const nothing of [null, undefined, 3, 'x']) expect(() => forecaster.restore(nothing)).toThrow('not an object')
  })

  it('a stored dry-down whose times became ten or a million times larger is refused, and nothing is searched for ever', () => {
    const state = run(days(4, 2))
    const { dryDown, shots } = JSON.parse(JSON.stringify(state)) as typeof state
    if (dryDown === null || dryDown.replay.length === 0) throw new Error('the record should end in a dry-down')
    const drying = (change: Partial<typeof dryDown>) => ({ ...state, dryDown: { ...dryDown, ...change } })
    for (const times of [10, 1e6, -1, 1e290]) {
      const recent = dryDown.recent.map(([t, level, count]) => [t * times, level, count] as const)
      expect(() => forecaster.restore(drying({ recent }))).toThrow('state.dryDown.recent')
      const replay = dryDown.replay.map(({ time, level }) => ({ time: time * times, level }))
      expect(() => forecaster.restore(drying({ replay }))).toThrow('state.dryDown.replay')
      expect(() => forecaster.restore(drying({ start: dryDown.start * times }))).toThrow('state.dryDown')
      const last = (shots.last as number) * times
      expect(() => forecaster.restore({ ...state, shots: { ...shots, last } })).toThrow('state.dryDown')
    }
    const far = { ...state, shots: { ...shots, last: 1e18 } }
    expect(() => fallAhead({ state: far })).toThrow('state.shots.last')
    expect(() => forecastTimeToLevel({ state: far, level: waterContent(0.1) })).toThrow('state.shots.last')
  })
})

describe('use of the next day', () => {
  const daily = forecastDailyUse()
  const season = (count: number, seed: number, scale = 1, power = 0.4) => {
    const { normal, uniform } = randomNumbers(seed)
    return Array.from({ length: count }, (_, d): DayOfUse => {
      const radiation = 500 + 2000 * uniform()
      const use = scale * (1 + 0.02 * d) * (radiation / 1500) ** power * Math.exp(0.08 * normal())
      return { use: use as Volume, radiation, expectedRadiation: radiation }
    })
  }
  const learnt = (inputs: readonly DayOfUse[]) => runReducer({ reducer: daily, inputs }).state

  it('of days that are all the same is that day, with bands that close in', () => {
    const inputs = Array.from({ length: 80 }, () => ({ use: litres(2.5), radiation: 900, expectedRadiation: 900 }))
    const found = waterUseOfNextDay({ state: learnt(inputs), expectedRadiation: 900 })
    expect(found).toMatchObject({ known: true })
    if (!found.known) return
    expect(found.use).toBeCloseTo(2.5, 12)
    expect(found.band90[1] - found.band90[0]).toBeLessThan(0.1)
  })

  it('follows radiation, and holds nine tenths of the days', () => {
    const inputs = season(150, 3)
    let state = daily.start
    let [asked, in90, in50, with2, without2] = [0, 0, 0, 0, 0]
    inputs.forEach((day, d) => {
      const found = waterUseOfNextDay({ state, expectedRadiation: day.radiation ?? null })
      const blind = waterUseOfNextDay({ state })
      const use = day.use as number
      if (d >= 20 && found.known && blind.known) {
        asked++
        if (use >= found.band90[0] && use <= found.band90[1]) in90++
        if (use >= found.band50[0] && use <= found.band50[1]) in50++
        with2 += (found.use / use - 1) ** 2
        without2 += (blind.use / use - 1) ** 2
      }
      state = daily.step(state, day)[0]
    })
    expect(in90 / asked).toBeGreaterThan(0.84)
    expect(in90 / asked).toBeLessThan(0.96)
    expect(in50 / asked).toBeGreaterThan(0.4)
    expect(in50 / asked).toBeLessThan(0.6)
    // Noise of 8 % a day is all that is left; without radiation the sun stays in it.
    expect(Math.sqrt(with2 / asked)).toBeLessThan(0.13)
    expect(Math.sqrt(without2 / asked)).toBeGreaterThan(0.16)
  })

  it('scales with the volumes and does not ask for the unit of the radiation', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 1000, noNaN: true }),
        fc.integer({ min: 0, max: 1000 }),
        (scale, seed) => {
          const plain = season(40, seed)
          const scaled = season(40, seed, scale).map((day) => ({
            ...day,
            radiation: (day.radiation as number) * 0.0864,
            expectedRadiation: (day.expectedRadiation as number) * 0.0864,
          }))
          const a = waterUseOfNextDay({ state: learnt(plain), expectedRadiation: 1000 })
          const b = waterUseOfNextDay({ state: learnt(scaled), expectedRadiation: 86.4 })
          if (!a.known || !b.known) throw new Error('not known')
          expect(b.use / scale / a.use).toBeCloseTo(1, 9)
          expect(b.band90[0] / scale).toBeCloseTo(a.band90[0], 8)
        },
      ),
    )
  })

  it('goes on bit for bit from a state that was kept as JSON', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 59 }), fc.integer({ min: 0, max: 1000 }), (cut, seed) => {
        const inputs = season(60, seed).map((day, d) =>
          d % 11 === 4 ? { use: null } : d % 7 === 2 ? { use: day.use, radiation: day.radiation ?? null } : day,
        )
        const kept = JSON.stringify(learnt(inputs.slice(0, cut)))
        expect(kept.length).toBeLessThan(4000)
        const state = daily.restore(JSON.parse(kept))
        expect(runReducer({ reducer: daily, inputs: inputs.slice(cut), state }).state).toStrictEqual(learnt(inputs))
      }),
      { numRuns: 30 },
    )
  })

  it('passes over days without use, and comes back after an empty house', () => {
    const empty = Array.from({ length: 2000 }, () => ({ use: litres(0) }))
    const wild = [1e9, 1e-9, -5, 1e9].map((use) => ({ use: use as Volume }))
    const inputs = [...season(30, 1, 5), ...empty, ...season(40, 2, 0.5), ...wild, ...season(40, 2, 0.5)]
    const found = waterUseOfNextDay({ state: learnt(inputs) })
    expect(found.known && found.use).toBeGreaterThan(0.3)
    expect(found.known && found.use).toBeLessThan(3)
    expect(learnt(empty)).toStrictEqual(learnt([]))
  })

  it('is not known in the first week, and without expected radiation in the past it does not use it', () => {
    expect(waterUseOfNextDay({ state: daily.start })).toEqual({ known: false, reason: 'few-days' })
    const blind = season(30, 4).map(({ use, radiation }) => ({ use, radiation: radiation ?? null }))
    const state = learnt(blind)
    expect(waterUseOfNextDay({ state, expectedRadiation: 100 })).toEqual(waterUseOfNextDay({ state }))
  })

  it('refuses what cannot be, and states that were changed', () => {
    expect(() => daily.step(daily.start, { use: Infinity as Volume })).toThrow('use')
    expect(() => daily.step(daily.start, { use: '2' as unknown as Volume })).toThrow('use')
    expect(() => daily.step(daily.start, { use: litres(2), radiation: -1 })).toThrow('radiation')
    expect(() => waterUseOfNextDay({ state: learnt(season(9, 1)), expectedRadiation: -1 })).toThrow('expectedRadiation')
    const kept = JSON.parse(JSON.stringify(learnt(season(30, 1)))) as Record<string, unknown>
    for (const [field, value] of [
      ['days', -1],
      ['levels', [1, 2]],
      ['levels', [1, 2, 3, 4, 5, 6, 7, 0]],
      ['spreads', [1, 2, 3, 4, 5, 6, 7, Number.NaN]],
      ['usualRadiation', 'x'],
      ['without', { losses: [] }],
      ['withRadiation', null],
    ] as const)
      expect(() => daily.restore({ ...kept, [field]: value })).toThrow(`state.${field}`)
    for (const field of Object.keys(kept))
      expect(() => daily.restore({ ...kept, [field]: undefined })).toThrow(`state.${field}`)
  })
})
