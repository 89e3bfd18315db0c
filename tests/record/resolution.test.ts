import fc from 'fast-check'
import {
  checkReadings,
  compareProbes,
  estimateNoise,
  explainRecordFinding,
  findClimbs,
  findDryDowns,
  findShots,
  fitExponentialDryDown,
  flatLineLimits,
  flatLineTest,
  hours,
  minutes,
  rateOfChangeTest,
  runReducer,
  spikeTest,
  watchReadings,
  watchShots,
  waterContentChange,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { expectInputError } from '../support/refusals.js'
import { normalFrom } from './random.js'

const rounded = (values: readonly number[], step: number) => values.map((x) => Math.round(x / step) * step)

describe('noise of rounded readings', () => {
  // Rounding to a step adds a variance of step²/12 (Bennett 1948, Bell System Technical Journal 27:446-472: from memory).
  it.each([0.05, 0.1, 0.2, 0.3, 0.4, 0.5, 0.7, 1, 2, 5])(
    'of %f steps is found to a third, without a factor of two',
    (share) => {
      const normal = normalFrom(3)
      const value = rounded(
        Array.from({ length: 20000 }, (_, i) => 0.6 - i * 3e-6 + share * 0.001 * normal()),
        0.001,
      )
      const noise = estimateNoise({ value })
      if (!noise.known) throw new Error(noise.reason)
      const real = 0.001 * Math.sqrt(share ** 2 + 1 / 12)
      expect(noise.standardDeviation / real).toBeGreaterThan(0.7)
      expect(noise.standardDeviation / real).toBeLessThan(1.3)
      expect(noise.step).toBeCloseTo(0.001, 9)
    },
  )
  it('and flat-line limits leave a healthy record alone, at any step and any pace, but find a probe that froze', () => {
    for (const [step, every] of [
      [0.0001, 300],
      [0.001, 60],
      [0.001, 3600],
      [0.01, 3600],
      [0.01, 300],
    ] as const) {
      const normal = normalFrom(7)
      const count = Math.round((20 * 86400) / every)
      // A fall of 0.03 a day, watered back every evening.
      const value = rounded(
        Array.from({ length: count }, (_, i) => 0.6 - (0.03 * ((i * every) % 86400)) / 86400 + 0.0003 * normal()),
        step,
      )
      const limits = flatLineLimits({ noise: estimateNoise({ value }) })
      if (!limits.known) throw new Error(limits.reason)
      const flagged = flatLineTest({ ...limits, value }).filter((flag) => flag === 3 || flag === 4).length
      expect(flagged / count).toBeLessThan(0.01)
      const from = count >> 1
      const frozen = value.map((x, i) => (i >= from ? value[from]! : x))
      const limitsThen = flatLineLimits({ noise: estimateNoise({ value: frozen }) })
      if (!limitsThen.known) throw new Error(limitsThen.reason)
      expect(flatLineTest({ ...limitsThen, value: frozen }).at(-1)).toBe(4)
    }
  })
  it('are known of a record that never moves, and not of a few readings', () => {
    const value = new Array<number>(200).fill(0)
    const limits = flatLineLimits({ noise: estimateNoise({ value }) })
    expect(limits).toMatchObject({ known: true })
    if (limits.known) expect(flatLineTest({ ...limits, value }).at(-1)).toBe(4)
    expect(flatLineLimits({ noise: estimateNoise({ value: [1, 2, 3] }) })).toEqual({
      known: false,
      reason: 'few-readings',
    })
  })
})

describe('noise of a record', () => {
  const zigzag = (count: number) => Array.from({ length: count }, (_, i) => i % 2)
  it('is known from twenty readings on that have two neighbours', () => {
    expect(estimateNoise({ value: zigzag(21) })).toEqual({ known: false, reason: 'few-readings', readings: 19 })
    expect(estimateNoise({ value: zigzag(22) })).toMatchObject({ known: true, readings: 20 })
  })
  it('has a step that one in twenty is smaller than', () => {
    // Steps of 1 to 40, up and down, and a last one that has no neighbour.
    const value = [0]
    for (let size = 1; size <= 41; size++) value.push(value.at(-1)! + (size % 2 === 0 ? -size : size))
    expect(estimateNoise({ value })).toMatchObject({ step: 3 })
  })
  it('has a run of equal readings that one in twenty is longer than', () => {
    // Runs of 1 to 26 readings: 0.95 of the way from the first to the last is 24.75.
    const value = Array.from({ length: 26 }, (_, k) => new Array<number>(k + 1).fill(k % 2)).flat()
    expect(estimateNoise({ value })).toMatchObject({ longRun: 24 })
  })
})

describe('a probe that falls to a flat 0.0', () => {
  const normal = normalFrom(5)
  const value = Array.from({ length: 400 }, (_, i) =>
    i < 300 ? Math.round(1000 * (0.6 + 0.001 * normal())) / 1000 : 0,
  )
  const time = value.map((_, i) => 300 * i)
  it('is suspect from its first reading there by the range of its sensor alone', () => {
    const { flags, tests } = checkReadings({
      time,
      value,
      expectedStep: minutes(5),
      grossRange: { sensorMin: 0, sensorMax: 1 },
    })
    expect(flags[299]).toBe(1)
    expect([...flags.subarray(300)].every((flag) => flag === 3)).toBe(true)
    expect(tests.stuckAtEnd?.[350]).toBe(3)
  })
  it('fails the flat line test, whose limits come from its own record', () => {
    const flat = flatLineLimits({ noise: estimateNoise({ value }) })
    if (!flat.known) throw new Error(flat.reason)
    const { flags } = checkReadings({ time, value, expectedStep: minutes(5), flatLine: flat })
    expect(flags[399]).toBe(4)
  })
  it('is not light that fades to zero, nor air that becomes saturated', () => {
    const light = Array.from({ length: 100 }, (_, i) => Math.max(0, 500 - 10 * i))
    const checked = checkReadings({
      time: light.map((_, i) => 300 * i),
      value: light,
      expectedStep: minutes(5),
      grossRange: { sensorMin: 0, sensorMax: 1000 },
    })
    expect(checked.counts.suspect).toBe(0)
  })
})

describe('rate of change by standard deviations', () => {
  const limits = { deviations: { count: 3, over: hours(25) } }
  // QARTOD, Test 7: a change larger than N_DEV standard deviations of the readings of TIM_DEV, worked out here apart.
  it('agrees with the definition where the window is the whole record', () => {
    const normal = normalFrom(9)
    const value = Array.from({ length: 80 }, (_, i) => 0.5 + 0.01 * normal() + (i === 60 ? 0.06 : 0))
    const time = value.map((_, i) => 900 * i)
    const flags = rateOfChangeTest({ time, value, ...limits })
    expect([...flags.subarray(0, 10)].every((flag) => flag === 2)).toBe(true)
    value.slice(10).forEach((x, k) => {
      const i = k + 10
      const past = value.slice(0, i)
      const mean = past.reduce((sum, one) => sum + one / i, 0)
      const deviation = Math.sqrt(past.reduce((sum, one) => sum + (one - mean) ** 2, 0) / (i - 1))
      expect(flags[i]).toBe(Math.abs(x - value[i - 1]!) > 3 * deviation ? 3 : 1)
    })
    expect(flags[60]).toBe(3)
  })
  it('forgets what lies before, and keeps the fixed limit beside it', () => {
    // Wild for a day, quiet for two: a step of 0.01 is nothing then and much now.
    const value = Array.from(
      { length: 3 * 96 },
      (_, i) => 0.5 + (i < 96 ? 0.05 : 0.001) * Math.sin(i * i) + (i >= 280 ? 0.01 : 0),
    )
    const time = value.map((_, i) => 900 * i)
    expect(rateOfChangeTest({ time, value, ...limits })[280]).toBe(3)
    expect(rateOfChangeTest({ time, value, ...limits, direction: 'fall' })[280]).toBe(1)
    expect(rateOfChangeTest({ time, value, max: 1e-5, deviations: { count: 1000, over: hours(25) } })[280]).toBe(3)
    expectInputError(() => rateOfChangeTest({ time, value }), 'max')
  })
})

describe('words of options', () => {
  it('are refused where they are misspelt', () => {
    const input = { time: [0, 300], value: [1, 2] }
    expectInputError(() => rateOfChangeTest({ ...input, max: 1, direction: 'up' as never }), 'direction')
    expectInputError(() => spikeTest({ ...input, suspect: 1, fail: 2, direction: 'up' as never }), 'direction')
    expectInputError(
      () =>
        checkReadings({ ...input, expectedStep: minutes(5), spike: { suspect: 1, fail: 2, direction: '' as never } }),
      'direction',
    )
  })
})

describe('an offset of a probe', () => {
  // In steps of a thousandth a rise of exactly the least one comes often: its digits must not decide.
  it('makes and hides no shot', () => {
    fc.assert(
      fc.property(fc.integer({ min: -200, max: 200 }), fc.integer({ min: 0, max: 1000 }), (offset, seed) => {
        const normal = normalFrom(seed)
        let level = 500
        const steps = Array.from({ length: 300 }, (_, i) => {
          level += i % 20 === 19 ? 10 + Math.round(2 * normal()) : Math.round(normal() - 0.5)
          return level
        })
        const shots = (shift: number) =>
          findShots({
            time: steps.map((_, i) => 300 * i),
            waterContent: steps.map((x) => (x + shift) / 1000),
            minRise: waterContentChange(0.01),
            maxRiseTime: minutes(30),
            maxStep: minutes(8),
          }).map(({ startIndex, peakIndex }) => [startIndex, peakIndex])
        expect(shots(offset)).toEqual(shots(0))
      }),
    )
  })
  it('and a record by the second leaves a state below 4 kB', () => {
    const watch = watchShots({ minRise: waterContentChange(0.01), maxRiseTime: minutes(60), maxStep: minutes(8) })
    const inputs = Array.from({ length: 20000 }, (_, i) => ({ time: i, waterContent: 0.3 + i * 1e-9 }))
    expect(JSON.stringify(runReducer({ reducer: watch, inputs }).state).length).toBeLessThan(4000)
  })
})

describe('states that were kept', () => {
  const readings = watchReadings({
    expectedStep: minutes(5),
    grossRange: { sensorMin: 0, sensorMax: 1 },
    rateOfChange: { deviations: { count: 3, over: hours(25) } },
    flatLine: { tolerance: 0.0001, suspectAfter: 4, failAfter: 8 },
  })
  const shots = watchShots({ minRise: waterContentChange(0.01), maxRiseTime: minutes(40), maxStep: minutes(8) })
  const inputs = Array.from({ length: 300 }, (_, i) => ({
    time: 300 * i,
    value: 0.5 + 0.01 * Math.sin(i),
    waterContent: i > 297 ? 0.6 : 0.5 + 0.001 * Math.sin(i),
  }))
  it.each([
    ['readings', readings],
    ['shots', shots],
  ] as const)('of %s are read back as they were, and refused where they were changed', (_, watch) => {
    const { state } = runReducer({ reducer: watch as typeof readings, inputs })
    const kept = JSON.parse(JSON.stringify(state)) as Record<string, unknown>
    expect(watch.restore(kept)).toStrictEqual(state)
    for (const field of Object.keys(kept)) {
      expect(() => watch.restore({ ...kept, [field]: 'x' })).toThrow(`state.${field}`)
      expect(() => watch.restore({ ...kept, [field]: undefined })).toThrow(`state.${field}`)
    }
    expect(() => watch.restore(3)).toThrow('not an object')
  })
  it('refuse text where a reading belongs', () => {
    expect(() => shots.step(shots.start, { time: 0, waterContent: '0.5' as never })).toThrow('is a string')
    expect(() => readings.step(readings.start, { time: 0, value: '0.5' as never })).toThrow('is a string')
    expect(readings.step(readings.start, { time: 0, value: null as never })[0].waiting).toEqual({
      time: 0,
      value: null,
    })
  })
})

describe('a level that climbs between shots', () => {
  const limits = { drainTime: minutes(0), maxStep: hours(1), minDuration: hours(2) }
  const time = Array.from({ length: 96 }, (_, i) => 900 * i)
  const climbs = (content: number[]) =>
    findClimbs({
      time,
      waterContent: content,
      dryDowns: findDryDowns({ time, waterContent: content, shots: [], ...limits }),
      minRise: waterContentChange(0.01),
    })
  it('is not looked for beyond the series: a stretch of another one is refused, where it once ran for ever', () => {
    const [stretch] = findDryDowns({ time, waterContent: time.map((_, i) => 0.6 - 0.0008 * i), shots: [], ...limits })
    for (const change of [{ last: 1e300 }, { last: 96 }, { first: -1 }, { first: Number.NaN }, { last: null }])
      expectInputError(
        () =>
          findClimbs({
            time,
            waterContent: time,
            dryDowns: [{ ...stretch!, ...change } as never],
            minRise: waterContentChange(0.01),
          }),
        /^dryDowns\[0\]$/,
      )
  })
  it('is told with its time and height, and a dry-down is not', () => {
    const normal = normalFrom(2)
    const dry = time.map((_, i) => 0.6 - 0.0008 * i + 0.0005 * normal())
    expect(climbs(dry)).toEqual([])
    const leak = dry.map((x, i) => x + 0.002 * Math.max(0, i - 50))
    const [found] = climbs(leak)
    // The valve begins to leak at 12:30 and adds 0.0012 more than the plants take in a quarter of an hour.
    expect(found?.code).toBe('climbs-between-shots')
    expect(Math.abs((found?.start ?? 0) - 50 * 900)).toBeLessThan(2 * 3600)
    expect(found?.rise).toBeCloseTo(45 * 0.0012, 2)
    expect(found && explainRecordFinding(found).message).toMatch(/climbs by 5\.\d\d points in 1\d\.\d h without a shot/)
  })
})

describe('probes of which one moved', () => {
  it('are told apart, whatever their offsets: the one is named, and no healthy neighbour', () => {
    let accused = 0
    for (let seed = 0; seed < 80; seed++) {
      const normal = normalFrom(seed)
      const time = Array.from({ length: 8 * 48 }, (_, i) => 1800 * i)
      const moved = seed % 3
      const probes = [0, 1, 2].map((k) => {
        const offset = 0.05 * normal()
        return {
          name: `${k}`,
          waterContent: time.map((t) => 0.55 + offset - (k === moved ? (0.012 * t) / 86400 : 0) + 0.002 * normal()),
        }
      })
      const found = compareProbes({ time, probes, driftPerDay: 0.004 })
      expect(found[moved]?.findings.map(({ code }) => code)).toEqual(['falls-away'])
      expect(found[moved]?.driftPerDay).toBeCloseTo(-0.012, 2)
      accused += found.filter(({ findings }, k) => k !== moved && findings.length > 0).length
    }
    expect(accused).toBe(0)
  })
})

describe('an asymptote that is a guess', () => {
  it('is not known, and one that was nearly reached is narrow', () => {
    const normal = normalFrom(4)
    const time = Array.from({ length: 100 }, (_, i) => 600 * i)
    const course = (constants: number, noise: number) =>
      time.map((t) => 0.4 + 0.1 * Math.exp((-t * constants) / 60000) + noise * normal())
    expect(fitExponentialDryDown({ time, waterContent: course(0.8, 0.002) })).toMatchObject({ known: false })
    const near = fitExponentialDryDown({ time, waterContent: course(4, 0.0004) })
    expect(near).toMatchObject({ known: true })
    if (!near.known) return
    expect(near.asymptoteLow).toBeLessThan(0.4005)
    expect(near.asymptoteHigh).toBeGreaterThan(0.3995)
    expect(near.asymptoteHigh - near.asymptoteLow).toBeLessThan(0.02)
  })
})

describe('words', () => {
  it('stand for every code', () => {
    expect(explainRecordFinding({ code: 'few-dry-downs' }).message).toContain('three dry-downs')
    expect(() => explainRecordFinding({ code: 'no-such-code' as never })).toThrow(/no code of this topic/)
    for (const finding of [
      { code: 'falls-away', level: 'caution', about: 'A', perDay: -0.01 },
      { code: 'rises-away', level: 'caution', about: 'A', perDay: 0.01 },
      { code: 'noisy', level: 'caution', about: 'A', standardDeviation: 0.006, usual: 0.001 },
      { code: 'probe-sees-little', level: 'caution', share: 0.3 },
      { code: 'probe-sees-much', level: 'caution', share: 1.8 },
      { code: 'few-shots', level: 'note', shots: 2 },
      { code: 'reading-rises-with-salt', level: 'caution', levelPerDay: 0.004, drainPerDay: 0.3 },
      { code: 'above-capacity', level: 'caution', max: 0.7, containerCapacity: 0.65 },
    ] as const)
      expect(explainRecordFinding(finding).message).toMatch(/\d/)
  })
})
