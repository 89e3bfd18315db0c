import { controlWatering, hours, litres, type WateringInput, type WateringState } from 'porewater'
import { expect, it } from 'vitest'
import { clock, MIDNIGHT, settings } from './zone.js'

const DAY = 86400
/** Hour of the day. */
const hourOf = (time: number) => ((time - MIDNIGHT) % DAY) / 3600
/** Plants drink 3 L a day from 7 to 18 o'clock, and hardly at all by night. Unit: m³/m³ in a second. */
const useAt = (time: number) => (hourOf(time) >= 7 && hourOf(time) < 18 ? 0.3 / (11 * 3600) : 1e-8)

/** Plants of a warm week, and readings that may be two hours old. */
const rules = { usualPerDay: litres(2.5), maxPerDay: litres(6), maxReadingAge: hours(2) }

interface Course {
  readonly days: number
  readonly poll: number
  /** Whether the machine runs. */
  readonly runs: (time: number) => boolean
  /** Water content at the beginning. Unit: m³/m³. */
  readonly from?: number
  /** How far readings are apart that come. Unit: s. */
  readonly every?: number
  /** By how much its clock is ahead. Unit: s. */
  readonly ahead?: (time: number) => number
}

/** A container that drinks while nobody decides: when it was watered. */
function watered({ days, poll, runs, from = 0.56, every = poll, ahead = () => 0 }: Course) {
  const { step, start } = controlWatering({ ...settings, ...rules })
  let [state, level, until]: [WateringState, number, number] = [start, from, 0]
  const openings: number[] = []
  let reading: object = { waterContent: level, time: MIDNIGHT }
  for (let time = MIDNIGHT; time < MIDNIGHT + days * DAY; time += 60) {
    level -= 60 * useAt(time)
    level += (Math.max(0, Math.min(60, until - time)) * settings.flow) / 3600 / settings.substrateVolume
    if (!runs(time)) until = 0
    if (!runs(time) || time % poll !== 0) continue
    const now = time + ahead(time)
    if (time % every === 0) reading = { waterContent: level + 0.001 * ((time / 60) % 3), time: now }
    const [next, { open, closeAfter }] = step(state, {
      now,
      readings: [reading],
      locked: false,
    } as unknown as WateringInput)
    if (open && until < time) openings.push(time)
    until = open ? time + closeAfter : 0
    state = next
  }
  return openings
}

it('after a power cut by day a dry zone is watered the next morning, not from the afternoon on', () => {
  // The fall of eleven hours was "too fast" for the minute that was counted, so that nobody heard the plants, and no hour was allowed by both clocks.
  const cut = [clock(24 + 8), clock(24 + 19)] as const
  const openings = watered({ days: 4, poll: 120, runs: (time) => time < cut[0] || time >= cut[1] })
  const first = openings.find((time) => time >= cut[1])!
  expect(first).toBeLessThanOrEqual(clock(48 + 7.5))
  // Nor is it held against the few minutes that were counted, which had stopped the water at noon as a use too large: 18 shots.
  expect(openings.filter((time) => time >= clock(48) && time < clock(72)).length).toBeGreaterThanOrEqual(25)
  expect(openings.every((time) => hourOf(time) >= 7 && hourOf(time) < 18)).toBe(true)
})

it('a clock that was set ahead is not believed because plants drank in the minute of it', () => {
  const set = clock(24 + 12)
  const ahead = (time: number) => (time < set ? 0 : 6 * 3600)
  const openings = watered({ days: 2, poll: 120, runs: () => true, ahead })
  expect(openings.length).toBeGreaterThan(5)
  expect(openings.every((time) => hourOf(time) >= 7 && hourOf(time) < 18)).toBe(true)
})

it('a dry zone whose readings come by the hour is not given one shot in an hour', () => {
  // Each shot waited for a reading that could show it, however far below the lower limit the zone stood: 42 h of stress a week in one simulation.
  const course = { days: 2, poll: 120, from: 0.4, runs: () => true }
  const inMorning = (time: number) => time >= clock(24 + 8) && time < clock(24 + 12)
  const often = watered(course).filter(inMorning).length
  const seldom = watered({ ...course, every: 3600 }).filter(inMorning).length
  expect(often).toBeGreaterThan(8)
  expect(seldom).toBeGreaterThanOrEqual(8)
  expect(seldom).toBeLessThanOrEqual(often)
})
