import fc from 'fast-check'
import {
  checkWateringSettings,
  explainControlFinding,
  fraction,
  hours,
  InputError,
  litres,
  litresPerHour,
  minutes,
  percent,
  seconds,
  type WateringSettings,
  waterContent,
  waterContentChange,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { settings } from './watering/zone.js'

/** An invented zone that leaves nothing open. */
const whole: WateringSettings = {
  ...settings,
  upper: waterContent(0.56),
  flow: litresPerHour(6),
  probes: [{ name: 'row 2' }, { name: 'row 5' }],
  drainFraction: percent(20),
  decideEvery: minutes(1),
}
const codes = (change: Partial<WateringSettings>) =>
  checkWateringSettings({ ...whole, ...change }).map(({ code, about }) => `${about}: ${code}`)
const without = (name: keyof WateringSettings) => {
  const { [name]: _, ...rest } = whole
  return checkWateringSettings(rest as WateringSettings).map(({ code }) => code)
}

describe('settings that leave nothing open', () => {
  it('have no finding', () => expect(codes({})).toEqual([]))
})

describe('a guard that is left out is told', () => {
  it('where no share is to drain, nothing asks at an even pace, or one probe decides', () => {
    expect(without('drainFraction')).toEqual(['no-drain-fraction'])
    expect(without('decideEvery')).toEqual(['pace-unknown'])
    expect(without('probes')).toEqual(['one-probe'])
  })
  it('where a zone is never filled until it drains', () => {
    expect(codes({ drainFraction: fraction(0), refillEvery: 'never' })).toEqual([
      'drainFraction: no-drain-fraction',
      'refillEvery: never-filled',
    ])
  })
  it('where the valve stays open when nothing more comes, and where the night has no guard', () => {
    expect(codes({ valveClosesByItself: false })).toEqual(['valveClosesByItself: valve-needs-decisions'])
    expect(codes({ allowedHours: [{ from: hours(0), to: hours(24) }] })).toEqual(['allowedHours: day-and-night'])
  })
  it('where the reading of a probe in air or in water would be believed', () => {
    expect(codes({ minBelievable: waterContent(0) })).toEqual(['minBelievable: believes-nearly-everything'])
    expect(codes({ maxBelievable: waterContent(1) })).toEqual(['maxBelievable: believes-nearly-everything'])
  })
  it('where two probes are always in dispute, or never', () => {
    expect(codes({ maxDisagreement: waterContentChange(0.01) })).toEqual(['maxDisagreement: probes-disagree-at-once'])
    expect(codes({ maxDisagreement: waterContentChange(0.3) })).toEqual(['maxDisagreement: probes-never-disagree'])
  })
  it('where doubt comes late or never', () => {
    expect(codes({ maxReadingAge: hours(3) })).toEqual(['maxReadingAge: old-readings-decide'])
    expect(codes({ maxUnchanged: hours(25) })).toEqual(['maxUnchanged: frozen-told-late'])
    expect(codes({ probeLag: seconds(0) })).toEqual(['probeLag: shows-at-once'])
  })
})

describe('a number in another unit is told', () => {
  it.each<[string, Partial<WateringSettings>, string[]]>([
    [
      'a flow in litres a minute for one in litres an hour',
      { flow: litresPerHour(360) },
      ['flow: opening-very-short', 'maxRunTime: opening-beyond-day'],
    ],
    [
      'a flow of the whole line for one container',
      { flow: litresPerHour(80) },
      ['flow: opening-very-short', 'maxRunTime: opening-beyond-day'],
    ],
    ['the volume of the medium in decilitres', { substrateVolume: litres(100) }, ['shot: shot-too-small-to-show']],
    [
      'the volume of one slab for that of a row',
      { substrateVolume: litres(0.8) },
      ['shot: shot-beyond-band', 'usualPerDay: use-unlike-medium'],
    ],
    [
      'the use of one plant for that of a row',
      { substrateVolume: litres(2000), shot: litres(1), flow: litresPerHour(30) },
      ['shot: shot-too-small-to-show', 'usualPerDay: use-unlike-medium'],
    ],
    ['a limit of the day in another unit', { maxPerDay: litres(4000) }, ['maxPerDay: limit-far-above-use']],
    [
      'limits in fractions of a percent',
      { upper: waterContent(0.505) },
      ['upper: band-within-noise', 'shot: shot-beyond-band'],
    ],
  ])('%s', (_, change, told) => expect(codes(change)).toEqual(told))
})

describe('what is compared stands in the finding', () => {
  it('with its unit, and in the sentence', () => {
    const [found] = checkWateringSettings({ ...whole, upper: waterContent(0.51) })
    expect(found).toMatchObject({ code: 'shot-beyond-band', level: 'caution', about: 'shot', unit: 'm³/m³' })
    expect(found!.value).toBeCloseTo(0.02, 12)
    expect(found!.limit).toBeCloseTo(0.01, 12)
    expect(explainControlFinding(found!).message).toContain('(2 %, compared with 1 %)')
  })
  it('at an end nothing is told', () => {
    expect(codes({ shot: litres(0.6), maxRunTime: minutes(10) })).toEqual([])
    expect(codes({ maxPerDay: litres(6) })).toEqual([])
    expect(codes({ flow: litresPerHour(72), maxRunTime: seconds(200) })).toEqual([])
  })
})

describe('a whole zone in other units of volume', () => {
  it('is doubted alike: every volume and the flow times the same number', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 100, noNaN: true }),
        fc.double({ min: 0.02, max: 1.5, noNaN: true }),
        fc.double({ min: 5, max: 400, noNaN: true }),
        (times, shot, flow) => {
          const run = (shot / flow) * 3600
          fc.pre(run < 1800)
          const of = (scale: number) =>
            codes({
              shot: litres(shot * scale),
              flow: litresPerHour(flow * scale),
              substrateVolume: litres(10 * scale),
              maxPerDay: litres(4 * scale),
              usualPerDay: litres(2 * scale),
              maxRunTime: minutes(30),
            })
          expect(of(times)).toEqual(of(1))
        },
      ),
    )
  })
})

describe('settings that contradict themselves', () => {
  it('are refused as they are by what waters', () => {
    expect(() => codes({ shot: litres(20) })).toThrow(InputError)
    expect(() => checkWateringSettings(null as never)).toThrow(expect.objectContaining({ code: 'bad-input' }))
    expect(() => codes({ lowr: waterContent(0.4) } as never)).toThrow(/lower/)
  })
})
