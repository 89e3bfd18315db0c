/** Readings, counts and clocks as they arrive in practice: in batches, again, late, ahead of time. */
import { litres, minutes, runReducer, type WatchZoneInput, watchZone } from 'porewater'
import { describe, expect, it } from 'vitest'
import { type Script, SETTINGS, scripted } from './scripted-zone.js'

const AB = ['A', 'B']
const SHOTS = Array.from({ length: 2 }, (_, day) =>
  Array.from({ length: 14 }, (_, k) => 1440 * day + 370 + 53 * k),
).flat()
const isOpen = (minute: number) => SHOTS.some((at) => minute >= at && minute < at + 2)
const base: Script = {
  minutes: 2880,
  probes: AB,
  shots: SHOTS,
  use: (14 * 2 * 0.01) / 1440,
  metered: (minute) => (isOpen(minute) ? 1 : 0),
}
const healthy = scripted(base)
const codes = (inputs: readonly WatchZoneInput[], zone = watchZone({ ...SETTINGS, probes: AB })) => [
  ...new Set(runReducer({ reducer: zone, inputs }).outputs.flatMap(({ causes }) => causes.map(({ code }) => code))),
]
const sent = (of: (input: WatchZoneInput, minute: number) => object, inputs = healthy) =>
  inputs.map((input, minute): WatchZoneInput => ({ ...input, ...of(input, minute) }))

type Readings = WatchZoneInput['readings']
/** The readings of each quarter of an hour at its end. */
const batches = (of: (batch: Readings, before: Readings) => Readings, inputs = healthy) => {
  const batch = (minute: number) =>
    inputs.slice(Math.max(0, minute - 14), minute + 1).flatMap(({ readings }) => readings)
  return sent(
    (_, minute) => ({ readings: minute % 15 === 14 ? of(batch(minute), minute < 15 ? [] : batch(minute - 15)) : [] }),
    inputs,
  )
}

describe('readings in batches', () => {
  it('tell of a healthy zone that nothing is wrong: in any order, twice, or with those of before', () => {
    const odd = batches((batch) => batch.filter((_, i) => i % 2 === 0).concat(batch.filter((_, i) => i % 2 === 1)))
    const all = [
      odd,
      batches((batch) => [...batch].reverse()),
      batches((batch) => [...batch, ...batch]),
      batches((batch, before) => [...batch, ...before]),
    ]
    for (const inputs of all) expect(codes(inputs)).toEqual([])
  })
  it('make the same state newest first as oldest first', () => {
    const zone = watchZone({ ...SETTINGS, probes: AB })
    const [one, other] = [batches((batch) => batch), batches((batch) => [...batch].reverse())].map(
      (inputs) => runReducer({ reducer: zone, inputs }).state,
    )
    expect(other).toEqual(one)
  })
  it('find a dripper that clogs, newest first as well', () => {
    const clogged = scripted({ ...base, reaches: (minute, probe) => (minute > 1440 && probe === 1 ? 0 : 1) })
    expect(codes(batches((batch) => [...batch].reverse(), clogged))).toContain('clogged-dripper')
  })
  it('a bad reading of a batch that is sent again, after good ones, is no dead probe', () => {
    const old = { probe: 'A', waterContent: null as never, time: healthy[1000]!.now }
    const inputs = sent(({ readings }, minute) => ({ readings: minute > 1100 ? [...readings, old] : readings }))
    expect(codes(inputs)).toEqual([])
  })
})

describe('times of readings', () => {
  it('a reading ahead of now does not hold those back that follow', () => {
    const zone = watchZone({ ...SETTINGS, probes: AB, maxReadingAge: minutes(120) })
    const stray = (input: WatchZoneInput) => input.readings.map((one) => ({ ...one, time: one.time! + 6000 }))
    const inputs = sent((input, minute) => (minute === 1300 ? { readings: stray(input) } : {}))
    const { state } = runReducer({ reducer: zone, inputs: inputs.slice(0, 1310) })
    expect(state.probes.map(({ times }) => times.slice(-3))).toEqual(
      AB.map(() => [1307, 1308, 1309].map((at) => 60 * at)),
    )
    expect(codes(inputs, zone)).toEqual([])
  })
  it('a clock that is set right by a second, or two messages that overtake each other, are no wrong clock', () => {
    const inputs = sent(({ now }, minute) => (minute % 700 === 699 ? { now: now - 61 } : {}))
    expect(codes(inputs)).toEqual([])
  })
  it('a clock that goes ahead by an hour makes no readings late', () => {
    const inputs = sent(({ now }, minute) => ({ now: now + (minute > 700 ? 3600 : 0) }))
    expect(codes(inputs)).toEqual(['clock-wrong', 'power-cut'])
  })
  it('beside a clock that flaps by an hour nothing is said of water and meter', () => {
    const inputs = sent(({ now }, minute) => ({ now: now + (minute > 700 && minute % 40 < 20 ? 3600 : 0) }))
    const told = codes(inputs)
    expect(told).toContain('clock-wrong')
    for (const code of ['flow-meter-wrong', 'partial-water', 'no-water']) expect(told).not.toContain(code)
  })
})

describe('an EC of the feed that comes in microsiemens one time in seven, also the first', () => {
  it('is a slip of units, and no feed that changed', () => {
    const feed = (minute: number) => (minute % 7 === 0 ? 2100 : 2.1) as never
    expect(codes(sent((_, minute) => ({ feedEC: feed(minute) })))).not.toContain('feed-tank-wrong')
  })
})

describe('a zone that is full in the evening', () => {
  it('and falls as plants drink in the dark has no stuck valve, though an hour of readings does not show it', () => {
    const shots = [400, 450, 500, 550]
    const metered = (minute: number) => (shots.some((at) => minute >= at && minute < at + 2) ? 1 : 0)
    const inputs = scripted({ ...base, minutes: 1200, shots, metered, start: 0.745, use: 0.000015 })
    expect(codes(sent(() => ({ light: 0 }), inputs))).toEqual([])
  })
})

describe('a probe that is read more seldom from now on', () => {
  it('is no clogged dripper, and the zone has water', () => {
    const inputs = sent(({ readings }, minute) => ({
      readings: minute > 700 && minute % 15 !== 0 ? readings.filter(({ probe }) => probe === 'A') : readings,
    }))
    expect(codes(inputs)).toEqual(['no-readings'])
  })
})

describe('counters', () => {
  const counted = (of: (count: number, minute: number) => number | null, inputs = healthy) =>
    sent(({ metered }, minute) => ({ metered: of(100 + (metered as number), minute) as never }), inputs)
  const at = (minute: number) => 100 + (healthy[minute]!.metered as number)

  it('that are read by the quarter or the whole hour, or five minutes late, tell of no fault', () => {
    for (const every of [5, 15, 60]) {
      expect(codes(counted((_, minute) => at(minute - (minute % every))))).toEqual([])
      expect(codes(counted((count, minute) => (minute % every === 0 ? count : null)))).toEqual([])
    }
    expect(codes(counted((_, minute) => at(Math.max(0, minute - 5))))).toEqual([])
  })
  it('say of themselves that they count too late to tell a shot', () => {
    const inputs = counted((_, minute) => at(minute - (minute % 60)))
    const { cannotTell } = runReducer({ reducer: watchZone({ ...SETTINGS, probes: AB }), inputs }).outputs.at(-1)!
    expect(cannotTell).toContainEqual({ code: 'flow-meter-wrong', reason: 'counts-too-late' })
  })
  it('that are read by the hour still tell a valve that stays open in the night', () => {
    const stuck = scripted({ ...base, metered: (minute) => (isOpen(minute) || minute > 2880 - 300 ? 1 : 0) })
    const inputs = stuck.map((input, minute) => ({ ...input, metered: stuck[minute - (minute % 60)]!.metered! }))
    expect(codes(inputs)).toContain('valve-stuck-open')
  })
  it('that wrap, begin anew, fall back and come again, or slip for one call tell of no fault', () => {
    const odd = [
      (count: number) => count % 3,
      (count: number, minute: number) => count - at(minute - (minute % 1440)),
      (count: number, minute: number) => (minute % 500 === 499 ? 0 : count),
      (count: number, minute: number) => (minute % 300 < 10 ? count - 1 : count),
      (count: number, minute: number) => (minute % 500 === 499 ? count + 1000 : count),
    ]
    for (const of of odd) expect(codes(counted(of))).toEqual([])
    const seldom = counted(odd[2]!).filter((_, minute) => minute % 5 === 4)
    expect(codes(seldom)).not.toContain('valve-stuck-open')
  })
  it('of drain that tip half a litre at once are no water by hand', () => {
    let drained = 0
    const inputs = sent((_, minute) => {
      drained += isOpen(minute) ? 0.02 : 0
      return { drained: litres(Math.floor(2 * drained) / 2) }
    })
    expect(codes(inputs)).not.toContain('watered-by-hand')
  })
})
