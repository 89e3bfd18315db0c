import {
  alarmLifeCycle,
  announceAlarms,
  controlWatering,
  deadBand,
  hours,
  instant,
  litres,
  litresPerHour,
  millilitres,
  minutes,
  percent,
  planDay,
  planRecovery,
  proposeDay,
  rehearsalScenario,
  rehearse,
  rehearsedWatering,
  replanDay,
  staggerZones,
  watchZone,
  waterContent,
  zoneAlarms,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { bagDay, midnight } from '../../docs/tools/bag-day.js'
import { settings } from '../control/watering/zone.js'
import { expectInputError } from '../support/refusals.js'

type Settings = Readonly<Record<string, unknown>>
const { lower, upper, minBelievable, maxBelievable, substrateVolume, flow } = settings
const watch = { probes: ['A'], substrateVolume, flow, minBelievable, maxBelievable, fullPoint: waterContent(0.74) }
const recovery = {
  waterContent: waterContent(0.4),
  fullPoint: waterContent(0.6),
  substrateVolume: litres(4),
  drainFraction: percent(10),
  maxPerShot: millilitres(120),
  minPeriod: minutes(5),
  maxTotal: litres(3),
  clockChecked: true,
}
const scenario = rehearsalScenario('coir-dust')
const rehearsal = { ...scenario, controller: rehearsedWatering(scenario), days: 1, seed: 0, keepCourse: false }
const plan = planDay(bagDay)

/** What takes settings, with some that are right. */
const TAKES: readonly (readonly [string, (given: Settings) => unknown, Settings])[] = [
  ['replanDay', (given) => replanDay(bagDay, plan, given as never), { now: instant(midnight + 3600), given: [] }],
  [
    'staggerZones',
    (given) => staggerZones([], given as never),
    { maxFlow: litresPerHour(1000), minRest: minutes(1), lastEnd: instant(midnight), maxDelay: hours(1) },
  ],
  ['controlWatering', (given) => controlWatering(given as never), { ...settings }],
  [
    'allowedHours of controlWatering',
    (given) => controlWatering({ ...settings, allowedHours: [given as never] }),
    { from: hours(7), to: hours(18) },
  ],
  ['probes of controlWatering', (given) => controlWatering({ ...settings, probes: [given as never] }), { name: 'A' }],
  ['deadBand', (given) => deadBand(given as never), { lower, upper }],
  ['watchZone', (given) => watchZone(given as never), watch],
  ['darkHours of watchZone', (given) => watchZone({ ...watch, darkHours: given as never }), { from: 22, until: 5 }],
  [
    'alarmLifeCycle',
    (given) => alarmLifeCycle(given as never),
    { onDelay: minutes(5), offDelay: minutes(5), maxShelving: hours(8) },
  ],
  ['announceAlarms', (given) => announceAlarms(given as never), { maxAlarms: 2, window: minutes(10) }],
  ['zoneAlarms', (given) => zoneAlarms(given as never), { offDelay: minutes(5), warnAhead: hours(1) }],
  ['planRecovery', (given) => planRecovery(given as never), recovery],
  ['rehearse', (given) => rehearse(given as never), rehearsal],
  ['limits of rehearse', (given) => rehearse({ ...rehearsal, limits: given as never }), { ...scenario.limits }],
  ['zone of rehearse', (given) => rehearse({ ...rehearsal, zone: given as never }), { ...scenario.zone }],
]

describe('a setting whose name is misspelt', () => {
  it.each(TAKES)('is refused by %s with the nearest name first, and never left out in silence', (_, call, right) => {
    call(right)
    for (const name of Object.keys(right)) {
      const { [name]: value, ...others } = right
      const slip = `${name}s`
      expectInputError(() => call({ ...others, [slip]: value }), /./)
      expect(() => call({ ...right, [slip]: value })).toThrow(`'${slip}' is unknown; give one of ${name}`)
    }
  })
  it('is refused where it is inherited, and under the name of a prototype', () => {
    const inherited = Object.assign(Object.create({ maxPerDays: litres(1) }), settings)
    expectInputError(() => controlWatering(inherited), 'settings')
    expectInputError(() => controlWatering({ ...settings, ...JSON.parse('{"constructor": 1}') }), 'settings')
  })
  it('is refused in the description of a zone by its part', () => {
    const zone = { container: {}, emitters: {}, place: {}, probes: [], limits: { maxPerShots: 0.2 } }
    expectInputError(() => proposeDay({ zone } as never), 'limits')
    expectInputError(() => proposeDay({ zones: {} } as never), 'input')
  })
})

describe('what carries more than is read', () => {
  it('is taken where it is a message, a shot or a reading', () => {
    const { start, step } = controlWatering(settings)
    const reading = { waterContent: 0.55, time: midnight, battery: 0.8 }
    expect(step(start, { now: midnight, readings: [reading], locked: false, id: 7 } as never)[1].open).toBe(false)
    const shots = plan.shots.slice(0, 1).map((shot) => ({ ...shot, by: 'controller' }))
    expect(replanDay(bagDay, plan, { now: shots[0]!.time, given: shots }).shots.length).toBeGreaterThan(0)
  })
})
