import {
  checkSaltBalance,
  explainIrrigationFinding,
  fraction,
  instant,
  litres,
  litresPerHour,
  minutes,
  percent,
  type SizeShotInput,
  seconds,
  sizeShot,
  staggerZones,
  waterContentChange,
  type ZoneShot,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { expectDomainError, expectInputError } from '../support/refusals.js'

const midnight = 1779148800
const shot = (zone: string, hour: number, more: Partial<ZoneShot> = {}): ZoneShot => ({
  zone,
  time: instant(midnight + hour * 3600),
  runTime: minutes(10),
  flow: litresPerHour(800),
  ...more,
})
const pump = { maxFlow: litresPerHour(1000), minRest: seconds(30) }

describe('zones on one pump', () => {
  it('are refused where a shot of the list is lost', () => {
    for (const lost of [null, undefined, 'a'])
      expectInputError(() => staggerZones([shot('a', 8), lost as never], pump), 'shots')
  })
  it('are refused where a run time is missing, instead of starting two at once', () => {
    for (const runTime of [undefined, null, Number.NaN, '600', -1, 600_000])
      expectDomainError(() => staggerZones([shot('a', 8, { runTime: runTime as never })], pump), {
        argument: 'runTime',
      })
    for (const time of [undefined, Number.NaN, midnight * 1000])
      expectDomainError(() => staggerZones([shot('a', 8, { time: time as never })], pump), { argument: 'time' })
    for (const flow of [undefined, 0, Number.NaN, '800'])
      expectDomainError(() => staggerZones([shot('a', 8, { flow: flow as never })], pump), { argument: 'flow' })
    for (const zone of [undefined, '', 7]) expectInputError(() => staggerZones([shot(zone as never, 8)], pump), 'zone')
    expectInputError(() => staggerZones(undefined as never, pump), 'shots')
    expect(staggerZones([], pump).shots).toEqual([])
  })
  it('never overlap themselves, however much the pump gives', () => {
    const large = { ...pump, maxFlow: litresPerHour(99_999) }
    const { shots } = staggerZones([shot('a', 8), shot('a', 8), shot('a', 8.1), shot('b', 8)], large)
    const own = shots.filter(({ zone }) => zone === 'a')
    own.forEach((one, i) => {
      const before = own[i - 1]
      if (before !== undefined) expect(one.time).toBeGreaterThanOrEqual(before.time + before.runTime + 30)
    })
  })
  it('are told of when the same one comes twice, and not when the pump alone puts them off', () => {
    const told = (list: ZoneShot[]) => staggerZones(list, pump).findings.filter(({ code }) => code === 'wanted-twice')
    const [again] = told([shot('a', 8), shot('b', 8), shot('a', 8)])
    expect(again).toMatchObject({ zone: 'a', value: shot('a', 8).runTime, unit: 's' })
    expect(explainIrrigationFinding(again!).message).toMatch(/zone a asks for a shot while .* sent twice$/)
    expect(told(Array.from({ length: 20 }, (_, i) => shot(`z${i}`, 8)))).toEqual([])
    expect(told([shot('a', 8), shot('a', 8 + shot('a', 8).runTime / 3600)])).toEqual([])
  })
  it('are told of when one runs for five hours: seconds that were multiplied by 60 twice', () => {
    const told = (runTime: number) => staggerZones([shot('a', 8, { runTime: seconds(runTime) })], pump).findings
    expect(told(7200)).toEqual([])
    expect(told(18_000)).toMatchObject([{ code: 'runs-long', zone: 'a', value: 18_000, unit: 's' }])
    expect(told(18_000).map((one) => explainIrrigationFinding(one).message)[0]).toMatch(
      /open for 300 min .* in seconds/,
    )
  })
  it('are told that the last allowed moment is no hour of the day', () => {
    const [late] = staggerZones([shot('a', 8)], { ...pump, lastEnd: instant(18) }).findings
    expect(explainIrrigationFinding(late!).message).toMatch(/in seconds since 1970, not as an hour of the day$/)
  })
  it('are told when they are pushed to 02:51', () => {
    const list = Array.from({ length: 60 }, (_, i) => shot(`z${i}`, 17))
    const { findings, caution } = staggerZones(list, { ...pump, lastEnd: instant(midnight + 20 * 3600) })
    expect(findings.filter(({ code }) => code === 'ends-too-late').length).toBeGreaterThan(30)
    expect(findings.some(({ code, level }) => code === 'begins-late' && level === 'caution')).toBe(true)
    for (const found of findings)
      expect(explainIrrigationFinding(found).message).toMatch(/^zone z\d+ (starts|finishes) [\d.]+ min/)
    expect(caution).toMatch(/advice/)
  })
  it('are told of when they wait for more than half an hour, in minutes', () => {
    const waiting = (runTime: number) =>
      staggerZones([shot('a', 8, { runTime: seconds(runTime) }), shot('b', 8)], {
        ...pump,
        maxFlow: litresPerHour(800),
      })
    // One valve at a time, and 30 s behind it.
    expect(waiting(1770).shots.at(-1)).toMatchObject({ zone: 'b', delay: 1800 })
    expect(waiting(1770).findings).toEqual([])
    expect(waiting(1770.5).findings).toMatchObject([{ code: 'begins-late', zone: 'b', value: 1800.5 }])
    const [much] = waiting(7170).findings
    expect(explainIrrigationFinding(much!).message).toMatch(/^zone b starts 120 min later/)
    const [end] = staggerZones([shot('a', 8, { runTime: seconds(7200) })], {
      ...pump,
      lastEnd: instant(midnight + 8 * 3600),
    }).findings
    expect(explainIrrigationFinding(end!).message).toMatch(/^zone a finishes 120 min after/)
  })
  it('are placed quickly: 3,200 shots', () => {
    const list = Array.from({ length: 3200 }, (_, i) =>
      shot(`z${i % 40}`, 6 + (i % 97) / 8, { runTime: seconds(60 + (i % 7)) }),
    )
    const start = performance.now()
    expect(staggerZones(list, { ...pump, maxFlow: litresPerHour(5000) }).shots).toHaveLength(3200)
    // 0.2 s alone; ten times as much where the machine is busy.
    expect(performance.now() - start).toBeLessThan(2000)
  })
})

describe('a shot that is sized', () => {
  const usual: SizeShotInput = {
    substrateVolume: litres(11.25),
    rise: waterContentChange(0.03),
    drainFraction: percent(15),
    emitterFlow: litresPerHour(2.1),
    emitters: 3,
  }
  it('tells a rise of 0.3 typed for 0.03', () => {
    const { findings, volume } = sizeShot({ ...usual, rise: waterContentChange(0.3), maxRunTime: minutes(60) })
    expect(volume).toBeCloseTo(3.97, 2)
    const [found] = findings
    expect(found).toMatchObject({ code: 'max-rise', level: 'danger', value: expect.closeTo(0.2, 9) })
    expect(explainIrrigationFinding(found as NonNullable<typeof found>).message).toMatch(/decimal point/)
    const meant = { ...usual, rise: waterContentChange(0.3), maxRise: waterContentChange(0.35) }
    expect(sizeShot(meant).findings).toEqual([])
  })
  it('does not open a valve for a day where nobody gave a longest run time', () => {
    const { runTime, boundBy } = sizeShot({ ...usual, substrateVolume: litres(300) })
    expect(runTime).toBe(3600)
    expect(boundBy).toBe('max-run-time')
  })
  it('carries its caution', () => expect(sizeShot(usual).caution).toMatch(/advice/))
})

describe('a balance of salts', () => {
  it('refuses an EC in microsiemens', () => {
    const day = { applied: litres(3.2), drained: litres(0.38), rootZoneWater: litres(7) }
    const call = (feed: number, drain: number) =>
      checkSaltBalance({ ...day, feedEC: feed as never, drainEC: drain as never, uptakeEC: fraction(0) as never })
    expectDomainError(() => call(2396, 4.9), { argument: 'feedEC', hint: expect.stringMatching(/µS/) })
    expectDomainError(() => call(2.4, 4900), { argument: 'drainEC' })
  })
})
