import { describe, expect, it } from 'vitest'
import { trueWater, wanted } from './true-water.js'
import { MIDNIGHT, settings } from './zone.js'

/** What a zone may have in doubt, as a part of a usual day: its reading never rises, so that it is not believed for long. */
const IN_DOUBT = (4 / 3) * settings.usualPerDay

describe('a clock that moves in steps of several decisions', () => {
  it.each([
    ['a quarter of an hour, asked every minute', 900, 60],
    ['a quarter of an hour, asked every 10 s', 900, 10],
    ['five minutes, asked every 10 s', 300, 10],
    ['a minute, asked every second', 60, 1],
    ['a minute, asked every 7 s', 60, 7],
    ['an hour, asked every 5 min', 3600, 300],
  ])('of %s gains no day and is watered as usual', (_, steps, poll) => {
    const days = poll === 1 ? 1 : 2
    const { worst, given, outside, longest, reasons, state } = trueWater({
      poll,
      days,
      clock: (time) => Math.floor(time / steps) * steps,
    })
    expect(worst).toBeLessThanOrEqual(1.05)
    expect(outside).toBe(0)
    expect(longest).toBeLessThanOrEqual(settings.maxRunTime)
    expect(given / days).toBeGreaterThan(0.85 * IN_DOUBT)
    // The pace is known after four steps at most; from then on nothing is wrong with this clock.
    const doubted = [...reasons].reduce((sum, [reason, count]) => sum + (reason.startsWith('clock') ? count : 0), 0)
    expect(doubted).toBeLessThanOrEqual((5 * steps) / poll)
    expect(state.clock.doubt).toBe(0)
  })
  it('because it is that of the newest message, some of which are lost, is watered as usual', () => {
    let newest = MIDNIGHT
    let due = MIDNIGHT + 240
    let sent = 0
    const { worst, given, outside } = trueWater({
      poll: 60,
      days: 2,
      clock: (time) => {
        // A message every 4 to 6 minutes; every seventh is lost.
        if (time >= due) {
          if (++sent % 7 !== 0) newest = due
          due += 240 + ((sent * 37) % 120)
        }
        return newest
      },
    })
    expect(worst).toBeLessThanOrEqual(1.05)
    expect(outside).toBe(0)
    expect(given / 2).toBeGreaterThan(0.85 * IN_DOUBT)
  })
  it('is still told when it stands for hours', () => {
    const { worst, outside, state } = trueWater({
      poll: 60,
      days: 3,
      clock: (time) => Math.min(Math.floor(time / 900) * 900, MIDNIGHT + 36 * 3600),
    })
    expect(worst).toBeLessThanOrEqual(1.05)
    expect(outside).toBe(0)
    expect(state.clock.doubt).toBeGreaterThan(86400)
  })
  it('that stops while water runs leaves a state that can be gone on from', () => {
    for (let quarter = 0; quarter < 8; quarter++) {
      const { reasons, worst } = trueWater({
        poll: 900,
        days: 2,
        clock: (time) => Math.min(time, MIDNIGHT + 34 * 3600 + quarter * 900),
        more: wanted,
      })
      expect(reasons.has('state-lost')).toBe(false)
      expect(worst).toBeLessThanOrEqual(1.05)
    }
  })
})
