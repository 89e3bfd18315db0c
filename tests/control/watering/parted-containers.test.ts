import {
  controlWatering,
  type DrainFraction,
  days,
  InputError,
  litres,
  percent,
  rehearsalScenario,
  rehearse,
  rehearsedWatering,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { type Containers, season } from './containers.js'
import { MIDNIGHT, settings } from './zone.js'

const EVEN = Array.from({ length: 8 }, () => 1)
/** The first container gets less and drinks more than the others. */
const parted = {
  drips: EVEN.map((share, i) => (i === 0 ? 0.94 : share + 0.06 / 7)),
  drinks: EVEN.map((share, i) => (i === 0 ? 1.08 : share - 0.08 / 7)),
}

describe('a probe in a container that gets less and drinks more than the others', () => {
  it('does not stay dry and in dispute for weeks: a refill goes on until its container has no room', () => {
    const { driest, told } = season({ ...parted, days: 28, probed: [0, 3] })
    // It fell to 0.21, in dispute for seven tenths of the time: each drain of the others was taken for a full zone.
    expect(driest[0]).toBeGreaterThan(0.4)
    const disputed = told.filter(({ findings }) => findings.some(({ code }) => code === 'probes-disagree'))
    expect(disputed.length).toBeLessThan(0.1 * told.length)
  })
})

describe('two probes whose containers both have room yet when the others drain', () => {
  it('are known to differ by what they say then, and do not bring a full zone water by time in the evening', () => {
    const { zone, limits, ...settled } = rehearsalScenario('pine-bark')
    const { reducer, ...others } = rehearsedWatering({ zone, limits, ...settled })
    let disputes = 0
    const step: typeof reducer.step = (state, message) => {
      const stepped = reducer.step(state, message)
      if (stepped[1].findings.some(({ code }) => code === 'probes-disagree')) disputes++
      return stepped
    }
    const controller = { ...others, reducer: { ...reducer, step } }
    const { fullTime } = rehearse({ zone, limits, controller, days: 2, seed: 8052, faults: [] })
    // They were in dispute from 18 o'clock, and the zone was above its full level for an hour and a half.
    expect(disputes).toBe(0)
    expect(fullTime).toBeLessThan(1800)
  })
})

describe('a share that should drain', () => {
  const shareOf = (drainFraction: DrainFraction) => {
    const { byDay, driest, told } = season({ ...parted, days: 12, probed: [1, 3], changed: { drainFraction } })
    const last = byDay.slice(3)
    const sum = (key: 'given' | 'drained') => last.reduce((total, day) => total + day[key], 0)
    for (const { givenInDay } of told) expect(givenInDay).toBeLessThanOrEqual(settings.maxPerDay)
    return { share: sum('drained') / sum('given'), driest: driest[0]! }
  }
  it('drains in the mean of some days, and keeps a container without a probe as wet as the others', () => {
    const shares: DrainFraction[] = [percent(10), percent(30)]
    for (const wanted of shares) expect(Math.abs(shareOf(wanted).share - wanted)).toBeLessThan(0.02)
    expect(season({ ...parted, days: 12, probed: [1, 3] }).driest[0]).toBeLessThan(0.42)
    expect(shareOf(percent(20)).driest).toBeGreaterThan(0.44)
  })
  // Without refills that container fell to 0.10 to 0.27.
  const uncounted = (counts: NonNullable<Containers['counts']>) =>
    season({ ...parted, days: 16, probed: [1, 3], counts, changed: { drainFraction: percent(20) } })
  it.each<[string, NonNullable<Containers['counts']>]>([
    ['there is no gauge', () => undefined],
    ['the gauge is stuck', (all, day) => (day < 5 ? all : 3)],
    ['it counts millilitres', (all, day) => (day < 5 ? all : 1000 * all)],
  ])('drains by what probes show where %s', (_, counts) => {
    const { driest, byDay, told } = uncounted(counts)
    const last = byDay.slice(6)
    const share = last.reduce((sum, day) => sum + day.drained, 0) / last.reduce((sum, day) => sum + day.given, 0)
    expect(driest[0]).toBeGreaterThan(0.4)
    expect(share).toBeGreaterThan(0.1)
    expect(share).toBeLessThan(0.3)
    for (const { givenInDay } of told) expect(givenInDay).toBeLessThanOrEqual(settings.maxPerDay * (1 + 1e-9))
  })
  it('drains the day after rain that the gauge counts, which is no store for three days', () => {
    const counts = (all: number, day: number) => all + 0.9 * Math.floor((day + 11 / 24) / 3)
    // It fell to 0.28.
    expect(uncounted(counts).driest[0]).toBeGreaterThan(0.33)
  })
  it.each<[string, NonNullable<Containers['meters']>, string]>([
    ['counts twice what comes', (all) => 2 * all, 'flow-too-large'],
    ['is dead', () => 0, 'no-flow'],
  ])('drains where the meter %s, though nobody acknowledges it', (_, meters, code) => {
    const { driest, told } = season({
      ...parted,
      days: 12,
      probed: [1, 3],
      meters,
      changed: { drainFraction: percent(20) },
    })
    expect(told.at(-1)!.findings.map((finding) => finding.code)).toContain(code)
    expect(driest[0]).toBeGreaterThan(0.4)
  })
  it.each<[string, NonNullable<Containers['clock']>]>([
    ['stands still', (now, day) => (day < 3.5 ? now : MIDNIGHT + 3.5 * 86400)],
    ['counts milliseconds', (now, day) => (day < 3.5 ? now : 1000 * now)],
    ['flaps by a day', (now, day) => (day < 3.5 ? now : now + 86400 * (Math.floor(now / 120) % 2))],
  ])('drains by the count of decisions while the clock %s', (_, clock) => {
    const { driest, byDay, told } = season({
      ...parted,
      days: 12,
      probed: [1, 3],
      clock,
      changed: { drainFraction: percent(20) },
    })
    const last = byDay.slice(4)
    const share = last.reduce((sum, day) => sum + day.drained, 0) / last.reduce((sum, day) => sum + day.given, 0)
    expect(told.at(-1)!.findings.map(({ code }) => code)).toContain('clock-doubtful')
    // Nothing was filled, and the container without a probe fell to 0.32.
    expect(driest[0]).toBeGreaterThan(0.4)
    expect(share).toBeGreaterThan(0.15)
    for (const { given } of byDay) expect(given).toBeLessThanOrEqual(settings.maxPerDay * (1 + 1e-9))
    for (const { givenInDay } of told) expect(givenInDay).toBeLessThanOrEqual(settings.maxPerDay * (1 + 1e-9))
  })
  it.each<[string, NonNullable<Containers['kept']>]>([
    ['each night', (state, time, start) => (time % 86400 === 10800 ? start : state)],
    ['in part, twice a day', (state, time) => (time % 43200 === 10800 ? { ...state, zone: null } : state)],
  ])('drains though the state is lost %s', (_, kept) => {
    const { driest, byDay } = season({
      ...parted,
      days: 12,
      probed: [1, 3],
      kept,
      changed: { drainFraction: percent(20) },
    })
    // Each loss put the next refill off, and there was none: it fell to 0.20.
    expect(driest[0]).toBeGreaterThan(0.4)
    for (const { given } of byDay) expect(given).toBeLessThanOrEqual(settings.maxPerDay * (1 + 1e-9))
  })
  it('keeps the limit of a day, where that leaves no room for it', () => {
    const { byDay, told } = season({
      ...parted,
      days: 10,
      probed: [1, 3],
      changed: { drainFraction: percent(40), maxPerDay: litres(2.2) },
    })
    for (const { givenInDay } of told) expect(givenInDay).toBeLessThanOrEqual(2.2)
    expect(byDay.at(-1)!.given).toBeGreaterThan(1.5)
  })
  it('is refused where nothing would drain it, and where it comes in percent', () => {
    expect(() => controlWatering({ ...settings, drainFraction: percent(20), refillEvery: 'never' })).toThrow(InputError)
    expect(() => controlWatering({ ...settings, drainFraction: 20 as DrainFraction })).toThrow(
      /drainFraction|share is 20/,
    )
    expect(() => controlWatering({ ...settings, drainFraction: percent(20), refillEvery: days(2) })).not.toThrow()
  })
})
