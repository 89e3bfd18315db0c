import { controlWatering, litres } from 'porewater'
import { describe, expect, it } from 'vitest'
import { MIDNIGHT, moment, settings } from './zone.js'

interface Metered {
  /** What the meter shows once so much has run since the start. Unit: L. */
  readonly shows: (ran: number) => number
  /** How much more runs than is ordered, from the second day on. */
  readonly times?: number
  readonly acknowledge?: (time: number) => readonly string[] | undefined
}

/** Three days of shots that somebody orders by day: hours in which each finding stood from the second day on, the longest opening, and what the zone was told it got. */
function run({ shows, times = 1 }: Metered) {
  const reducer = controlWatering(settings)
  let [state, ran, until, from, longest, given, inDay] = [reducer.start, 0, 0, 0, 0, 0, 0]
  const stood = new Map<string, number>()
  for (let time = MIDNIGHT, at = 0; time < MIDNIGHT + 3 * 86400; time += 60, at++) {
    const later = time > MIDNIGHT + 86400
    const volume = (Math.max(0, Math.min(until, time) - from) / 3600) * settings.flow
    ran += volume * (later ? times : 1)
    given += volume
    const [next, decision] = reducer.step(state, {
      ...moment(time, 0.55 + 0.002 * (at % 2)),
      metered: litres(shows(ran)),
      ...(at % 45 < 1 && { override: { action: 'water', until: time + 600 } }),
    })
    state = next
    for (const { code } of decision.findings) if (later) stood.set(code, (stood.get(code) ?? 0) + 1 / 60)
    longest = Math.max(longest, decision.closeAfter)
    ;[from, until, inDay] = [
      time,
      decision.open ? time + decision.closeAfter : time,
      Math.max(inDay, decision.givenInDay),
    ]
  }
  return { stood, longest, given, inDay }
}

describe('a flow meter that counts whole litres, where a shot is 0.2 L', () => {
  // Each opening without a step was one without flow, each with one a burst, and shots became longer for what was missing.
  it.each([0.5, 1])('in steps of %s L speaks of no burst, no dry line and no weak one', (step) => {
    const exact = run({ shows: (ran) => ran })
    const coarse = run({ shows: (ran) => Math.floor(ran / step + 1e-9) * step })
    expect([...coarse.stood.keys()]).toEqual([...exact.stood.keys()])
    expect(coarse.longest).toBeCloseTo(exact.longest, 6)
    expect(Math.abs(coarse.given - exact.given)).toBeLessThan(0.3)
    expect(coarse.inDay).toBeGreaterThanOrEqual(exact.inDay - 1e-6)
    expect(coarse.inDay).toBeLessThanOrEqual(exact.inDay + step)
  })
  it('tells a line that falls dry within three steps', () => {
    expect(run({ shows: Math.floor, times: 0 }).stood.get('no-flow')).toBeGreaterThan(12)
  })
  it('tells a burst, and counts what it shows in the water of a day', () => {
    const { stood, inDay } = run({ shows: Math.floor, times: 2 })
    expect(stood.get('flow-too-large')).toBeGreaterThan(12)
    expect(inDay).toBeGreaterThan(3)
  })
  it('tells that half of the water comes', () => {
    const { stood } = run({ shows: Math.floor, times: 0.5 })
    expect(stood.has('no-flow')).toBe(false)
    expect(stood.has('flow-too-large')).toBe(false)
  })
  it('of which a step comes late is counted no less than it shows', () => {
    const { inDay } = run({ shows: (ran) => Math.max(0, Math.floor(ran - 0.3)) })
    expect(inDay).toBeGreaterThan(1.5)
  })
})
