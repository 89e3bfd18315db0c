import { controlWatering, seconds } from 'porewater'
import { describe, expect, it } from 'vitest'
import { askForWater, trueWater } from './attacked-water.js'
import { trueWater as runByTrueClock, wanted } from './true-water.js'
import { clock, decide, MIDNIGHT, moment, settings } from './zone.js'

/** A meter that sees three fifths of what is ordered: openings are made longer, up to the longest. */
const little = (time: number, _: number, given: number) => ({ ...askForWater(time), metered: 0.6 * given })

describe('an opening that is made longer because little arrives', () => {
  it('lasts 300 s where all is well', () => {
    expect(trueWater({ days: 0.6, poll: 60, more: little }).longest).toBe(300)
  })
  it.each([
    ['stands still', (time: number, from: number) => Math.min(time, from)],
    ['moves in steps that are too short', (time: number, from: number) => from + Math.floor((time - from) / 180) * 130],
    ['leaps back by a day', (time: number) => time - 86400],
    ['counts milliseconds', (time: number) => time * 1000],
  ])('lasts no longer than it may where the clock then %s', (_, wrong) => {
    // It fails in each minute of half an hour: in some of them water runs.
    for (let minute = 0; minute < 30; minute++) {
      const from = MIDNIGHT + 12 * 3600 + 60 * minute
      const now = (time: number) => (time <= from ? time : wrong(time, from))
      const { longest, worst } = trueWater({ days: 0.6, poll: 60, now, more: little })
      expect(longest).toBeLessThanOrEqual(300)
      expect(worst).toBeLessThanOrEqual(1.05)
    }
  })
})

describe('a shot that takes as long as the longest opening', () => {
  it('is shorter where the clock moves in coarse steps', () => {
    const now = (time: number) => MIDNIGHT + Math.floor((time - MIDNIGHT) / 240) * 240
    const { longest } = trueWater({ days: 1, poll: 60, changed: { maxRunTime: seconds(180) }, now, more: askForWater })
    expect(longest).toBeLessThanOrEqual(180)
  })
})

describe('shots that need no rest', () => {
  it('never touch: a valve that was to open again as it closed stood open for five shots', () => {
    for (const valveClosesByItself of [true, false]) {
      const changed = { minRest: seconds(0), probeLag: seconds(0), valveClosesByItself }
      const { longest, openings } = runByTrueClock({ days: 3, poll: 60, changed, more: wanted })
      expect(openings).toBeGreaterThan(10)
      expect(longest).toBeLessThanOrEqual(300)
    }
  })
})

describe('a state that lost when its opening began', () => {
  it('is a lost state: it had opened the valve anew, for two shots in one', () => {
    const { told, state } = decide(clock(8), clock(10), 60, (now, at) => moment(now, 0.49 + 0.001 * (at % 2)))
    const opens = told.findIndex(({ decision }) => decision.open)
    const { state: open } = decide(clock(8), told[opens]!.now + 60, 60, (now, at) =>
      moment(now, 0.49 + 0.001 * (at % 2)),
    )
    expect(open.valve.opened).not.toBeNull()
    const torn = { ...open, valve: { ...open.valve, opened: null } }
    const [, decision] = controlWatering(settings).step(torn, moment(told[opens]!.now + 60, 0.49))
    expect(decision).toMatchObject({ open: false, reason: 'state-lost' })
    expect(state.valve.opened === null).toBe(state.valve.duration === 0)
  })
})
