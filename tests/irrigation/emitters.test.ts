import fc from 'fast-check'
import {
  checkEmitterPressure,
  type EmitterPressureUnit,
  emitterCoefficient,
  emitterCurve,
  emitterFlowAt,
  emitterFlowRatio,
  emitterPressureFor,
  explainIrrigationFinding,
  fitEmitterCurve,
  inMetresOfWater,
  kilopascals,
  litresPerHour,
  metresOfWater,
  minutes,
  motorStartLimitsNema,
  poundsPerSquareInch,
  pumpSchedule,
  pumpStarts,
  seconds,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { checkPublished } from '../support/published.js'
import { expectDomainError, expectInputError } from '../support/refusals.js'

checkPublished('irrigation', 'emitter.flow', ({ k, x, H }) => ({
  q: emitterFlowAt(emitterCurve({ coefficient: k, pressureUnit: 'metre-of-water', exponent: x }), metresOfWater(H)),
}))
checkPublished('irrigation', 'emitter.fit', ({ q1, H1, q2, H2 }) => {
  const curve = fitEmitterCurve({
    first: { pressure: metresOfWater(H1), flow: litresPerHour(q1) },
    second: { pressure: metresOfWater(H2), flow: litresPerHour(q2) },
  })
  return { x: curve.exponent, k: emitterCoefficient(curve, 'metre-of-water') }
})
checkPublished('irrigation', 'emitter.pressure', ({ q, q_ref, H_ref, x }) => {
  const curve = emitterCurve({ coefficient: q_ref / H_ref ** x, pressureUnit: 'metre-of-water', exponent: x })
  return { H: inMetresOfWater(emitterPressureFor(curve, litresPerHour(q))) }
})
checkPublished('irrigation', 'emitter.ratio', ({ H1, H2, x }) => ({
  ratio: emitterFlowRatio({ from: metresOfWater(H1), to: metresOfWater(H2), exponent: x }),
}))
checkPublished('irrigation', 'pump.starts', ({ A, B, C, load }) => {
  const pump = pumpStarts({ maxStarts: A, maxStartsTimesInertia: B, minRest: seconds(C), inertia: load })
  return { starts_per_hour: pump.startsPerHour, min_period_s: pump.minPeriod, min_rest_s: pump.minRest }
})
checkPublished('irrigation', 'pump.schedule', ({ zones, run, gap, starts_h, shared }) => {
  const round = pumpSchedule({
    zones,
    runTime: seconds(run),
    rest: seconds(gap),
    startsPerHour: starts_h,
    keepRunning: shared === 1,
  })
  return { cycle_s: round.cycle, pump_starts_per_cycle: round.startsPerCycle, max_cycles_per_hour: round.cyclesPerHour }
})

const coefficients = fc.double({ min: 0.01, max: 20, noNaN: true })
const exponents = fc.double({ min: 0.1, max: 1, noNaN: true })
const pressures = fc.double({ min: 5, max: 400, noNaN: true })
const units = fc.constantFrom<EmitterPressureUnit>('kPa', 'bar', 'psi', 'metre-of-water')

describe('the curve of an emitter', () => {
  it('gives its coefficient back in the unit to which it belongs', () => {
    fc.assert(
      fc.property(coefficients, exponents, units, (coefficient, exponent, pressureUnit) => {
        const again = emitterCoefficient(emitterCurve({ coefficient, pressureUnit, exponent }), pressureUnit)
        expect(Math.abs(again / coefficient - 1)).toBeLessThan(1e-12)
      }),
    )
  })
  it('gives the coefficient as flow at one unit of pressure', () => {
    fc.assert(
      fc.property(coefficients, exponents, (coefficient, exponent) => {
        const per = (pressureUnit: EmitterPressureUnit) => emitterCurve({ coefficient, pressureUnit, exponent })
        expect(emitterFlowAt(per('metre-of-water'), metresOfWater(1))).toBeCloseTo(coefficient, 9)
        expect(emitterFlowAt(per('psi'), poundsPerSquareInch(1))).toBeCloseTo(coefficient, 9)
        expect(emitterFlowAt(per('bar'), kilopascals(100))).toBeCloseTo(coefficient, 9)
      }),
    )
  })
  it('is found again from two of its points, and pressure from flow', () => {
    fc.assert(
      fc.property(coefficients, exponents, pressures, pressures, (coefficient, exponent, a, b) => {
        fc.pre(Math.abs(Math.log(a / b)) > 0.1)
        const curve = emitterCurve({ coefficient, pressureUnit: 'kPa', exponent })
        const point = (kPa: number) => ({ pressure: kilopascals(kPa), flow: emitterFlowAt(curve, kilopascals(kPa)) })
        const again = fitEmitterCurve({ first: point(a), second: point(b) })
        expect(again.exponent).toBeCloseTo(exponent, 9)
        expect(Math.abs(again.perKilopascal / coefficient - 1)).toBeLessThan(1e-9)
        expect(Math.abs(emitterPressureFor(curve, point(a).flow) / a - 1)).toBeLessThan(1e-10)
        expect(emitterFlowRatio({ from: kilopascals(a), to: kilopascals(b), exponent })).toBeCloseTo(
          point(b).flow / point(a).flow,
          9,
        )
      }),
    )
  })
  it('says when a pressure lies outside those for which it holds', () => {
    const points = [10, 20].map((head) => ({ pressure: metresOfWater(head), flow: litresPerHour(2 + head / 100) }))
    const [low, high] = points as [(typeof points)[number], (typeof points)[number]]
    for (const curve of [
      fitEmitterCurve({ first: low, second: high }),
      fitEmitterCurve({ first: high, second: low }),
      emitterCurve({
        coefficient: 2,
        pressureUnit: 'kPa',
        exponent: 0,
        holds: { from: metresOfWater(10), to: metresOfWater(20) },
      }),
    ]) {
      expect(checkEmitterPressure(curve, metresOfWater(15))).toEqual([])
      expect(checkEmitterPressure(curve, metresOfWater(10))).toEqual([])
      expect(checkEmitterPressure(curve, metresOfWater(4))).toMatchObject([{ code: 'pressure-below-curve' }])
      const [above] = checkEmitterPressure(curve, metresOfWater(30))
      expect(above).toMatchObject({ code: 'pressure-above-curve', unit: 'kPa' })
      // 20 m of water are 196.1 kPa, 30 m are 294.2 kPa.
      expect(above && explainIrrigationFinding(above).message).toMatch(/^a pressure of 294\.2 kPa is above 196 kPa/)
    }
    expect(
      checkEmitterPressure(emitterCurve({ coefficient: 2, pressureUnit: 'kPa', exponent: 0 }), kilopascals(1)),
    ).toEqual([])
    expectInputError(
      () =>
        emitterCurve({
          coefficient: 2,
          pressureUnit: 'kPa',
          exponent: 0,
          holds: { from: kilopascals(9), to: kilopascals(8) },
        }),
      'holds',
    )
  })
  it('is refused where it says nothing', () => {
    const same = { pressure: kilopascals(100), flow: litresPerHour(2) }
    expectInputError(() => fitEmitterCurve({ first: same, second: same }), 'first, second')
    const compensating = emitterCurve({ coefficient: 2, pressureUnit: 'kPa', exponent: 0 })
    expectInputError(() => emitterPressureFor(compensating, litresPerHour(2)), 'curve')
    // Twice the flow at an exponent of a fortieth: 2 to the 40th of the pressure.
    const nearly = (exponent: number) => emitterCurve({ coefficient: 2, pressureUnit: 'kPa', exponent })
    expect(emitterPressureFor(nearly(0.025), litresPerHour(4)) / 2 ** 40).toBeCloseTo(1, 12)
    expectInputError(() => emitterPressureFor(nearly(0.02), litresPerHour(4)), 'curve')
    expectInputError(() => emitterCoefficient(compensating, 'atm' as never), 'pressureUnit')
    expectDomainError(() => emitterFlowAt(compensating, kilopascals(0)), { quantity: 'pressure' })
  })
})

describe('starts of a pump', () => {
  it('are those of the printed example: 25 hp, 4 poles, load 50', () => {
    expect(pumpStarts({ ...motorStartLimitsNema({ horsepower: 25, poles: 4 }), inertia: 50 })).toMatchObject({
      startsPerHour: 2.44,
      minRest: 58,
    })
  })
  // Cells read in two separate reprints of NEMA MG 10, Table 2-3.
  it.each([
    [1, 2, 15, 1.2, 75],
    [1, 4, 30, 5.8, 38],
    [10, 6, 14.2, 137, 41],
    [40, 4, 7.4, 189, 65],
    [250, 2, 1.8, 210, 1000],
    [250, 6, 4.2, 2744, 440],
  ] as const)('%s hp with %s poles may start %s times an hour', (horsepower, poles, starts, product, rest) => {
    expect(motorStartLimitsNema({ horsepower, poles })).toEqual({
      maxStarts: starts,
      maxStartsTimesInertia: product,
      minRest: rest,
    })
  })
  it('fall with power and rise with poles, as all of the table does', () => {
    const powers = [1, 1.5, 2, 3, 5, 7.5, 10, 15, 20, 25, 30, 40, 50, 60, 75, 100, 125, 150, 200, 250]
    const limits = powers.map((horsepower) =>
      ([2, 4, 6] as const).map((poles) => motorStartLimitsNema({ horsepower, poles })),
    )
    limits.forEach((row, i) => {
      row.forEach((limit, j) => {
        const larger = limits[i + 1]?.[j]
        if (larger) {
          expect(larger.maxStarts).toBeLessThan(limit.maxStarts)
          expect(larger.maxStartsTimesInertia).toBeGreaterThan(limit.maxStartsTimesInertia)
          expect(larger.minRest).toBeGreaterThanOrEqual(limit.minRest)
        }
        const slower = row[j + 1]
        if (slower) {
          expect(slower.maxStarts).toBeGreaterThan(limit.maxStarts)
          expect(slower.minRest).toBeLessThan(limit.minRest)
        }
      })
    })
  })
  it('are one for a round when the pump runs on, which then lasts as long as before', () => {
    const round = { zones: 6, runTime: minutes(2), rest: seconds(10), startsPerHour: 3, keepRunning: false }
    expect(pumpSchedule(round)).toMatchObject({ cycle: 770, cyclesPerHour: 0.5 })
    expect(pumpSchedule({ ...round, keepRunning: true })).toMatchObject({ startsPerCycle: 1, cyclesPerHour: 3 })
    // Where starts allow more rounds than the time: 3600 s for rounds of 770 s.
    const often = pumpSchedule({ ...round, startsPerHour: 60 })
    expect(often.cyclesPerHour).toBeCloseTo(3600 / 770, 12)
  })
  it('are refused for a motor that the table does not list', () => {
    expectInputError(() => motorStartLimitsNema({ horsepower: 4, poles: 4 }), 'motor')
    expectInputError(() => motorStartLimitsNema({ horsepower: 5, poles: 8 as never }), 'motor')
    expectDomainError(() => pumpStarts({ ...motorStartLimitsNema({ horsepower: 1, poles: 2 }), inertia: 0 }), {
      quantity: 'inertia of the load',
    })
  })
})
