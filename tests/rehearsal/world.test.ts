import fc from 'fast-check'
import {
  fraction,
  hours,
  litres,
  type Observation,
  type RehearsalZone,
  rehearsalFaults,
  rehearsalScenario,
  rehearse,
  type ScenarioName,
  seconds,
  storedMedium,
  waterContent,
  waterContentChange,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { byTheClock, credulous, idle, witness } from './controllers.js'

const media: readonly ScenarioName[] = ['stone-wool', 'coir-dust', 'sphagnum-peat-moss', 'pine-bark']
const names = rehearsalFaults().map(({ fault }) => fault)

/** A zone in which nothing is drawn by lot, so that its sums can be worked out by hand. */
function plainZone(change: Partial<RehearsalZone> = {}): RehearsalZone {
  return {
    ...rehearsalScenario('coir-dust').zone,
    medium: storedMedium({
      substrateVolume: litres(10),
      containerCapacity: waterContent(0.7),
      minWaterContent: waterContent(0.1),
      bypass: fraction(0),
      drainLag: seconds(600),
    }),
    waterContent: waterContent(0.5),
    lineFill: seconds(0),
    probeNoise: waterContentChange(0),
    probeOffset: waterContentChange(0),
    placeSpread: fraction(0),
    dripperSpread: fraction(0),
    weatherSpread: fraction(0),
    ...change,
  }
}
const { limits } = rehearsalScenario('coir-dust')

describe('the zone conserves water', () => {
  it('whatever goes wrong, in each medium, to 1e-9', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...media),
        fc.integer({ min: 0, max: 4294967295 }),
        fc.array(
          fc.record({
            fault: fc.constantFrom(...names),
            from: fc.integer({ min: 0, max: 90000 }),
            lasts: fc.integer({ min: 1, max: 90000 }),
          }),
          { maxLength: 4 },
        ),
        fc.constantFrom(1, 7, 60, 900, 3600),
        (medium, seed, faults, poll) => {
          const scenario = rehearsalScenario(medium)
          const outcome = rehearse({
            ...scenario,
            controller: credulous(scenario.lower),
            days: 2,
            seed,
            pollEvery: seconds(poll === 1 ? 20 : poll),
            faults: faults.map(({ fault, from, lasts }) => ({
              fault,
              from: seconds(from),
              until: seconds(from + lasts),
            })),
          })
          expect(Math.abs(outcome.imbalance)).toBeLessThan(1e-9 * Math.max(1, outcome.given))
          expect(outcome.given).toBeGreaterThanOrEqual(outcome.unordered)
          expect(outcome.driest).toBeGreaterThan(0)
          expect(outcome.wettest).toBeLessThanOrEqual(1)
          expect(outcome.worstDayInAll).toBeGreaterThanOrEqual(outcome.worstDay * (1 - 1e-9))
        },
      ),
      { numRuns: 40 },
    )
  })
})

describe('one seed is one history', () => {
  const scenario = rehearsalScenario('pine-bark')
  const faults = [
    { fault: 'messages-late', from: hours(20) },
    { fault: 'probe-noisy', from: hours(30), until: hours(60) },
    { fault: 'restart-partial', from: hours(25) },
  ] as const
  const run = (seed: number) => rehearse({ ...scenario, controller: credulous(0.42), days: 4, seed, faults })
  it('the same to the last bit when it is run again', () => {
    for (const seed of [0, 1, 4294967295]) expect(run(seed)).toEqual(run(seed))
  })
  it('can be run again from what the outcome carries', () => {
    const first = run(77)
    const again = rehearse({
      ...scenario,
      controller: credulous(0.42),
      days: 4,
      seed: first.seed,
      faults: JSON.parse(JSON.stringify(first.faults)),
    })
    expect(again).toEqual(first)
  })
  it('another seed is another history', () => {
    expect(run(1).course?.waterContent).not.toEqual(run(2).course?.waterContent)
  })
  it('keeps weather and noise when a fault is added or the controller changes', () => {
    const seen: Observation[] = []
    const other: Observation[] = []
    rehearse({ ...scenario, controller: witness(seen), days: 1, seed: 5 })
    rehearse({
      ...scenario,
      controller: witness(other),
      days: 1,
      seed: 5,
      faults: [{ fault: 'probe-lifted', from: hours(0), place: 1 }],
    })
    expect(other.map(({ light }) => light)).toEqual(seen.map(({ light }) => light))
    const first = (list: Observation[]) => list.map(({ readings }) => readings[0]?.value)
    expect(first(other)).toEqual(first(seen))
  })
})

describe('known answers', () => {
  it('a day without water takes a day of use out of the container', () => {
    const outcome = rehearse({ zone: plainZone(), limits, controller: idle, days: 1, seed: 1 })
    // By hand: 3 L of 10 L leave; the course of light is summed by the minute, exactly.
    expect(outcome.used).toBeCloseTo(3, 9)
    expect(outcome.driest).toBeCloseTo(0.2, 9)
    expect(outcome.given).toBe(0)
    expect(outcome.openings).toEqual([])
  })
  it('five openings of 120 s at 6 L/h give 1 L, and all limits are read off', () => {
    const outcome = rehearse({
      zone: plainZone(),
      limits,
      controller: byTheClock([2, 8, 10, 12, 21.5], 120),
      days: 1,
      seed: 1,
    })
    expect(outcome.given).toBeCloseTo(1, 9)
    expect(outcome.worstDay).toBeCloseTo(1, 9)
    expect(outcome.openings.map(({ from, until }) => [from, until])).toEqual(
      [2, 8, 10, 12, 21.5].map((hour) => [hour * 3600, hour * 3600 + 120]),
    )
    expect(outcome.maxOpening).toBe(120)
    expect(outcome.minRest).toEqual({ known: true, time: 2 * 3600 - 120 })
    expect(outcome.outsideHours).toBe(2)
  })
  it('the worst 24 h are any 24 h, not a calendar day', () => {
    const zone = plainZone({ dailyUse: litres(0.1) })
    // At the end of the first day and at the start of the second: 0.2 L each, and 0.1 L of the last one is 24 h later.
    const times = [23 * 3600, 25 * 3600, 47 * 3600 - 60]
    const controller = witness([], ({ time }) => ({ open: times.some((from) => time >= from && time < from + 120) }))
    const outcome = rehearse({ zone, limits, controller, days: 3, seed: 1 })
    expect(outcome.given).toBeCloseTo(0.6, 9)
    expect(outcome.worstDay).toBeCloseTo(0.5, 9)
  })
  it('polled every quarter of an hour, the valve closes when it was told to', () => {
    const outcome = rehearse({
      zone: plainZone(),
      limits,
      controller: byTheClock([8], 120),
      days: 1,
      seed: 1,
      pollEvery: seconds(900),
    })
    expect(outcome.maxOpening).toBe(120)
    expect(outcome.given).toBeCloseTo(0.2, 9)
  })
  it('the line fills once an opening and runs out beside the containers', () => {
    const outcome = rehearse({
      zone: plainZone({ lineFill: seconds(12) }),
      limits,
      controller: byTheClock([8, 9], 120),
      days: 1,
      seed: 1,
    })
    expect(outcome.given).toBeCloseTo(0.4, 9)
    expect(outcome.spilt).toBeCloseTo((2 * 12 * 6) / 3600, 9)
  })
  it('what a full container gets, drains: with a linear reservoir 63 % within one lag', () => {
    const zone = plainZone({ waterContent: waterContent(0.7), dailyUse: litres(1e-9) })
    const outcome = rehearse({ zone, limits, controller: byTheClock([8], 60), days: 1, seed: 1 })
    const at = (seconds: number) => outcome.course!.drained[(8 * 3600 + seconds) / 60]!
    // 0.1 L came in the first minute; after one more lag of 600 s all but exp(-1) of what was left has drained.
    const left = 0.1 - at(60)
    expect(at(660)).toBeCloseTo(0.1 - left * Math.exp(-1), 6)
    expect(outcome.drained).toBeCloseTo(0.1, 6)
  })
  it('a probe follows a step with its lag', () => {
    const zone = plainZone({ waterContent: waterContent(0.4), dailyUse: litres(1e-9), probeLag: seconds(600) })
    const outcome = rehearse({ zone, limits, controller: byTheClock([1], 60), days: 1, seed: 1 })
    const read = (minute: number) => outcome.course!.readings[0]![60 + minute]!
    expect(read(0)).toBeCloseTo(0.4, 9)
    // Within a step of a minute the rise is taken as a step at its start.
    expect(read(10)).toBeCloseTo(0.4 + 0.01 * (1 - Math.exp(-1)), 6)
    expect(read(120)).toBeCloseTo(0.41, 5)
  })
  it('a weeping valve passes its share all day, against the will of the controller', () => {
    const outcome = rehearse({
      zone: plainZone(),
      limits,
      controller: idle,
      days: 1,
      seed: 1,
      faults: [{ fault: 'valve-weeps', from: hours(0) }],
    })
    expect(outcome.given).toBeCloseTo(24 * 6 * 0.04, 9)
    expect(outcome.unordered).toBeCloseTo(outcome.given, 9)
    expect(outcome.worstDay).toBe(0)
    expect(outcome.worstDayInAll).toBeCloseTo(24 * 6 * 0.04, 9)
  })
  it('counts stress and over-wet time by the true mean', () => {
    const zone = plainZone({ waterContent: waterContent(0.5), evenShare: fraction(1), dailyUse: litres(2.4) })
    const judged = { ...limits, stressBelow: waterContent(0.4), fullAbove: waterContent(0.45) }
    const outcome = rehearse({ zone, limits: judged, controller: idle, days: 1, seed: 1 })
    // 0.1 L/h is 0.01 an hour: above 0.45 for five hours, below 0.4 after ten.
    expect(outcome.fullTime / 3600).toBeCloseTo(5, 1)
    expect(outcome.stressTime / 3600).toBeCloseTo(14, 1)
  })
})
