import fc from 'fast-check'
import {
  checkReadings,
  estimateNoise,
  findShots,
  minutes,
  runReducer,
  splitRecord,
  utcFromLocal,
  watchReadings,
  watchShots,
  waterContentChange,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { expectDomainError, expectInputError } from '../support/refusals.js'
import { normalFrom } from './random.js'

/** Records with shots, noise, missing readings, gaps and clocks that go back. */
const records = fc
  .array(
    fc.record({
      step: fc.oneof(
        { weight: 20, arbitrary: fc.constant(300) },
        { weight: 1, arbitrary: fc.integer({ min: -4000, max: 8000 }) },
      ),
      change: fc.oneof(
        { weight: 8, arbitrary: fc.double({ min: -0.004, max: 0.003, noNaN: true }) },
        { weight: 2, arbitrary: fc.double({ min: 0, max: 0.03, noNaN: true }) },
        { weight: 1, arbitrary: fc.constant(0) },
      ),
      missing: fc.integer({ min: 0, max: 19 }),
    }),
    { maxLength: 250 },
  )
  .map((steps) => {
    let [now, level] = [0, 0.5]
    const time: number[] = []
    const value: number[] = []
    for (const { step, change, missing } of steps) {
      now += step
      level += change
      time.push(now)
      value.push(missing === 0 ? Number.NaN : level)
    }
    return { time, value }
  })
const limits = { minRise: waterContentChange(0.01), maxRiseTime: minutes(30), maxStep: minutes(12) }
const tests = {
  expectedStep: minutes(5),
  grossRange: { sensorMin: 0, sensorMax: 1, expectedMin: 0.4, expectedMax: 0.7 },
  spike: { suspect: 0.005, fail: 0.01, direction: 'fall' },
  rateOfChange: { max: 0.00001, direction: 'fall' },
  flatLine: { tolerance: 0.0005, suspectAfter: 3, failAfter: 5 },
} as const
const json = <T>(state: T): T => JSON.parse(JSON.stringify(state)) as T

describe('readings that come in one by one', () => {
  it('give the shots of the whole record, whenever the state was written down and read back', () => {
    fc.assert(
      fc.property(records, fc.nat(), ({ time, value }, cut) => {
        const watch = watchShots(limits)
        const inputs = time.map((t, i) => ({ time: t, waterContent: value[i]! }))
        const at = cut % (inputs.length + 1)
        const first = runReducer({ reducer: watch, inputs: inputs.slice(0, at) })
        const rest = runReducer({ reducer: watch, inputs: inputs.slice(at), state: json(first.state) })
        expect([...first.outputs, ...rest.outputs].flat().concat(watch.finish(rest.state))).toEqual(
          findShots({ time, waterContent: value, ...limits }),
        )
      }),
      { numRuns: 400 },
    )
  })
  it('get the flags of the whole record, whenever the state was written down and read back', () => {
    fc.assert(
      fc.property(records, fc.nat(), ({ time, value }, cut) => {
        const watch = watchReadings(tests)
        const inputs = time.map((t, i) => ({ time: t, value: value[i]! }))
        const at = cut % (inputs.length + 1)
        const first = runReducer({ reducer: watch, inputs: inputs.slice(0, at) })
        const rest = runReducer({ reducer: watch, inputs: inputs.slice(at), state: json(first.state) })
        const verdicts = [...first.outputs, ...rest.outputs].flat().concat(watch.finish(rest.state))
        const whole = checkReadings({ ...tests, time, value })
        expect(verdicts.map((verdict) => verdict.flag)).toEqual(Array.from(whole.flags))
        expect(verdicts.map((verdict) => verdict.index)).toEqual(time.map((_, i) => i))
        for (const name of Object.keys(whole.tests))
          expect(verdicts.map((verdict) => verdict.tests[name])).toEqual(Array.from(whole.tests[name]!))
      }),
      { numRuns: 200 },
    )
  })
  it('leave a state that does not grow', () => {
    const inputs = Array.from({ length: 5000 }, (_, i) => ({ time: 60 * i, waterContent: 0.3 + i * 1e-6, value: 0.3 }))
    const shots = runReducer({ reducer: watchShots(limits), inputs })
    const flags = runReducer({ reducer: watchReadings(tests), inputs })
    expect(JSON.stringify(shots.state).length).toBeLessThan(1500)
    expect(JSON.stringify(flags.state).length).toBeLessThan(300)
  })
  it('leave less than 4 kB of unrounded readings that the test of a flat line looks back to for a day and more', () => {
    const noise = normalFrom(11)
    const flat = { suspectAfter: 1000, failAfter: 2000 }
    const limits = { ...tests, flatLine: { ...flat, tolerance: 0.002 } }
    // Noise far below the tolerance, and above it.
    for (const size of [0.0002, 0.005]) {
      const inputs = Array.from({ length: 5000 }, (_, i) => ({
        time: 60 * i,
        value: 0.5 - 1e-8 * i + size * noise(),
      }))
      const { state, outputs } = runReducer({ reducer: watchReadings(limits), inputs })
      expect(JSON.stringify(state).length).toBeLessThan(4000)
      const whole = checkReadings({
        ...limits,
        time: inputs.map((one) => one.time),
        value: inputs.map((one) => one.value),
      })
      const flags = outputs.flat().map((verdict) => verdict.tests.flatLine)
      expect(flags).toEqual(Array.from(whole.tests.flatLine!.slice(0, flags.length)))
      if (size < 0.001) expect(flags).toContain(4)
    }
  })
  it('leave less than 4 kB of any course, and the flags of the whole series', () => {
    const course = fc.record({
      slope: fc.constantFrom(0, 1e-7, -1e-6, 3e-6, 1e-5),
      noise: fc.constantFrom(0, 1e-6, 1e-4, 0.001),
      swing: fc.constantFrom(0, 0.0005, 0.002),
      seed: fc.nat(1000),
    })
    const flatLine = fc.record({
      tolerance: fc.constantFrom(0.0001, 0.002, 0.02),
      failAfter: fc.constantFrom(50, 97, 400, 3000),
    })
    fc.assert(
      fc.property(course, flatLine, ({ slope, noise, swing, seed }, { tolerance, failAfter }) => {
        const normal = normalFrom(seed)
        // A swing that dies away slowly comes nearer from both sides.
        const value = Array.from(
          { length: 3500 },
          (_, i) => 0.3123456789012345 + slope * i + noise * normal() + swing * Math.cos(i) * Math.exp(-i / 2000),
        )
        const limits = { ...tests, flatLine: { tolerance, suspectAfter: failAfter >> 1, failAfter } }
        const inputs = value.map((one, i) => ({ time: 60 * i, value: one }))
        const { state, outputs } = runReducer({ reducer: watchReadings(limits), inputs })
        expect(JSON.stringify(state).length).toBeLessThan(4000)
        const whole = checkReadings({ ...limits, time: inputs.map((one) => one.time), value })
        const flags = outputs.flat().map((verdict) => verdict.tests.flatLine as number)
        expect(flags).toEqual(Array.from(whole.tests.flatLine!.slice(0, flags.length)))
        // Never stricter than the definition, worked out by looking back on every reading.
        const exact = (x: number, i: number) => {
          let k = i - 1
          while (k >= 0 && i - k <= failAfter && (value[k] === x || Math.abs(value[k]! - x) < tolerance)) k--
          return i - 1 - k >= failAfter ? 4 : i - 1 - k >= failAfter >> 1 ? 3 : 1
        }
        const wanted = value.slice(0, flags.length).map(exact)
        flags.forEach((flag, i) => {
          if (flag > wanted[i]!) expect(`${flag} at ${i}`).toBe(`${wanted[i]} at ${i}`)
        })
        // A course that only falls or rises loses a few hundredths of the tolerance.
        if (noise === 0 && swing === 0 && failAfter * Math.abs(slope) < 0.9 * tolerance) expect(flags.at(-1)).toBe(4)
      }),
      { numRuns: 25 },
    )
  })
  it('are not watched with limits that make no sense', () => {
    expectDomainError(() => watchShots({ ...limits, maxRiseTime: minutes(0) }), { quantity: 'longest rise' })
    expectInputError(() => watchReadings({ ...tests, spike: { suspect: 2, fail: 1 } }), 'suspect')
    expectInputError(() => runReducer({ reducer: undefined as never, inputs: [] }), 'reducer')
  })
})

describe('stretches of a record', () => {
  it('hold every good reading once and no break', () => {
    fc.assert(
      fc.property(records, ({ time, value }) => {
        const segments = splitRecord({ time, value, maxStep: minutes(12) })
        let good = 0
        for (const { first, last, readings } of segments) {
          let before = Number.NaN
          let count = 0
          for (let i = first; i <= last; i++) {
            if (Number.isNaN(value[i])) continue
            count++
            const step = time[i]! - before
            if (count > 1) expect(step > 0 && step <= 720).toBe(true)
            before = time[i]!
          }
          expect(count).toBe(readings)
          good += count
        }
        expect(good).toBe(value.filter((x) => !Number.isNaN(x)).length)
      }),
    )
  })
})

describe('noise', () => {
  it('is that of normal deviates on a course of shots and dry-downs', () => {
    const normal = normalFrom(7)
    const value = Array.from({ length: 5000 }, (_, i) => 0.6 - 0.0004 * (i % 50) + 0.001 * normal())
    const noise = estimateNoise({ value })
    expect(noise).toMatchObject({ known: true, resolved: true })
    if (noise.known) expect(noise.standardDeviation / 0.001).toBeCloseTo(1, 1)
  })
  it('below the steps of the readings is said to be unresolved', () => {
    const value = Array.from({ length: 300 }, (_, i) => Math.round(60 - i / 30) / 100)
    expect(estimateNoise({ value })).toMatchObject({ known: true, resolved: false })
    const noise = estimateNoise({ value })
    if (noise.known) expect(noise.standardDeviation).toBeCloseTo(0.01 / Math.sqrt(12), 9)
    const normal = normalFrom(8)
    const fine = Array.from({ length: 3000 }, () => 0.6 + 0.001 * normal())
    const rounded = fine.map((x) => Math.round(x * 1000) / 1000)
    expect(estimateNoise({ value: fine })).toMatchObject({ resolved: true })
    expect(estimateNoise({ value: rounded })).toMatchObject({ resolved: false })
  })
  it('is not known from a frozen record or a short one', () => {
    expect(estimateNoise({ value: new Float64Array(100) })).toMatchObject({ known: false })
    expect(estimateNoise({ value: [1, 2, 3] })).toMatchObject({ known: false })
  })
})

describe('universal time from a local clock', () => {
  // Moments of the clock changes of 2020 in central Europe: 29 March and 25 October, 01:00 UTC (directive 2000/84/EC).
  const spring = Date.UTC(2020, 2, 29, 1) / 1000
  const autumn = Date.UTC(2020, 9, 25, 1) / 1000
  const offsets = [
    { from: Date.UTC(2019, 9, 27, 1) / 1000, ahead: 3600 },
    { from: spring, ahead: 7200 },
    { from: autumn, ahead: 3600 },
  ]
  // Independent oracle: the time zone data of the engine.
  const clock = new Intl.DateTimeFormat('en-GB', {
    timeZone: 'Europe/Amsterdam',
    hourCycle: 'h23',
    year: 'numeric',
    month: 'numeric',
    day: 'numeric',
    hour: 'numeric',
    minute: 'numeric',
  })
  const shown = (moment: number) => {
    const part = Object.fromEntries(clock.formatToParts(moment * 1000).map(({ type, value }) => [type, Number(value)]))
    return (
      Date.UTC(
        part.year as number,
        (part.month as number) - 1,
        part.day as number,
        part.hour as number,
        part.minute as number,
      ) / 1000
    )
  }
  it.each([
    ['spring', spring],
    ['autumn', autumn],
  ])('is found again across the change in %s', (_, change) => {
    const time = Array.from({ length: 288 }, (_, i) => change - 43200 + 300 * i)
    const back = utcFromLocal({ local: time.map(shown), offsets })
    expect(Array.from(back.time)).toEqual(time)
    expect(back).toMatchObject({ repeated: change === autumn ? 24 : 0, skipped: 0, missing: 0 })
  })
  it('is the earlier moment of the repeated hour until the clock has stepped back, also where the record begins there', () => {
    const half = [0, 300, 600]
    const local = [...half, ...half].map((late) => shown(autumn + late))
    const moments = [...half.map((late) => autumn - 3600 + late), ...half.map((late) => autumn + late)]
    expect(Array.from(utcFromLocal({ local, offsets }).time)).toEqual(moments)
  })
  it('is missing in the hour that does not exist', () => {
    const local = [spring + 3600 + 1800, Number.NaN]
    expect(utcFromLocal({ local, offsets })).toMatchObject({ skipped: 1, missing: 1 })
    expect(Array.from(utcFromLocal({ local, offsets }).time)).toEqual([Number.NaN, Number.NaN])
  })
  it('refuses a table that is empty or out of order', () => {
    expectInputError(() => utcFromLocal({ local: [], offsets: [] }), 'offsets')
    expectInputError(
      () =>
        utcFromLocal({
          local: [],
          offsets: [
            { from: 5, ahead: 0 },
            { from: 5, ahead: 3600 },
          ],
        }),
      'offsets',
    )
  })
})
