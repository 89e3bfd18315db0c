import {
  type DayPlan,
  type DayPlanRequest,
  type DaySoFar,
  explainIrrigationFinding,
  fraction,
  hours,
  instant,
  litres,
  litresPerHour,
  minutes,
  type PlannedShot,
  percent,
  planDay,
  replanDay,
  seconds,
  waterContent,
  waterContentChange,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { expectDomainError, expectInputError } from '../support/refusals.js'

/**
 * An invented container whose day can be worked by hand: 10 L that lose 0.01 of water content in each step of an hour, full at 0.60,
 * watered again at 0.55, with one emitter of 4 L/h. What drains leaves within its step. Source: water balance, by hand.
 */
const hour = (h: number) => instant(h * 3600)
const small: DayPlanRequest = {
  start: hour(0),
  step: hours(1),
  demand: Array(24).fill(0.1),
  container: {
    substrateVolume: litres(10),
    containerCapacity: waterContent(0.6),
    minWaterContent: waterContent(0.1),
    bypass: fraction(0),
    drainLag: seconds(1),
  },
  waterContent: waterContent(0.57),
  refillPoint: waterContent(0.55),
  fullPoint: waterContent(0.6),
  drainFraction: percent(0),
  firstShot: hour(2),
  lastShot: hour(18),
  emitters: 1,
  emitterFlow: litresPerHour(4),
  lineFill: seconds(0),
  minRunTime: seconds(0),
  maxRunTime: hours(1),
  minRest: seconds(0),
  maxPerDay: litres(99),
  trigger: { by: 'level' },
}
const day = (more: Partial<DayPlanRequest> = {}) => planDay({ ...small, ...more })
const container = (more: Partial<DayPlanRequest['container']>) => ({ container: { ...small.container, ...more } })
const times = (plan: DayPlan) => plan.shots.map(({ time }) => time / 3600)
const volumes = (plan: DayPlan) => plan.shots.map(({ volume }) => Math.round(volume * 1e6) / 1e6)
const why = ({ reason, waterContent }: PlannedShot) => explainIrrigationFinding({ code: reason, waterContent }).message
const said = (plan: DayPlan) => plan.findings.map((found) => explainIrrigationFinding(found).message).join('\n')
const codes = (plan: DayPlan) => plan.findings.map(({ code }) => code)

describe('a day worked by hand', () => {
  it('has a rewet, a shot at the refill point every six hours, and a last one that ends the day full', () => {
    const plan = day()
    expect(times(plan)).toEqual([2, 8, 14, 18])
    expect(volumes(plan)).toEqual([0.6, 0.6, 0.6, 0.4])
    expect(plan.shots.map(why)).toEqual([
      'morning rewet from 55.0 %',
      '55.0 % is at the refill point',
      '55.0 % is at the refill point',
      'last shot of the day, from 57.0 %',
    ])
    expect(plan.shots[0]?.runTime).toBeCloseTo(540, 6)
    expect(plan.shots[0]?.perEmitter).toBeCloseTo(0.6, 9)
    expect(plan.time).toEqual(Array.from({ length: 24 }, (_, i) => (i + 1) * 3600))
    const content = [56, 55, 60, 59, 58, 57, 56, 55, 60, 59, 58, 57, 56, 55, 60, 59, 58, 57, 60, 59, 58, 57, 56, 55]
    plan.waterContent.forEach((got, i) => void expect(got).toBeCloseTo(content[i]! / 100, 9))
    expect(plan.applied).toBeCloseTo(2.2, 9)
    expect(plan.taken).toBeCloseTo(2.4, 9)
    expect(plan.drained).toBeCloseTo(0, 9)
    // From 60 % at 18 o'clock to the first shot of the next day at two.
    expect(plan.overnightDryDown).toBeCloseTo(0.07, 9)
    expect(plan.findings).toEqual([])
    expect(plan.caution).toMatch(/advice/)
  })
  it('keeps pauses to the second, and gives no shot after the plan ends', () => {
    // The first opening takes 540 s, so that the valve has rested for six hours at 8:09.
    expect(times(day({ minRest: hours(6) }))).toEqual([2, 9, 16])
    expect(times(day({ minRest: seconds(6 * 3600 - 540) }))).toEqual([2, 8, 14])
    expect(times(day({ minRest: seconds(4 * 3600 - 540) }))).toEqual([2, 8, 14, 18])
    expect(times(day({ minRest: seconds(4 * 3600 - 539) }))).toEqual([2, 8, 14])
    expect(times(day({ minRest: hours(6.9) }))).toEqual([2, 10, 18])
    expect(times(day({ lastShot: hour(30) }))).toEqual([2, 8, 14, 20, 23])
    expect(times(day({ firstShot: hour(-3), waterContent: waterContent(0.6) }))[0]).toBe(5)
  })
  it('goes on with the rewet until less than half of the band is missing, and then waits for the refill point', () => {
    const plan = day({ waterContent: waterContent(0.5), maxRunTime: seconds(270) })
    // 0.48 at two o'clock; each hour brings 0.03 and takes 0.01 until 0.575 is passed.
    expect(times(plan).slice(0, 7)).toEqual([2, 3, 4, 5, 6, 10, 13])
    expect(plan.shots.slice(0, 6).map((shot) => why(shot).slice(0, 13))).toEqual([
      ...Array(5).fill('morning rewet'),
      '55.0 % is at ',
    ])
  })
  it('rewets a container that was full at midnight and has dried since', () => {
    const plan = day({ waterContent: waterContent(0.6), firstShot: hour(4) })
    expect(plan.shots[0]).toMatchObject({
      time: hour(4),
      reason: 'morning-rewet',
      waterContent: expect.closeTo(0.56, 9),
    })
  })
  it('dries from its first hour where nothing is given', () => {
    const plan = day({ maxPerDay: litres(0) })
    expect(plan.shots).toEqual([])
    expect(plan).toMatchObject({ applied: 0, drained: 0, drainFraction: 0 })
    expect(plan.overnightDryDown).toBeCloseTo(0.56 - 0.31, 9)
  })
  it('gives a last shot only where as much is missing as the valve gives at least', () => {
    expect(times(day({ minRunTime: seconds(269) }))).toEqual([2, 8, 14, 18])
    expect(times(day({ minRunTime: seconds(271) }))).toEqual([2, 8, 14])
  })
  it('counts the filling of the line and no shot below the shortest run time', () => {
    const plan = day({ lineFill: seconds(30), maxPerDay: litres(1), minRunTime: seconds(390) })
    // 390 s less 30 s give exactly the 0.4 L that the day has left after the first shot.
    expect(volumes(plan)).toEqual([0.6, 0.4])
    expect(plan.shots.map(({ runTime }) => Math.round(runTime))).toEqual([570, 390])
    expect(volumes(day({ maxPerDay: litres(1), minRunTime: seconds(400) }))).toEqual([0.6])
  })
  it('lifts to a full point below capacity, where only what passes by drains, and not above', () => {
    const plan = day({
      ...container({ containerCapacity: waterContent(0.7), bypass: fraction(0.2) }),
      drainFraction: percent(50),
    })
    expect(volumes(plan)).toEqual([0.75, 0.75, 0.75, 0.5])
    expect(plan.waterContent[2]).toBeCloseTo(0.6, 9)
    expect(plan.drainFraction).toBeCloseTo(0.2, 9)
    expect(plan.shotDrainFraction).toBe(0.5)
    const [missed] = plan.findings
    expect(missed).toMatchObject({ code: 'less-drain-than-wanted', reached: expect.closeTo(0.2, 9), wanted: 0.5 })
    expect(said(plan)).toMatch(/^20\.0 % is expected to drain instead of 50\.0 %: .*below the container capacity/)
    expect(codes(plan)).toEqual(['less-drain-than-wanted'])
  })
  it('sizes shots for the drain of the day', () => {
    const plan = day({ drainFraction: percent(20) })
    expect(plan.shotDrainFraction).toBeCloseTo(0.2, 6)
    expect(plan.drainFraction).toBeCloseTo(0.2, 6)
    plan.shots.forEach(({ volume }, i) => void expect(volume).toBeCloseTo([0.75, 0.75, 0.75, 0.5][i]!, 6))
    expect(plan.findings).toEqual([])
  })
  it('counts the drain that is still on its way when the plan ends, however slow', () => {
    for (const lag of [1, 12, 24]) {
      const plan = day({ ...container({ drainLag: hours(lag) }), drainFraction: percent(20), lastShot: hour(23) })
      expect(plan.drainFraction).toBeCloseTo(0.2, 6)
      expect(plan.drained).toBeCloseTo(plan.applied - plan.taken - 10 * (plan.waterContent[23]! - 0.57), 9)
      expect(plan.drain.reduce((a, b) => a + b, 0)).toBeLessThan(plan.drained)
    }
  })
  it('follows set times, the first and the last allowed moment among them', () => {
    const clock = { by: 'clock', times: [1, 2, 10.5, 18, 19].map(hour) } as const
    expect(times(day({ trigger: clock }))).toEqual([2, 10, 18])
    expect(day({ trigger: clock }).shots[0]?.reason).toBe('set-time')
  })
  it('follows light to the last digit, and begins the next sum with what was over', () => {
    const light = (each: number, threshold: number) =>
      times(day({ trigger: { by: 'light', radiation: Array(24).fill(each), threshold } }))
    // Ten times 0.6 is a hair less than 6 in binary numbers.
    expect(light(0.6, 6)[0]).toBe(9)
    expect(light(30, 90)).toEqual([2, 5, 8, 11, 14, 17])
    // 40, 80, 120: 30 over; 70, 110: 20 over; 60, 100: 10 over; 50, 90: nothing over.
    expect(light(40, 90).slice(0, 5)).toEqual([2, 4, 6, 8, 11])
  })
})

describe('what a plan cannot reach', () => {
  it('is the refill point, where the valve gives too little: by how much', () => {
    // 0.05 L an hour from two o'clock to 18 o'clock against 0.1 L of use: 0.55 falls to 0.465.
    const plan = day({ maxRunTime: seconds(45) })
    expect(plan.findings[0]).toMatchObject({
      code: 'below-refill-point',
      reached: expect.closeTo(0.465, 9),
      wanted: 0.55,
    })
    expect(said(plan)).toMatch(/falls to 46\.5 %, below the refill point of 55\.0 %/)
    expect(codes(day({ maxRunTime: seconds(45), minRest: hours(1) }))).toContain('below-refill-point')
  })
  it('is not the refill point before the first shots have filled a container that has dried overnight', () => {
    // 0.38 at two o'clock, then 0.04 more each hour: 0.42, 0.46, 0.50, 0.54.
    const dry = { waterContent: waterContent(0.4), maxRunTime: seconds(450) }
    // An opening of 450 s and its rest take part of an hour twice, so that the third hour is the first to be judged.
    expect(day(dry).findings[0]).toMatchObject({ reached: expect.closeTo(0.5, 9) })
    expect(codes(day({ ...dry, minRest: seconds(3150) }))).toEqual([])
  })
  it('is the drain, because of the longest run time, or because more passes by than is wanted', () => {
    const short = day({ drainFraction: percent(20), maxRunTime: seconds(540) })
    expect(short.shotDrainFraction).toBe(0.9)
    expect(said(short)).toMatch(/longest run time/)
    const past = day({ ...container({ bypass: fraction(0.3) }), drainFraction: percent(10) })
    expect(past.shotDrainFraction).toBe(0)
    expect(past.findings).toMatchObject([
      { code: 'more-drain-than-wanted', reached: expect.closeTo(0.3, 9), wanted: 0.1 },
    ])
    expect(said(past)).toMatch(/^30\.0 % is expected to drain instead of 10\.0 %: bypass/)
    expect(codes(day({ drainFraction: percent(20), maxPerDay: litres(0) }))).not.toContain('less-drain-than-wanted')
  })
  it('is more water than a day allows', () => {
    const used = day({ maxPerDay: litres(1) })
    expect(volumes(used)).toEqual([0.6, 0.4])
    expect(used.findings.at(-1)).toMatchObject({ code: 'daily-limit-reached', reached: expect.closeTo(1, 9) })
    expect(said(used)).toMatch(/uses 1 L of the daily limit of 1 L/)
    // 0.02 L are left, too little for the valve and under 2 % of the day.
    expect(codes(day({ maxPerDay: litres(1.22), minRunTime: minutes(1) }))).toContain('daily-limit-reached')
    // 0.03 L are 2.4 %.
    expect(codes(day({ maxPerDay: litres(1.23), minRunTime: minutes(1) }))).not.toContain('daily-limit-reached')
    expect(codes(day({ maxPerDay: litres(2.24) }))).not.toContain('daily-limit-reached')
  })
  it('is the dry-down, where nobody may water later or the plants take less', () => {
    const dryDown = (change: number, more: Partial<DayPlanRequest> = {}) =>
      day({ overnightDryDown: waterContentChange(change), ...more })
    expect(dryDown(0.07).findings).toEqual([])
    const more = dryDown(0.03)
    expect(more.findings).toMatchObject([{ code: 'more-dry-down-than-wanted', reached: expect.closeTo(0.07, 9) }])
    expect(said(more)).toMatch(/dry down by 7\.0 % before the first shot of the next day instead of 3\.0 %/)
    const less = dryDown(0.15, container({ minWaterContent: waterContent(0.5) }))
    expect(less.findings.map(({ code }) => code)).toEqual(['less-dry-down-than-wanted', 'runs-dry'])
    expect(less.findings[0]?.reached).toBeCloseTo(0.1, 9)
    expect(said(less)).toMatch(/\(50\.0 %\)/)
    // A peak before the first shot is not where the night begins.
    const wet = { ...container({ containerCapacity: waterContent(0.7) }), waterContent: waterContent(0.65) }
    expect(dryDown(0.07, wet).overnightDryDown).toBeCloseTo(0.07, 9)
    expect(dryDown(0.07, wet).findings).toEqual([])
  })
  it('begins the dry-down with the step in which it can still be had, down to the very first', () => {
    const last = (change: number, more: Partial<DayPlanRequest> = {}) =>
      day({ overnightDryDown: waterContentChange(change), ...more })
    for (const steps of [7, 8, 11, 14, 23]) {
      const plan = last(steps / 100)
      expect(plan.overnightDryDown).toBeCloseTo(steps / 100, 9)
      expect(times(plan).at(-1)).toBe(25 - steps)
      expect(codes(plan)).not.toContain('no-time-to-water')
    }
    expect(times(last(0.23, { firstShot: hour(0) }))).toEqual([0])
    expect(last(0.24, { firstShot: hour(0) }).shots).toEqual([])
    expect(codes(last(0.24, { firstShot: hour(0) }))).toEqual(['no-time-to-water'])
    expect(codes(last(0.24))).toEqual(['no-time-to-water'])
    expect(last(0.24).findings[0]).toMatchObject({ because: 'dry-down' })
  })
  it('is refused where it has no meaning', () => {
    expectDomainError(() => day({ overnightDryDown: waterContentChange(-0.01) }), { argument: 'overnightDryDown' })
    const radiation = [...Array(23).fill(1), Number.NaN]
    expectDomainError(() => day({ trigger: { by: 'light', radiation, threshold: 10 } }), {
      argument: 'radiation',
    })
    expect(() => day({ minRunTime: minutes(9), maxRunTime: minutes(9) })).not.toThrow()
  })
  it('is light in J/m²: a shot in every step, or none all day', () => {
    const light = (each: number, threshold: number) => () =>
      day({ trigger: { by: 'light', radiation: Array(24).fill(each), threshold } })
    expectDomainError(light(300_000, 90), { argument: 'radiation', unit: 'J/cm²', max: 540 })
    expectDomainError(light(30, 900_000), { argument: 'threshold', unit: 'J/cm²', max: 5000 })
    expectDomainError(light(30, 0.9), { argument: 'threshold', min: 5 })
    expect(light(540, 5000)).not.toThrow()
  })
  it('is light in kJ/m², ten times too much, in steps of five minutes', () => {
    const light = (each: number) => () =>
      day({
        step: minutes(5),
        demand: Array(288).fill(0.02),
        trigger: { by: 'light', radiation: Array(288).fill(each), threshold: 90 },
      })
    // A summer noon of 900 W/m² is 27 J/cm² in five minutes, and the sun above the air 41.
    expect(light(27)).not.toThrow()
    expect(light(41)).not.toThrow()
    expectDomainError(light(270), { argument: 'radiation', value: 270, unit: 'J/cm²', max: 46.5 })
    expect(light(270)).toThrow('radiation is 270 J/cm², outside [0, 46.5]: give J/cm²')
  })
  it('is no light of 1800 W/m², as edges of clouds bring it for seconds, in steps of a minute and less', () => {
    const light = (step: number, each: number) => () =>
      day({
        step: seconds(step),
        demand: Array(86400 / step).fill(0.001),
        trigger: { by: 'light', radiation: Array(86400 / step).fill(each), threshold: 90 },
      })
    expect(light(30, 5.4)).not.toThrow()
    expect(light(60, 10.2)).not.toThrow()
    expectDomainError(light(60, 54), { argument: 'radiation', max: 10.5 })
    expectDomainError(light(600, 108), { argument: 'radiation', max: 91.5 })
  })
})

describe('what is doubted in a day worked by hand', () => {
  const again = (soFar: Partial<DaySoFar>, more: Partial<DayPlanRequest> = {}) => {
    const request = { ...small, ...more }
    return codes(replanDay(request, planDay(request), { now: hour(2), given: [], ...soFar }))
  }
  it('is a demand of more than the container holds in a day, counted over the days of the plan', () => {
    const demand = (last: number) => codes(day({ demand: [...Array(39).fill(0.5), last, ...Array(8).fill(0)] }))
    // 20 L in two days out of 10 L.
    expect(demand(0.5)).not.toContain('unusual-demand')
    expect(demand(0.501)).toContain('unusual-demand')
  })
  it('is a measured content below what twice the use leaves, or above what the shots bring, by more than the scatter', () => {
    // From 0.57, two hours take 0.02, so that sound plants leave 0.53 at least; a sound probe may read 0.03 less.
    expect(again({ waterContent: waterContent(0.505) })).not.toContain('measured-content-doubted')
    expect(again({ waterContent: waterContent(0.495) })).toContain('measured-content-doubted')
    const dry = { waterContent: waterContent(0.5) }
    expect(again({ waterContent: waterContent(0.525) }, dry)).not.toContain('measured-content-doubted')
    expect(again({ waterContent: waterContent(0.535) }, dry)).toContain('measured-content-doubted')
  })
  it('is a shot of more than a tenth above what the valve gives in its longest time', () => {
    const given = (volume: number) =>
      again({ given: [{ time: hour(1), volume: litres(volume) }] }, { maxRunTime: minutes(6) })
    // 0.4 L in six minutes.
    expect(given(0.435)).not.toContain('given-more-than-allowed')
    expect(given(0.445)).toContain('given-more-than-allowed')
  })
})

describe('a day worked by hand, planned again', () => {
  const request = { ...small, drainFraction: percent(20) } as DayPlanRequest
  it('makes up for drain that did not come', () => {
    const plan = planDay(request)
    const given = [{ time: hour(2), volume: litres(0.6) }]
    const again = replanDay(request, plan, { now: hour(3), given })
    expect(again.drain[2]).toBeCloseTo(0, 9)
    expect(again.drainFraction).toBeCloseTo(0.2, 6)
    expect(again.shotDrainFraction).toBeGreaterThan(0.25)
    expect(again.shots[0]).toMatchObject({ volume: 0.6, reason: 'given' })
  })
  it('can be planned from its first moment to its last, and not beyond', () => {
    const plan = planDay(request)
    expect(replanDay(request, plan, { now: hour(24), given: plan.shots }).waterContent).toEqual(plan.waterContent)
    expect(replanDay(request, plan, { now: hour(0), given: [] }).waterContent).toEqual(plan.waterContent)
    expectInputError(() => replanDay(request, plan, { now: hour(-1), given: [] }), 'soFar.now')
    expectInputError(() => replanDay(request, plan, { now: hour(25), given: [] }), 'soFar.now')
  })
})
