import {
  controlWatering,
  hours,
  litres,
  litresPerHour,
  minutes,
  type WateringDecision,
  type WateringInput,
  type WateringSettings,
  type WateringState,
  waterContent,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { MIDNIGHT, settings } from './zone.js'

/** A container by the true clock: what plants drink by day and what truly came decide what the probe says. */
interface Story {
  /** When decisions are made. Unit: s. */
  readonly decidesAt: (time: number) => boolean
  /** Decisions each time, three seconds apart. */
  readonly burst?: number
  readonly clock?: (time: number) => number
  readonly stored?: (state: WateringState, time: number) => unknown
  readonly isLost?: (time: number) => boolean
  /** What the meter says where truly so much has run. Unit: L. */
  readonly meter?: (ran: number) => number
  /** What a second probe says, always. */
  readonly other?: number
  readonly days?: number
  readonly changed?: Partial<WateringSettings>
}

const START = MIDNIGHT + 3600 * 6

/** Hours in which the container is drier than a tenth below the lower limit, what came in the worst 24 h as a share of the limit, and outside the hours. */
function story({
  decidesAt,
  burst = 1,
  clock = (time) => time,
  stored = (state) => state,
  isLost = () => false,
  meter = (ran) => ran,
  days = 4,
  changed = {},
  other,
}: Story) {
  const rules = { ...settings, ...changed }
  const { substrateVolume, usualPerDay, maxPerDay, flow, upper, lower } = rules
  const reducer = controlWatering(rules)
  let state: unknown = reducer.start
  let [level, until, dry, opening, metered, highest, outside] = [(lower + upper) / 2, 0, 0, -1, 0, 0, 0]
  let [sumOfLevels, decisions] = [0, 0]
  const came: { readonly time: number; readonly litres: number }[] = []
  const numbers: number[] = []
  let decision: WateringDecision | undefined
  for (let time = START; time < START + days * 86400; time += 60) {
    const hour = ((time - MIDNIGHT) % 86400) / 3600
    level -= hour > 7 && hour < 18 ? (0.9 * usualPerDay) / 11 / 60 / substrateVolume : 0
    for (let message = 0; decidesAt(time) && message < burst; message++) {
      const now = clock(time + 3 * message)
      const noise = 0.0004 * (Math.floor(time / 900) % 3)
      const waterContent = isLost(time) ? null : level + noise
      const second = other === undefined ? [] : [{ waterContent: other + noise, time: now, probe: 'b' }]
      const input = { now, readings: [{ waterContent, time: now }, ...second], locked: false }
      const step = reducer.step(
        stored(state as WateringState, time) as WateringState,
        {
          ...input,
          metered: litres(meter(metered)),
        } as WateringInput,
      )
      state = step[0]
      decision = step[1]
      // As the words of `opening` say: each number is given once.
      if (decision.open && !numbers.includes(decision.opening)) {
        numbers.push(decision.opening)
        until = time + decision.closeAfter
      } else if (!decision.open || decision.opening !== opening) until = Math.min(until, time)
      opening = decision.opening
    }
    const ran = Math.max(0, Math.min(60, until - time))
    const volume = (ran * flow) / 3600
    level = Math.min(upper + 0.05, level + volume / substrateVolume)
    metered += volume
    came.push({ time, litres: volume })
    const isAllowed = rules.allowedHours.some(({ from, to }) => hour * 3600 >= from && hour * 3600 < to)
    if (!isAllowed) outside += volume
    if (level < lower - 0.1) dry += 1 / 60
    if (time > MIDNIGHT + 36 * 3600) {
      highest = Math.max(highest, level)
      sumOfLevels += level
      decisions++
    }
  }
  let [sum, worst, from] = [0, 0, 0]
  for (const { time, litres: volume } of came) {
    sum += volume
    while (came[from]!.time <= time - 86400) sum -= came[from++]!.litres
    worst = Math.max(worst, sum)
  }
  return { dry, worst: worst / maxPerDay, numbers, highest, outside, mean: sumOfLevels / decisions }
}

const everyMinute = () => true

/** An invented bed of soil, in which two days of water have room, watered from 6 to 12 o'clock. */
const BED: Partial<WateringSettings> = {
  lower: waterContent(0.22),
  upper: waterContent(0.31),
  minBelievable: waterContent(0.08),
  maxBelievable: waterContent(0.5),
  substrateVolume: litres(120),
  flow: litresPerHour(8),
  shot: litres(2),
  maxRunTime: minutes(20),
  maxPerDay: litres(16),
  usualPerDay: litres(8),
  minRest: hours(1),
  probeLag: hours(1),
  allowedHours: [{ from: hours(6), to: hours(12) }],
}

describe('a zone that is not to starve', () => {
  it('though its state is lost once or twice an hour gets water for its plants', () => {
    // Room for a whole shot takes longer than such a state lasts, and numbers that began again at one were not given twice.
    for (const every of [40, 61, 97]) {
      const { dry, worst } = story({
        decidesAt: everyMinute,
        stored: (state, time) => ((time / 60) % every === 0 ? undefined : state),
      })
      expect(dry).toBe(0)
      expect(worst).toBeLessThanOrEqual(1)
    }
  })
  it('has its openings numbered on after a state that was lost', () => {
    const { numbers } = story({
      decidesAt: everyMinute,
      stored: (state, time) => (time === MIDNIGHT + 36 * 3600 ? undefined : state),
    })
    expect(numbers.length).toBeGreaterThan(20)
    expect(numbers.every((number, i) => i === 0 || number > numbers[i - 1]!)).toBe(true)
    expect(numbers.every((number) => Number.isSafeInteger(number))).toBe(true)
  })
  it('though its clock flaps by a day each hour gets water for its plants', () => {
    const { dry, worst } = story({
      decidesAt: everyMinute,
      clock: (time) => time + (time > MIDNIGHT + 33 * 3600 && Math.floor(time / 3600) % 2 === 1 ? 86400 : 0),
    })
    expect(dry).toBe(0)
    expect(worst).toBeLessThanOrEqual(1)
  })
  // Four decisions of the new pace pass before it is known, in which the valve may have been opened: at noon that is water for half a day.
  it.each([
    [1, 0],
    [5, 0],
    [15, 20],
  ])('though decisions each %s min become hourly ones gets water for its plants', (minutes, atMost) => {
    const { dry, worst } = story({
      days: 7,
      decidesAt: (time) => (time / 60) % (time > MIDNIGHT + 33 * 3600 ? 60 : minutes) === 0,
    })
    expect(dry).toBeLessThanOrEqual(atMost)
    expect(worst).toBeLessThanOrEqual(1)
  })
  it('is watered up to its upper limit though each fifth reading is lost', () => {
    // Each lost one ended the shot under way, and the zone forgot that it was being watered: it stayed at its lower limit.
    const { highest, worst } = story({ decidesAt: everyMinute, isLost: (time) => (time / 60) % 5 === 0 })
    expect(highest).toBeGreaterThan(0.585)
    expect(worst).toBeLessThanOrEqual(1)
  })
  it.each([{}, BED])('though its flow meter was never connected gets water for its plants', (changed) => {
    // After two shots that it did not see, shots were a quarter of themselves, of which no probe could tell that they came.
    const { dry, worst } = story({ days: 7, decidesAt: everyMinute, meter: () => 0, changed })
    expect(dry).toBe(0)
    expect(worst).toBeLessThanOrEqual(1)
  })
  it.each([9, 12, 15])('is watered in its morning hours only though its clock is set back by an hour', (hour) => {
    // Plants drink in the afternoon too: they spoke for the clock.
    const set = MIDNIGHT + (48 + hour) * 3600
    const clock = (time: number) => (time < set ? time : time - 3600)
    const { outside, dry } = story({ days: 9, decidesAt: everyMinute, clock, changed: BED })
    expect(outside).toBe(0)
    expect(dry).toBe(0)
  })
  it('is not held at its lower limit because one of two probes that disagree always says wet', () => {
    // Each time that the other one stood a little above that limit, both said "wet", and the shot by time waited for a whole interval.
    const { mean, highest, worst } = story({
      days: 7,
      decidesAt: everyMinute,
      changed: { probes: [{ name: '' }, { name: 'b' }] },
      other: 0.62,
    })
    expect(mean).toBeGreaterThan(0.52)
    expect(highest).toBeLessThan(0.6)
    expect(worst).toBeLessThanOrEqual(1)
  })
  it('has no second day where the clock runs sixty times too fast instead', () => {
    const from = MIDNIGHT + 33 * 3600
    const { worst } = story({
      days: 3,
      decidesAt: everyMinute,
      clock: (time) => (time < from ? time : from + 60 * (time - from)),
    })
    expect(worst).toBeLessThanOrEqual(1.05)
  })
  it.each([1.2, 1.3, 1.5])(
    'has no second morning where the clock of a bed with six hours runs %s times too fast',
    (times) => {
      for (const hour of [33, 36, 40, 44]) {
        const from = MIDNIGHT + hour * 3600
        const { worst, dry } = story({
          days: 7,
          decidesAt: everyMinute,
          clock: (time) => (time < from ? time : from + times * (time - from)),
          changed: BED,
        })
        expect(worst).toBeLessThanOrEqual(1.05)
        expect(dry).toBe(0)
      }
    },
  )
  it.each([2, 3, 4, 6])(
    'though it is asked in bursts of %i, as by each message that arrives, gets its water',
    (burst) => {
      // The pace was learned in the burst, each pause was a leap of the clock, and the valve opened not once in a week: 165 h of stress.
      for (const every of [300, 600, 900]) {
        const { dry, worst } = story({ decidesAt: (time) => time % every === 0, burst })
        expect([every, dry]).toEqual([every, 0])
        expect(worst).toBeLessThanOrEqual(1)
      }
    },
  )
})
