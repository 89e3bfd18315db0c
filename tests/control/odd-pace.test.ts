/** Zones whose readings or calls come by the quarter, half or whole hour, and rules against names that are not exchanged. */
import {
  type Diagnosis,
  hours,
  runReducer,
  type Volume,
  type WatchZoneInput,
  type WaterContent,
  watchZone,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { noise, type Script, SETTINGS, scripted } from './scripted-zone.js'

const AB = ['A', 'B']
const DAYS = 5
const EVERY = 26
/** Shots of two hundredths by day, so near each other that there is one between nearly any two readings of a quarter of an hour. */
const SHOTS = Array.from({ length: DAYS }, (_, day) =>
  Array.from({ length: 26 }, (_, k) => 1440 * day + 380 + EVERY * k),
).flat()
const inShot = (minute: number) => SHOTS.some((at) => minute >= at && minute < at + 2)
const base: Script = {
  minutes: 1440 * DAYS,
  probes: AB,
  shots: SHOTS,
  use: (26 * 2 * 0.01) / 1440,
  start: 0.6,
  metered: (minute) => (inShot(minute) ? 1 : 0),
}
const zone = watchZone({ ...SETTINGS, probes: AB, maxReadingAge: hours(2.5) })
const by = (minutes: number, inputs: readonly WatchZoneInput[]) =>
  inputs.map((input, minute) => (minute % minutes === 0 ? input : { ...input, readings: [] }))
const asked = (minutes: number, inputs: readonly WatchZoneInput[]) =>
  inputs.filter((_, minute) => minute % minutes === 0)
const watched = (inputs: readonly WatchZoneInput[]) => runReducer({ reducer: zone, inputs }).outputs
const told = (outputs: readonly Diagnosis[]) => [
  ...new Set(outputs.flatMap(({ causes }) => causes.map(({ code }) => code))),
]

describe('a healthy zone', () => {
  it.each([15, 20, 45])('that is read every %i minutes has no noisy probe, clogged dripper or leak', (minutes) => {
    expect(told(watched(by(minutes, scripted(base))))).toEqual([])
  })
  it('whose readings are taken right after an hourly call has no wrong clock, though each is an hour old when it comes', () => {
    const inputs = asked(60, scripted({ ...base, shots: [], use: 1e-5, metered: () => 0 }))
    const late = inputs.map((input, i) => ({
      ...{ now: input.now, open: false },
      readings: (inputs[i - 1]?.readings ?? []).map((one) => ({ ...one, time: one.time + 10 })),
    }))
    expect(told(watched(late))).toEqual([])
  })
})

describe('water that stays on, seen by the half hour', () => {
  const from = 1440 * 3 + 1200
  const stuck = scripted({
    ...base,
    shots: [...SHOTS.filter((at) => at < from), ...Array.from({ length: 200 }, (_, k) => from + 2 * k)],
    capacity: 0.76,
  })
  const outputs = watched(
    asked(
      30,
      stuck.map((input, minute) => (minute < from ? input : { ...input, open: false, metered: undefined as never })),
    ),
  )

  it('lifts all probes and is no probe that was put in again', () => {
    const codes = told(outputs)
    expect(codes).not.toContain('probe-reinserted')
    expect(codes.some((code) => ['valve-stuck-open', 'leak-between-shots', 'watered-by-hand'].includes(code))).toBe(
      true,
    )
  })
  it('makes a zone that is known to be full', () => {
    expect(outputs[((from + 400) / 30) | 0]!.full).toEqual({ known: true, value: true })
  })
})

it('one probe of two that leaps up alone was put in again', () => {
  const sends = (truth: number, minute: number, i: number) =>
    truth + noise(minute, i) + (i === 1 && minute > 2000 ? 0.06 : 0)
  const moved = scripted({ ...base, minutes: 2880, shots: [], use: 2e-5, metered: () => 0, sends })
  expect(told(watched(by(30, moved)))).toContain('probe-reinserted')
})

describe('names of probes', () => {
  const flat: Script = {
    ...base,
    minutes: 1440,
    use: 0,
    start: 0.66,
    shots: [600, 610, 620, 630, 640, 650, 660],
    metered: () => 0,
  }
  /** Of the two places the full one drains what it is given from minute 620 on: half of a litre of the refill's 1.4 L. */
  const drains = (inputs: readonly WatchZoneInput[]) =>
    inputs.map((input, minute) => ({
      ...input,
      drained: (0.01 * Math.max(0, Math.min(50, minute - 620))) as Volume,
    }))
  const sent = (levels: (truth: number, probe: number) => number, exchangedFrom = Infinity) =>
    drains(scripted({ ...flat, sends: (truth, minute, i) => levels(truth, i) + noise(minute, i) })).map(
      (input, minute) => ({
        ...input,
        readings: input.readings.map((one, i, all) =>
          minute < exchangedFrom ? one : { ...one, waterContent: all[1 - i]!.waterContent as WaterContent },
        ),
      }),
    )
  const swapTold = (inputs: readonly WatchZoneInput[]) => told(watched(inputs)).includes('probes-swapped')

  it.each([0.005, 0.01, 0.02, 0.03, 0.04])(
    'are not exchanged where the drier place, by %d, takes all of a refill and the wetter one is full',
    (apart) => {
      const levels = (truth: number, i: number) =>
        i === 0 ? Math.min(truth, 0.7) : Math.min(truth - apart, 0.7 + apart)
      expect(swapTold(sent(levels))).toBe(false)
    },
  )
  it('are exchanged where each place says what the other said, with the same refill before', () => {
    expect(swapTold(sent((truth, i) => truth - 0.02 * i, 900))).toBe(true)
  })
  it('are exchanged by the half hour as well where the places stand far apart', () => {
    expect(
      swapTold(
        asked(
          30,
          sent((truth, i) => truth - 0.05 * i, 900),
        ),
      ),
    ).toBe(true)
  })
})
