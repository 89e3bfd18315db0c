import {
  controlWatering,
  days,
  drawFaults,
  explainControlFinding,
  type FaultName,
  hours,
  litres,
  minutes,
  rehearsalScenario,
  rehearse,
  rehearsedWatering,
  scale,
  type WateringDecision,
  type WateringSettings,
  type WateringState,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { clock, decide, moment, openings, settings } from './zone.js'

const scenario = rehearsalScenario('coir-dust')

/** A week in which a fault begins at the hour that its seed draws, with what was decided. */
function week(
  fault: FaultName | null,
  seed: number,
  change: Partial<WateringSettings> = {},
  pollEvery = minutes(1),
  where = scenario,
) {
  const inner = rehearsedWatering(where, change)
  const told: WateringDecision[] = []
  const controller: typeof inner = {
    ...inner,
    reducer: {
      ...inner.reducer,
      step: (state, input) => {
        const answer = inner.reducer.step(state, input)
        told.push(answer[1])
        return answer
      },
    },
  }
  const faults = drawFaults({ faults: fault === null ? [] : [fault], seed, days: 7, probes: 2 })
  const { zone, limits } = where
  return { outcome: rehearse({ zone, limits, controller, days: 7, seed, faults, pollEvery, keepCourse: false }), told }
}

describe('containers that drink and drip a little differently', () => {
  it('are made alike again, so that a zone does not dry out around the one probe that is left', () => {
    expect(week('probe-reads-zero', 1, { refillEvery: 'never' }).outcome.stressTime).toBeGreaterThan(hours(24))
    const { outcome, told } = week('probe-reads-zero', 1)
    expect(outcome.stressTime).toBe(0)
    expect(outcome.worstDay).toBeLessThanOrEqual(scenario.limits.maxPerDay)
    expect(told.some(({ reason }) => reason === 'refill')).toBe(true)
  })
  it('cost a healthy week little water and no time over-wet to speak of', () => {
    const without = week(null, 0, { refillEvery: 'never' }).outcome
    const { outcome } = week(null, 0)
    expect(outcome.given).toBeLessThan(1.05 * without.given)
    expect(outcome.fullTime - without.fullTime).toBeLessThanOrEqual(0.3 * 3600)
  })
})

describe('two probes in containers that are drier than the rest', () => {
  it('do not bring the zone to the brim with each shot: what they said when it was full bounds what they ask for', () => {
    // 2.7 h above the full level in a healthy week, and 4.9 h, where an upper limit that these probes reach only in a full zone was obeyed.
    expect(week(null, 1207, {}, minutes(15)).outcome.fullTime).toBeLessThan(0.5 * 3600)
    expect(week(null, 1203, {}, minutes(15)).outcome.fullTime).toBeLessThan(0.5 * 3600)
  })
})

describe('a usual use that was set 1.6 times too high', () => {
  it('fills no zone every other day: two refills tell what plants take', () => {
    // 1.6 and 1.8 h above the full level, in four refills.
    for (const medium of ['stone-wool', 'coir-dust'] as const) {
      const where = rehearsalScenario(medium)
      const { outcome } = week(null, 3544, { usualPerDay: scale(where.usualPerDay, 1.6) }, minutes(1), where)
      expect(outcome.fullTime).toBeLessThan(3600)
      expect(outcome.stressTime).toBe(0)
    }
  })
})

describe('two probes that still rise when the zone is full', () => {
  it('tell by what they said together: a zone that drains is not taken for one that loses its water', () => {
    // Nothing was learned of such a full zone, and what ran off was given again, above the upper limit: 9.4 and 6.7 h above the full level.
    const full = (medium: 'stone-wool' | 'pine-bark', seed: number) =>
      week(null, seed, {}, minutes(15), rehearsalScenario(medium)).outcome.fullTime
    expect(full('stone-wool', 1400)).toBeLessThan(3600)
    expect(full('pine-bark', 1412)).toBeLessThan(3600)
  })
})

describe('two probes in containers that get more and drink less than the rest', () => {
  it('are no reason to fill the rest again and again: what they could not hold was no loss to the others', () => {
    // 4.1 h above the full level in a healthy week: each shot reached it for two days.
    expect(week(null, 1419, {}, minutes(15)).outcome.fullTime).toBeLessThan(3600)
  })
  it('leave nobody thirsty: what a refill took beyond what they foretold is reckoned with from then on', () => {
    // 14 h of stress in a healthy week, where each refill was forgotten again.
    expect(week(null, 306).outcome.stressTime).toBeLessThan(hours(4))
  })
})

describe('a zone that is asked every quarter of an hour', () => {
  it('ends its refill at the first drain: each shot is looked at before the next', () => {
    const { outcome, told } = week(null, 8, {}, minutes(15))
    expect(told.filter(({ reason }) => reason === 'refill').length).toBeGreaterThan(3)
    // The probe and the drain of a shot of two minutes are looked at ten minutes after it: by the next decision, and no shot comes before.
    const shots = told.flatMap(({ reason, opening }, i) =>
      reason === 'refill' && opening > told[i - 1]!.opening ? [i * minutes(15)] : [],
    )
    for (let i = 1; i < shots.length; i++) expect(shots[i]! - shots[i - 1]!).toBeGreaterThanOrEqual(minutes(12))
    const before = told.findIndex(({ reason }) => reason === 'refill')
    // It fills by what a shot brings beyond what plants drink in a quarter of an hour, not in an afternoon.
    const first = shots.filter((time) => time - before * minutes(15) < hours(12))
    expect(first.at(-1)! - first[0]!).toBeLessThanOrEqual(hours(2.5))
    // Seven and a half hours, where a refill went on before it was looked at.
    expect(outcome.fullTime).toBeLessThan(hours(1.5))
  })
})

describe('a medium that takes the less water the drier it is', () => {
  it('is filled before it dries out, though its probes stand where it is wet', () => {
    expect(week('water-repellent', 2, { refillEvery: 'never' }).outcome.stressTime).toBeGreaterThan(hours(12))
    expect(week('water-repellent', 2).outcome.stressTime).toBe(0)
  })
})

describe('drippers that clog after the zone was filled', () => {
  it('are told by meter and probes as before: shots that drained do not speak against the meter', () => {
    const { outcome, told } = week('all-drippers-clogged', 1)
    expect(told.some(({ findings }) => findings.some(({ code }) => code === 'flow-too-small'))).toBe(true)
    expect(outcome.stressTime).toBe(0)
  })
})

describe('probes that read too high together', () => {
  it('are found by a zone that drains, and told', () => {
    expect(week('probes-salt-error', 1, { refillEvery: 'never' }).outcome.stressTime).toBeGreaterThan(hours(12))
    const { outcome, told } = week('probes-salt-error', 1)
    expect(outcome.stressTime).toBeLessThan(hours(2))
    const finding = told.at(-1)?.findings.find(({ code }) => code === 'reads-too-high')
    expect(finding).toMatchObject({ level: 'caution', unit: 'm³/m³' })
    expect(finding?.value).toBeGreaterThan(0.025)
    expect(explainControlFinding({ code: 'reads-too-high' }).message).toContain('salt')
  })
})

describe('a drain gauge that cannot be trusted', () => {
  it('dead or counting twice costs no stress and no limit', () => {
    for (const fault of ['drain-gauge-dead', 'drain-gauge-counts-double'] as const) {
      const { outcome } = week(fault, 1)
      expect(outcome.stressTime).toBe(0)
      expect(outcome.worstDay).toBeLessThanOrEqual(scenario.limits.maxPerDay)
      expect(outcome.outsideHours).toBe(0)
    }
  })
  it('and counts nothing any more is told by probes that a refill no longer raises, which ends it', () => {
    // It was given up each evening and taken up each morning: over-wet for 90 h of a week in another simulation, and 15 h here.
    const inner = week('drain-gauge-dead', 8, {}, minutes(15))
    expect(inner.told.some(({ findings }) => findings.some(({ code }) => code === 'no-drain'))).toBe(true)
    expect(inner.outcome.fullTime).toBeLessThan(hours(3))
    expect(inner.outcome.stressTime).toBe(0)
    expect(explainControlFinding({ code: 'no-drain' }).message).toContain('gauge')
  })
  it('and counts millilitres is not read any more, until somebody has looked', () => {
    const inner = rehearsedWatering(scenario)
    const codes = new Set<string>()
    const refills: number[] = []
    const controller: typeof inner = {
      ...inner,
      input: (observed, truth) => {
        const input = inner.input(observed, truth)
        return input.drained === undefined ? input : { ...input, drained: scale(input.drained, 1000) }
      },
      reducer: {
        ...inner.reducer,
        step: (state, input) => {
          const answer = inner.reducer.step(state, input)
          for (const { code } of answer[1].findings) codes.add(code)
          if (answer[1].reason === 'refill') refills.push(input.now)
          return answer
        },
      },
    }
    const { zone, limits } = scenario
    const outcome = rehearse({ zone, limits, controller, days: 7, seed: 8, pollEvery: minutes(15), keepCourse: false })
    expect([...codes]).toContain('drain-too-large')
    expect(outcome.fullTime).toBeLessThan(hours(1))
    expect(outcome.stressTime).toBe(0)
    expect(refills).toEqual([])
  })
  it('that runs on whatever is given takes less than half of the water that probes ask for', () => {
    // Somebody rinses a tank into the gutter: a litre of drain with each moment, for days, and a probe that says dry.
    let drained = 0
    const { told } = decide(clock(0), clock(96), 300, (now, i) => {
      drained += 1
      return moment(now, 0.45 + 0.001 * (i % 2), { drained: litres(drained) })
    })
    const given = openings(told).filter((now) => now >= clock(72)).length * 0.2
    expect(given).toBeGreaterThanOrEqual(0.55 * settings.usualPerDay)
    expect(given).toBeLessThanOrEqual(settings.maxPerDay)
  })
  it('that leaps, goes back, stands still or sends no number never opens beyond the limits', () => {
    const odd: readonly unknown[] = [0, 5, 5, 1e12, 1e13, -3, Number.NaN, null, '7', 0, 1e-9, undefined, Infinity]
    const { told } = decide(clock(0), clock(120), 300, (now, i) =>
      moment(now, 0.5 + 0.04 * Math.sin(i / 40) + 0.001 * (i % 2), { drained: odd[i % odd.length] as never }),
    )
    for (const now of openings(told)) {
      const hour = (now / 3600) % 24
      expect(hour).toBeGreaterThanOrEqual(7)
      expect(hour).toBeLessThan(18)
      const inDay = openings(told).filter((at) => at <= now && at > now - 86400).length * 0.2
      expect(inDay).toBeLessThanOrEqual(settings.maxPerDay + 1e-9)
    }
  })
})

describe('a refill', () => {
  it('is not given where nothing counts drain, nor where it was switched off', () => {
    const dryDown = (drained?: number) => (now: number, i: number) =>
      moment(now, 0.55 + 0.001 * (i % 2), drained === undefined ? {} : { drained: litres(drained) })
    const reasons = (change: Partial<WateringSettings>, drained?: number) =>
      decide(clock(0), clock(48), 300, dryDown(drained), change).told.map(({ decision }) => decision.reason)
    expect(reasons({}, 1)).toContain('refill')
    expect(reasons({})).not.toContain('refill')
    expect(reasons({ refillEvery: 'never' }, 1)).not.toContain('refill')
  })
  it('is given up where nothing drains, before the zone stands full for long', () => {
    const { zone, limits } = scenario
    const faults = [{ fault: 'drain-gauge-dead' as const, from: hours(1) }]
    const run = { zone, limits, days: 4, seed: 3, faults, keepCourse: false }
    const outcome = rehearse({ ...run, controller: rehearsedWatering(scenario) })
    expect(outcome.fullTime).toBeLessThan(hours(2.5))
    expect(outcome.stressTime).toBe(0)
  })
  it('is no way round "stay closed in doubt", nor round the most that is given in doubt', () => {
    const silent = (now: number, i: number) => ({
      ...(now < clock(30) ? moment(now, 0.55 + 0.001 * (i % 2)) : { now, readings: [], locked: false }),
      drained: litres(1),
    })
    const closed = decide(clock(0), clock(96), 300, silent, { inDoubt: 'staying-closed' }).told
    expect(openings(closed).filter((now) => now > clock(31))).toEqual([])
    const timed = decide(clock(0), clock(144), 300, silent, { backUpPerDay: litres(2.4) }).told
    const last = openings(timed).filter((now) => now >= clock(56))
    for (const now of last)
      expect(last.filter((at) => at <= now && at > now - 86400).length * 0.2).toBeLessThanOrEqual(2.4 + 1e-9)
  })
  it('does not outlast its hours: a state stored half-way goes on in JSON, and closes in the evening', () => {
    const { told } = week(null, 0)
    expect(told.some(({ reason }) => reason === 'refill')).toBe(true)
    const reducer = controlWatering(settings)
    let state: WateringState = reducer.start
    const seen = new Set<string>()
    for (let now = clock(0), i = 0; now < clock(72); now += 300, i++) {
      const sent = moment(now, 0.45 + 0.001 * (i % 2), { drained: litres(1) })
      const [next, decision] = reducer.step(JSON.parse(JSON.stringify(state)), sent)
      state = next
      seen.add(decision.reason)
      const hour = (now / 3600) % 24
      if (decision.open) expect(hour >= 7 && hour < 18).toBe(true)
    }
    expect(seen.has('state-lost')).toBe(false)
  })
  it('is asked for in days, from one to thirty', () => {
    expect(() => controlWatering({ ...settings, refillEvery: days(3) })).not.toThrow()
    for (const refillEvery of [hours(1), days(31), Number.NaN, 'always'])
      expect(() => controlWatering({ ...settings, refillEvery: refillEvery as never })).toThrow(/refill/)
  })
})

describe('two probes that differ by much', () => {
  const probes = [{ name: 'a' }, { name: 'b' }]
  const both = (a: number, b: number) => (now: number, i: number) => ({
    now,
    readings: [
      { probe: 'a', waterContent: a + 0.001 * (i % 2), time: now },
      { probe: 'b', waterContent: b + 0.001 * (i % 2), time: now },
    ],
    locked: false,
  })
  it('and both say dry are believed in that: the wetter one decides', () => {
    const { told } = decide(clock(8), clock(9.5), 60, both(0.36, 0.48), { probes })
    expect(told.at(-1)?.decision.waterContent).toMatchObject({ known: true, value: expect.closeTo(0.48, 2) })
  })
  it('and of which one says wet decide nothing', () => {
    const { told } = decide(clock(8), clock(9.5), 60, both(0.36, 0.55), { probes })
    expect(told.at(-1)?.decision.waterContent).toEqual({ known: false, reason: 'probes-disagree' })
  })
})

describe('a state that was stored a day ago', () => {
  it('does not take the drain of a day for that of one shot, and fills nothing on it', () => {
    const { outcome, told } = week('restart-old', 100)
    expect(
      told.filter(({ findings }) => findings.some(({ code }) => code === 'clock-doubtful')).length,
    ).toBeGreaterThan(0)
    expect(outcome.worstDay).toBeLessThanOrEqual(scenario.limits.maxPerDay)
  })
})

describe('a valve that leaked', () => {
  const leaked = (fault: FaultName, from: number, until: number) => {
    const inner = rehearsedWatering(scenario)
    const refills: number[] = []
    const step: typeof inner.reducer.step = (state, input) => {
      const answer = inner.reducer.step(state, input)
      if (answer[0].fill.under !== null && state.fill.under === null) refills.push(input.now)
      return answer
    }
    const controller = { ...inner, reducer: { ...inner.reducer, step } }
    const faults = [{ fault, from: hours(from), until: hours(until) }]
    const { zone, limits } = scenario
    return { outcome: rehearse({ zone, limits, controller, days: 7, seed: 1, faults }), refills }
  }
  it('and is well again lets a refill make containers alike, though nobody acknowledged it', () => {
    // The finding stood, no refill came, and after five days two probes of one zone were eight points apart: down to 0.636 and 0.628.
    expect(leaked('valve-stuck-open', 33, 39).outcome.driest).toBeGreaterThan(0.65)
    expect(leaked('valve-weeps', 12, 30).outcome.driest).toBeGreaterThan(0.65)
  })
  it('and still does fills no zone to drain', () => {
    expect(leaked('valve-weeps', 12, 168).refills).toEqual([])
    expect(leaked('valve-weeps', 12, 30).refills.length).toBeGreaterThan(0)
  })
})
