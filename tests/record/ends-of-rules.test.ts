import { lusolve, multiply, transpose } from 'mathjs'
import {
  attempt,
  changeOfSlope,
  compareProbes,
  days,
  hours,
  minutes,
  runReducer,
  watchShots,
  waterContentChange,
} from 'porewater'
import { describe, expect, it } from 'vitest'

/** A line with a bend at a row, by the normal equations, which mathjs solves. */
function bentLine(rows: readonly number[], values: readonly number[], at: number) {
  const columns = rows.map((i) => [1, i, Math.max(0, i - at)])
  const turned = transpose(columns)
  const numbers = (lusolve(multiply(turned, columns), multiply(turned, [...values])) as number[][]).flat()
  const squares = columns.reduce((sum, row, k) => sum + (values[k]! - Number(multiply(row, numbers))) ** 2, 0)
  return { at, squares, numbers: numbers as [start: number, slope: number, bend: number] }
}

describe('a change of slope', () => {
  const hourly = (count: number) => Array.from({ length: count }, (_, i) => 3600 * i)
  const bent = (count: number, at: number, before: number, after: number) =>
    hourly(count).map((_, i) => 0.6 + before * Math.min(i, at) + after * Math.max(0, i - at))

  it('has the lines of the normal equations at the reading where they fit best, with readings missing', () => {
    for (const seed of [3, 4, 5, 6]) {
      const waterContent = bent(60, 20 + 5 * seed, -0.004, -0.001).map((x, i) => x + 0.0004 * Math.sin(seed * i * i))
      for (const gone of [0, 7, 30 + seed, 59]) waterContent[gone] = Number.NaN
      const rows = waterContent.flatMap((x, i) => (Number.isNaN(x) ? [] : [i]))
      const values = rows.map((i) => waterContent[i]!)
      const fits = rows.slice(6, -6).map((at) => bentLine(rows, values, at))
      const best = fits.reduce((one, other) => (other.squares < one.squares ? other : one))
      const [start, slope, bend] = best.numbers
      expect(changeOfSlope({ time: hourly(60), waterContent })).toEqual({
        known: true,
        index: best.at,
        time: 3600 * best.at,
        level: expect.closeTo(start + slope * best.at, 10),
        slopeBefore: expect.closeTo(slope, 10),
        slopeAfter: expect.closeTo(slope + bend, 10),
        slows: true,
      })
    }
  })
  it('leaves five readings on both sides, and of more than fifty a tenth', () => {
    const found = (count: number, at: number) => {
      const change = changeOfSlope({ time: hourly(count), waterContent: bent(count, at, -0.004, -0.001) })
      return change.known ? change.index : change.reason
    }
    expect([5, 6].map((at) => found(12, at))).toEqual([5, 6])
    expect(found(11, 5)).toBe('few-readings')
    expect([4, 7].map((at) => found(12, at))).toEqual([5, 6])
    expect([7, 8, 61, 62].map((at) => found(70, at))).toEqual([7, 8, 61, 62])
    expect([6, 63].map((at) => found(70, at))).toEqual([7, 62])
  })
  it('slows where it dries less after than before, and only there', () => {
    const slows = (before: number, after: number) =>
      changeOfSlope({ time: hourly(40), waterContent: bent(40, 20, before, after) })
    expect(slows(-0.004, 0.001)).toMatchObject({ known: true, slows: true })
    expect(slows(-0.001, -0.004)).toMatchObject({ known: true, slows: false })
    expect(slows(0.001, 0.004)).toMatchObject({ known: true, slows: false })
    expect(slows(-0.002, -0.002)).toEqual({ known: false, reason: 'no-change' })
  })
  it('wants times that rise, but for missing readings', () => {
    const waterContent = bent(20, 10, -0.004, -0.001)
    const time = hourly(20)
    time[9] = time[8]!
    expect(attempt(() => changeOfSlope({ time, waterContent }))).toMatchObject({
      ok: false,
      error: { argument: 'time' },
    })
    waterContent[9] = Number.NaN
    expect(changeOfSlope({ time, waterContent })).toMatchObject({ known: true, index: 10 })
  })
})

describe('probes beside each other', () => {
  const time = Array.from({ length: 4 * 24 }, (_, i) => 3600 * i)
  /** Days are what counts: within one the readings stand still. */
  const moving = (level: number, perDay: number) => time.map((t) => level + perDay * Math.floor(t / days(1)))
  const compared = (probes: readonly number[][], driftPerDay = 0.0015) =>
    compareProbes({ time, driftPerDay, probes: probes.map((waterContent, i) => ({ name: 'ABCDE'[i]!, waterContent })) })

  it('stand apart from the median of all, where three at least were read', () => {
    const [a, b, c] = [moving(0.5, 0), moving(0.53, 0), moving(0.51, 0)]
    a[0] = Number.NaN
    expect(compared([a, b, c]).map(({ offset, readings }) => [offset, readings])).toEqual([
      [expect.closeTo(-0.01, 12), 95],
      [expect.closeTo(0.02, 12), 95],
      [0, 95],
    ])
    const none = time.map(() => Number.NaN)
    expect(compared([a, b, none])[1]).toMatchObject({ offset: Number.NaN, readings: 0 })
  })
  it('move as against the middle neighbour, of an even number against the slower one', () => {
    const drifts = (...perDay: number[]) => compared(perDay.map((p) => moving(0.5, p))).map((p) => p.driftPerDay)
    const near = (...perDay: number[]) => perDay.map((p) => expect.closeTo(p, 12))
    expect(drifts(0, 0.001, 0.004)).toEqual(near(-0.001, 0.001, 0.003))
    expect(drifts(0, 0.001, 0.004, 0.009)).toEqual(near(-0.004, -0.003, 0.004, 0.008))
    expect(drifts(0, 0.001, 0.003, 0.007, 0.02)).toEqual(near(-0.003, -0.002, 0.003, 0.006, 0.017))
  })
  it('are told by name when they move by more than the limit, and which way', () => {
    const told = (perDay: number) => compared([moving(0.5, 0), moving(0.52, 0), moving(0.5, perDay)])[2]!.findings
    expect(told(0.002)).toMatchObject([{ code: 'rises-away', level: 'caution', about: 'C' }])
    expect(told(-0.002)).toMatchObject([{ code: 'falls-away', level: 'caution', about: 'C' }])
    expect([told(0.001), told(-0.001), told(0)]).toEqual([[], [], []])
  })
  it('are not told where the days scatter more than they move', () => {
    const scattered = time.map((t) => 0.5 + [0, 0.01, -0.005, 0.03][Math.floor(t / days(1))]!)
    const [, , probe] = compared([moving(0.5, 0), moving(0.52, 0), scattered])
    expect(Math.abs(probe!.driftPerDay)).toBeGreaterThan(0.0015)
    expect(2 * probe!.driftError).toBeGreaterThan(Math.abs(probe!.driftPerDay))
    expect(probe!.findings).toEqual([])
  })
  it('move by what is not known in less than three days', () => {
    const rows = (count: number) =>
      compareProbes({
        time: time.slice(0, count),
        driftPerDay: 0.001,
        probes: ['A', 'B', 'C'].map((name, i) => ({ name, waterContent: moving(0.5, 0.01 * i).slice(0, count) })),
      })[2]!
    expect(rows(48)).toMatchObject({ driftPerDay: Number.NaN, findings: [] })
    expect(rows(49).driftPerDay).toBeCloseTo(0.01, 12)
  })
  it('are refused by name when one has too few readings', () => {
    const [a, b, c] = [moving(0.5, 0), moving(0.53, 0), moving(0.51, 0).slice(1)]
    const refused = attempt(() => compared([a!, b!, c!]))
    expect(refused).toMatchObject({ ok: false, error: { argument: 'probes' } })
    expect(String((refused as { error: unknown }).error)).toContain('C has 95 readings for 96 times')
    expect(attempt(() => compared([a!, b!]))).toMatchObject({ ok: false, error: { argument: 'probes' } })
  })
})

describe('shots of readings that come in one by one', () => {
  const limits = { minRise: waterContentChange(0.02), maxRiseTime: minutes(30), maxStep: minutes(10) }
  const found = (levels: readonly number[], step = 300, times = levels.map((_, i) => step * i)) => {
    const watch = watchShots(limits)
    const inputs = levels.map((waterContent, i) => ({ time: times[i]!, waterContent }))
    const { outputs, state } = runReducer({ reducer: watch, inputs })
    return [...outputs.flat(), ...watch.finish(state)].map(({ startIndex, peakIndex }) => [startIndex, peakIndex])
  }
  it('rise by the least rise or more', () => {
    expect(found([0.5, 0.5, 0.52, 0.52, 0.52])).toEqual([[1, 2]])
    expect(found([0.5, 0.5, 0.5199, 0.5199, 0.5199])).toEqual([])
  })
  it('have their peak within the longest rise, and no later', () => {
    const climbing = [0.5, 0.51, 0.52, 0.53, 0.54, 0.55, 0.56]
    expect(found(climbing)).toEqual([[0, 6]])
    expect(found([...climbing, 0.57])[0]).toEqual([0, 6])
  })
  it('are more than one reading', () => {
    expect(found([0.5, 0.5, 0.55, 0.5, 0.5])).toEqual([])
    expect(found([0.5, 0.5, 0.55, 0.51, 0.5])).toEqual([[1, 2]])
    expect(found([0.5, 0.5, 0.55, 0.5099, 0.5])).toEqual([])
  })
  it('do not go on over a gap, nor where the clock stands still', () => {
    const levels = [0.5, 0.5, 0.53, 0.53, 0.53]
    expect(found(levels, 600)).toEqual([[1, 2]])
    expect(found(levels, 601)).toEqual([])
    expect(found([0.5, 0.53, 0.53], 300, [0, 0, 300])).toEqual([])
    expect(found([0.5, 0.53, 0.56, 0.56], 300, [0, 300, 300, 600])).toEqual([])
  })
  it('are seen in a record by the second, whose state can be kept after any reading', () => {
    const watch = watchShots({ ...limits, maxRiseTime: hours(1) })
    const level = (i: number) => 0.5 + 0.02 * Math.max(0, Math.min(1, (i - 1000) / 900)) + 1e-7 * i
    let state = watch.start
    const shots = []
    for (let i = 0; i < 4000; i++) {
      const [next, ended] = watch.step(state, { time: i, waterContent: level(i) })
      shots.push(...ended)
      if (i % 97 === 0) expect(watch.restore(JSON.parse(JSON.stringify(next)))).toEqual(next)
      state = next
    }
    shots.push(...watch.finish(state))
    expect(shots.length).toBe(1)
    expect(shots[0]!.rise).toBeGreaterThan(0.02)
    expect(shots[0]!.start).toBeLessThan(1300)
    expect(shots[0]!.peak).toBeGreaterThan(1890)
  })
})
