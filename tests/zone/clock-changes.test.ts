import { followZone, reviewZone, runReducer, type ZoneEntry, type ZoneRecord } from 'porewater'
import { describe, expect, it } from 'vitest'
import { benchZone } from './bench.js'

/**
 * Days on which local clocks are changed, in places where they are changed near midnight. What the clock shows is told by the tz database, as the
 * platform's `Intl` has it.
 */
const CHANGES = [
  ['America/St_Johns', Date.UTC(2010, 10, 7, 2, 31)],
  ['America/St_Johns', Date.UTC(2010, 2, 14, 3, 31)],
  ['America/Sao_Paulo', Date.UTC(2018, 1, 18, 2)],
  ['America/Sao_Paulo', Date.UTC(2018, 10, 4, 3)],
  ['America/Havana', Date.UTC(2024, 10, 3, 5)],
  ['Australia/Lord_Howe', Date.UTC(2024, 3, 6, 15)],
  ['Pacific/Apia', Date.UTC(2011, 11, 30, 10)],
] as const

/** Date and time on the wall, as `2010-11-06T23:59`. */
function shown(timeZone: string, time: number): string {
  return new Date(1000 * time).toLocaleString('sv-SE', { timeZone }).slice(0, 16).replace(' ', 'T')
}

function ahead(timeZone: string, time: number): number {
  return Date.parse(`${shown(timeZone, time)}Z`) / 1000 - time
}

function around(timeZone: string, change: number) {
  const zone = benchZone()
  const clock = [change - 86400 * 30, change].map((from) => ({ from, ahead: ahead(timeZone, from) }))
  const time = Array.from({ length: 3 * 288 }, (_, i) => change - 131400 + 300 * i)
  const level = (offset: number) => time.map((_, i) => 0.6 + offset - 0.0003 * (i % 48) + 0.0004 * Math.sin(i * i))
  const record: ZoneRecord = { time, probes: { A: level(0), B: level(-0.01) } }
  return { zone: { ...zone, place: { ...zone.place, clock } }, record, time }
}

describe('clocks that are changed near midnight', () => {
  it.each(CHANGES)('%s at %d: each reading belongs to one day, that of its date', (timeZone, at) => {
    const { zone, record, time } = around(timeZone, at / 1000)
    expect(new Set(zone.place.clock.map((offset) => offset.ahead)).size).toBe(2)
    const { days } = reviewZone({ zone, record })
    expect(days.reduce((sum, { readings }) => sum + readings, 0)).toBe(time.length)
    expect(days.slice(1).map(({ from }) => from)).toEqual(days.slice(0, -1).map(({ to }) => to))
    let latest = ''
    for (const moment of time) {
      const inside = days.filter(({ from, to }) => moment >= from && moment < to)
      // An evening that is shown again belongs to the day that has begun, if only for a minute between two readings.
      for (let minute = moment - 240; minute <= moment; minute += 60) {
        const date = shown(timeZone, minute).slice(0, 10)
        latest = date > latest ? date : latest
      }
      expect(inside.map((day) => day.date)).toEqual([latest])
    }
  })
  it('one minute past midnight, back over it: a review comes to an end, and a follower gives the same days', () => {
    const { zone, record, time } = around(...([CHANGES[0][0], CHANGES[0][1] / 1000] as const))
    const follower = followZone(zone)
    const inputs: ZoneEntry[] = time.map((moment, i) => ({
      kind: 'reading',
      time: moment,
      probes: { A: record.probes.A![i]!, B: record.probes.B![i]! },
    }))
    const { state, outputs } = runReducer({ reducer: follower, inputs })
    const { days } = reviewZone({ zone, record })
    expect([...outputs.flat(), ...follower.finish(state)]).toEqual(days)
    expect(days.map(({ date }) => date)).toEqual(['2010-11-05', '2010-11-06', '2010-11-07', '2010-11-08'])
  })
})
