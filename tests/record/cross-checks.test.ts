import fc from 'fast-check'
import {
  clearShotRises,
  compareProbes,
  estimateNoise,
  findShots,
  findSteps,
  flatLineLimits,
  flatLineTest,
  kilograms,
  litres,
  matchShots,
  minutes,
  newestReading,
  probeAgainstScale,
  responseToShots,
  saltDrift,
  spikeTest,
  splitRecord,
  waterContent,
  waterContentChange,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { expectDomainError, expectInputError } from '../support/refusals.js'
import { normalFrom } from './random.js'

const limits = { minRise: waterContentChange(0.01), maxRiseTime: minutes(30), maxStep: minutes(8) }

/** A day of 5-minute readings with shots at the given positions. */
function withShots(at: readonly number[], missing: readonly [number, number] = [0, 0]) {
  const content: number[] = []
  let level = 0.55
  for (let i = 0; i < 288; i++) {
    level -= 0.0004
    if (at.includes(i) || at.includes(i - 1)) level += 0.01
    content.push(i >= missing[0] && i < missing[1] ? Number.NaN : level)
  }
  return { time: content.map((_, i) => 300 * i), waterContent: content }
}
function matchesOf(series: { time: number[]; waterContent: number[] }, log: number[]) {
  const shots = findShots({ ...series, ...limits })
  const segments = splitRecord({ time: series.time, value: series.waterContent, maxStep: minutes(8) })
  return { shots, ...matchShots({ shots, log, segments, maxLag: minutes(15), maxLead: minutes(5) }) }
}

describe('the log of the valve', () => {
  it('and the readings account for every shot and every rise once', () => {
    const places = fc
      .uniqueArray(fc.integer({ min: 2, max: 40 }), { maxLength: 12 })
      .map((list) => list.map((k) => k * 7))
    fc.assert(
      fc.property(places, places, fc.integer({ min: 0, max: 280 }), (seen, logged, gap) => {
        const log = [...logged].sort((a, b) => a - b).map((i) => i * 300 - 60)
        const found = matchesOf(withShots(seen, [gap, gap + 4]), log)
        const all = [
          ...found.matched.map((m) => m.log),
          ...found.joined.map((m) => m.log),
          ...found.withoutRise,
          ...found.notJudged,
        ]
        expect(all.sort((a, b) => a - b)).toEqual(log.map((_, e) => e))
        expect([...found.matched.map((m) => m.shot), ...found.withoutLog].sort((a, b) => a - b)).toEqual(
          found.shots.map((_, k) => k),
        )
      }),
    )
  })
  it('tells a valve that did not open from one that opened unasked, and does not judge in a gap', () => {
    const series = withShots([50, 100, 200], [146, 156])
    const log = [50, 100, 150, 250].map((i) => i * 300 - 60)
    expect(matchesOf(series, log)).toMatchObject({
      matched: [
        { log: 0, shot: 0 },
        { log: 1, shot: 1 },
      ],
      notJudged: [2],
      withoutRise: [3],
      withoutLog: [2],
    })
  })
  it('excuses real rises, but no fall below where they began', () => {
    const { time, waterContent: content } = withShots([50])
    const touched = content.map((x, i) => (i === 53 ? 0.2 : i === 150 ? 0.7 : x))
    const flags = spikeTest({ value: touched, suspect: 0.004, fail: 0.02 })
    expect(flags[51]).toBe(3)
    const excused = clearShotRises({ time, value: touched, flags, log: [50 * 300 - 60], responseTime: minutes(30) })
    expect([excused[51], excused[53], excused[150]]).toEqual([1, 4, 4])
    expectInputError(
      () => clearShotRises({ time, value: content, flags: flags.slice(1), log: [], responseTime: minutes(3) }),
      'flags',
    )
  })
})

describe('steps', () => {
  it('are found where a probe was moved, and not at shots', () => {
    const { time, waterContent: content } = withShots([50, 120])
    const moved = content.map((x, i) => (i >= 200 ? x - 0.06 : x))
    const shots = findShots({ time, waterContent: moved, ...limits })
    const input = {
      time,
      waterContent: moved,
      shots,
      minChange: waterContentChange(0.03),
      side: 5,
      maxStep: minutes(8),
    }
    expect(findSteps(input)).toMatchObject([{ index: 200, change: expect.closeTo(-0.062, 3) }])
    expect(findSteps({ ...input, waterContent: content })).toEqual([])
    expect(findSteps({ ...input, waterContent: content.map((x, i) => (i === 200 ? x - 0.06 : x)) })).toEqual([])
    expectDomainError(() => findSteps({ ...input, side: 2 }), { quantity: 'readings on each side' })
  })
})

describe('probes beside each other', () => {
  const time = Array.from({ length: 10 * 288 }, (_, i) => 300 * i)
  const probe = (seed: number, noise: number, perDay: number, offset: number) => {
    const normal = normalFrom(seed)
    return time.map((t, i) => 0.55 + offset - 0.0001 * (i % 288) + (perDay * t) / 86400 + noise * normal())
  }
  it('show an offset, a drift and noise of their own', () => {
    const compared = compareProbes({
      time,
      driftPerDay: 0.003,
      probes: [
        { name: 'A', waterContent: probe(1, 0.001, 0, 0) },
        { name: 'B', waterContent: probe(2, 0.001, 0, 0.03) },
        { name: 'C', waterContent: probe(3, 0.001, -0.01, 0) },
        { name: 'D', waterContent: probe(4, 0.006, 0, 0.01) },
      ],
    })
    expect(compared.map(({ findings }) => findings.map(({ code }) => code))).toEqual([
      [],
      [],
      ['falls-away'],
      ['noisy'],
    ])
    expect(compared[3]?.noise).toBeCloseTo(0.006, 3)
    expect((compared[1]?.offset as number) - (compared[0]?.offset as number)).toBeCloseTo(0.03, 2)
  })
  it('are three at least', () => {
    expectInputError(() => compareProbes({ time: [], probes: [], driftPerDay: 0.1 }), 'probes')
    const two = [{ name: 'A', waterContent: [1] }]
    expectInputError(() => compareProbes({ time: [], probes: [...two, ...two, ...two], driftPerDay: 0.1 }), 'probes')
  })
})

describe('what else betrays a probe', () => {
  it('a plateau that climbs with the drain, or beyond what the medium holds', () => {
    const day = Array.from({ length: 8 }, (_, i) => i)
    const steady = day.map((d) => 0.6 + (d % 2 ? 0.001 : 0))
    const ec = day.map((d) => 3 + 0.2 * d)
    const codes = (plateau: number[], drainEC: number[]) =>
      saltDrift({ day, plateau, drainEC, containerCapacity: waterContent(0.62) }).findings.map(({ code }) => code)
    expect(codes(steady, ec)).toEqual([])
    expect(
      codes(
        day.map((d) => 0.6 + 0.002 * d),
        day.map(() => 3),
      ),
    ).toEqual([])
    expect(
      codes(
        day.map((d) => 0.6 + 0.002 * d),
        ec,
      ),
    ).toEqual(['reading-rises-with-salt'])
    expect(
      codes(
        day.map((d) => 0.6 + 0.005 * d),
        ec,
      ),
    ).toEqual(['reading-rises-with-salt', 'above-capacity'])
  })
  it('shots that it hardly sees', () => {
    const shots = [0.03, 0.029, 0.031].map((rise) => ({ rise: waterContentChange(rise), retained: litres(0.36) }))
    expect(responseToShots({ shots, substrateVolume: litres(12) })).toMatchObject({
      share: expect.closeTo(1, 9),
      findings: [],
    })
    const high = responseToShots({ shots, substrateVolume: litres(30) })
    expect(high.findings.map(({ code }) => code)).toEqual(['probe-sees-much'])
    expectInputError(() => responseToShots({ shots: [], substrateVolume: litres(1) }), 'shots')
  })
  it('a scale that says otherwise', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true }), (a, b) => {
        const both = probeAgainstScale({
          massBefore: kilograms(5 + 10 * a),
          massAfter: kilograms(5 + 10 * b),
          waterContentBefore: waterContent(a),
          waterContentAfter: waterContent(b),
          substrateVolume: litres(10),
        })
        expect(both.difference).toBeCloseTo(0, 9)
      }),
    )
  })
  it('readings that agree better than its noise allows', () => {
    const normal = normalFrom(9)
    const value = Array.from({ length: 20000 }, () => 0.5 + 0.001 * normal())
    const flat = flatLineLimits({ noise: estimateNoise({ value }) })
    expect(flat.known).toBe(true)
    if (!flat.known) return
    const flags = flatLineTest({ ...flat, value })
    expect(flags.filter((flag) => flag === 4)).toHaveLength(0)
    // The integral of the documentation is close to (1/2)^4 (2π)^(-5/2) √(2π/5) = 1/1412: 14 of 20,000 readings.
    const chance = flags.filter((flag) => flag === 3).length
    expect(chance).toBeGreaterThan(4)
    expect(chance).toBeLessThan(28)
    value.fill(value[9999]!, 10000, 10010)
    expect(flatLineTest({ ...flat, value })[10008]).toBe(4)
    const coarse = Array.from({ length: 300 }, (_, i) => Math.round(60 - i / 30) / 100)
    // 30 equal readings are the course of this record; six times as long is not.
    expect(flatLineLimits({ noise: estimateNoise({ value: coarse }) })).toMatchObject({
      suspectAfter: 180,
      failAfter: 360,
    })
  })
  it('silence, which has an age', () => {
    const input = { time: [0, 300, 600], value: [0.5, 0.4, Number.NaN] }
    expect(newestReading({ ...input, now: 3900 })).toMatchObject({ known: true, index: 1, age: 3600, isLast: false })
    expect(newestReading({ ...input, flags: Uint8Array.of(1, 4, 9), now: 3900 })).toMatchObject({ index: 0 })
    expect(newestReading({ ...input, flags: Uint8Array.of(4, 4, 9), now: 3900 })).toMatchObject({ known: false })
    expect(newestReading({ ...input, now: 100 })).toMatchObject({
      known: false,
      reason: 'clock-ahead',
    })
    expectInputError(() => newestReading({ ...input, flags: Uint8Array.of(1), now: 100 }), 'flags')
  })
})
