/** The diagnosis of a day against faults that were put into an invented record: what is true is known. */
import { diagnoseDay, proposeDay, reportZone, reviewZone, type ZoneRecord } from 'porewater'
import { describe, expect, it } from 'vitest'
import { expectInputError } from '../support/refusals.js'
import { benchRecord, benchZone, MIDNIGHT } from './bench.js'

const zone = benchZone()
const healthy = benchRecord({ days: 6 })
function changed(change: (x: number, time: number) => number | null, record = healthy): ZoneRecord {
  return {
    ...record,
    probes: { ...record.probes, A: Array.from(record.probes.A!, (x, i) => change(x as number, record.time[i]!)) },
  }
}
function diagnosed(record: ZoneRecord, of = zone) {
  const day = reviewZone({ zone: of, record }).days.at(-1)!
  const found = diagnoseDay({ zone: of, record, day })
  return { day, found, causes: found.known ? found.value.diagnosis.causes : [] }
}
const noon = MIDNIGHT + 5 * 86400 + 12 * 3600

describe('the diagnosis of a day', () => {
  it('tells nothing of a healthy zone, and what it cannot tell', () => {
    const { found, causes } = diagnosed(healthy)
    expect(causes).toEqual([])
    if (!found.known) throw new Error(found.reason)
    expect(found.value.told).toEqual([])
    expect(found.value.diagnosis.cannotTell).toContainEqual({ code: 'flow-meter-wrong', reason: 'no-flow-meter' })
  })
  it('names a probe that was pulled, one that froze and one that falls silent', () => {
    const pulled = diagnosed(changed((x, time) => (time < noon ? x : 0.62 * x)))
    expect(pulled.causes.slice(0, 2).map(({ code }) => code)).toContain('probe-lifted')
    expect(pulled.causes[0]?.about).toEqual(['A'])
    expect(diagnosed(changed((x, time) => (time < noon ? x : 0.6))).causes[0]?.code).toBe('probe-frozen')
    expect(diagnosed(changed((x, time) => (time < noon ? x : null))).causes[0]?.code).toBe('probe-dead')
  })
  it('forgets a fall that went back within minutes', () => {
    const { found, causes } = diagnosed(changed((x, time) => (time >= noon && time < noon + 2100 ? x - 0.05 : x)))
    expect(causes).toEqual([])
    if (!found.known) throw new Error(found.reason)
    expect(found.value.told.map(({ cause }) => cause.code)).not.toContain('probes-swapped')
  })
  it('does not take shots that start between rows, or with the first one, for a clock that gains', () => {
    const time = Array.from({ length: 3 * 288 }, (_, i) => MIDNIGHT + 300 * i)
    const content = time.map((t) => 0.6 - (0.02 * (t % 14400)) / 14400 + 0.0004 * Math.sin(t ** 2))
    for (const shift of [0, 1, 150, 299]) {
      const openings = Array.from({ length: 18 }, (_, k) => MIDNIGHT + 14400 * k + shift)
      const watering = { time: openings, given: openings.map(() => 0.4), drained: openings.map(() => 0.08) }
      const { found } = diagnosed({ time, probes: { A: content, B: content.map((x) => x + 0.01) }, watering })
      if (!found.known) throw new Error(found.reason)
      expect(found.value.told.map(({ cause }) => cause.code)).not.toContain('clock-wrong')
      expect(found.value.diagnosis.causes.map(({ code }) => code)).not.toContain('clock-wrong')
    }
  })
  it('does not change with a constant offset of a probe', () => {
    const shift = (x: number) => x + 0.013
    const wrong = (x: number, time: number) => (time < noon ? x : 0.62 * x)
    const codes = (record: ZoneRecord) => diagnosed(record).causes.map(({ code }) => code)
    expect(codes(changed((x, time) => shift(wrong(x, time))))).toEqual(codes(changed(wrong)))
  })
  it('says why there is none', () => {
    const { watering: _, ...rest } = healthy
    expect(diagnosed(rest).found).toEqual({ known: false, reason: 'no-log-of-openings' })
    expect(diagnosed(healthy, benchZone({ wateringLog: 'days' })).found).toMatchObject({ known: false })
    const day = reviewZone({ zone, record: healthy }).days.at(-1)!
    expect(() => diagnoseDay({ zone, record: healthy, day, daysBefore: 1.5 })).toThrow(/whole/)
    expectInputError(() => diagnoseDay(undefined as never), 'input')
  })
  it('stands in the report, the likeliest cause first, with its check', () => {
    const record = changed((x, time) => (time < noon ? x : 0.62 * x))
    const { day, found } = diagnosed(record)
    const sections = reportZone({ zone, day, proposal: proposeDay({ zone, day }), diagnosis: found })
    const lines = sections.find(({ title }) => title === 'What may be wrong')?.lines ?? []
    expect(lines[0]).toMatch(/^1\. A: a probe (may have been pulled out|reads another level)/)
    expect(sections.map(({ title }) => title)).not.toEqual(
      reportZone({ zone, day, proposal: proposeDay({ zone, day }) }).map(({ title }) => title),
    )
  })
})
