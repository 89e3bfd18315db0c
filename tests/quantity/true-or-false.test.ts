import {
  cropCoefficient,
  exposedWettedShare,
  fraction,
  type GroundFraction,
  millimetresOfDepth,
  millimetresPerDay,
  minutes,
  pumpSchedule,
  type ReferenceET,
  rehearsalScenario,
  rehearse,
  rehearsedWatering,
  seconds,
  surfaceBalance,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { revoked } from '../support/hostile.js'
import { expectInputError } from '../support/refusals.js'

const NEITHER = ['false', 'true', '', 0, 1, 1n, null, Symbol('true'), {}, revoked()]
const pump = (keepRunning: unknown) =>
  pumpSchedule({
    zones: 6,
    runTime: minutes(2),
    rest: seconds(10),
    startsPerHour: 15,
    keepRunning: keepRunning as boolean,
  })

describe('a switch that is neither true nor false', () => {
  it('is refused: a form that sent false as text had kept the pump running against closed valves', () => {
    for (const neither of [...NEITHER, undefined]) expectInputError(() => pump(neither), 'keepRunning')
  })
  it('is told by its name, what was given and what to give', () => {
    expect(() => pump('false')).toThrow(
      "keepRunning: 'false' is neither true nor false; give true or false, without quotation marks",
    )
    expect(() => pump(undefined)).toThrow('keepRunning: undefined is neither')
    expect(() => pump(null)).toThrow('keepRunning: null is neither')
    expect(() => pump(1)).toThrow('keepRunning: 1 is neither')
    expect(() => pump({})).toThrow('keepRunning: an object is neither')
  })
  it('is refused where it may be left out, on a day of a list as well', () => {
    const day = {
      referenceET: millimetresPerDay(4.5) as ReferenceET,
      rain: millimetresOfDepth(0),
      irrigationOnWetted: millimetresOfDepth(50),
      basalCoefficient: cropCoefficient(0.3),
      maxCoefficient: cropCoefficient(1.21),
      cover: fraction(0.08) as GroundFraction,
      wettedShare: fraction(0.8) as GroundFraction,
    }
    const evaporable = { totalEvaporable: millimetresOfDepth(18), readilyEvaporable: millimetresOfDepth(9) }
    for (const drip of NEITHER as boolean[]) {
      expectInputError(() => exposedWettedShare({ ...day, drip }), 'drip')
      expectInputError(() => surfaceBalance({ ...evaporable, days: [{ ...day, drip }] }), 'drip')
    }
  })
  it('is refused in a rehearsal, which had given a zone the flow meter that its settings denied', () => {
    const scenario = rehearsalScenario('coir-dust')
    const { zone, limits } = scenario
    const run = { zone, limits, controller: rehearsedWatering(scenario), days: 1, seed: 1 }
    for (const neither of NEITHER as boolean[]) {
      expectInputError(() => rehearse({ ...run, keepCourse: neither }), 'keepCourse')
      const has = { ...zone.has, flowMeter: neither }
      expectInputError(() => rehearse({ ...run, zone: { ...zone, has } }), /^zone\.has\.flowMeter$/)
    }
  })
})
