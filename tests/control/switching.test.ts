import fc from 'fast-check'
import {
  controlWatering,
  deadBand,
  instant,
  litres,
  litresPerHour,
  millilitres,
  minutes,
  runReducer,
  type WateringInput,
  type WateringSettings,
  waterContent,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { checkPublished } from '../support/published.js'
import { expectDomainError, expectInputError } from '../support/refusals.js'

checkPublished('irrigation', 'control.deadband', ({ theta, lower, upper }) => {
  const reducer = deadBand({ lower: waterContent(lower), upper: waterContent(upper) })
  const on = runReducer({ reducer, inputs: theta.map((x: number | null) => x ?? Number.NaN) }).outputs
  return { state: on.map(Number), starts: on.filter((now, i) => now && !on[i - 1]).length }
})

const settings: WateringSettings = {
  lower: waterContent(0.5),
  upper: waterContent(0.6),
  flow: litresPerHour(4),
  shot: millilitres(200),
  maxRunTime: minutes(5),
  maxPerDay: litres(1),
  minRest: minutes(10),
  probeLag: minutes(15),
  dayStart: instant(0),
  whenMissing: { by: 'staying closed' },
}
const timed: WateringSettings = { ...settings, whenMissing: { by: 'timed shots', every: minutes(60), atMost: 3 } }
const json = <T>(state: T): T => JSON.parse(JSON.stringify(state)) as T

/** Moments at uneven steps with readings that come and go; now and then a clock that goes back or is not there. */
const moments = fc
  .array(
    fc.record({
      step: fc.oneof(
        { weight: 20, arbitrary: fc.integer({ min: 1, max: 400 }) },
        { weight: 1, arbitrary: fc.integer({ min: -90000, max: 90000 }) },
      ),
      content: fc.oneof(
        { weight: 6, arbitrary: fc.double({ min: 0.4, max: 0.65, noNaN: true }) },
        { weight: 2, arbitrary: fc.constant(Number.NaN) },
      ),
      noClock: fc.integer({ min: 0, max: 60 }),
    }),
    { maxLength: 300 },
  )
  .map((list): WateringInput[] => {
    let now = 1000
    return list.map(({ step, content, noClock }) => {
      now += step
      return { now: noClock === 0 ? Number.NaN : now, content }
    })
  })

describe('a dead-band', () => {
  const run = (inputs: number[]) =>
    runReducer({ reducer: deadBand({ lower: waterContent(0.5), upper: waterContent(0.6) }), inputs }).outputs
  it('is off until a reading was at the lower limit', () => {
    expect(run([0.55, 0.51, 0.5, 0.55])).toEqual([false, false, true, true])
  })
  it('is off from the upper limit on', () => {
    expect(run([0.5, 0.59, 0.6, 0.59])).toEqual([true, true, false, false])
  })
})

describe('watering inside limits', () => {
  it('goes on after its state was written down and read back as if nothing had happened', () => {
    fc.assert(
      fc.property(moments, fc.nat(), fc.boolean(), (inputs, cut, backUp) => {
        const reducer = controlWatering(backUp ? timed : settings)
        const at = cut % (inputs.length + 1)
        const first = runReducer({ reducer, inputs: inputs.slice(0, at) })
        const rest = runReducer({ reducer, inputs: inputs.slice(at), state: json(first.state) })
        expect([...first.outputs, ...rest.outputs]).toEqual(runReducer({ reducer, inputs }).outputs)
      }),
    )
  })
  it('never leaves a valve open for longer than a shot, nor open without a reading', () => {
    fc.assert(
      fc.property(moments, (inputs) => {
        const { outputs } = runReducer({ reducer: controlWatering(settings), inputs })
        outputs.forEach((decision, i) => {
          expect(decision.closeAfter).toBeLessThanOrEqual(180 + 1e-9)
          if (decision.open) {
            expect(decision.closeAfter).toBeGreaterThan(0)
            expect(Number.isNaN(inputs[i]?.content)).toBe(false)
            expect(Number.isNaN(inputs[i]?.now)).toBe(false)
          }
        })
      }),
    )
  })
  it('opens for no more than the day allows, and not before the pause is over, while the clock runs on', () => {
    fc.assert(
      fc.property(moments, fc.boolean(), (inputs, backUp) => {
        const forward = inputs.filter(({ now }) => !Number.isNaN(now)).sort((a, b) => a.now - b.now)
        const { outputs } = runReducer({ reducer: controlWatering(backUp ? timed : settings), inputs: forward })
        // What valves that close by themselves gave, counted anew from the decisions alone.
        const given = new Map<number, number>()
        let opened = -1
        let closed = -Infinity
        outputs.forEach((decision, i) => {
          const now = forward[i]?.now as number
          if (decision.open) {
            if (opened < 0) {
              expect(now - closed).toBeGreaterThanOrEqual(900)
              opened = now
            }
            const until = Math.min(forward[i + 1]?.now ?? Infinity, now + decision.closeAfter)
            for (let from = now; from < until; ) {
              const day = Math.floor(from / 86400)
              const to = Math.min(until, (day + 1) * 86400)
              given.set(day, (given.get(day) ?? 0) + ((to - from) * 4) / 3600)
              from = to
            }
          } else if (opened >= 0) {
            opened = -1
            closed = now
          }
        })
        for (const volume of given.values()) expect(volume).toBeLessThanOrEqual(1 + 1e-9)
      }),
    )
  })
  it('gives a limited number of shots by time while there is no reading, then waits for somebody', () => {
    const inputs = Array.from({ length: 600 }, (_, i) => ({ now: 60 * i, content: Number.NaN }))
    const { outputs } = runReducer({ reducer: controlWatering(timed), inputs })
    const starts = outputs.flatMap(({ open }, i) => (open && !outputs[i - 1]?.open ? [i] : []))
    expect(starts).toEqual([60, 123, 186])
    expect(outputs.at(-1)).toMatchObject({ open: false, reason: 'no reading' })
    const staying = runReducer({ reducer: controlWatering(settings), inputs }).outputs
    expect(staying.some(({ open }) => open)).toBe(false)
  })
  it('closes at once when the reading goes missing, the container is full, or the clock goes back', () => {
    const reducer = controlWatering(settings)
    const open = runReducer({ reducer, inputs: [{ now: 1000, content: 0.45 }] })
    expect(open.outputs[0]).toMatchObject({ open: true, closeAfter: 180 })
    const then = (input: WateringInput) => reducer.step(open.state, input)[1]
    expect(then({ now: 1060, content: 0.46 })).toMatchObject({ open: true, closeAfter: 120 })
    expect(then({ now: 1060, content: Number.NaN })).toMatchObject({ open: false, reason: 'no reading' })
    expect(then({ now: 1060, content: 0.61 })).toMatchObject({ open: false, reason: 'wet enough' })
    expect(then({ now: 400, content: 0.45 })).toMatchObject({
      open: false,
      reason: 'clock went back',
      givenToday: 0.2,
    })
    expect(then({ now: Number.NaN, content: 0.45 })).toMatchObject({ open: false, reason: 'clock unknown' })
  })
  it('does not give the volume of a day twice when the clock is set back to the day before', () => {
    const reducer = controlWatering(settings)
    const used = { ...reducer.start, last: 90000, closed: 89000, day: 1, given: 1 }
    const back = reducer.step(used, { now: 80000, content: 0.4 })
    expect(back[1].reason).toBe('clock went back')
    const later = reducer.step(back[0], { now: 84000, content: 0.4 })
    expect(later[1]).toMatchObject({ open: false, reason: 'day used up' })
    const nextDay = reducer.step(later[0], { now: 90000, content: 0.4 })
    expect(nextDay[1]).toMatchObject({ open: true })
  })
  it('takes a second message of the same moment, and a first one before 1970, for no clock that went back', () => {
    const reducer = controlWatering(settings)
    const { outputs } = runReducer({ reducer, inputs: [-1000, -1000, -940].map((now) => ({ now, content: 0.45 })) })
    expect(outputs.map(({ reason, closeAfter }) => [reason, closeAfter])).toEqual([
      ['dry', 180],
      ['dry', 180],
      ['dry', 120],
    ])
  })
  it('opens only where a reading was at the lower limit, and then on until one is at the upper limit', () => {
    const run = (contents: number[]) =>
      runReducer({
        reducer: controlWatering({ ...settings, minRest: minutes(0), probeLag: minutes(0) }),
        inputs: contents.map((content, i) => ({ now: 200 * i, content })),
      }).outputs.map(({ reason }) => reason)
    expect(run([0.51, 0.55, 0.6])).toEqual(['wet enough', 'wet enough', 'wet enough'])
    expect(run([0.5, 0.52, 0.55, 0.59, 0.6, 0.59])).toEqual([
      'dry',
      'shot given',
      'dry',
      'shot given',
      'wet enough',
      'wet enough',
    ])
  })
  it('needs no pause before the first shot, and opens again the moment the pause is over', () => {
    const inputs = [100, 280, 1179, 1180].map((now) => ({ now, content: 0.45 }))
    const { outputs } = runReducer({ reducer: controlWatering(settings), inputs })
    expect(outputs.map(({ reason }) => reason)).toEqual(['dry', 'shot given', 'waiting', 'dry'])
  })
  it('gives all that the day allows and no more, in a day that begins at six', () => {
    const reducer = controlWatering({ ...settings, dayStart: instant(6 * 3600) })
    const inputs = Array.from({ length: 2880 }, (_, i) => ({ now: 60 * i, content: 0.45 }))
    const { outputs } = runReducer({ reducer, inputs })
    const starts = outputs.flatMap(({ open }, i) => (open && !outputs[i - 1]?.open ? [i] : []))
    // From midnight, from six, and from six of the next day: five shots of 0.2 L, 3 min and a pause of 15 min each.
    expect(starts).toEqual([0, 360, 1800].flatMap((first) => [0, 18, 36, 54, 72].map((later) => first + later)))
    expect(outputs[359]).toMatchObject({ open: false, reason: 'day used up' })
    expect(outputs[359]?.givenToday).toBeCloseTo(1, 12)
    expect(outputs[361]?.givenToday).toBeCloseTo(1 / 15, 12)
  })
  it('gives no back-up shot beyond what the day allows', () => {
    const reducer = controlWatering({ ...timed, maxPerDay: litres(0.3) })
    const inputs = Array.from({ length: 300 }, (_, i) => ({ now: 60 * i, content: Number.NaN }))
    const { outputs } = runReducer({ reducer, inputs })
    expect(outputs.filter(({ open }, i) => open && !outputs[i - 1]?.open)).toHaveLength(1)
    expect(outputs.at(-1)).toMatchObject({ open: false, reason: 'day used up' })
  })
  it('counts a shot that runs over midnight in both days', () => {
    const reducer = controlWatering(settings)
    const inputs = [86340, 86460].map((now) => ({ now, content: 0.45 }))
    expect(runReducer({ reducer, inputs }).outputs[1]?.givenToday).toBeCloseTo(60 / 900, 12)
  })
  it('counts a whole shot where the clock fails while the valve is open, and nothing where it is closed', () => {
    const reducer = controlWatering(settings)
    for (const now of [Number.NaN, 500]) {
      const [closed] = reducer.step(reducer.start, { now: 1000, content: 0.55 })
      expect(reducer.step(closed, { now, content: 0.55 })[1].givenToday).toBe(0)
      const [open] = reducer.step(closed, { now: 1060, content: 0.45 })
      expect(reducer.step(open, { now, content: 0.45 })[1].givenToday).toBe(0.2)
    }
  })
  it('starts the pause at the latest moment at which the valve can have closed, where the clock failed while it was open', () => {
    const reducer = controlWatering(settings)
    const inputs = [1000, Number.NaN, 2079, 2080].map((now) => ({ now, content: 0.45 }))
    const reasons = runReducer({ reducer, inputs }).outputs.map(({ reason }) => reason)
    expect(reasons).toEqual(['dry', 'clock unknown', 'waiting', 'dry'])
  })
  it('waits for a pause from the last known moment where the clock failed while the valve was closed', () => {
    const inputs = [5000, Number.NaN, 5899, 5900].map((now, i) => ({ now, content: i === 0 ? 0.55 : 0.45 }))
    const reasons = runReducer({ reducer: controlWatering(settings), inputs }).outputs.map(({ reason }) => reason)
    expect(reasons).toEqual(['wet enough', 'clock unknown', 'waiting', 'dry'])
  })
  it('accepts a shot that takes the longest run time and all that the day allows', () => {
    expect(() => controlWatering({ ...settings, maxRunTime: minutes(3), maxPerDay: millilitres(200) })).not.toThrow()
  })
  it('is not started with limits that contradict each other', () => {
    expectInputError(() => controlWatering({ ...settings, shot: litres(0.9) }), 'shot')
    expectInputError(() => controlWatering({ ...settings, shot: litres(0.3), maxPerDay: litres(0.2) }), 'shot')
    expectInputError(() => controlWatering({ ...settings, upper: waterContent(0.5) }), 'upper')
    expectInputError(
      () => controlWatering({ ...timed, whenMissing: { by: 'timed shots', every: minutes(5), atMost: 1.5 } }),
      'atMost',
    )
    expectDomainError(() => controlWatering({ ...settings, maxRunTime: minutes(121) }), {
      quantity: 'longest run time',
    })
    expectDomainError(
      () => controlWatering({ ...timed, whenMissing: { by: 'timed shots', every: minutes(5), atMost: 100 } }),
      { quantity: 'back-up shots in a row' },
    )
    expectInputError(() => deadBand({ lower: waterContent(0.6), upper: waterContent(0.5) }), 'upper')
  })
})
