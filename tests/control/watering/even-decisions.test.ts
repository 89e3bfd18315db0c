import { controlWatering, seconds, type WateringState } from 'porewater'
import { describe, expect, it } from 'vitest'
import { trueWater, wanted } from './true-water.js'
import { clock, MIDNIGHT, moment, settings } from './zone.js'

/** From here on the clock is wrong. */
const FROM = MIDNIGHT + 36 * 3600
const since = (time: number) => Math.max(0, time - FROM)

describe('decisions that come at an even pace are a second clock: no day is gained by one', () => {
  const clocks: [string, (time: number, at: number, poll: number) => number][] = [
    ['that gains 19 minutes at each full hour', (time) => time + 1140 * Math.floor(since(time) / 3600)],
    ['that runs 1.3 times too fast', (time) => time + 0.3 * since(time)],
    ['that runs twice too fast', (time) => time + since(time)],
    ['that runs 8 times too fast', (time) => time + 7 * since(time)],
    ['that runs faster and faster', (time) => time + since(time) ** 2 / 86400],
    ['that trembles', (time, at, poll) => time + (since(time) > 0 ? 3 * poll * Math.sin(12.9898 * at) : 0)],
  ]
  it.each(clocks.flatMap(([name, wrong]) => [60, 900].map((poll) => [name, poll, wrong] as const)))(
    '%s, asked every %s s',
    (_, poll, wrong) => {
      const { worst, longest } = trueWater({
        days: 4,
        poll,
        clock: (time, at) => wrong(time, at, poll),
        more: (time) => wanted(time + 86000),
      })
      expect(worst).toBeLessThanOrEqual(1.05)
      expect(longest).toBeLessThanOrEqual(settings.maxRunTime)
    },
  )
  it('and one that runs twice too fast is told, until somebody acknowledges it', () => {
    const { state } = trueWater({ days: 3, poll: 60, clock: (time) => time + since(time) })
    const reducer = controlWatering(settings)
    const raw = state.clock.raw as number
    const [next, doubted] = reducer.step(state, moment(raw + 120, 0.45))
    expect(doubted.findings.map(({ code }) => code)).toContain('clock-doubtful')
    const [, known] = reducer.step(next, moment(raw + 240, 0.45, { acknowledge: ['clock-doubtful'] }))
    expect(known.findings.map(({ code }) => code)).not.toContain('clock-doubtful')
  })
})

describe('decisions that come at another pace', () => {
  /** A healthy zone that drinks its usual water by day; gives the water of the last two of five days a day, and how often its clock was doubted. Unit: L. */
  function weekWith(every: (at: number, isOpen: boolean, hour: number) => number) {
    const reducer = controlWatering(settings)
    let state: WateringState = reducer.start
    let [level, last, given, step, doubted] = [0.55, 0, 0, 0, 0]
    for (let at = 0, now = clock(0), before = now; now < clock(120); at++, before = now, now += step) {
      const hour = ((now - MIDNIGHT) / 3600) % 24
      if (hour >= 7 && hour < 18) level -= ((now - before) * 2) / (11 * 3600) / 10
      const [next, decision] = reducer.step(state, moment(now, level + 0.001 * (at % 2)))
      if (decision.open && decision.opening !== last) {
        level += 0.02
        if (now >= clock(72)) given += 0.2
      }
      last = decision.opening
      state = next
      step = every(at + 1, decision.open, hour)
      if (decision.findings.some(({ code }) => code === 'clock-doubtful')) doubted++
    }
    return { water: given / 2, doubted }
  }
  // The minutes in between were taken for a clock that runs too fast: without refills a healthy zone of uneven containers was dry for 50 h in ten days.
  it.each<[string, (at: number, isOpen: boolean, hour: number) => number]>([
    ['while the valve is open', (_, isOpen) => (isOpen ? 1 : 60)],
    ['while somebody looks at breakfast', (_, __, hour) => (hour > 8 && hour < 8.2 ? 1 : 60)],
  ])('each second %s, and each minute else, speak against no clock', (_, every) => {
    const { water, doubted } = weekWith(every)
    expect(water).toBeGreaterThan(0.85 * settings.usualPerDay)
    expect(doubted).toBe(0)
  })
  it.each<[string, (at: number) => number]>([
    ['every two minutes instead of each', (at) => (at < 2160 ? 60 : 120)],
    ['every five minutes instead of each', (at) => (at < 2160 ? 60 : 300)],
    // A zone got a tenth of its water: each longer step was a leap of the clock, for ever.
    ['every quarter of an hour instead of each minute', (at) => (at < 2160 ? 60 : 900)],
    ['every hour instead of every five minutes', (at) => (at < 432 ? 300 : 3600)],
    ['each minute instead of every quarter of an hour', (at) => (at < 144 ? 900 : 60)],
    ['now and then', (at) => 20 + ((at * 7919) % 280)],
  ])('%s take no water from a zone whose probe is healthy', (_, every) => {
    expect(weekWith(every).water).toBeGreaterThan(0.85 * settings.usualPerDay)
  })
})

describe('a clock that is too fast from the first decision on', () => {
  it.each([
    [1.2, 60],
    [2, 60],
    [3, 300],
    [2, 900],
  ])('%s times, asked every %s s by a timer of its own, gives no second day', (times, poll) => {
    const run = {
      days: 3,
      poll,
      clock: (time: number) => MIDNIGHT + times * (time - MIDNIGHT),
      more: (time: number) => wanted(MIDNIGHT + times * (time - MIDNIGHT) + 600),
    }
    // By its own clock alone the controller believed it: 1.2 to 3 days in one.
    expect(trueWater(run).worst).toBeGreaterThan(1.1)
    const { worst, longest } = trueWater({ ...run, changed: { decideEvery: seconds(poll) } })
    expect(worst).toBeLessThanOrEqual(1.05)
    expect(worst).toBeGreaterThan(0.5)
    expect(longest).toBeLessThanOrEqual(settings.maxRunTime)
  })
  it('is told, also after somebody said that it was set', () => {
    const reducer = controlWatering({ ...settings, decideEvery: seconds(60) })
    let state = reducer.start
    const codes: string[][] = []
    for (let at = 0; at < 400; at++) {
      const now = MIDNIGHT + 120 * at
      const acknowledge = at === 200 ? { acknowledge: ['clock-doubtful'] } : {}
      const [next, { findings }] = reducer.step(state, { ...moment(now, 0.55 + 0.001 * (at % 2)), ...acknowledge })
      state = next
      codes.push(findings.map(({ code }) => code))
    }
    expect(codes[190]).toContain('clock-doubtful')
    expect(codes[399]).toContain('clock-doubtful')
  })
  it('needs an interval that can be', () => {
    for (const every of [0, 3601, Number.NaN, null])
      expect(() => controlWatering({ ...settings, decideEvery: every as never })).toThrow(
        expect.objectContaining({ code: 'outside-domain' }),
      )
  })
})
