/** Settings as growers of four media have them, and each of their numbers in another unit. */
import {
  checkWateringSettings,
  type DrainFraction,
  fraction,
  hours,
  litres,
  litresPerHour,
  millilitres,
  minutes,
  percent,
  seconds,
  type WateringSettings,
  waterContent,
  waterContentChange,
} from 'porewater'
import { describe, expect, it } from 'vitest'

const drainFraction: DrainFraction = percent(20)
/** What no medium changes. */
const common = {
  maxReadingAge: minutes(15),
  maxUnchanged: hours(6),
  maxShotsWithoutRise: 4,
  allowedHours: [{ from: hours(7), to: hours(19) }],
  ahead: 7200,
  valveClosesByItself: true,
  inDoubt: 'timed-shots',
  probes: [{ name: 'a', offset: waterContentChange(0.02) }, { name: 'b' }],
  drainFraction,
  decideEvery: minutes(1),
} as const
const levels = (min: number, lower: number, upper: number, max: number) => ({
  ...{ minBelievable: waterContent(min), lower: waterContent(lower) },
  ...{ upper: waterContent(upper), maxBelievable: waterContent(max) },
})
const waits = (run: number, rest: number, lag: number) => ({
  ...{ maxRunTime: minutes(run), minRest: minutes(rest), probeLag: minutes(lag) },
})
const water = (medium: number, flow: number, shot: number, usual: number, most: number) => ({
  ...{ substrateVolume: litres(medium), flow: litresPerHour(flow), shot: litres(shot) },
  ...{ usualPerDay: litres(usual), maxPerDay: litres(most), backUpPerDay: litres(1.2 * usual) },
})

/** Common practice, no source: what a container of each holds, gets and uses on a bright day. */
const slab: WateringSettings = {
  ...common,
  ...levels(0.15, 0.62, 0.72, 0.92),
  ...water(6.8, 8, 0.25, 7, 14),
  ...waits(6, 10, 8),
}
const right: Readonly<Record<string, WateringSettings>> = {
  'a slab of mineral wool': slab,
  'a row of sixty slabs': { ...slab, ...water(408, 480, 15, 420, 840) },
  'a bag of coir': { ...common, ...levels(0.12, 0.5, 0.6, 0.85), ...water(12, 6, 0.35, 4.5, 9), ...waits(10, 15, 12) },
  'a pot of peat': { ...common, ...levels(0.08, 0.4, 0.55, 0.88), ...water(3, 2, 0.1, 0.8, 2), ...waits(6, 20, 15) },
  'a tub of bark': { ...common, ...levels(0.05, 0.28, 0.38, 0.7), ...water(25, 8, 0.6, 4, 9), ...waits(10, 20, 10) },
  'a block that drinks more than its volume': {
    ...common,
    ...levels(0.15, 0.6, 0.72, 0.92),
    ...water(0.65, 2, 0.03, 0.9, 2),
    ...waits(3, 10, 5),
  },
  'seedlings in a large pot': {
    ...common,
    ...levels(0.08, 0.4, 0.55, 0.88),
    ...water(10, 4, 0.05, 0.1, 0.3),
    ...waits(3, 60, 15),
  },
}
const codes = (settings: WateringSettings, change: Partial<WateringSettings> = {}) =>
  checkWateringSettings({ ...settings, ...change }).map(({ code, about }) => `${about}: ${code}`)

it.each(Object.entries(right))('%s has nothing to be told', (_, settings) => expect(codes(settings)).toEqual([]))

describe('a slip of one number is told', () => {
  it.each<[string, Partial<WateringSettings>, string]>([
    [
      'hours of the day in minutes',
      { allowedHours: [{ from: 420, to: 1140 } as never] },
      'allowedHours: hours-at-midnight',
    ],
    ['a beginning in hours', { allowedHours: [{ from: 7, to: 68400 } as never] }, 'allowedHours: hours-at-midnight'],
    ['an end in minutes', { allowedHours: [{ from: 25200, to: 1140 } as never] }, 'allowedHours: hours-at-midnight'],
    ['the local clock in hours', { ahead: 2 }, 'ahead: ahead-by-no-quarter'],
    ['the local clock in minutes', { ahead: 120 }, 'ahead: ahead-by-no-quarter'],
    [
      'a share of drain as a percent of a percent',
      { drainFraction: percent(0.2) },
      'drainFraction: drain-fraction-unusual',
    ],
    ['what stays for what drains', { drainFraction: percent(80) }, 'drainFraction: drain-fraction-unusual'],
    ['the age of a reading in minutes', { maxReadingAge: seconds(15) }, 'maxReadingAge: readings-too-old-at-once'],
    ['the time of a frozen probe in minutes', { maxUnchanged: seconds(360) }, 'maxUnchanged: frozen-told-at-once'],
    ['a rest in hours', { minRest: hours(10) }, 'usualPerDay: too-few-shots-for-use'],
    ['a lag in hours', { probeLag: hours(8) }, 'probeLag: shows-too-late'],
    ['decisions in hours', { decideEvery: seconds(1 / 60) }, 'decideEvery: pace-too-fast'],
    ['water by time for one plant of many', { backUpPerDay: litres(0.7) }, 'backUpPerDay: back-up-below-use'],
    [
      'an opening of an hour where minutes are meant',
      { flow: litresPerHour(80), maxRunTime: hours(1) },
      'maxRunTime: opening-beyond-day',
    ],
    [
      'the offset of a probe in air',
      { probes: [{ name: 'a', offset: waterContentChange(-0.3) }] },
      'probes: offset-large',
    ],
    [
      'a lower end of belief just below the band',
      { minBelievable: waterContent(0.6) },
      'minBelievable: disbelieves-near-band',
    ],
    [
      'an upper end of belief just above it',
      { maxBelievable: waterContent(0.75) },
      'maxBelievable: disbelieves-near-band',
    ],
    [
      'a probe that may miss more than a day of shots',
      { maxShotsWithoutRise: 48, shot: litres(0.3) },
      'maxShotsWithoutRise: unseen-shots-beyond-day',
    ],
  ])('%s', (_, change, told) => expect(codes(slab, change)).toContain(told))

  it('in the same way for one container and for sixty of them', () => {
    const times = { flow: litresPerHour(28800), shot: litres(15), maxRunTime: hours(2) }
    expect(codes(right['a row of sixty slabs']!, times)).toEqual(
      codes(slab, { flow: litresPerHour(480), shot: millilitres(250), maxRunTime: hours(2) }),
    )
  })
})

describe('what growers do on purpose is not told', () => {
  it.each<[string, Partial<WateringSettings>]>([
    [
      'hours until midnight, from it, and over it',
      {
        allowedHours: [
          { from: hours(0), to: hours(9) },
          { from: hours(20), to: hours(24) },
        ],
      },
    ],
    ['a clock that is ahead by three quarters of an hour more than five', { ahead: 20700 }],
    ['half of the water drains', { drainFraction: fraction(0.5) }],
    ['readings by the half hour', { maxReadingAge: hours(2) }],
    [
      'closed where nothing can be believed, with little water by time',
      { inDoubt: 'staying-closed', backUpPerDay: litres(0.7) },
    ],
  ])('%s', (_, change) => expect(codes(slab, change)).toEqual([]))
})

it('hours that overlap are counted once', () => {
  const twice = [
    { from: hours(6), to: hours(18) },
    { from: hours(5), to: hours(17) },
    { from: hours(22), to: hours(2) },
  ]
  expect(codes(slab, { allowedHours: twice })).toEqual([])
})
