import {
  checkReadings,
  checkWatering,
  findShots,
  findTimeBreaks,
  instant,
  litres,
  litresPerHour,
  minutes,
  newestReading,
  splitRecord,
  waterContent,
  waterContentChange,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { safeWatering } from '../support/safe-watering.js'

/**
 * Source of facts and numbers: reference scenario, recomputed (an invented but plausible record).
 * Fifteen readings come in from a logger. A hand touches the probe once, the reading stands still for a while, the power fails for an hour,
 * and ten minutes after it is back the clock is put back by an hour for the winter. May anything be watered on the newest reading?
 */
describe('a record with a touch, a frozen stretch, a power cut and a clock that was set back', () => {
  const time = [0, 300, 600, 900, 1200, 1500, 1800, 2100, 2400, 2700, 6300, 6600, 3300, 3600, 3900]
  const value = [0.541, 0.54, 0.539, 0.612, 0.537, 0.536, 0.535, 0.535, 0.535, 0.535, 0.521, 0.52, 0.519, 0.518, 0.517]
  const checked = checkReadings({
    time,
    value,
    expectedStep: minutes(5),
    gapFactor: 1.5,
    grossRange: { sensorMin: 0, sensorMax: 1, expectedMin: 0.2, expectedMax: 0.9 },
    spike: { suspect: 0.02, fail: 0.05 },
    flatLine: { tolerance: 0.0005, suspectAfter: 3, failAfter: 5 },
  })
  const flags = (test: string) => Array.from(checked.tests[test] ?? [])

  it('passes the gross range test throughout', () => {
    expect(flags('grossRange')).toEqual([1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1])
  })
  it('shows the touch as a spike, which throws doubt on its good neighbours too', () => {
    expect(flags('spike')).toEqual([2, 1, 3, 4, 3, 1, 1, 1, 1, 1, 1, 1, 1, 1, 2])
  })
  it('is suspect after three equal readings', () => {
    expect(flags('flatLine')).toEqual([1, 1, 1, 1, 1, 1, 1, 1, 1, 3, 1, 1, 1, 1, 1])
  })
  it('shows the power cut as a gap and the clock as a failure', () => {
    expect(flags('timeGap')).toEqual([2, 1, 1, 1, 1, 1, 1, 1, 1, 1, 3, 1, 4, 1, 1])
    expect(findTimeBreaks({ time, expectedStep: minutes(5) })).toEqual([
      { index: 10, kind: 'gap', seconds: 3600, mayBeClockChange: 'forward' },
      { index: 12, kind: 'step-back', seconds: -3300, mayBeClockChange: 'back' },
    ])
  })
  it('keeps nine good readings in the order in which they came', () => {
    expect(Array.from(checked.flags)).toEqual([1, 1, 3, 4, 3, 1, 1, 1, 1, 3, 3, 1, 4, 1, 1])
    expect(checked.counts.pass).toBe(9)
  })
  it('has a newest reading of 0.517 that may be used as a level', () => {
    const newest = newestReading({ time, value, flags: checked.flags, now: instant(4000) })
    expect(newest).toMatchObject({ known: true, value: 0.517, isLast: true, age: 100 })
  })
  it('holds no shot, not even the touch, and no stretch that reaches across gap or break', () => {
    const limits = { minRise: waterContentChange(0.01), maxRiseTime: minutes(30), maxStep: minutes(8) }
    expect(findShots({ time, waterContent: value, ...limits })).toEqual([])
    expect(splitRecord({ time, value, maxStep: minutes(8) })).toMatchObject([
      { first: 0, last: 9 },
      { first: 10, last: 11 },
      { first: 12, last: 14 },
    ])
  })
  it('does not let a shot be repeated on the strength of a clock that did not run on', () => {
    const { allowed, refusals } = checkWatering({
      request: { volume: litres(0.2), runTime: minutes(4) },
      limits: { ...safeWatering.limits, flow: litresPerHour(3), fullPoint: waterContent(0.6) },
      facts: {
        ...safeWatering.facts,
        givenInDay: litres(1),
        waterContent: waterContent(0.517),
        age: minutes(2),
        clockRanOn: false,
      },
    })
    expect(allowed).toBe(false)
    expect(refusals.map(({ code }) => code)).toEqual(['clock-unknown'])
  })
})
