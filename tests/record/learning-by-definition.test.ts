import { forecastLevel, watchShots } from 'porewater/record'
import { describe, expect, it } from 'vitest'
import { learntFrom } from '../../src/record/forecast/learn-dry-down.js'
import type { LevelState } from '../../src/record/forecast/level-state.js'
import { uniformFrom } from './random.js'

type Reading = readonly [time: number, waterContent: number]

/** Dry-downs between shots and gaps, with steps, falls and settling times on a grid, so that limits are met exactly. */
function recordOf(seed: number, count: number): Reading[] {
  const uniform = uniformFrom(seed)
  const one = <T>(...of: readonly T[]): T => of[Math.floor(uniform() * of.length)]!
  const readings: Reading[] = []
  // The first time is no longer than a step from zero, on either side.
  let [time, level] = [one(0, 300, 900, -1500), 0.6]
  while (readings.length < count) {
    const between = one(6, 12, 40, 90, 200, 330)
    for (let k = 0; k < between; k++) {
      readings.push([time, level])
      time += uniform() < 0.01 ? one(0, -600, 7200, 2100) : one(300, 300, 300, 600)
      level -= one(0, 0.0001, 0.0002, 0.0004)
    }
    // Two readings up, two down while it drains; at times it stands at its foot for a while.
    for (const change of one([0.03, 0.04, -0.01, -0.01], [0, 0, 0.05, 0.02, 0, -0.015])) {
      level += change
      readings.push([time, level])
      time += 300
    }
  }
  return readings
}

/** The level at a time on the line of least squares through readings, or theirs where they have but one time. */
function onLine(readings: readonly Reading[], at: number): number {
  const n = readings.length
  const meanT = readings.reduce((sum, [t]) => sum + t, 0) / n
  const meanX = readings.reduce((sum, [, x]) => sum + x, 0) / n
  const tt = readings.reduce((sum, [t]) => sum + (t - meanT) ** 2, 0)
  const tx = readings.reduce((sum, [t, x]) => sum + (t - meanT) * (x - meanX), 0)
  return meanX + (tt > 0 ? (tx / tt) * (at - meanT) : 0)
}

/** Readings of a half hour up to the newest, which is never alone. */
function lastHalfHour(readings: readonly Reading[]): Reading[] {
  const now = readings.at(-1)![0]
  return readings.filter(([t], i) => i >= readings.length - 2 || t >= now - 1800)
}

/** What is learnt of a dry-down with all of its readings, those too that came before the rise showed, whose foot ends it. */
function learntOf(state: LevelState, readings: readonly Reading[], foot: number): LevelState {
  const [start, from] = readings[0]!
  const border = 1800 * Math.ceil(start / 1800)
  const seenAt = (i: number) => lastHalfHour(readings.slice(0, i + 1))
  const left = seenAt(readings.length - 1).filter(([t]) => t <= foot)
  const levels: number[] = []
  for (let at = border; levels.length < 49; at += 1800) {
    // A quarter of an hour later it is known from both sides; what is not yet known at the end, from what is left.
    const i = readings.findIndex(([t]) => t >= at + 900)
    if (i >= 0 && at + 900 <= foot) levels.push(onLine(seenAt(i), at))
    else if (left.length > 0 && at <= left.at(-1)![0]) levels.push(onLine(left, at))
    else break
  }
  const replay: { time: number; level: number }[] = []
  readings.forEach(([time], i) => {
    if (replay.length < 2 && time - start >= [7200, 16_200][replay.length]!)
      replay.push({ time, level: onLine(seenAt(i), time) })
  })
  return learntFrom(state, { start, from, border, levels, recent: [], replay })
}

describe('what is learnt of a record', () => {
  it.each([1, 2, 3, 4, 5, 6])('is that of its dry-downs, one by one: %i', (seed) => {
    const settings = { minRise: 0.02, maxRiseTime: 1800, maxStep: 1800, drainTime: seed % 2 ? 900 : 1200 } as never
    const forecaster = forecastLevel(settings)
    const watch = watchShots(settings)
    const { drainTime, maxStep } = settings as { drainTime: number; maxStep: number }
    let [state, shots, wanted] = [forecaster.start, watch.start, forecaster.start]
    let dry: Reading[] = []
    let settled = Infinity
    const close = (foot: number) => {
      if (dry.length > 0) wanted = learntOf(wanted, dry, foot)
      dry = []
    }
    const [told, meant]: [unknown[], unknown[]] = [[], []]
    for (const [time, waterContent] of recordOf(seed, 900)) {
      const { last } = shots
      const [next, ended] = watch.step(shots, { time, waterContent } as never)
      shots = next
      for (const { start, peak } of ended) {
        close(start)
        settled = peak + drainTime
      }
      if (last === null || time <= last || time - last > maxStep) {
        close(Infinity)
        settled = time + drainTime
      }
      const dries = shots.rise === null && time >= settled
      if (dries) dry.push([time, waterContent])
      // After a day the next one begins, with the reading that ended it.
      const border = dry.length > 0 ? 1800 * Math.ceil(dry[0]![0] / 1800) : Infinity
      if (time >= border + 48 * 1800 + 900) {
        close(Infinity)
        dry = [[time, waterContent]]
      }
      const [after, phase] = forecaster.step(state, { time, waterContent } as never)
      state = after
      told.push(phase, state.settled, state.dryDowns)
      meant.push(shots.rise !== null ? 'shot' : dry.length > 0 ? 'drying' : 'draining', settled, wanted.dryDowns)
    }
    expect(told).toEqual(meant)
    expect(told).toEqual(expect.arrayContaining(['shot', 'drying', 'draining']))
    expect(wanted.dryDowns).toBeGreaterThan(4)
    expect(state.usualFall).toBeCloseTo(wanted.usualFall, 12)
    const close12 = (list: readonly (number | null)[]) =>
      list.map((one) => (one === null ? null : expect.closeTo(one, 11)))
    expect(state.falls).toEqual(close12(wanted.falls))
    state.rings.forEach(({ scores }, k) => {
      expect(scores).toEqual(wanted.rings[k]!.scores.map((score) => expect.closeTo(score, 7)))
    })
  })
  it('is not touched by readings that rose before a shot showed', () => {
    const settings = { minRise: 0.02, maxRiseTime: 3600, maxStep: 1800, drainTime: 900 } as never
    /** Two thousandths an hour down to a foot shortly behind a half hour, and a shot that rises by so much with each reading. */
    const learnt = (step: number) => {
      const { start, step: take } = forecastLevel(settings)
      let state = start
      const shot = Math.ceil(0.024 / step)
      for (let k = 0; k < 31 + shot + 20; k++) {
        const waterContent = 0.6 - 0.001 * (Math.min(k, 31) / 6) + step * Math.min(Math.max(k - 31, 0), shot)
        state = take(state, { time: 300 * k, waterContent } as never)[0]
      }
      expect(state.dryDowns).toBe(1)
      return state
    }
    const [slow, sudden] = [learnt(0.006), learnt(0.024)]
    expect(slow.falls.some((fall) => fall !== null && fall > 0)).toBe(true)
    expect(slow.falls).toEqual(sudden.falls.map((fall) => (fall === null ? null : expect.closeTo(fall, 12))))
    expect(slow.usualFall).toBeCloseTo(sudden.usualFall, 12)
  })
})
