import fc from 'fast-check'
import {
  boxContainer,
  carefulPerson,
  centimetres,
  centimetresPerMinute,
  drawFaults,
  explainRehearsalFinding,
  type FaultName,
  hours,
  perCentimetre,
  perfectPlanner,
  rehearsalFaults,
  rehearsalScenario,
  rehearse,
  rehearseMany,
  richardsMedium,
  uptakeLimitsFeddes,
  vanGenuchten1980,
  waterContent,
} from 'porewater'
import { chartRehearsal } from 'porewater/chart'
import { describe, expect, it } from 'vitest'
import { badNumbers, every, parseXml } from '../chart/well-formed.js'
import { credulous, idle } from './controllers.js'

const scenario = rehearsalScenario('coir-dust')
const names = rehearsalFaults().map(({ fault }) => fault)

describe('times drawn by lot', () => {
  it('begin after the first day, within two thirds of the time, at a probe that is there', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 4294967295 }), fc.constantFrom(...names), (seed, name) => {
        const [fault] = drawFaults({ faults: [name], seed, days: 7, probes: 2 })
        expect(fault?.from).toBeGreaterThanOrEqual(86400)
        expect(fault?.from).toBeLessThan((7 * 86400 * 2) / 3)
        expect([0, 1]).toContain(fault?.place)
        expect(drawFaults({ faults: [name], seed, days: 7, probes: 2 })).toEqual([fault])
      }),
    )
  })
  it('refuse names and counts that do not exist', () => {
    expect(() => drawFaults({ faults: ['flood' as FaultName], seed: 1, days: 7, probes: 2 })).toThrow(/no "flood"/)
    expect(() => drawFaults({ faults: [], seed: 1.5, days: 7, probes: 2 })).toThrow(/whole/)
  })
})

describe('many rehearsals', () => {
  const many = { scenarios: [scenario, rehearsalScenario('pine-bark')], seeds: 2, days: 3 }
  it('sum up what single ones give, and say where the worst was', () => {
    const faults = [['probe-lifted', 'no-water']] as const
    const [row] = rehearseMany({ ...many, controllerFor: ({ lower }) => credulous(lower), faults })
    const single = many.scenarios.flatMap((one) =>
      [0, 1].map((seed) =>
        rehearse({
          ...one,
          controller: credulous(one.lower),
          days: 3,
          seed,
          faults: drawFaults({ faults: faults[0], seed, days: 3, probes: 2 }),
        }),
      ),
    )
    expect(row?.runs).toBe(4)
    expect(row?.worstDayShare).toBe(Math.max(...single.map(({ worstDay }) => worstDay)) / 6)
    expect(row?.stressTime).toBeCloseTo(single.reduce((sum, { stressTime }) => sum + stressTime, 0) / 4, 6)
    const place = (row?.worstDayIn.scenario ?? 9) * 2 + (row?.worstDayIn.seed ?? 9)
    expect((single[place]?.worstDay ?? 0) / 6).toBe(row?.worstDayShare)
  })
  it('refuse nothing to rehearse', () => {
    expect(() => rehearseMany({ ...many, controllerFor: () => idle, faults: [] })).toThrow(/at least one scenario/)
    expect(() => rehearseMany({ ...many, scenarios: [], controllerFor: () => idle, faults: [[]] })).toThrow(
      /at least one/,
    )
  })
})

describe('references', () => {
  it('the perfect planner keeps a healthy zone without stress and with hardly more than the plants use', () => {
    for (const medium of ['stone-wool', 'coir-dust', 'sphagnum-peat-moss', 'pine-bark'] as const) {
      const one = rehearsalScenario(medium)
      const outcome = rehearse({ ...one, controller: perfectPlanner(one), days: 7, seed: 4 })
      expect(outcome.stressTime).toBe(0)
      expect(outcome.outsideHours).toBe(0)
      // What is given goes to plants, drain and line, and what is left is a change of store of less than the band.
      const store = outcome.given - outcome.used - outcome.drained - outcome.spilt
      expect(Math.abs(store)).toBeLessThan(0.06 * 10)
      expect(outcome.drained / outcome.given).toBeLessThan(0.17)
    }
  })
  it('the careful person stays inside the limits whatever goes wrong', () => {
    const rows = rehearseMany({
      controllerFor: carefulPerson,
      scenarios: [scenario],
      faults: names.map((name) => [name]),
      seeds: 1,
      days: 3,
    })
    for (const row of rows) {
      expect(row.outsideByBothClocks, row.faults.join()).toBe(0)
      expect(row.maxOpeningShare, row.faults.join()).toBeLessThanOrEqual(1)
      expect(row.imbalance).toBeLessThan(1e-9)
      // A clock that runs away, or a memory that is lost, is more than a timetable can bear.
      if (!/clock|restart/.test(row.faults.join()))
        expect(row.worstDayShare, row.faults.join()).toBeLessThanOrEqual(1.05)
    }
  })
})

describe("Richards' equation behind a rehearsal", () => {
  const medium = richardsMedium({
    container: boxContainer({ length: centimetres(100), width: centimetres(20), height: centimetres(7.5) }),
    medium: vanGenuchten1980({
      residual: waterContent(0.02),
      saturated: waterContent(0.95),
      alpha: perCentimetre(0.08),
      n: 3.5,
    }),
    saturatedConductivity: centimetresPerMinute(6),
    roots: { limits: uptakeLimitsFeddes.tomato },
    nodes: 11,
  })
  const zone = { ...scenario.zone, medium, waterContent: waterContent(0.8), probes: 1, containers: 1 }
  it('conserves water and drains what is too much', () => {
    const outcome = rehearse({ ...scenario, zone, controller: credulous(0.9), days: 1, seed: 2 })
    expect(outcome.given).toBeGreaterThan(1)
    expect(outcome.drained).toBeGreaterThan(0.05)
    // The simulation of flow promises 1e-9 of what passes in each step.
    expect(Math.abs(outcome.imbalance)).toBeLessThan(1e-6)
  })
  it('refuses a fault that it cannot follow', () => {
    const faults = [{ fault: 'capacity-low' as const, from: hours(1) }]
    expect(() => rehearse({ ...scenario, zone, controller: idle, days: 1, seed: 2, faults })).toThrow(/capacity-low/)
  })
})

describe('the picture of a rehearsal', () => {
  const faults = [
    { fault: 'probe-reads-minus-999' as const, from: hours(30) },
    { fault: 'no-water' as const, from: hours(40), until: hours(44) },
  ]
  const alarming = {
    ...credulous(scenario.lower),
    order: (open: boolean) => ({ open, closeAfter: 60, alarms: open ? ['open'] : [] }),
  }
  const outcome = rehearse({ ...scenario, controller: alarming, days: 3, seed: 1, faults })
  it.each([360, 960])('is well formed at %i px, small, with its numbers in words', (width) => {
    const text = chartRehearsal({ title: 'A flood (invented)', outcome, hoursFromUtc: 0, width, ...scenario })
    const svg = parseXml(text)
    expect(badNumbers(svg)).toEqual([])
    const words = every(svg).find(({ name }) => name === 'desc')?.text ?? ''
    expect(words).toContain('probe-reads-minus-999 and no-water')
    expect(words).toContain(`${outcome.openings.length} openings`)
    // Two days of a first probe that sends -999 are not drawn.
    expect(words).toMatch(/2520 readings lie outside/)
    expect(text.length).toBeLessThan(200 * width)
    for (const label of ['true mean', 'upper limit', 'given, mL/h', 'drain, mL/h', 'no-water'])
      expect(text).toContain(label)
  })
  it('draws the water that was given: bars add up to the volume', () => {
    const wide = chartRehearsal({ title: 'x', outcome, hoursFromUtc: 0, width: 2000 })
    expect(every(parseXml(wide)).filter(({ attributes }) => attributes.class === 'f0 bar0').length).toBeGreaterThan(20)
  })
  it('refuses an outcome without a course', () => {
    const bare = rehearse({ ...scenario, controller: idle, days: 1, seed: 1, keepCourse: false })
    expect(() => chartRehearsal({ title: 'x', outcome: bare, hoursFromUtc: 0 })).toThrow(/no course/)
  })
})

describe('what a rehearsal has no number for', () => {
  const late = [{ fault: 'probe-reads-zero' as const, from: hours(12) }]
  const run = { ...scenario, controller: idle, days: 1, seed: 1, keepCourse: false }
  it('says why, and is no null that would pass for a small number', () => {
    const { course, ...outcome } = rehearse({ ...run, controller: { ...idle, alarmsFor: {} }, faults: late })
    expect(course).toBeUndefined()
    expect(outcome.minRest).toEqual({ known: false, reason: 'fewer-than-two-openings' })
    expect(outcome.timeToAlarm).toEqual([{ known: false, reason: 'never-named' }])
    expect(outcome.timeToFirstAlarms).toEqual(outcome.timeToAlarm)
    expect(outcome.findings.map(({ code }) => code)).toContain('fault-without-alarm')
    expect(JSON.stringify(outcome)).not.toContain('null')
    expect(explainRehearsalFinding({ code: 'never-named' }).message).toBe('no alarm named the fault')
  })
  it('is in a summary the share and the time where there is no fault, and the time where none was named', () => {
    const many = { scenarios: [scenario], controllerFor: () => idle, days: 1, seeds: 1 }
    const healthy = rehearseMany({ ...many, faults: [[]] })[0]!
    const nothing = { known: false, reason: 'nothing-to-name' }
    expect([healthy.namedShare, healthy.namedFirstShare, healthy.timeToAlarm]).toEqual([nothing, nothing, nothing])
    const mute = { ...many, controllerFor: () => ({ ...idle, alarmsFor: {} }), faults: [['no-water' as const]] }
    const missed = rehearseMany(mute)[0]!
    expect(missed.namedShare).toEqual({ known: true, share: 0 })
    expect(missed.timeToAlarm).toEqual({ known: false, reason: 'never-named' })
  })
})

describe('findings in words', () => {
  it('each has a sentence with its number', () => {
    const some = [
      { code: 'beyond-limit-of-day', level: 'danger', volume: 7, limit: 6 },
      { code: 'beyond-limit-of-day-against-will', level: 'danger', volume: 7, limit: 6 },
      { code: 'opening-too-long', level: 'danger', duration: 700, limit: 300 },
      { code: 'opened-outside-hours', level: 'danger', openings: 7 },
      { code: 'opened-while-locked', level: 'danger', openings: 7 },
      { code: 'opened-blind', level: 'note', openings: 7 },
      { code: 'stress', level: 'caution', hours: 7 },
      { code: 'over-wet', level: 'caution', hours: 7 },
      { code: 'fault-without-alarm', level: 'caution', fault: 'fault-7' },
      { code: 'false-alarms', level: 'caution', alarms: 7 },
      { code: 'controller-threw', level: 'danger', calls: 7 },
      { code: 'water-not-conserved', level: 'danger', volume: 7 },
    ] as const
    for (const finding of some) expect(explainRehearsalFinding(finding).message).toMatch(/^(?=.*7)[A-Z7].*\.$/)
    expect(new Set(some.map((finding) => explainRehearsalFinding(finding).message)).size).toBe(some.length)
  })
})
