import { describe, expect, it } from 'vitest'
import { waterByTrueTime } from './true-time.js'
import { settings } from './zone.js'

describe('a clock that moves in steps of several decisions', () => {
  it.each([
    ['a quarter of an hour, asked every minute', 900, 60],
    ['a quarter of an hour, asked every 10 s', 900, 10],
    ['five minutes, asked every 10 s', 300, 10],
    ['a minute, asked every second', 60, 1],
    ['a minute, asked every 7 s', 60, 7],
    ['an hour, asked every 5 min', 3600, 300],
  ])('of %s gains no day and is watered as usual', (_, steps, poll) => {
    const { worst, perDay, outside, told } = waterByTrueTime({
      poll,
      days: poll < 10 ? 2 : 3,
      now: (time) => Math.floor(time / steps) * steps,
    })
    expect(worst).toBeLessThanOrEqual(1.05)
    expect(outside).toEqual([])
    // The first day begins carefully; a zone that is always dry then gets nearly all that a day may have.
    expect(perDay).toBeGreaterThan(0.6)
    const late = told.slice(told.length / 2)
    expect(late.some(({ decision }) => decision.reason.startsWith('clock'))).toBe(false)
    expect(late.some(({ decision }) => decision.findings.some(({ code }) => code === 'clock-doubtful'))).toBe(false)
  })
  it('because it is that of the newest message is watered as usual, messages lost now and then', () => {
    let newest = 0
    let sent = 0
    const { worst, perDay, outside } = waterByTrueTime({
      poll: 60,
      days: 3,
      now: (time, at) => {
        // A message every 4 to 6 minutes; every seventh is lost.
        if (newest === 0 || time - newest >= 240 + ((at * 37) % 120))
          if (++sent % 7 !== 0 || newest === 0) newest = time - (at % 13)
        return newest
      },
    })
    expect(worst).toBeLessThanOrEqual(1.05)
    expect(outside).toEqual([])
    expect(perDay).toBeGreaterThan(0.6)
  })
  it('ends an opening in time, though the moment is the same', () => {
    const { told } = waterByTrueTime({ poll: 60, days: 2, now: (time) => Math.floor(time / 900) * 900 })
    let opened = 0
    let opening = 0
    for (const { time, decision } of told) {
      if (!decision.open) continue
      if (decision.opening !== opening) [opened, opening] = [time, decision.opening]
      expect(time + decision.closeAfter - opened).toBeLessThanOrEqual(settings.maxRunTime)
    }
    expect(opening).toBeGreaterThan(10)
  })
  it('is still told when it stands for hours', () => {
    const noon = 36 * 3600
    const { told, worst } = waterByTrueTime({
      poll: 60,
      days: 3,
      now: (time) => Math.min(Math.floor(time / 900) * 900, 20_000 * 86400 + noon),
    })
    expect(worst).toBeLessThanOrEqual(1.05)
    expect(told.at(-1)!.decision.findings.map(({ code }) => code)).toContain('clock-doubtful')
  })
})
