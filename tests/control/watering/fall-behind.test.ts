import {
  controlWatering,
  explainControlFinding,
  hours,
  litres,
  millilitres,
  minutes,
  type WateringInput,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { MIDNIGHT, settings } from './zone.js'

/** Two days of a zone whose plants drink so much between 7 and 18 o'clock; the hour of the first finding, and all codes. Unit: L/d. */
function days(use: number, changed: object = {}, more: (hour: number) => Partial<WateringInput> = () => ({})) {
  const rules = { ...settings, maxPerDay: litres(12), ...changed }
  const reducer = controlWatering(rules)
  let [state, level, until, from, first] = [reducer.start, 0.53, 0, 0, Number.NaN]
  const codes = new Set<string>()
  for (let time = MIDNIGHT, at = 0; time < MIDNIGHT + 2 * 86400; time += 300, at++) {
    const hour = ((time - MIDNIGHT) % 86400) / 3600
    const given = (Math.max(0, Math.min(until, time) - from) / 3600) * rules.flow
    level += (given - (hour >= 7 && hour < 18 ? (use * 300) / 39600 : 0)) / rules.substrateVolume
    const readings = [{ waterContent: level + 0.0005 * (at % 3), time } as WateringInput['readings'][number]]
    const [next, decision] = reducer.step(state, { now: time, readings, locked: false, ...more(hour) })
    state = next
    for (const finding of decision.findings) {
      codes.add(finding.code)
      if (finding.code !== 'shots-fall-behind') continue
      if (Number.isNaN(first)) first = (time - MIDNIGHT) / 3600
      expect(explainControlFinding(finding).message).toMatch(/larger shots.*\d+(\.\d+)? h/)
    }
    ;[from, until] = [time, decision.open ? time + decision.closeAfter : time]
  }
  return { first, codes, level }
}

describe('a zone whose plants drink more than shots of this size, with lag and rest between them, can bring', () => {
  // Dry for days with an order to open at each chance, and not a word.
  it('is told within a day, with the remedy', () => {
    const { first, codes } = days(8.5, { usualPerDay: litres(5) })
    expect(codes).toContain('shots-fall-behind')
    expect(first).toBeGreaterThan(11)
    expect(first).toBeLessThan(24)
  })
  it('is told no more once shots are larger', () => {
    const larger = { usualPerDay: litres(5), shot: millilitres(330), maxRunTime: minutes(6) }
    expect(days(8.5, larger).codes).not.toContain('shots-fall-behind')
  })
  it('and one that keeps up, that is locked, or that may get nothing at this hour, is told nothing', () => {
    expect(days(3).codes).not.toContain('shots-fall-behind')
    expect(days(3, {}, (hour) => ({ locked: hour < 16 })).codes).not.toContain('shots-fall-behind')
    expect(days(3, { allowedHours: [{ from: hours(7), to: hours(9) }] }).codes).not.toContain('shots-fall-behind')
  })
})
