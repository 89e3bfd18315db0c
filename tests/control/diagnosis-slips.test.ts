/** Units, clocks and places that lie: what `watchZone` may say of each is reasoned from the record alone. */
import {
  type Diagnosis,
  litres,
  runReducer,
  type WatchZoneInput,
  watchZone,
  waterContent,
  type ZoneWatchState,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { noise, type Script, SETTINGS, scripted } from './scripted-zone.js'

const AB = ['A', 'B']
const SHOTS = Array.from({ length: 40 }, (_, k) => 60 + 130 * k)
const FROM = 1500
const inShot = (shots: readonly number[], minute: number) => shots.some((at) => minute >= at && minute < at + 2)
const base: Script = { minutes: 2880, probes: AB, shots: SHOTS, metered: (minute) => (inShot(SHOTS, minute) ? 1 : 0) }
const zone = watchZone({ ...SETTINGS, probes: AB })
const watched = (inputs: readonly WatchZoneInput[]) => runReducer({ reducer: zone, inputs }).outputs
const codesOf = ({ causes }: Diagnosis) => causes.map(({ code }) => code)
const told = (outputs: readonly Diagnosis[]) => [...new Set(outputs.flatMap(codesOf))].sort()
/** The script with the readings of B, and nothing else, otherwise from a moment on. */
const otherB = (script: Script, what: (level: number, minute: number) => number) =>
  scripted(script).map((input, minute) => ({
    ...input,
    readings: input.readings.map((one, i) =>
      i === 1 ? { ...one, waterContent: waterContent(what(one.waterContent, minute)) } : one,
    ),
  }))

describe('a name that is another one in the messages', () => {
  const renamed = (name: (probe: string) => string) =>
    watched(
      scripted({ ...base, minutes: 240 }).map((input) => ({
        ...input,
        readings: input.readings.map((one) => ({ ...one, probe: name(one.probe) })),
      })),
    )
  const at = (outputs: readonly Diagnosis[], code: string) =>
    outputs.findIndex((one) => codesOf(one).includes(code as never))
  it('of all probes is told within half an hour as readings that do not come', () => {
    const outputs = renamed((probe) => probe.toLowerCase())
    expect(told(outputs)).toEqual(['no-readings'])
    expect(at(outputs, 'no-readings')).toBeLessThan(30)
  })
  it('of one probe is told as that probe', () => {
    const outputs = renamed((probe) => (probe === 'B' ? 'b' : probe))
    expect(at(outputs, 'probe-dead')).toBeLessThan(30)
    expect(outputs.at(-1)!.causes.find(({ code }) => code === 'probe-dead')?.about).toEqual(['B'])
  })
})

describe('a place that is full', () => {
  it('is a witness of water: the dripper beside it that gives half is told, and neither a leak nor channels', () => {
    const script: Script = {
      ...base,
      minutes: 3600,
      reaches: (minute, probe) => (probe === 1 ? 1.3 : minute > FROM ? 0.5 : 1),
    }
    const outputs = watched(scripted(script))
    const clogged = outputs.at(-1)!.causes.find(({ code }) => code === 'clogged-dripper')
    expect(clogged?.about).toEqual(['A'])
    expect(told(outputs)).not.toContain('line-leak')
    expect(told(outputs)).not.toContain('channelling')
  })
})

describe('a probe that moves alone', () => {
  it('to the mirror of its neighbour has not changed places with it', () => {
    const outputs = watched(otherB(base, (level, minute) => level + (minute < 1570 ? 0.02 : -0.02)))
    expect(told(outputs)).not.toContain('probes-swapped')
    expect(told(outputs)).toContain('probe-reinserted')
  })
  it('up between two shots of one watering leaps further than the valve can fill it', () => {
    const shots = [...SHOTS, 1502].sort((a, b) => a - b)
    const script = { ...base, shots, metered: (minute: number) => (inShot(shots, minute) ? 1 : 0) }
    const outputs = watched(otherB(script, (level, minute) => level + (minute < 1499 ? 0 : 0.05)))
    expect(told(outputs.slice(0, 1515))).toEqual(['probe-reinserted'])
  })
})

/** What `watchZone` says of a stored state in which only some parts are filled in. */
const saidOf = (parts: Partial<ZoneWatchState>, now: number) =>
  zone.step({ ...zone.start, ...parts }, { now, readings: [], open: false })[1]

describe('levels after drain', () => {
  const DAY = 86400
  const salts = [3.2, 3.6, 3.9, 4.1, 4.2, 4.1, 4.3]
  const nights = (level: number) =>
    salts.map((drainEC, day) => ({
      start: day * DAY,
      end: day * DAY + 36000,
      falls: [null, null],
      errors: [0, 0],
      warmth: [null, null],
      plateaus: [level + 0.02 * (drainEC - 3) + 0.3 * noise(day, 0), level + 0.3 * noise(day, 1)],
      drained: 0.4,
      drainEC,
      odd: [false, false],
    }))
  it('that level off with the EC of the drain follow salt, though no line goes through the days', () => {
    const { causes } = saidOf({ nights: nights(0.73) }, 6 * DAY + 40000)
    expect(causes[0]).toMatchObject({ code: 'salt-driven', about: ['A'] })
    expect(causes[0]!.evidence[0]!.value).toBeCloseTo(0.02, 2)
  })
  it('of a zone far from full have not drained, whatever the gauge counts: nothing is told', () => {
    expect(codesOf(saidOf({ nights: nights(0.55) }, 6 * DAY + 40000))).toEqual([])
  })
})

describe('waterings of two shots', () => {
  const shots = (share: (isLate: boolean, isFirst: boolean) => number) =>
    Array.from({ length: 48 }, (_, k) => {
      const [pair, isFirst] = [k >> 1, k % 2 === 0]
      const time = 10800 * pair + (isFirst ? 0 : 720)
      return {
        ...{ time, volume: 0.2, rises: [1, 1], metered: 1, drained: share(pair >= 17, isFirst), levels: [0.7, 0.7] },
        ...{ level: 0.7, error: 0.05, sure: true },
      }
    })
  const said = (share: Parameters<typeof shots>[0]) => codesOf(saidOf({ shots: shots(share) }, 260_000))
  it('of which the first drains more and the second as ever: it runs past what is dry, at places without a probe', () => {
    expect(said((isLate, isFirst) => (isFirst ? (isLate ? 0.1 : 0.05) : 0.12))).toEqual(['channelling'])
  })
  it('of which the second drains more overflow, and nothing is told', () => {
    expect(said((isLate, isFirst) => (isFirst ? 0.05 : isLate ? 0.16 : 0.12))).toEqual([])
  })
  it('of which both drain twice as much: a gauge, or other places', () => {
    expect(said((isLate, isFirst) => (isLate ? 2 : 1) * (isFirst ? 0.05 : 0.12))).toEqual([
      'drain-gauge-wrong',
      'channelling',
    ])
  })
})

describe('a number in another unit', () => {
  const healthy = scripted(base)
  const from = (change: (input: WatchZoneInput) => object) =>
    watched(healthy.map((input, minute) => (minute < FROM ? input : { ...input, ...change(input) })))
  it('a level that is a tenth of what it was is one, and a lifted probe the other thing it can be', () => {
    const outputs = watched(otherB(base, (level, minute) => (minute < FROM ? level : level / 10)))
    expect(codesOf(outputs[FROM + 20]!)).toEqual(['unit-slip', 'probe-lifted'])
  })
  it('a feed of µS/cm is one from the first hour, and no feed that was mixed wrongly', () => {
    const feed = (EC: number) =>
      healthy.map((input, minute) => ({ ...input, feedEC: (minute < FROM ? 2.5 : EC) as never }))
    expect(told(watched(feed(2500)))).toEqual(['unit-slip'])
    expect(told(watched(feed(25)))).toEqual(['feed-tank-wrong', 'unit-slip'])
    expect(told(watched(feed(5)))).toEqual(['feed-tank-wrong'])
    expect(told(watched(healthy.map((input) => ({ ...input, feedEC: 2500 as never }))))).toEqual(['unit-slip'])
  })
  it('a meter in millilitres is a wrong meter, not a burst line', () => {
    const start = healthy[FROM]!.metered!
    expect(told(from(({ metered }) => ({ metered: litres(start + 1000 * (metered! - start)) })))).toEqual([
      'flow-meter-wrong',
    ])
  })
  it('a feed EC that falls to 0.0 was called one: no fertiliser comes, or its sensor is dead', () => {
    const fed = healthy.map((input, minute) => ({ ...input, feedEC: (minute < FROM ? 2.5 : 0) as never }))
    const { causes } = watched(fed)[FROM + 5]!
    expect(causes.map(({ code, check }) => [code, check])).toEqual([
      ['feed-tank-wrong', 'measure-feed-ec'],
      ['unit-slip', 'check-the-unit'],
    ])
  })
  it('an EC of 0.0 from the first hour tells nothing of salt, and says so', () => {
    const { cannotTell } = watched(healthy.map((input) => ({ ...input, feedEC: 0 as never, drainEC: 0 as never }))).at(
      -1,
    )!
    for (const code of ['salt-driven', 'feed-tank-wrong'])
      expect(cannotTell).toContainEqual({ code, reason: 'ec-below-rain' })
    const alive = watched(healthy.map((input) => ({ ...input, feedEC: 0.1 as never, drainEC: 0.1 as never }))).at(-1)!
    expect(alive.cannotTell.map(({ reason }) => reason)).not.toContain('ec-below-rain')
  })
  it('light in lux tells nothing, and spoils nothing', () => {
    expect(told(watched(healthy.map((input) => ({ ...input, light: 50_000 as never }))))).toEqual([])
  })
})

describe('series an hour apart', () => {
  it('orders whose log goes by another clock: the clocks are told, and shots are no longer judged', () => {
    const order = ({ open, closeAfter }: WatchZoneInput) => ({
      open,
      ...(closeAfter === undefined ? {} : { closeAfter }),
    })
    const script = scripted({ ...base, minutes: 4320 })
    const moved = script.map(({ closeAfter: _, ...input }, minute) => ({
      ...input,
      ...order(minute < FROM ? script[minute]! : script[minute - 60]!),
    }))
    const outputs = watched(moved)
    const at = outputs.findIndex((one) => codesOf(one).includes('clock-wrong'))
    expect(at).toBeGreaterThan(FROM)
    expect(at).toBeLessThan(FROM + 1440)
    expect(codesOf(outputs[at]!)[0]).toBe('clock-wrong')
    expect(told(outputs.slice(at))).not.toContain('no-water')
    expect(outputs[at]!.cannotTell).toContainEqual({ code: 'no-water', reason: 'series-out-of-step' })
    expect(told(watched(script))).toEqual([])
  })
})
