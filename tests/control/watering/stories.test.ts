import { controlWatering, hours, litres, seconds, waterContent } from 'porewater'
import { describe, expect, it } from 'vitest'
import { clock, decide, MIDNIGHT, moment, openings, settings, settled } from './zone.js'

const day = (level: (now: number, at: number) => unknown, changed = {}) =>
  decide(MIDNIGHT, MIDNIGHT + 86400, 60, (now, at) => moment(now, level(now, at)), changed).told

describe('a probe that lies', () => {
  it.each([0, -0.2, -Infinity, Infinity, -999, 65535, Number.NaN, null, undefined, '0.4', true, {}])(
    'and says %s gives no water beyond the timed allowance, and none without it',
    (lie) => {
      const told = day(() => lie)
      expect(openings(told).length).toBeGreaterThan(5)
      expect(openings(told).length * 0.2).toBeLessThanOrEqual(2.7 + 1e-9)
      for (const { decision } of told) if (decision.open) expect(decision.reason).toBe('back-up-shot')
      expect(openings(day(() => lie, { inDoubt: 'staying-closed' }))).toEqual([])
    },
  )
  it('frozen just below the lower limit stops after four shots without a rise, and the zone gets its usual use by time', () => {
    const told = day(() => 0.49)
    const dry = told.filter(({ decision }, i) => decision.reason === 'dry' && told[i - 1]?.decision.reason !== 'dry')
    expect(dry.length).toBeLessThanOrEqual(4)
    expect(openings(told).length * 0.2).toBeLessThanOrEqual(2.7 + 1e-9)
    expect(told.at(-1)?.decision.findings.map(({ code }) => code)).toContain('shots-without-rise')
  })
  it('lifted out of the medium never decides', () => {
    const { state, now } = settled(0.55)
    const { told } = decide(now, now + hours(2), 60, (at) => moment(at, 0.3 + 0.001 * ((at / 60) % 3)), {}, state)
    expect(told.some(({ decision }) => decision.reason === 'dry')).toBe(false)
    expect(told[5]?.decision.findings.map(({ code }) => code)).toEqual(['reading-fell-too-fast'])
  })
  it('is not replaced by a lifted neighbour: two that differ decide nothing', () => {
    const probes = [{ name: 'A' }, { name: 'B' }]
    const both = (now: number, a: number, b: number) => ({
      now,
      locked: false as const,
      readings: [
        { probe: 'A', waterContent: a as never, time: now },
        { probe: 'B', waterContent: b as never, time: now },
      ],
    })
    const { told } = decide(
      clock(8),
      clock(12),
      60,
      (now, i) => both(now, 0.56 - (i % 2) / 1e3, 0.44 + (i % 2) / 1e3),
      { probes },
    )
    expect(told.some(({ decision }) => decision.reason === 'dry')).toBe(false)
    expect(told[20]?.decision.waterContent).toEqual({ known: false, reason: 'probes-disagree' })
  })
})

describe('one lost packet', () => {
  it('every two hours above the upper limit never opens the valve', () => {
    const told = day((_, i) => (i % 120 === 119 ? Number.NaN : 0.581 + 0.0001 * (i % 7)), { upper: 0.58 })
    expect(openings(told)).toEqual([])
  })
})

describe('a limit for any 24 hours', () => {
  it('is not given twice around midnight', () => {
    const all = { allowedHours: [{ from: seconds(0), to: hours(24) }], maxShotsWithoutRise: 48 }
    // Dry from four in the afternoon to six in the morning, a rise with each shot.
    let level = 0.42
    let seen = 0
    const { told } = decide(
      clock(-6),
      clock(30),
      60,
      (now) => {
        level += -0.00002
        return moment(now, now < clock(16) ? 0.56 + 0.001 * ((now / 60) % 2) : level + 0.02 * Math.min(seen, 0))
      },
      all,
    )
    seen = openings(told).length
    const starts = openings(told)
    for (const start of starts)
      expect(starts.filter((other) => other > start - 86400 && other <= start).length * 0.2).toBeLessThanOrEqual(
        4 + 1e-9,
      )
  })
})

describe('a clock that lies', () => {
  const dry = { now: settled(0.5).now, state: settled(0.505).state }
  it('in milliseconds opens nothing', () => {
    const told = decide(clock(8), clock(16), 60, (now) => moment(now * 1000, 0.45)).told
    expect(openings(told)).toEqual([])
    expect(told.at(-1)?.decision.reason).toBe('clock-unreadable')
  })
  it('that stands still holds no valve open for 100,000 decisions', () => {
    const { told } = decide(0, 100_000, 1, () => moment(dry.now, 0.45), {}, dry.state)
    // Decisions came every minute before: they count as minutes, and shots of 3 min keep to every limit.
    let open = 0
    for (const { decision } of told) {
      open = decision.open ? open + 1 : 0
      expect(open).toBeLessThanOrEqual(5)
    }
    expect(openings(told).length).toBeLessThanOrEqual((100_000 / 1440 + 1) * 12)
  })
  it('that flaps by a day does not open a new day of water', () => {
    const { told, state } = decide(
      dry.now,
      dry.now + hours(8),
      60,
      (now, i) => moment(now + (i % 7 === 0 ? 86400 : 0), 0.45 + 0.001 * (i % 3)),
      {},
      dry.state,
    )
    // Some are parts of a shot: as long as each was open, at 4 L/h.
    const open = told.reduce((sum, { decision }) => sum + (decision.open ? Math.min(60, decision.closeAfter) : 0), 0)
    expect((open * 4) / 3600).toBeLessThanOrEqual(4)
    // The room for water that comes at a pace, and the count of decisions, bound the day as well: that no day passed, the trusted time alone tells.
    expect(state.clock.elapsed - dry.state.clock.elapsed).toBeLessThan(hours(9))
  })
})

describe('a stored state', () => {
  it('that was lost does not open at its first decision', () => {
    for (const state of [undefined, null, {}, [], 'state', 7, { last: null }]) {
      const [, decision] = controlWatering(settings).step(state as never, moment(clock(12), 0.45))
      expect(decision).toMatchObject({ open: false, reason: 'state-lost' })
    }
  })
  it('that lost a field closes', () => {
    const reducer = controlWatering(settings)
    const { state, now } = settled(0.505)
    for (const key of Object.keys(state) as (keyof typeof state)[]) {
      const { [key]: _, ...rest } = state
      expect(reducer.step(rest as never, moment(now, 0.45))[1]).toMatchObject({ open: false, reason: 'state-lost' })
    }
  })
})

describe('a valve that closes by itself', () => {
  it('is not counted as running until the next decision', () => {
    const { state, now } = settled(0.52)
    const { told } = decide(now, now + hours(2), 900, (at, i) => moment(at, 0.48 + 0.001 * (i % 2)), {}, state)
    expect(told.at(-1)?.decision.givenInDay).toBeCloseTo(0.2 * openings(told).length, 9)
    expect(told.at(-1)?.decision.givenInDay).toBeLessThanOrEqual(litres(1.6))
  })
  it('that does not is not opened where decisions come too seldom', () => {
    const { told } = decide(clock(8), clock(12), 900, (now, i) => moment(now, 0.48 + 0.001 * (i % 2)), {
      valveClosesByItself: false,
    })
    expect(openings(told)).toEqual([])
    expect(told.at(-1)?.decision.reason).toBe('decisions-too-seldom')
  })
})

describe('a state that is lost again and again', () => {
  it.each([1, 10, 30, 60, 120, 360])('every %s minutes gives no more than a day may have', (every) => {
    const reducer = controlWatering({ ...settings, allowedHours: [{ from: seconds(0), to: hours(24) }] })
    let state: unknown = reducer.start
    const shots: { readonly from: number; readonly litres: number }[] = []
    let before = false
    for (let i = 0; i < 2 * 1440; i++) {
      if (i % every === 0) state = undefined
      const [next, decision] = reducer.step(state as never, moment(MIDNIGHT + 60 * i, 0.45 + 0.001 * (i % 3)))
      state = next
      if (decision.open && !before) shots.push({ from: 60 * i, litres: (decision.closeAfter / 3600) * settings.flow })
      before = decision.open
    }
    for (const { from } of shots) {
      const ofDay = shots.filter((other) => other.from >= from && other.from < from + 86400)
      expect(ofDay.reduce((sum, { litres }) => sum + litres, 0)).toBeLessThanOrEqual(settings.maxPerDay + 1e-9)
    }
    // Lost four times a day it still waters.
    if (every >= 360) expect(shots.length).toBeGreaterThan(5)
  })
})

describe('one probe of three that stands far from the others', () => {
  const three = { probes: [{ name: 'north' }, { name: 'middle' }, { name: 'south' }] }
  const at = (now: number, south: number) => ({
    now,
    locked: false,
    readings: [0.55, 0.56, south].map((level, i) => ({
      probe: three.probes[i]!.name,
      waterContent: waterContent(level + 0.001 * ((now / 60) % 2)),
      time: now,
    })),
  })
  // It was left out without a word, for as long as it stood there.
  it('decides nothing, and is told by its name', () => {
    const { told } = decide(clock(8), clock(9), 60, (now) => at(now, 0.44), three)
    const { findings, waterContent: level } = told.at(-1)!.decision
    expect(findings.map(({ code, about }) => [code, about])).toEqual([['probes-disagree', 'south']])
    expect(level.known && level.value).toBeCloseTo(0.555, 2)
  })
  it('is not told where it stands as near as probes may', () => {
    const { told } = decide(clock(8), clock(9), 60, (now) => at(now, 0.49), three)
    expect(told.at(-1)!.decision.findings).toEqual([])
  })
})

describe('a zone that may be watered in six hours of the morning', () => {
  // The use of a whole day was expected in them: a healthy probe was called still after three hours, and the zone got water by time.
  it('is not expected to drink the water of the day in them', () => {
    const morning = { allowedHours: [{ from: hours(6), to: hours(12) }] }
    const drunk = (now: number) => 0.004 * ((now - clock(6)) / 3600) + 0.0005 * ((now / 60) % 2)
    const { told } = decide(clock(6), clock(11), 60, (now) => moment(now, 0.57 - drunk(now)), morning)
    expect(told.flatMap(({ decision }) => decision.findings)).toEqual([])
    expect(told.at(-1)!.decision.reason).toBe('wet-enough')
  })
})
