import {
  drawFaults,
  type FaultName,
  hours,
  litres,
  minutes,
  perfectPlanner,
  rehearsalScenario,
  rehearse,
  rehearsedWatering,
  seconds,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { clock, decide, moment, openings } from './zone.js'

/** Stories in which several things must be weighed against each other, told by a whole simulated zone: the truth is known there. */
const scenario = rehearsalScenario('coir-dust')

function week(fault: FaultName, days = 5, size?: number) {
  const faults = [{ fault, from: hours(36), ...(size === undefined ? {} : { size }) }]
  const controller = rehearsedWatering(scenario)
  return rehearse({
    zone: scenario.zone,
    limits: scenario.limits,
    controller,
    days,
    seed: 11,
    faults,
    keepCourse: false,
  })
}

/** A week in a medium, with a fault that begins when its seed draws it, asked every so many minutes. */
function drawnWeek(medium: Parameters<typeof rehearsalScenario>[0], fault: FaultName, seed: number, every: number) {
  const { zone, limits, ...levels } = rehearsalScenario(medium)
  const faults = drawFaults({ faults: [fault], seed, days: 7, probes: 2 })
  const controller = rehearsedWatering({ zone, limits, ...levels })
  return rehearse({ zone, limits, controller, days: 7, seed, faults, pollEvery: minutes(every), keepCourse: false })
}

describe('a clock that leaps by eleven hours', () => {
  it('is weighed against the plants, which drink by day: the zone gets its water in the true hours', () => {
    const outcome = week('clock-jumps-half-a-day')
    expect(outcome.stressTime).toBe(0)
    expect(outcome.outsideHours).toBe(0)
  })
})

describe('a valve that stays open for six hours', () => {
  // What ran through it stood in no balance: the drain gauge was told to count too much, and probes in a full zone to stand too still, so that the zone
  // was watered by time for two days, above its full level (48 h of it).
  it('accuses neither drain gauge nor probes, and the zone dries down behind it', () => {
    const faults = drawFaults({ faults: ['valve-stuck-open'], seed: 3303, days: 7, probes: 2 })
    const controller = rehearsedWatering(scenario)
    const run = {
      zone: scenario.zone,
      limits: scenario.limits,
      controller,
      days: 7,
      seed: 3303,
      faults,
      keepCourse: false,
    }
    const outcome = rehearse(run)
    expect(outcome.alarms.map(({ alarm }) => alarm)).toEqual(['flow-while-closed'])
    expect(outcome.fullTime).toBeLessThan(faults[0]!.until! - faults[0]!.from + 3600)
    expect(outcome.stressTime).toBe(0)
  })
})

describe('half of the flow', () => {
  it('that meter and probes tell alike is made good by longer shots, inside the limit of the day', () => {
    const outcome = week('low-pressure')
    expect(outcome.alarms.map(({ alarm }) => alarm)).toContain('flow-too-small')
    expect(outcome.stressTime).toBeLessThan(3600)
    expect(outcome.worstDay).toBeLessThanOrEqual(scenario.limits.maxPerDay)
    expect(outcome.maxOpening).toBeLessThanOrEqual(scenario.limits.maxRunTime)
  })
  it('that a meter tells alone against the probes lets no more water through than the day may have', () => {
    const outcome = week('flow-meter-counts-double', 5, 0.5)
    expect(outcome.worstDay).toBeLessThanOrEqual(1.02 * scenario.limits.maxPerDay)
  })
})

describe('a pressure that falls while probes scatter', () => {
  // A few shots that probes showed too large or too small undid what all had said together: the meter was then taken for that of a zone whose probes do
  // not stand for it, or for one that nothing confirms, and half of the water was counted as all. 108 and 109 h of stress in a week.
  // Two shots that probes showed too large called the zone one that its probes do not stand for, for good: 80 and 88 h.
  it.each([
    ['low-pressure', 'sphagnum-peat-moss', 1450, 15],
    ['all-drippers-clogged', 'sphagnum-peat-moss', 1450, 15],
    ['low-pressure', 'coir-dust', 3443, 1],
    ['all-drippers-clogged', 'coir-dust', 3443, 1],
  ] as const)(
    'is what meter and probes go on telling alike in the mean: %s in %s, seed %i',
    (fault, medium, seed, every) => {
      const outcome = drawnWeek(medium, fault, seed, every)
      expect(outcome.stressTime).toBeLessThan(3600)
      expect(outcome.worstDay).toBeLessThanOrEqual(rehearsalScenario(medium).limits.maxPerDay)
    },
  )
})

describe('a meter that counts nothing in a zone where nobody counts drain', () => {
  it('is told from a dry line by probes that go on rising: shots are not cut to a quarter', () => {
    // 80 h of stress in a week, and 108 h where decisions come every quarter of an hour.
    const { zone: withDrain, limits, ...levels } = scenario
    const zone = { ...withDrain, has: { ...withDrain.has, drainGauge: false } }
    const faults = drawFaults({ faults: ['flow-meter-dead'], seed: 1450, days: 7, probes: 2 })
    const controller = rehearsedWatering({ zone, limits, ...levels })
    for (const pollEvery of [minutes(1), minutes(15)]) {
      const outcome = rehearse({ zone, limits, controller, days: 7, seed: 1450, faults, pollEvery, keepCourse: false })
      expect(outcome.stressTime).toBe(0)
      expect(outcome.worstDay).toBeLessThanOrEqual(limits.maxPerDay)
    }
  })
  it('is a dry line where they do not rise: openings stay short, until the meter counts again', () => {
    const faults = [{ fault: 'no-water' as const, from: hours(40) }]
    const { zone, limits } = scenario
    const controller = rehearsedWatering(scenario)
    const outcome = rehearse({ zone, limits, controller, days: 4, seed: 1450, faults, keepCourse: false })
    const late = outcome.openings.filter(({ from }) => from > hours(60))
    expect(late.length).toBeGreaterThan(3)
    for (const { from, until } of late) expect(until - from).toBeLessThanOrEqual(0.3 * limits.maxRunTime)
  })
})

describe('drippers that all clog at once', () => {
  // A mean of few openings that only the meter had judged was held against one of more that the probes had: 57 h of stress, and 75 h.
  it.each([
    ['sphagnum-peat-moss', 4, 325_020],
    ['pine-bark', 4, 325_020],
  ] as const)(
    'are seen by meter and probes in the same openings, and the probes go on deciding: %s',
    (medium, seed, from) => {
      const { zone, limits } = rehearsalScenario(medium)
      const faults = [{ fault: 'all-drippers-clogged' as const, from: seconds(from), place: 1 }]
      const controller = rehearsedWatering(rehearsalScenario(medium))
      const outcome = rehearse({ zone, limits, controller, days: 7, seed, faults, keepCourse: false })
      expect(outcome.alarms.map(({ alarm }) => alarm)).toContain('flow-too-small')
      expect(outcome.stressTime).toBeLessThan(3600)
      expect(outcome.worstDay).toBeLessThanOrEqual(limits.maxPerDay)
    },
  )
})

describe('a meter that counts each pulse twice', () => {
  it('does not starve a zone whose probes and drain show all that was ordered', () => {
    expect(week('flow-meter-counts-double').stressTime).toBe(0)
  })
})

describe('a valve that stood open for six hours', () => {
  it('leaves some of the day for a zone that falls dry afterwards', () => {
    const faults = [{ fault: 'valve-stuck-open' as const, from: hours(34), until: hours(40) }]
    const controller = rehearsedWatering(scenario)
    const run = {
      zone: scenario.zone,
      limits: scenario.limits,
      controller,
      days: 4,
      seed: 11,
      faults,
      keepCourse: false,
    }
    const outcome = rehearse(run)
    expect(outcome.unordered).toBeGreaterThan(litres(20))
    expect(outcome.stressTime).toBe(0)
    expect(outcome.worstDay).toBeLessThanOrEqual(scenario.limits.maxPerDay)
  })
})

describe('a zone that is asked every hour', () => {
  // Shots of the set volume came to less than plants use: 130 h of stress in a week, with healthy probes or without any.
  it.each([[], ['probes-silent'], ['probes-frozen']] as const)('gets its water in longer shots: %s', (...names) => {
    for (const medium of ['stone-wool', 'pine-bark'] as const) {
      const scenario = rehearsalScenario(medium)
      const outcome = rehearse({
        zone: scenario.zone,
        limits: scenario.limits,
        controller: rehearsedWatering(scenario),
        days: 5,
        seed: 11,
        faults: names.map((fault: FaultName) => ({ fault, from: hours(36) })),
        keepCourse: false,
        pollEvery: hours(1),
      })
      expect(outcome.stressTime).toBeLessThan(3600)
      expect(outcome.worstDay).toBeLessThanOrEqual(scenario.limits.maxPerDay)
      expect(outcome.maxOpening).toBeLessThanOrEqual(scenario.limits.maxRunTime)
      expect(outcome.outsideHours).toBe(0)
    }
  })
})

describe('half of the water that runs past the medium', () => {
  it('takes no more from the plants than it must: the planner that sees the truth has hardly less stress', () => {
    const faults = [{ fault: 'channelling' as const, from: hours(40) }]
    const stress = (controller: typeof rehearsedWatering | typeof perfectPlanner) =>
      rehearse({
        zone: scenario.zone,
        limits: scenario.limits,
        controller: controller(scenario) as ReturnType<typeof rehearsedWatering>,
        days: 7,
        seed: 1,
        faults,
        keepCourse: false,
        pollEvery: minutes(5),
      }).stressTime
    // 79 h of stress against 61 h before: by decisions alone the last hours of the day before counted twice.
    expect(stress(rehearsedWatering)).toBeLessThan(1.12 * stress(perfectPlanner))
  })
})

describe('a probe that trembles at a level above the upper limit', () => {
  // Shots by time came to what plants use, which agreed with a level that did not move: it was believed again every second day, 92 and 110 h of stress.
  it('is not believed again because shots by time agree with it: the zone gets its water day by day', () => {
    const { told } = decide(clock(0), clock(24 * 6), 300, (now, i) => moment(now, 0.62 + 0.001 * (((i * 7) % 5) - 2)))
    const shots = openings(told)
    for (let day = 2; day < 6; day++) {
      const given = 0.2 * shots.filter((now) => now >= clock(24 * day) && now < clock(24 * (day + 1))).length
      expect(given).toBeGreaterThanOrEqual(0.9 * 2)
      expect(given).toBeLessThanOrEqual(1.4 * 2)
    }
    const codes = told.at(-1)!.decision.findings.map(({ code }) => code)
    expect(codes).toContain('use-too-small')
  })
  it('is believed again once it moves as plants drink', () => {
    const { told, state } = decide(clock(0), clock(48), 300, (now, i) => moment(now, 0.62 + 0.001 * ((i * 7) % 5)))
    expect(told.at(-1)!.decision.waterContent.known).toBe(false)
    const level = (now: number) => 0.75 - 0.0075 * Math.min(11, Math.max(0, (now - clock(48)) / 3600 - 7))
    const later = decide(clock(48), clock(72), 300, (now, i) => moment(now, level(now) + 0.001 * (i % 3)), {}, state)
    expect(later.told.at(-1)!.decision.waterContent.known).toBe(true)
  })
})

describe('a probe that drifts out of its band', () => {
  it('is not believed at every other reading while it trembles about the end of the band', () => {
    // 34 and 42 alarms in a week, one each time that it came back.
    const outcome = drawnWeek('coir-dust', 'probe-drifts-up', 3400, 1)
    const unbelievable = outcome.alarms.filter(({ alarm }) => alarm === 'reading-unbelievable')
    expect(unbelievable.length).toBeGreaterThan(0)
    expect(unbelievable.length).toBeLessThan(20)
    expect(outcome.stressTime).toBe(0)
  })
})

describe('a state of a day ago after every restart', () => {
  it('does not cut shots short and then tell that too little came', () => {
    // Levels that trembled about a limit closed the valve half-way through a shot that counted as a whole one: eight alarms in a week.
    const outcome = drawnWeek('stone-wool', 'restart-old', 3401, 1)
    expect(outcome.alarms.filter(({ alarm }) => alarm === 'flow-too-small').length).toBeLessThan(2)
  })
})
