import fc from 'fast-check'
import {
  changeOfSlope,
  findDryDowns,
  findSettledLevels,
  findShots,
  fitDryDown,
  hours,
  litres,
  minutes,
  overnightDryDowns,
  waterContentChange,
  waterUseOfDryDown,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { expectInputError } from '../support/refusals.js'
import { normalFrom } from './random.js'

const limits = { minRise: waterContentChange(0.01), maxRiseTime: minutes(30), maxStep: minutes(8) }
const day = 86400
const light = [-1, 0, 1, 2, 3].map((d) => ({ start: d * day + 6 * 3600, end: d * day + 20 * 3600 }))

/** Three invented days: eight shots a day, drying by 0.006 an hour in light and by 0.002 in the dark. */
function threeDays(noise = 0) {
  const normal = normalFrom(3)
  const time: number[] = []
  const content: number[] = []
  let level = 0.6
  for (let i = 0; i < (3 * day) / 300; i++) {
    const now = i * 300
    const hour = (now % day) / 3600
    level -= (hour >= 6 && hour < 20 ? 0.006 : 0.002) / 12
    const since = ((now - 8 * 3600) % day) / 300
    // Shots at 8:00, 9:00 ... 15:00: up by 0.018 in ten minutes, then back by 0.004 in ten.
    const place = since % 12
    if (hour >= 8 && hour < 16) level += [0, 0.009, 0.009, -0.002, -0.002][place] ?? 0
    time.push(now)
    content.push(level + noise * normal())
  }
  return { time, waterContent: content }
}

describe('dry-downs', () => {
  it('lie in one regime each, hold no shot, and have the slopes that were made', () => {
    const series = threeDays()
    const shots = findShots({ ...series, ...limits })
    expect(shots).toHaveLength(24)
    const found = findDryDowns({
      ...series,
      shots,
      drainTime: minutes(15),
      maxStep: minutes(8),
      minDuration: hours(2),
      light,
    })
    expect(found.map(({ regime }) => regime)).toEqual([
      'night',
      'day',
      'day',
      'night',
      'day',
      'day',
      'night',
      'day',
      'day',
      'night',
    ])
    for (const { regime, line } of found) expect(line.slopePerHour).toBeCloseTo(regime === 'day' ? -0.006 : -0.002, 6)
    const untold = findDryDowns({
      ...series,
      shots,
      drainTime: minutes(15),
      maxStep: minutes(8),
      minDuration: hours(2),
    })
    expect(untold.every(({ regime }) => regime === 'not-told')).toBe(true)
  })
  it('never hold a reading of a shot, of its drain, or two sides of a break', () => {
    const series = threeDays(0.0005)
    fc.assert(
      fc.property(
        fc.integer({ min: 10, max: 800 }),
        fc.integer({ min: -20000, max: 20000 }).filter((jump) => jump < -300 || jump > 200),
        (cut, jump) => {
          const time = series.time.map((t, i) => (i >= cut ? t + jump : t))
          const shots = findShots({ ...series, time, ...limits })
          const found = findDryDowns({
            time,
            waterContent: series.waterContent,
            shots,
            drainTime: minutes(15),
            maxStep: minutes(8),
            minDuration: minutes(20),
            light,
          })
          for (const { first, last, start, end } of found) {
            expect(first < cut && last >= cut).toBe(false)
            expect(end - start).toBe((last - first) * 300)
            for (const shot of shots) expect(shot.startIndex < last && shot.peakIndex > first).toBe(false)
          }
        },
      ),
      { numRuns: 60 },
    )
  })
  it('wait for the drain of a shot also where readings are missing behind it, and not for that of another clock', () => {
    const series = threeDays()
    // The shot of 15:00 peaks at 15:10; then readings of 25 minutes are lost, or the clock is set back by a day.
    const peak = (15 * 3600 + 600) / 300
    const before = peak + 2
    const without = (lost: number, shift: number) => {
      const stays = (i: number) => i <= before || i > before + lost
      return {
        time: series.time.flatMap((t, i) => (stays(i) ? [i > before ? t + shift : t] : [])),
        waterContent: series.waterContent.filter((_, i) => stays(i)),
      }
    }
    const firstBehind = (lost: number, shift: number) => {
      const left = without(lost, shift)
      const shots = findShots({ ...left, ...limits })
      const found = findDryDowns({ ...left, shots, drainTime: hours(1), maxStep: minutes(8), minDuration: hours(2) })
      return left.time[found.find(({ first }) => first > before)!.first]
    }
    expect(firstBehind(0, 0)).toBe(16 * 3600 + 600)
    expect(firstBehind(5, 0)).toBe(16 * 3600 + 600)
    expect(firstBehind(5, -day)).toBe((before + 6) * 300 - day)
  })
  it('of the night are told by night, with what spoils them', () => {
    const series = threeDays()
    const shots = findShots({ ...series, ...limits })
    const input = { ...series, shots, drainTime: minutes(15), maxStep: minutes(8), light }
    const nights = overnightDryDowns(input)
    expect(nights.map(({ dark }) => dark / 3600)).toEqual([-4, 20, 44, 68])
    expect(nights[0]).toMatchObject({ known: false })
    expect(nights[1]).toMatchObject({ known: true })
    const [, first, second] = nights
    if (first?.known && second?.known) {
      expect(first.fall).toBeCloseTo((0.002 * (10 * 3600 - 300)) / 3600, 9)
      expect(first.evening - first.morning).toBeCloseTo(first.fall, 12)
      expect(first.duration).toBe(10 * 3600 - 300)
    }
    const gap = series.waterContent.map((x, i) => (i >= 290 && i < 320 ? Number.NaN : x))
    expect(overnightDryDowns({ ...input, waterContent: gap })[1]).toMatchObject({
      known: false,
      reason: 'short',
    })
    const late = series.waterContent.map((x, i) => x + (i > 280 ? 0.02 : 0))
    const lateShots = findShots({ time: series.time, waterContent: late, ...limits })
    expect(overnightDryDowns({ ...input, waterContent: late, shots: lateShots })[1]).toMatchObject({
      known: false,
      reason: 'shot-in-night',
    })
    expectInputError(() => overnightDryDowns({ ...input, light: [{ start: 5, end: 4 }] }), 'light')
    expectInputError(
      () =>
        findDryDowns({
          ...input,
          minDuration: hours(1),
          light: [
            { start: 0, end: 10 },
            { start: 5, end: 20 },
          ],
        }),
      'light',
    )
  })
})

describe('a shot after its peak', () => {
  it('keeps and loses together what it rose by', () => {
    const series = threeDays()
    const shots = findShots({ ...series, ...limits })
    const settled = findSettledLevels({ ...series, shots, drainTime: minutes(10), maxStep: minutes(8) })
    expect(settled.filter(({ known }) => known)).toHaveLength(24)
    settled.forEach((one, i) => {
      if (one.known) expect(one.retained + one.drainBack).toBeCloseTo(shots[i]?.rise as number, 12)
    })
    const gap = findSettledLevels({
      time: [0, 300, 600, 4000],
      waterContent: [0.5, 0.52, 0.53, 0.52],
      shots: findShots({ time: [0, 300, 600], waterContent: [0.5, 0.52, 0.53], ...limits }),
      drainTime: minutes(10),
      maxStep: minutes(8),
    })
    expect(gap).toMatchObject([{ known: false, reason: 'gap' }])
  })
})

describe('a change of slope', () => {
  const time = Array.from({ length: 120 }, (_, i) => i * 600)
  it('is found where it was made (independent: the best of all two-part fits, solved by normal equations)', () => {
    const normal = normalFrom(5)
    const content = time.map(
      (_, i) => 0.55 - 0.0012 * Math.min(i, 70) - 0.0003 * Math.max(0, i - 70) + 0.0008 * normal(),
    )
    const found = changeOfSlope({ time, waterContent: content })
    expect(found).toMatchObject({ known: true, slows: true })
    if (!found.known) return
    const squaresAt = (k: number) => {
      const columns = [time.map(() => 1), time.map((_, i) => i), time.map((_, i) => Math.max(0, i - k))]
      const a = columns.map((u) => columns.map((v) => u.reduce((sum, x, i) => sum + x * v[i]!, 0)))
      const b = columns.map((u) => u.reduce((sum, x, i) => sum + x * content[i]!, 0))
      const x = solve(a, b)
      return content.reduce((sum, y, i) => sum + (y - columns.reduce((s, u, j) => s + u[i]! * x[j]!, 0)) ** 2, 0)
    }
    const candidates = Array.from({ length: 96 }, (_, i) => i + 12)
    const best = candidates.reduce((a, b) => (squaresAt(b) < squaresAt(a) ? b : a))
    expect(found.index).toBe(best)
    expect(found.slopeBefore).toBeCloseTo(-0.0072, 3)
    expect(found.slopeAfter).toBeCloseTo(-0.0018, 3)
    expect(found.level).toBeCloseTo(0.55 - 0.0012 * 70, 2)
  })
  it('is not invented in noise, nor in noise with a memory', () => {
    let invented = 0
    for (let seed = 1; seed <= 60; seed++) {
      const normal = normalFrom(seed)
      let memory = 0
      const content = time.map((_, i) => {
        memory = (seed % 2 ? 0.8 : 0) * memory + 0.001 * normal()
        return 0.6 - 0.0008 * i + memory
      })
      if (changeOfSlope({ time, waterContent: content }).known) invented++
    }
    expect(invented).toBeLessThanOrEqual(3)
  })
  it('needs readings enough and times that rise', () => {
    expect(changeOfSlope({ time: time.slice(0, 9), waterContent: time.slice(0, 9).map(() => 0.5) })).toMatchObject({
      known: false,
    })
    expectInputError(() => changeOfSlope({ time: [0, 5, 3], waterContent: [0.5, 0.4, 0.3] }), 'time')
  })
})

function solve(a: number[][], b: number[]): number[] {
  const rows = a.map((row, i) => [...row, b[i]!])
  for (let k = 0; k < 3; k++) {
    const pivot = rows[k]!
    for (let i = 0; i < 3; i++) {
      if (i === k) continue
      const row = rows[i]!
      const factor = row[k]! / pivot[k]!
      rows[i] = row.map((x, j) => x - factor * pivot[j]!)
    }
  }
  return rows.map((row, i) => row[3]! / row[i]!)
}

describe('use', () => {
  it('water that left equals the fall times the volume', () => {
    const line = fitDryDown({ time: [0, 3600, 7200], waterContent: [0.6, 0.59, 0.58] })
    const use = waterUseOfDryDown({ line, substrateVolume: litres(12) })
    expect(use).toMatchObject({ known: true })
    if (use.known) expect(use.use).toBeCloseTo(0.12, 9)
    const rising = fitDryDown({ time: [0, 3600, 7200], waterContent: [0.5, 0.51, 0.52] })
    expect(waterUseOfDryDown({ line: rising, substrateVolume: litres(12) })).toMatchObject({ known: false })
  })
})
