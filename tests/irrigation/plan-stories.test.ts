import {
  type DayPlan,
  type DayPlanRequest,
  type DaySoFar,
  explainIrrigationFinding,
  hours,
  instant,
  litres,
  minutes,
  planDay,
  replanDay,
  seconds,
  waterContent,
  waterContentChange,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { bagDay, light, midnight } from '../../docs/tools/bag-day.js'
import { expectDomainError, expectInputError } from '../support/refusals.js'

/** Stories of plans that were once made on lies. The bench is invented: bags of 14 L, full at 62 %, refilled at 59 %. */
const at = (h: number, m = 0) => instant(midnight + h * 3600 + m * 60)
const day = (more: Partial<DayPlanRequest> = {}) => planDay({ ...bagDay, ...more })
const codes = (plan: DayPlan) => plan.findings.map(({ code }) => code)
const clock = (...times: number[]): DayPlanRequest['trigger'] => ({ by: 'clock', times: times.map((h) => at(h)) })
const laterThan = (plan: DayPlan, time: number) => plan.shots.filter((shot) => shot.time > time)
const sum = (shots: DayPlan['shots']) => shots.reduce((total, { volume }) => total + volume, 0)

describe('a plan that doubts', () => {
  it('is not made anew from a shot or a plan that was torn on the way', () => {
    const now = at(12)
    expectInputError(() => replanDay(bagDay, day(), { now, given: [null as never] }), 'soFar.given')
    expectInputError(() => replanDay(bagDay, { ...day(), time: null as never }, { now, given: [] }), 'plan.time')
  })
  it('never opens a valve that is open: 07:00, 07:05 and 07:10 with 900 s each', () => {
    const trigger = { by: 'clock', times: [at(7), at(7, 5), at(7, 10), at(7, 30)] } as const
    const plan = day({
      step: minutes(5),
      demand: new Array(288).fill(0.012),
      waterContent: waterContent(0.45),
      minRest: seconds(0),
      trigger,
    })
    plan.shots.forEach((shot, i) => {
      const before = plan.shots[i - 1]
      if (before !== undefined) expect(shot.time).toBeGreaterThanOrEqual(before.time + before.runTime)
    })
    expect(plan.shots.map(({ time }) => time)).toEqual([at(7), at(7, 30)])
    expect(plan.findings.filter(({ code }) => code === 'set-time-dropped')).toMatchObject([
      { time: at(7, 5), because: 'rest' },
      { time: at(7, 10), because: 'rest' },
    ])
  })
  it('has a largest shot: the morning rewet comes in parts with rests between them', () => {
    const plan = day({ waterContent: waterContent(0.5), maxRunTime: hours(1), maxPerShot: litres(0.4) })
    const rewet = plan.shots.filter(({ reason }) => reason === 'morning-rewet')
    expect(rewet.length).toBeGreaterThan(2)
    for (const { volume } of plan.shots) expect(volume).toBeLessThanOrEqual(0.4 + 1e-9)
    const whole = day({ waterContent: waterContent(0.3), maxRunTime: hours(1) })
    expect(whole.findings).toContainEqual(expect.objectContaining({ code: 'large-shot', about: 'maxPerShot' }))
    expectInputError(() => day({ minRunTime: minutes(10), maxPerShot: litres(0.2) }), 'minRunTime')
  })
  it('plans no shot on a water content of 0.9 where the capacity is 0.6', () => {
    const plan = day({ waterContent: waterContent(0.9), trigger: clock(8, 12) })
    expect(plan.shots).toEqual([])
    expect(plan.findings).toMatchObject([
      { code: 'impossible-water-content', level: 'danger', reached: 0.9, wanted: 0.62, because: 'above-capacity' },
    ])
    expect(plan.drainFraction).toBe(0)
  })
  it('plans no shot on a probe that fell to 0.0, or below what plants can use', () => {
    for (const low of [0, 0.05, 0.12]) {
      const plan = day({ waterContent: waterContent(low) })
      expect(plan.shots).toEqual([])
      expect(plan.findings).toMatchObject([{ code: 'impossible-water-content', level: 'danger' }])
    }
    const nothing = day({
      container: { ...bagDay.container, minWaterContent: waterContent(0) },
      waterContent: waterContent(0),
    })
    expect(nothing.shots).toEqual([])
  })
  it('says never that 182 % should drain: what a container loses anyway is not the drain of its shots', () => {
    const plan = day({ waterContent: waterContent(0.7), maxPerDay: litres(1) })
    expect(codes(plan)).toContain('water-content-above-capacity')
    expect(plan.drainFraction).toBeLessThanOrEqual(1)
    expect(plan.drained).toBeGreaterThan(1)
  })
  it('does not blame a dry-down that nobody asked for', () => {
    const plan = day({ firstShot: at(30), lastShot: at(31) })
    expect(plan.findings).toContainEqual({
      code: 'no-time-to-water',
      level: 'danger',
      about: 'lastShot',
      because: 'hours',
    })
    for (const found of plan.findings) expect(explainIrrigationFinding(found).message).not.toMatch(/dry-down/)
  })
  it('tells each set time that it drops: outside the hours, outside the plan, after the dry-down has begun', () => {
    const plan = day({ trigger: clock(5, 9, 20, 25), overnightDryDown: waterContentChange(0) })
    expect(plan.shots.map(({ time }) => time)).toEqual([at(9)])
    expect(plan.findings.filter(({ code }) => code === 'set-time-dropped')).toMatchObject([
      { time: at(25), because: 'outside-plan' },
      { time: at(5), because: 'hours' },
      { time: at(20), because: 'hours' },
    ])
    const early = day({ trigger: clock(9, 17), overnightDryDown: waterContentChange(0.12) })
    expect(early.findings).toContainEqual(expect.objectContaining({ time: at(17), because: 'dry-down' }))
    const spent = day({ trigger: clock(9, 12, 15), maxPerDay: litres(0.5), waterContent: waterContent(0.58) })
    expect(spent.findings).toContainEqual(expect.objectContaining({ time: at(15), because: 'day-limit' }))
  })
  it('judges the night until the first shot of the next day, not until midnight', () => {
    const plan = day({ overnightDryDown: waterContentChange(0.09), minRunTime: seconds(9), minRest: seconds(0) })
    // The store loses by midnight what the plants take until then, and by seven what they take in the morning's seven hours.
    const last = Math.round(((plan.shots.at(-1)?.time as number) - midnight) / 600)
    let use = 0
    for (let i = last + 1; i < 144 + 42; i++) use += bagDay.demand[i % 144]!
    expect(plan.overnightDryDown).toBeCloseTo(use / 14, 6)
    expect(plan.overnightDryDown).toBeCloseTo(0.09, 2)
    const short = day({ demand: Array.from(bagDay.demand).slice(0, 120), overnightDryDown: waterContentChange(0.02) })
    expect(codes(short)).toContain('night-not-planned')
  })
  it('refuses a lowest content at or above the refill point, and times in milliseconds', () => {
    const dry = { ...bagDay.container, minWaterContent: waterContent(0.59) }
    expectInputError(() => day({ container: dry }), 'minWaterContent')
    for (const time of ['start', 'firstShot', 'lastShot'] as const)
      expectDomainError(() => day({ [time]: bagDay[time]! * 1000 }), { argument: time })
    const late = { by: 'clock', times: [at(8) * 1000] } as unknown as DayPlanRequest['trigger']
    expectDomainError(() => day({ trigger: late }))
    // A refusal names the numbers that were given, not those with the room for rounding.
    expect(() => day({ fullPoint: waterContent(0.7) })).toThrow('fullPoint: 0.7 is not below containerCapacity, 0.62;')
  })
  it("refuses a trigger by 'lihgt' instead of watering by level", () => {
    const wrong = { by: 'lihgt', radiation: light, threshold: 100 } as unknown as DayPlanRequest['trigger']
    expectInputError(() => day({ trigger: wrong }), 'trigger.by')
    expectInputError(() => day({ trigger: undefined as never }), 'trigger.by')
  })
  it('is dangerous where the demand is in millilitres', () => {
    const plan = day({ demand: Array.from(bagDay.demand).map((step) => step * 1000) })
    expect(plan.findings).toContainEqual(expect.objectContaining({ code: 'unusual-demand', level: 'danger' }))
  })
  it('by a light sensor that is dead gives no water: a danger that says where to look, and not more emitters', () => {
    const dark = { by: 'light', radiation: light.map(() => 0), threshold: 100 } as const
    for (const plan of [day({ trigger: dark }), day({ trigger: clock() }), day({ maxPerDay: litres(0.1) })]) {
      const [dry] = plan.findings.filter(({ code }) => code === 'below-refill-point')
      expect([plan.shots.length, dry?.level]).toEqual([0, 'danger'])
      expect(explainIrrigationFinding(dry!).message).toMatch(
        /light sensor, threshold, set times.*limits per shot and per day/,
      )
    }
  })
  it('with a rest of five hours is dry between its shots, and says so', () => {
    const plan = day({ minRest: hours(5) })
    expect(Math.min(...plan.waterContent.slice(60, 108))).toBeLessThan(0.56)
    expect(codes(plan)).toContain('below-refill-point')
  })
  it('carries its caution, whatever it plans', () => {
    for (const plan of [day(), day({ waterContent: waterContent(0.9) })]) expect(plan.caution).toMatch(/advice/)
  })
})

describe('a plan made again', () => {
  const plan = day()
  const first = plan.shots[1]!
  const replan = (soFar: Partial<DaySoFar> & Pick<DaySoFar, 'now'>) => replanDay(bagDay, plan, { given: [], ...soFar })

  it('does not give the 11:00 shot again at 11:04', () => {
    const begun = plan.shots.filter(({ time }) => time <= first.time)
    const now = instant(first.time + 240)
    const again = replan({ now, given: begun })
    expect(again.shots.filter(({ time }) => time <= now)).toHaveLength(begun.length)
    const next = laterThan(again, now)[0]!
    expect(next.time).toBeGreaterThanOrEqual(first.time + first.runTime + bagDay.minRest)
    expect(again.shots.map(({ time }) => time)).toEqual(plan.shots.map(({ time }) => time))
    expect(again.applied).toBeCloseTo(plan.applied, 9)
    // At the very second of its opening, too.
    const same = replan({ now: first.time, given: begun })
    expect(same.shots.filter(({ time }) => time <= first.time)).toHaveLength(begun.length)
  })
  it('waits for a shot that runs just now to end and for the valve to rest', () => {
    const given = [{ time: at(10, 58), volume: litres(0.9), runTime: minutes(15) }]
    const again = replan({ now: at(11, 4), given, waterContent: waterContent(0.55) })
    expect(laterThan(again, at(11, 4))[0]!.time).toBeGreaterThanOrEqual(at(11, 28))
  })
  it('refuses shots with times in milliseconds, outside the plan, or in the future', () => {
    const shot = (time: number) => [{ time: time as typeof bagDay.start, volume: litres(0.3) }]
    expectDomainError(() => replan({ now: at(12), given: shot(at(9) * 1000) }))
    expectInputError(() => replan({ now: at(12), given: shot(at(-1)) }), 'soFar.given')
    expectInputError(() => replan({ now: at(12), given: shot(at(13)) }), 'soFar.given')
    expectInputError(() => replan({ now: instant(at(12) / 1000) }), 'soFar.now')
  })
  it('counts everything that was given, a shot beside the plan among it', () => {
    const given = [...plan.shots.filter(({ time }) => time < at(12)), { time: at(11, 37), volume: litres(0.45) }]
    const again = replan({ now: at(12), given })
    expect(sum(again.shots)).toBeCloseTo(again.applied, 9)
    expect(sum(again.shots.filter(({ reason }) => reason === 'given'))).toBeCloseTo(
      given.reduce((total, { volume }) => total + volume, 0),
      9,
    )
    expect(again.applied).toBeLessThanOrEqual(bagDay.maxPerDay + 1e-9)
  })
  it('tells a shot of which the message came twice, for it counts twice', () => {
    const given = plan.shots.filter(({ time }) => time < at(12))
    const again = replan({ now: at(12), given: [...given, given[1]!] })
    const twice = again.findings.filter(({ code }) => code === 'given-twice')
    expect(twice).toMatchObject([{ time: given[1]!.time, reached: given[1]!.volume }])
    expect(explainIrrigationFinding(twice[0]!).message).toMatch(/both count: leave one out/)
    expect(codes(replan({ now: at(12), given }))).not.toContain('given-twice')
  })
  it('tells a message that came again a second later, while the valve was open', () => {
    const given = plan.shots.filter(({ time }) => time < at(12))
    const again = (later: number) => {
      const second = { ...given[1]!, time: instant(given[1]!.time + later) }
      return codes(replan({ now: at(12), given: [...given, second] })).filter((code) => code === 'given-twice')
    }
    expect(again(1)).toEqual(['given-twice'])
    expect(again(given[1]!.runTime * 0.6)).toEqual([])
  })
  it('tells shots in cubic metres, or with minutes for seconds: what they gave had been watered again', () => {
    const given = plan.shots.filter(({ time }) => time < at(12))
    const told = (volume: number, runTime: number) => {
      const shots = given.map((shot) => ({
        ...shot,
        volume: litres(shot.volume * volume),
        runTime: seconds(shot.runTime * runTime),
      }))
      return replan({ now: at(12), given: shots }).findings.filter(({ code }) => code === 'given-unlike-run-time')
    }
    expect(told(1, 1)).toEqual([])
    expect(told(0.6, 1)).toEqual([])
    for (const [volume, runTime] of [
      [0.001, 1],
      [1, 1 / 60],
      [1, 60],
      [0, 1],
    ] as const)
      expect(told(volume, runTime).length).toBe(given.length)
    expect(explainIrrigationFinding(told(0.001, 1)[0]!).message).toMatch(
      /in which the emitters give [\d.]+ L: check that/,
    )
    const byHand = { time: at(11), volume: litres(1), runTime: seconds(0) }
    expect(codes(replan({ now: at(12), given: [...given, byHand] }))).not.toContain('given-unlike-run-time')
  })
  it('tells hours of the day that were given for moments', () => {
    const message = (more: Partial<DayPlanRequest>, code: string) =>
      day(more)
        .findings.filter((found) => found.code === code)
        .map((found) => explainIrrigationFinding(found).message)[0]
    const hoursOfDay = { firstShot: instant(7), lastShot: instant(18) }
    expect(message(hoursOfDay, 'no-time-to-water')).toMatch(/in seconds since 1970, not as hours of the day$/)
    expect(message({ trigger: { by: 'clock', times: [instant(8)] } }, 'set-time-dropped')).toMatch(
      /not hours of the day/,
    )
  })
  it('doubts a measured 5 % at noon: no six large shots, and no advice of longer ones', () => {
    const given = plan.shots.filter(({ time }) => time < at(12))
    const again = replan({ now: at(12), given, waterContent: waterContent(0.05) })
    expect(again.findings).toMatchObject([{ code: 'measured-content-doubted', reached: 0.05 }])
    expect(again.applied).toBeCloseTo(plan.applied, 6)
    expect(again.shots).toHaveLength(plan.shots.length)
  })
  it('plans nothing more on a measured 90 %', () => {
    const given = plan.shots.filter(({ time }) => time < at(12))
    const again = replan({ now: at(12), given, waterContent: waterContent(0.9) })
    expect(laterThan(again, at(12))).toEqual([])
    expect(again.findings).toMatchObject([
      { code: 'impossible-water-content', level: 'danger', about: 'soFar.waterContent' },
    ])
  })
  it('refuses millilitres for litres, and tells a shot larger than the valve gives', () => {
    expectInputError(() => replan({ now: at(12), given: [{ time: at(9), volume: litres(300) }] }), 'soFar.given')
    const much = replan({ now: at(12), given: [{ time: at(9), volume: litres(3) }] })
    expect(much.findings).toContainEqual(expect.objectContaining({ code: 'given-more-than-allowed', time: at(9) }))
  })
  it('refuses the plan of another day', () => {
    const other = { ...plan, time: plan.time.map((time) => time - 86400) }
    expectInputError(() => replanDay(bagDay, other, { now: at(12), given: [] }), 'plan')
  })
})

describe('what no plan takes', () => {
  const wrong: unknown[] = ['0.6', null, Number.NaN, Number.POSITIVE_INFINITY, true, {}, [0.6]]
  const names = Object.keys(bagDay).filter((name) => !['container', 'demand', 'trigger'].includes(name))
  it.each(names)('%s as text, null, NaN, infinity, a boolean or an object', (name) => {
    for (const value of wrong) expect(() => planDay({ ...bagDay, [name]: value })).toThrow(/outside|is not/)
  })
  it.each(['substrateVolume', 'containerCapacity', 'minWaterContent', 'bypass', 'drainLag'])(
    'container.%s likewise',
    (name) => {
      for (const value of wrong)
        expect(() => planDay({ ...bagDay, container: { ...bagDay.container, [name]: value } })).toThrow(
          /outside|is not/,
        )
    },
  )
  it('no demand, an empty one, one of text, and lists that are none', () => {
    for (const demand of [null, undefined, [], '0.02', ['0.02'], [null], {}])
      expect(() => planDay({ ...bagDay, demand: demand as never })).toThrow(/demand/)
    for (const times of [null, undefined, 'noon', at(12)])
      expectInputError(() => day({ trigger: { by: 'clock', times: times as never } }), 'trigger.times')
    for (const given of [null, undefined, {}, 'none'])
      expectInputError(() => replanDay(bagDay, day(), { now: at(12), given: given as never }), 'soFar.given')
  })
})
