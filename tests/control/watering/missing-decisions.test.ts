import { hours, seconds, type WateringSettings, type WateringState } from 'porewater'
import { describe, expect, it } from 'vitest'
import { lots } from './lots.js'
import { trueWater, wanted } from './true-water.js'
import { clock, MIDNIGHT, settings } from './zone.js'

const ALL_DAY: Partial<WateringSettings> = { allowedHours: [{ from: seconds(0), to: hours(24) }] }

/** Stores no decision that opens the valve: its current pulls the voltage of the machine down, before the state is written. */
function failsAtOpening(failsAt: (opening: number) => boolean) {
  let kept: WateringState | undefined
  let failed = 0
  return (state: WateringState) => {
    const isNew = kept !== undefined && state.valve.openings > kept.valve.openings
    if (isNew && failsAt(failed++)) return kept!
    kept = state
    return state
  }
}

describe('a machine that restarts each time it opens the valve, from the state before', () => {
  // Without a guard 8 days of water in one at 60 s, and 20 where water may flow all day.
  it.each([10, 60, 300, 900, 1800, 3600].flatMap((poll) => [{}, ALL_DAY].map((changed) => ({ poll, changed }))))(
    'asked every $poll s gives no second day',
    ({ poll, changed }) => {
      const run = { days: poll < 60 ? 2 : 4, poll, changed, more: wanted }
      const always = trueWater({ ...run, stored: failsAtOpening(() => true) })
      expect(always.worst).toBeLessThanOrEqual(1.05)
      expect(always.longest).toBeLessThanOrEqual(settings.maxRunTime)
      const each = trueWater({ ...run, stored: failsAtOpening((opening) => opening % 2 === 1) })
      expect(each.worst).toBeLessThanOrEqual(1.05)
      expect(each.longest).toBeLessThanOrEqual(settings.maxRunTime)
    },
  )
})

describe('a machine that fails at each opening after one decision that came half a step late at night', () => {
  // The late one excused each step of up to 2.2: a decision that is missing makes two.
  it.each([60, 300, 900])('asked every %s s, gives no second day', (poll) => {
    const late = MIDNIGHT + 27 * 3600
    const { worst, longest } = trueWater({
      days: 4,
      poll,
      more: wanted,
      clock: (time) => (time === late ? time + poll / 2 : time),
      stored: failsAtOpening(() => true),
    })
    expect(worst).toBeLessThanOrEqual(1.05)
    expect(longest).toBeLessThanOrEqual(settings.maxRunTime)
  })
})

describe('a machine that fails at each opening', () => {
  // A leap of twenty minutes by night excused each step of up to 26 decisions, one of an hour brought 9 days in one.
  it.each([
    [60, 1200],
    [60, 3600],
    [300, 1200],
    [300, 3600],
  ])('asked every %s s, after its clock leapt ahead by %s s in one night, gives no second day', (poll, ahead) => {
    const { worst, longest } = trueWater({
      days: 4,
      poll,
      more: (time) => wanted(time + ahead),
      clock: (time) => (time >= MIDNIGHT + 27 * 3600 ? time + ahead : time),
      stored: failsAtOpening(() => true),
    })
    expect(worst).toBeLessThanOrEqual(1.05)
    expect(worst).toBeGreaterThan(0.7)
    expect(longest).toBeLessThanOrEqual(settings.maxRunTime)
  })
  // Such leaps taught by night that decisions come unevenly, and excused each one that was lost by day: 1.6 days in one.
  it.each([600, 10800])(
    'at seven of ten, whose clock is %s s ahead now and then, gives no second day but for a shot or two',
    (ahead) => {
      for (const seed of [1, 2, 3]) {
        const [often, fails] = [lots(seed), lots(seed + 10)]
        const { worst } = trueWater({
          days: 5,
          poll: 60,
          more: wanted,
          clock: (time) => (time > MIDNIGHT + 29 * 3600 && often() < 0.1 ? time + ahead : time),
          stored: failsAtOpening(() => fails() < 0.7),
        })
        expect(worst).toBeLessThanOrEqual(1.1)
      }
    },
  )
  // Lost decisions taught that steps of two and three paces hide nothing: up to 2.7 days in one.
  it.each([
    [60, 0.2],
    [300, 0.2],
    [300, 0.5],
  ])(
    'asked every %s s, of which the share %s comes no more, gives no second day but for a few shots',
    (poll, share) => {
      for (const seed of [1, 2, 3]) {
        const lot = lots(7919 * seed)
        const fails = failsAtOpening(() => true)
        const { worst, given } = trueWater({
          days: 4,
          poll,
          more: wanted,
          comes: (time) => time < MIDNIGHT + 36 * 3600 || lot() >= share,
          stored: fails,
        })
        expect(worst).toBeLessThanOrEqual(1.3)
        expect(given).toBeGreaterThan(2)
      }
    },
  )
  it('gives its water again once openings are kept', () => {
    const lot = lots(104729)
    const fails = failsAtOpening(() => true)
    let [before, after] = [0, 0]
    const run = {
      poll: 300,
      more: wanted,
      stored: (state: WateringState, time: number) => (time < MIDNIGHT + 3 * 86400 ? fails(state) : state),
    }
    before = trueWater({ ...run, days: 4, comes: () => lot() >= 0.2 }).given
    after = trueWater({ ...run, days: 6, comes: () => lot() >= 0.2 }).given
    expect(after - before).toBeGreaterThan(2 * settings.usualPerDay)
  })
})

describe('an old state that had not learned its pace yet', () => {
  it('and is taken up every hour brings no room of its own', () => {
    let old: WateringState | undefined
    let young: WateringState | undefined
    const { worst } = trueWater({
      days: 4,
      poll: 60,
      more: wanted,
      // It has room for water, and forgot its pace when somebody set the clock.
      stored: (state, time) => {
        if (time === MIDNIGHT + 30 * 3600) old = state
        if (old === undefined) return state
        young ??= { ...old, clock: { ...old.clock, pace: 60, paces: 5, steady: 2, bad: 11 } }
        return time % 3600 === 0 ? young : state
      },
    })
    expect(worst).toBeLessThanOrEqual(1.05)
  })
})

describe('a clock that steps back and forth by minutes', () => {
  // Its steps on counted and those back did not: 2.7 days in one.
  it.each([60, 300])('asked every %s s, brings no second day', (poll) => {
    let ahead = 0
    let lot = 12345
    const random = () => {
      lot = (lot * 1103515245 + 12345) % 2147483648
      return lot / 2147483648
    }
    const { worst, longest } = trueWater({
      days: 5,
      poll,
      changed: ALL_DAY,
      more: wanted,
      clock: (time) => {
        if (time > clock(30)) ahead += 10 * poll * (random() - 0.5)
        return time + ahead
      },
    })
    expect(worst).toBeLessThanOrEqual(1.05)
    expect(longest).toBeLessThanOrEqual(settings.maxRunTime)
  })
})
