import {
  type FaultName,
  hours,
  litres,
  type Observation,
  rehearsalFaults,
  rehearsalScenario,
  rehearse,
  seconds,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { credulous, idle, witness } from './controllers.js'

const scenario = rehearsalScenario('coir-dust')
const zone = { ...scenario.zone, has: { flowMeter: true, drainGauge: true, valveContact: true, mainValve: true } }
const FROM = hours(8)
const UNTIL = hours(20)

/** Everything that a controller saw, as text that keeps NaN and infinities, and everything that came of it. */
function history(fault?: FaultName): { seen: string[]; restarts: number; sums: string } {
  const seen: Observation[] = []
  const controller = witness(seen, ({ waterContent }, calls) => ({
    open: waterContent < scenario.lower,
    closeAfter: calls % 2 === 0 ? 330 : 200,
  }))
  const faults = fault === undefined ? [] : [{ fault, from: FROM, until: UNTIL }]
  const run = { ...scenario, zone, controller, days: 1, seed: 11, pollEvery: seconds(300), keepCourse: false, faults }
  const { faults: _, findings: __, timeToAlarm: ___, timeToFirstAlarms: ____, ...sums } = rehearse(run)
  const exact = (_key: string, value: unknown) => (typeof value === 'number' ? `${value}` : value)
  return {
    seen: seen.map((one) => JSON.stringify(one, exact)),
    restarts: seen.filter(({ restarted }) => restarted).length,
    sums: JSON.stringify(sums, exact),
  }
}
const healthy = history()

describe('each fault acts while it lasts, and not before', () => {
  it('there are more than sixty', () => expect(rehearsalFaults().length).toBeGreaterThan(60))
  it.each(rehearsalFaults().map(({ fault }) => fault))('%s', (fault) => {
    const { seen, restarts, sums } = history(fault)
    const before = FROM / 300
    expect(seen.slice(0, before)).toEqual(healthy.seen.slice(0, before))
    // What a restart loses, this controller does not need: its one number counts calls.
    expect(seen.join() !== healthy.seen.join() || sums !== healthy.sums || restarts > 0).toBe(true)
  })
})

/** What the first probe sent at an hour. */
const sent = (fault: FaultName, hour: number, size?: number) => {
  const seen: Observation[] = []
  const list = [{ fault, from: hours(1), ...(size === undefined ? {} : { size }) }]
  rehearse({ ...scenario, zone, controller: witness(seen), days: 1, seed: 3, faults: list })
  return seen[hour * 60]?.readings
}
describe('what a broken probe sends', () => {
  it.each([
    ['probe-reads-zero', 0],
    ['probe-reads-negative', -0.2],
    ['probe-reads-nan', Number.NaN],
    ['probe-reads-minus-999', -999],
    ['probe-reads-65535', 65535],
    ['probe-reads-infinity', Number.POSITIVE_INFINITY],
    ['probe-reads-minus-infinity', Number.NEGATIVE_INFINITY],
    ['probe-reads-null', null],
    ['probe-reads-words', 'error'],
    ['probe-reads-true', true],
  ] as const)('%s', (fault, value) => expect(sent(fault, 2)?.[0]?.value).toBe(value))
  it('text for numbers, percent for shares', () => {
    const right = sent('acknowledged', 2)?.[0]?.value as number
    expect(sent('probe-reads-text', 2)?.[0]?.value).toBe(right.toFixed(3))
    expect(sent('probe-in-percent', 2)?.[0]?.value).toBeCloseTo(right * 100, 9)
    expect(sent('probe-lifted', 2, 0.5)?.[0]?.value).toBeCloseTo(right / 2, 9)
    expect(sent('probe-drifts-up', 13, 0.04)?.[0]?.value).toBeCloseTo(
      (sent('acknowledged', 13)?.[0]?.value as number) + 0.02,
      9,
    )
  })
  it('the same number again and again once it is frozen', () => {
    expect(sent('probe-frozen', 20)?.[0]?.value).toBe(sent('probe-frozen', 1)?.[0]?.value)
    expect(sent('probe-frozen', 20)?.[1]?.value).not.toBe(sent('probe-frozen', 1)?.[1]?.value)
  })
  it('nothing when it is silent, and the name of the other when they are swapped', () => {
    expect(sent('probe-silent', 2)?.map(({ probe }) => probe)).toEqual([1])
    const right = sent('acknowledged', 2)
    expect(sent('probes-swapped', 2)?.map(({ value }) => value)).toEqual([right?.[1]?.value, right?.[0]?.value])
  })
})

describe('clocks and messages', () => {
  const clock = (fault: FaultName) => {
    const seen: Observation[] = []
    rehearse({ ...scenario, controller: witness(seen), days: 1, seed: 3, faults: [{ fault, from: hours(2) }] })
    return seen
  }
  const start = 1779148800
  it('jump, freeze, flap, start anew, count milliseconds or fail', () => {
    const at = (fault: FaultName, minute: number) => clock(fault)[minute]?.now as number
    expect(at('clock-jumps-ahead', 180)).toBe(start + 180 * 60 + 86400)
    expect(at('clock-jumps-back', 180)).toBe(start + 180 * 60 - 86400)
    expect(at('clock-summer-time', 180)).toBe(start + 240 * 60)
    expect(at('clock-frozen', 180)).toBe(start + 120 * 60)
    expect(at('clock-starts-in-1970', 180)).toBe(180 * 60)
    expect(at('clock-in-milliseconds', 180)).toBe((start + 180 * 60) * 1000)
    expect(at('clock-is-nan', 180)).toBeNaN()
    expect([180, 181].map((minute) => at('clock-flaps', minute) - start - minute * 60)).toEqual([0, 86400])
  })
  it('messages get lost, come twice, late, and in another order', () => {
    const count = (fault: FaultName) => clock(fault).reduce((sum, { readings }) => sum + readings.length, 0)
    const all = 2 * 1440
    expect(count('acknowledged')).toBe(all)
    expect(count('messages-lost')).toBeLessThan(0.6 * all)
    expect(count('messages-twice')).toBeGreaterThan(1.4 * all)
    const late = clock('messages-late').flatMap(({ now, readings }) => readings.map(({ time }) => now - time))
    expect(Math.max(...late)).toBeGreaterThan(1800)
    expect(Math.max(...late)).toBeLessThanOrEqual(2460)
    const order = clock('messages-out-of-order').flatMap(({ readings }) => readings.map(({ time }) => time))
    expect(order.some((time, i) => i > 0 && time < order[i - 1]!)).toBe(true)
    const old = clock('messages-replayed').flatMap(({ now, readings }) => readings.map(({ time }) => now - time))
    expect(Math.max(...old)).toBeGreaterThan(3000)
  })
})

describe('water that does not come, or comes unasked', () => {
  const watered = (fault: FaultName, change: object = {}) =>
    rehearse({
      ...scenario,
      zone,
      controller: credulous(scenario.lower),
      days: 2,
      seed: 3,
      faults: [{ fault, from: hours(1), ...change }],
    })
  it('no water, no pump, a stuck valve: nothing is given, and plants suffer', () => {
    for (const fault of ['no-water', 'pump-cut', 'valve-stuck-closed'] as const) expect(watered(fault).given).toBe(0)
    expect(watered('no-water').stressTime).toBeGreaterThan(0)
  })
  it('a stuck valve gives against the will of the controller, unless the main valve is closed', () => {
    const faults = [{ fault: 'valve-stuck-open' as const, from: hours(1), until: hours(3) }]
    const open = rehearse({ ...scenario, zone, controller: idle, days: 1, seed: 3, faults })
    expect(open.unordered).toBeCloseTo(12, 0)
    expect(open.findings.map(({ code }) => code)).toContain('beyond-limit-of-day-against-will')
    const shut = { ...idle, order: () => ({ open: false, mainOpen: false }) }
    expect(rehearse({ ...scenario, zone, controller: shut, days: 1, seed: 3, faults }).given).toBe(0)
  })
  it('a valve that does not close by itself runs on until it is told', () => {
    const seen: Observation[] = []
    const once = witness(seen, (_, calls) => ({ open: calls === 100, closeAfter: 60 }))
    const plain = rehearse({ ...scenario, controller: once, days: 1, seed: 3, pollEvery: seconds(600) })
    expect(plain.given).toBeCloseTo(0.1, 2)
    const faults = [{ fault: 'valve-does-not-close-itself' as const, from: hours(1) }]
    const stuck = rehearse({ ...scenario, controller: once, days: 1, seed: 3, pollEvery: seconds(600), faults })
    expect(stuck.given).toBeCloseTo(1, 1)
    expect(stuck.maxOpening).toBe(60)
    expect(stuck.unordered).toBeCloseTo(0.9, 1)
  })
  it('water by hand goes past the valve', () => {
    const outcome = rehearse({
      ...scenario,
      controller: idle,
      days: 1,
      seed: 3,
      faults: [{ fault: 'water-by-hand', from: hours(10), size: 0.7 }],
    })
    expect([outcome.given, outcome.byHand]).toEqual([0, 0.7])
  })
})

describe('restarts', () => {
  const remembering = (restored: unknown[]) => ({
    reducer: {
      start: { count: 0, label: 'x' },
      step: (state: { count: number; label: string }) => [{ ...state, count: state.count + 1 }, state.count] as const,
    },
    input: () => null,
    order: () => ({ open: false }),
    restore: (stored: unknown) => {
      restored.push(stored)
      return { count: 0, label: 'restored' }
    },
  })
  const kept = (fault: FaultName) => {
    const restored: unknown[] = []
    rehearse({
      ...scenario,
      controller: remembering(restored),
      days: 2,
      seed: 3,
      faults: [{ fault, from: hours(30), size: 100 }],
    })
    return restored
  }
  it('whole, a day old, with fields missing, or empty', () => {
    expect(kept('restart-whole')).toEqual([{ count: 1800, label: 'x' }])
    expect(kept('restart-old')).toEqual([{ count: 361, label: 'x' }])
    expect(kept('restart-empty')).toEqual([])
    expect(kept('restart-partial')).not.toEqual([{ count: 1800, label: 'x' }])
  })
  it('after a power cut, from the whole state; nobody was called meanwhile', () => {
    const restored: unknown[] = []
    const faults = [{ fault: 'power-cut' as const, from: hours(10), until: hours(12) }]
    rehearse({ ...scenario, controller: remembering(restored), days: 1, seed: 3, faults })
    expect(restored).toEqual([{ count: 600, label: 'x' }])
  })
})

describe('what is judged', () => {
  it('a controller that throws is counted, and the valve closes', () => {
    const throwing = {
      reducer: {
        start: 0,
        step: (calls: number) => {
          if (calls > 10) throw new Error('no')
          return [calls + 1, true] as const
        },
      },
      input: () => null,
      order: (open: boolean) => ({ open, closeAfter: 3600 }),
    }
    const outcome = rehearse({ ...scenario, controller: throwing, days: 1, seed: 3 })
    expect(outcome.refusals).toBe(1440 - 11)
    expect(outcome.maxOpening).toBe(660)
    expect(outcome.findings.map(({ code }) => code)).toContain('controller-threw')
  })
  it('only true opens', () => {
    const words = { ...idle, order: () => ({ open: 'yes' as unknown as boolean, closeAfter: 60 }) }
    expect(rehearse({ ...scenario, controller: words, days: 1, seed: 3 }).openings).toEqual([])
  })
  it('a time to close that is no number never closes', () => {
    const once = {
      reducer: { start: 0, step: (n: number) => [n + 1, n === 600] as const },
      input: () => null,
      order: (open: boolean) => ({ open, closeAfter: Number.NaN }),
    }
    const outcome = rehearse({ ...scenario, controller: once, days: 1, seed: 3, pollEvery: seconds(60) })
    expect(outcome.maxOpening).toBe(60)
    const deaf = { ...once, reducer: { start: 0, step: (n: number) => [n + 1, n >= 600] as const } }
    expect(rehearse({ ...scenario, controller: deaf, days: 1, seed: 3 }).maxOpening).toBe(86400 - 36000)
  })
  it('the right alarm, its time, and alarms for nothing', () => {
    const shouting = {
      reducer: { start: 0, step: (minute: number) => [minute + 1, minute] as const },
      input: () => null,
      order: (minute: number) => ({
        open: false,
        alarms: minute < 100 ? [] : minute < 700 ? ['dry'] : ['tap', 'pump', 'dry'],
      }),
      alarmsFor: { 'no-water': ['tap', 'dry'] },
    }
    const faults = [{ fault: 'no-water' as const, from: hours(10) }]
    const outcome = rehearse({ ...scenario, controller: shouting, days: 1, seed: 3, faults })
    expect(outcome.alarms).toEqual([
      { time: 6000, alarm: 'dry', right: false },
      { time: 42000, alarm: 'tap', right: true },
      { time: 42000, alarm: 'pump', right: false },
    ])
    // "dry" stands when the water stops, and means that too.
    expect(outcome.timeToAlarm).toEqual([{ known: true, time: 0 }])
    expect(outcome.falseAlarms).toBe(2)
  })
  it('openings without a reading that can be believed', () => {
    const faults = [{ fault: 'probes-silent' as const, from: hours(0) }]
    const blind = rehearse({
      ...scenario,
      controller: witness([], (_, calls) => ({ open: calls % 120 === 60, closeAfter: 60 })),
      days: 1,
      seed: 3,
      faults,
    })
    expect(blind.blindOpenings).toBe(12)
    expect(blind.worstBlindDay).toBeCloseTo(1.2, 2)
    expect(blind.findings.map(({ code }) => code)).toContain('opened-blind')
  })
})

describe('refusals', () => {
  const run = (change: object) => () => rehearse({ ...scenario, controller: idle, days: 1, seed: 1, ...change })
  it.each([
    ['no day', { days: 0 }, 'outside-domain'],
    ['half a day', { days: 1.5 }, 'outside-domain'],
    ['a seed below zero', { seed: -1 }, 'outside-domain'],
    ['calls in milliseconds', { pollEvery: seconds(60000) }, 'outside-domain'],
    ['an unknown fault', { faults: [{ fault: 'rain', from: hours(1) }] }, 'bad-input'],
    [
      'a fault that ends before it begins',
      { faults: [{ fault: 'no-water', from: hours(2), until: hours(1) }] },
      'bad-input',
    ],
    ['a probe that is not there', { faults: [{ fault: 'probe-lifted', from: hours(2), place: 5 }] }, 'bad-input'],
    ['a start in milliseconds', { start: 1779148800000 }, 'outside-domain'],
    ['more probes than containers', { zone: { ...zone, probes: 5, containers: 2 } }, 'bad-input'],
    ['night before day', { zone: { ...zone, sunrise: 20, sunset: 6 } }, 'bad-input'],
    ['feed in microsiemens', { zone: { ...zone, feedEC: 2500 } }, 'outside-domain'],
    [
      'a stress level above the full level',
      { limits: { ...scenario.limits, stressBelow: scenario.limits.fullAbove } },
      'bad-input',
    ],
    ['no water for the day', { limits: { ...scenario.limits, maxPerDay: litres(0) } }, 'outside-domain'],
  ])('%s', (_, change, code) => expect(run(change)).toThrow(expect.objectContaining({ code })))
  it('an unknown medium is refused with the list of those there are', () => {
    expect(() => rehearsalScenario('sand' as never)).toThrow(/coir-dust/)
  })
})
