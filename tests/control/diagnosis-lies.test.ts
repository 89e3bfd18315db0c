/** Records that lie in ways nobody planned for, and pairs of them. What `watchZone` may say of each is reasoned from the record alone. */
import fc from 'fast-check'
import {
  type Diagnosis,
  litres,
  litresPerHour,
  runReducer,
  type WatchZoneInput,
  watchZone,
  waterContent,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { noise, type Script, SETTINGS, scripted } from './scripted-zone.js'

const AB = ['A', 'B']
const SINGLE = Array.from({ length: 40 }, (_, k) => 60 + 130 * k)
const inShot = (shots: readonly number[], minute: number) => shots.some((at) => minute >= at && minute < at + 2)
const FROM = 1500
const base: Script = { minutes: 2880, probes: AB, shots: SINGLE, metered: (minute) => (inShot(SINGLE, minute) ? 1 : 0) }
type Inputs = readonly WatchZoneInput[]
const watched = (inputs: Inputs, settings = {}) =>
  runReducer({ reducer: watchZone({ ...SETTINGS, probes: AB, ...settings }), inputs }).outputs
const codesOf = ({ causes }: Diagnosis) => causes.map(({ code }) => code)
const told = (outputs: readonly Diagnosis[]) => [...new Set(outputs.flatMap(codesOf))].sort()
const firstTwo = (outputs: readonly Diagnosis[]) => [...new Set(outputs.flatMap((one) => codesOf(one).slice(0, 2)))]
const namedAt = (outputs: readonly Diagnosis[], code: string) => outputs.findIndex((one) => codesOf(one)[0] === code)
/** The script with one probe or both sending something else from a moment on; `null` stands for what is sent. */
const sends = (what: (level: number, probe: number) => unknown): Inputs =>
  scripted(base).map((input, minute) => ({
    ...input,
    readings: input.readings.map((one, i) =>
      minute < FROM ? one : { ...one, waterContent: what(one.waterContent, i) as typeof one.waterContent },
    ),
  }))
/** A gauge: a share of each shot drains, half of what is still to come every ten minutes. */
function drains(inputs: Inputs, shots: readonly number[], share: (minute: number) => number): Inputs {
  let [coming, drained] = [0, 0]
  return inputs.map((input, minute) => {
    if (inShot(shots, minute)) coming += 0.1 * share(minute)
    drained += 0.067 * coming
    coming -= 0.067 * coming
    return { ...input, drained: litres(drained), light: 300 as never }
  })
}
const healthy = drains(scripted(base), SINGLE, () => 0.1)

describe('one probe of two that sends', () => {
  it.each<[string, (level: number) => unknown, string]>([
    ['null', () => null, 'probe-dead'],
    ['text', (level) => level.toFixed(3), 'probe-dead'],
    ['zero', () => 0, 'probe-dead'],
    ['-999', () => -999, 'probe-dead'],
    ['65535', () => 65535, 'probe-dead'],
    ['percent', (level) => 100 * level, 'unit-slip'],
    ['thousandths', (level) => 1000 * level, 'unit-slip'],
    ['one number', () => 0.7, 'probe-frozen'],
    ['what air shows, with its noise', (level) => 0.05 + level / 50, 'probe-lifted'],
    ['two thirds of it', (level) => 0.67 * level, 'probe-lifted'],
  ])('%s is named within the half hour, and nothing was named before', (_, what, code) => {
    const outputs = watched(sends((level, i) => (i === 0 ? what(level) : level)))
    const at = namedAt(outputs, code)
    expect(at).toBeGreaterThan(FROM)
    expect(at).toBeLessThan(FROM + 30)
    expect(told(outputs.slice(0, FROM))).toEqual([])
  })
})

describe('settings and counters in another unit', () => {
  it.each<[string, Inputs, object, string]>([
    ['the volume of medium in millilitres', healthy, { substrateVolume: litres(10_000) }, 'unit-slip'],
    ['the volume of medium a hundredth of what it is', healthy, { substrateVolume: litres(0.1) }, 'unit-slip'],
    ['the flow in millilitres an hour', healthy, { flow: litresPerHour(6000) }, 'unit-slip'],
    ['the drain in millilitres', drains(scripted(base), SINGLE, () => 100), {}, 'drain-gauge-wrong'],
    ['the drain a hundred times', drains(scripted(base), SINGLE, () => 10), {}, 'drain-gauge-wrong'],
    [
      'the meter in millilitres',
      healthy.map((one) => ({ ...one, metered: litres(1000 * one.metered!) })),
      {},
      'flow-meter-wrong',
    ],
  ])('%s: told as that, and never as water by hand', (_, inputs, settings, code) => {
    const outputs = watched(inputs, settings)
    expect(codesOf(outputs.at(-1)!)[0]).toBe(code)
    expect(told(outputs)).not.toContain('watered-by-hand')
  })
})

describe('two probes far apart', () => {
  const apart = (swapped: boolean): Inputs =>
    scripted(base).map((input, minute) => ({
      ...input,
      readings: input.readings.map((one, i) => {
        const isWetter = swapped && minute >= 1560 ? i === 0 : i === 1
        return { ...one, waterContent: waterContent(one.waterContent + (isWetter ? 0.05 : 0)) }
      }),
    }))
  it("that leap at once, each to where the other was, carry each other's name", () => {
    const outputs = watched(apart(true))
    expect(namedAt(outputs, 'probes-swapped')).toBeGreaterThan(1560)
    expect(namedAt(outputs, 'probes-swapped')).toBeLessThan(1570)
    expect(told(watched(apart(false)))).toEqual([])
  })
})

describe('messages', () => {
  const lost = (keep: (minute: number, probe: number) => boolean): Inputs =>
    healthy.map((input, minute) => ({ ...input, readings: input.readings.filter((_, i) => keep(minute, i)) }))
  it('of which half get lost are told as lost within two hours, and never as water by hand', () => {
    const outputs = watched(lost((minute, i) => minute < FROM || noise(minute, i + 9) > 0))
    expect(told(outputs)).toEqual(['no-readings'])
    expect(namedAt(outputs, 'no-readings')).toBeGreaterThan(FROM)
    expect(namedAt(outputs, 'no-readings')).toBeLessThan(FROM + 120)
    // Told once, and not again and again.
    const since = outputs.slice(namedAt(outputs, 'no-readings'))
    expect(since.every((one) => codesOf(one).includes('no-readings'))).toBe(true)
  })
  it('of which one in twenty gets lost, or half of which were always lost, are no news', () => {
    expect(told(watched(lost((minute, i) => noise(minute, i + 9) > -0.00135)))).toEqual([])
    expect(told(watched(lost((minute, i) => noise(minute, i + 9) > 0)))).toEqual([])
  })
  it('that come twice, or in any order within a call, change nothing', () => {
    const plain = watched(sends((level, i) => (i === 0 ? 0.67 * level : level))).map(codesOf)
    const change = (how: (readings: WatchZoneInput['readings']) => WatchZoneInput['readings']) =>
      watched(
        sends((level, i) => (i === 0 ? 0.67 * level : level)).map((one) => ({ ...one, readings: how(one.readings) })),
      ).map(codesOf)
    expect(change((readings) => [...readings].reverse())).toEqual(plain)
    expect(change((readings) => [...readings, ...readings])).toEqual(plain)
  })
})

describe('water by hand', () => {
  /** Poured at a minute: 0.4 L into each container of 10 L, of which place B, nearly full, keeps little; the rest drains. */
  const poured = (at: number, rises: readonly [number, number], drainsToo: number): Inputs => {
    let extra = 0
    return healthy.map((input, minute) => {
      if (minute >= at) extra += 0.067 * (drainsToo - extra)
      const lag = minute < at ? 0 : 1 - Math.exp(-(minute - at) / 4)
      return {
        ...input,
        drained: litres(input.drained! + extra),
        readings: input.readings.map((one, i) => ({
          ...one,
          waterContent: waterContent(one.waterContent + lag * rises[i]!),
        })),
      }
    })
  }
  // The last shot before began at 1490.
  it.each([[1500], [1510], [1560]])('at minute %i, where one of two places is full, is told by the drain', (at) => {
    const outputs = watched(poured(at, [0.035, 0.003], 0.2))
    expect(told(outputs.slice(0, at))).toEqual([])
    expect(outputs.findIndex((one) => codesOf(one).slice(0, 2).includes('watered-by-hand'))).toBeLessThan(at + 60)
    expect(firstTwo(outputs)).toContain('watered-by-hand')
  })
  it('is not told of probes that begin to scatter all at once', () => {
    const scatter = sends((level, i) => level + 15 * noise(Math.round(1e5 * level), i + 3))
    expect(told(watched(scatter))).not.toContain('watered-by-hand')
    expect(told(watched(scatter))).toContain('probe-noisy')
  })
  it('is not told of a probe that is put in again at a wetter place, beside a shot or not', () => {
    for (const at of [1500, 1510, 1560])
      expect(told(watched(poured(at, [0.05, 0], 0)))).not.toContain('watered-by-hand')
  })
})

describe('drain', () => {
  const pairs = SINGLE.flatMap((at) => (at < 1560 ? [at] : [at, at + 12]))
  it('of shots that are given in pairs after days of single ones is no news: the second is counted before the first has drained', () => {
    const shots = pairs.slice(0, 44)
    const script = {
      ...base,
      minutes: 4300,
      shots,
      use: 0.00016,
      metered: (minute: number) => (inShot(shots, minute) ? 1 : 0),
    }
    expect(told(watched(drains(scripted(script), shots, () => 0.1)))).toEqual([])
  })
  it('that is missing at the probes of dry shots ran past; more drain without that is a gauge, or other places', () => {
    const long: Script = { ...base, minutes: 7200, shots: Array.from({ length: 54 }, (_, k) => 60 + 130 * k) }
    const from = 4320
    const metered = (minute: number) => (inShot(long.shots, minute) ? 1 : 0)
    const past = (share: number, reach: number) =>
      watched(
        drains(
          scripted({ ...long, metered, reaches: (minute) => (minute < from ? 0.9 : reach) }),
          long.shots,
          (minute) => (minute < from ? 0.1 : share),
        ),
      )
    expect(firstTwo(past(0.25, 0.75))).toContain('channelling')
    expect(codesOf(past(0.2, 0.9).at(-1)!)).toEqual(['drain-gauge-wrong', 'channelling'])
    expect(told(past(0.1, 0.9))).toEqual([])
  })
})

describe('two faults at once', () => {
  const dead = (change: Partial<Script>) => ({
    ...base,
    reaches: (minute: number) => (minute > FROM ? 0 : 1),
    metered: (minute: number) => (minute <= FROM && inShot(SINGLE, minute) ? 1 : 0),
    ...change,
  })
  const frozen = (truth: number, minute: number, i: number) =>
    i === 0 && minute > FROM ? 0.7 : truth + noise(minute, i)
  it('a dead valve and a frozen probe: both are told, and nothing else', () => {
    const outputs = watched(scripted(dead({ sends: frozen })))
    expect(codesOf(outputs.at(-1)!)).toEqual(['no-water', 'probe-frozen'])
  })
  it('a dead valve and a meter that never counted: the meter alone is told first, then both', () => {
    const outputs = watched(scripted(dead({ metered: () => 0 })))
    expect(codesOf(outputs[FROM]!)).toEqual(['flow-meter-wrong'])
    expect(firstTwo(outputs.slice(FROM))).toContain('no-water')
  })
  it('a clogged dripper and percent at the other probe: nobody is left to compare with, and only the unit is told', () => {
    const inputs = scripted({ ...base, reaches: (minute, i) => (minute > FROM && i === 0 ? 0 : 1) }).map(
      (input, minute) => ({
        ...input,
        readings: input.readings.map((one, i) =>
          i === 1 && minute > FROM
            ? { ...one, waterContent: (100 * one.waterContent) as typeof one.waterContent }
            : one,
        ),
      }),
    )
    expect(codesOf(watched(inputs).at(-1)!)[0]).toBe('unit-slip')
  })
})

describe('a small shot by hand', () => {
  it('is never asked for while every probe that can be believed stands at the full level, whatever else a record says', () => {
    const meter = fc.constantFrom(0, 0.5, 1, 2, Number.NaN)
    const odd = fc.constantFrom(0, 0.7, null, Number.NaN, 70, -999, 'x')
    fc.assert(
      fc.property(
        fc.record({
          start: fc.double({ min: 0.742, max: 0.8, noNaN: true }),
          wetFrom: fc.integer({ min: 0, max: 900 }),
          reach: fc.double({ min: 0, max: 1, noNaN: true }),
          use: fc.double({ min: 0, max: 0.0002, noNaN: true }),
          every: fc.integer({ min: 15, max: 200 }),
          meter,
          odd,
          liar: fc.integer({ min: -1, max: 1 }),
          drained: fc.constantFrom(0, 0.1, 1, null),
        }),
        ({ start, wetFrom, reach, use, every, meter, odd, liar, drained }) => {
          const shots = Array.from({ length: Math.floor(1200 / every) }, (_, k) => 20 + every * k)
          const script: Script = { minutes: 1200, probes: AB, shots, start, capacity: 0.85, use, reaches: () => reach }
          const outputs = watched(
            scripted(script).map((input, minute) => ({
              ...input,
              metered: (meter * shots.filter((at) => at <= minute).length) as never,
              drained: (drained === null ? null : drained * minute) as never,
              // Dry for a while, or at once as wet as it stays; one probe may lie.
              readings: input.readings.map((one, i) => ({
                ...one,
                waterContent: (i === liar
                  ? odd
                  : Math.max(minute < wetFrom ? 0.5 : 0.741, one.waterContent - (minute < wetFrom ? 0.1 : 0))) as never,
              })),
            })),
          )
          // The newest reading decides: from it on nobody is sent.
          const wet = outputs.slice(wetFrom)
          expect(
            wet.some(({ causes }) => causes.some(({ check }) => check === 'look-at-supply-then-water-by-hand')),
          ).toBe(false)
        },
      ),
      { numRuns: 40 },
    )
  }, 60_000)
})
