import fc from 'fast-check'
import {
  type ApplicationRate,
  appliedForLeaching,
  checkSaltBalance,
  cubicMetres,
  type DrainEC,
  days,
  decisiemensPerMetre,
  dischargeLoad,
  drainFraction,
  explainIrrigationFinding,
  extractECFromLeaching,
  feedECForDrain,
  fieldLeachingRequirement,
  flushedEC,
  flushVolume,
  followReservoir,
  fraction,
  hectares,
  inDays,
  inPercent,
  leachingOfInfiltration,
  leachingRequirementFrequent,
  litres,
  meanDrainEC,
  milligramsPerLitreOfSolids,
  millimetresOfDepth,
  millimetresPerHour,
  type ReservoirEvent,
  reservoirCourse,
  reservoirRun,
  saltTolerance,
  steadyDrainEC,
  steadyDrainFraction,
  timeToEC,
  yieldUnderSalt,
  zeroYieldEC,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { checkPublished } from '../support/published.js'
import { expectDomainError, expectInputError } from '../support/refusals.js'

const ec = (value: number) => decisiemensPerMetre(value) as never
const per = (value: number) => fraction(value) as never

checkPublished('irrigation', 'leaching.fraction', ({ drain, applied }) => ({
  LF: drainFraction({ applied: litres(applied), drained: litres(drain) }),
}))
checkPublished('irrigation', 'drain.steady', ({ EC_in, EC_drain, EC_uptake }) => ({
  LF: steadyDrainFraction({ feedEC: ec(EC_in), drainEC: ec(EC_drain), uptakeEC: ec(EC_uptake) }),
}))
checkPublished('irrigation', 'reservoir.constant', ({ C0, Cin, W, D, I, t, Cup }) => {
  const course = reservoirCourse({
    start: ec(C0),
    feedEC: ec(Cin),
    uptakeEC: ec(Cup),
    rootZoneWater: litres(W),
    dailyApplied: litres(I),
    dailyDrained: litres(D),
    time: days(t),
  })
  return { C: course.ec, C_steady: course.steady, tau: inDays(course.timeConstant) }
})
checkPublished('irrigation', 'reservoir.step', ({ C0, W0, Cin, I, ET, Wmax, Cup }) => {
  const reservoir = followReservoir({ water: litres(W0), ec: ec(C0) })
  const event = { applied: litres(I), feedEC: ec(Cin), use: litres(ET), uptakeEC: ec(Cup), maxWater: litres(Wmax) }
  const [state, { drained }] = reservoir.step(reservoir.start, event)
  return { C: state.ec, W: state.water, drain: drained, salt: state.ec * state.water }
})
checkPublished('irrigation', 'reservoir.run', ({ C0, W0, Cin, I, ET, Wmax, n }) => {
  const event = { applied: litres(I), feedEC: ec(Cin), use: litres(ET), maxWater: litres(Wmax) }
  const run = reservoirRun(
    { water: litres(W0), ec: ec(C0) },
    Array.from({ length: n }, () => event),
  )
  const drain = run.drained.at(-1) as number
  return { C: run.state.ec, W: run.state.water, drain, drain_fraction: drain / I }
})
checkPublished('irrigation', 'flush.concentration', ({ C0, Cin, V, W }) => ({
  C: flushedEC({ start: ec(C0), feedEC: ec(Cin), rootZoneWater: litres(W), volume: litres(V) }),
}))
checkPublished('irrigation', 'flush.volume', ({ C0, Cin, Ct, W }) => ({
  V: flushVolume({ start: ec(C0), feedEC: ec(Cin), target: ec(Ct), rootZoneWater: litres(W) }),
}))
checkPublished('irrigation', 'leaching.requirement', ({ ECw, ECe }) => ({
  LR: fieldLeachingRequirement({ irrigationEC: ec(ECw), extractEC: ec(ECe) }),
}))
checkPublished('irrigation', 'leaching.requirement.drip', ({ ECw, maxECe }) => ({
  LR: leachingRequirementFrequent({ waterEC: ec(ECw), zeroYieldEC: ec(maxECe) }),
}))
checkPublished('irrigation', 'leaching.applied', ({ ET, LR }) => ({
  AW: appliedForLeaching({ use: millimetresOfDepth(ET), leachingFraction: per(LR) }),
}))
checkPublished('irrigation', 'leaching.infiltration', ({ ET, rate, time }) => ({
  LF: leachingOfInfiltration({
    infiltrationRate: millimetresPerHour<ApplicationRate>((rate * 10) / 24),
    time: days(time),
    use: millimetresOfDepth(ET * 10),
  }),
}))
checkPublished('irrigation', 'salt.threshold', ({ crop }) => {
  const { thresholdEC, lossPerDecisiemens } = saltTolerance(crop)
  return { a: thresholdEC, b: lossPerDecisiemens }
})
checkPublished('irrigation', 'salt.yield', ({ ECe, a, b }) => ({
  Yr: inPercent(yieldUnderSalt({ extractEC: ec(ECe), thresholdEC: ec(a), lossPerDecisiemens: b })),
}))
checkPublished('irrigation', 'salt.zero_yield', ({ a, b }) => ({
  ECe: zeroYieldEC({ thresholdEC: ec(a), lossPerDecisiemens: b }),
}))

const salinities = fc.double({ min: 0, max: 10, noNaN: true })
const amounts = fc.double({ min: 0.01, max: 20, noNaN: true })
const shares = fc.double({ min: 0.02, max: 0.98, noNaN: true })

describe('a steady root zone', () => {
  it('agrees whether asked for feed, drain or drain fraction', () => {
    fc.assert(
      fc.property(salinities, salinities, shares, (uptake, above, share) => {
        fc.pre(above > 0.01)
        const drainEC = ec(uptake + above)
        const feedEC = feedECForDrain({ drainEC, drainFraction: per(share), uptakeEC: ec(uptake) })
        expect(steadyDrainEC({ feedEC, drainFraction: per(share), uptakeEC: ec(uptake) })).toBeCloseTo(drainEC, 9)
        expect(steadyDrainFraction({ feedEC, drainEC, uptakeEC: ec(uptake) })).toBeCloseTo(share, 9)
      }),
    )
  })
  it('is refused where none exists', () => {
    expectInputError(() => steadyDrainFraction({ feedEC: ec(3), drainEC: ec(2) }), 'drainEC')
    expectInputError(() => steadyDrainFraction({ feedEC: ec(2), drainEC: ec(4), uptakeEC: ec(3) }), 'drainEC')
    expectInputError(() => steadyDrainFraction({ feedEC: ec(0), drainEC: ec(0) }), 'drainEC')
    expectInputError(() => steadyDrainEC({ feedEC: ec(1), drainFraction: per(0.1), uptakeEC: ec(3) }), 'uptakeEC')
    expectDomainError(() => steadyDrainEC({ feedEC: ec(1), drainFraction: per(0) }), { quantity: 'drain fraction' })
    expectInputError(() => steadyDrainFraction({ feedEC: ec(2), drainEC: ec(1), uptakeEC: ec(1.5) }), 'drainEC')
    expectInputError(() => drainFraction({ applied: litres(1), drained: litres(1.2) }), 'drained')
  })
  it('may drain all or nothing, and may be without salt', () => {
    expect(drainFraction({ applied: litres(1), drained: litres(1) })).toBe(1)
    expect(steadyDrainFraction({ feedEC: ec(2), drainEC: ec(2), uptakeEC: ec(1) })).toBe(1)
    expect(steadyDrainFraction({ feedEC: ec(2), drainEC: ec(4), uptakeEC: ec(2) })).toBe(0)
    // Plants that take 2 dS/m with half of the water take all of 1 dS/m in the whole.
    expect(steadyDrainEC({ feedEC: ec(1), drainFraction: per(0.5), uptakeEC: ec(2) })).toBe(0)
  })
})

describe('the salt balance', () => {
  const day = { applied: litres(2), rootZoneWater: litres(6) }
  it('counts every salt once: in is out, taken and stored', () => {
    fc.assert(
      fc.property(amounts, shares, salinities, salinities, salinities, (applied, share, feed, drain, uptake) => {
        const balance = checkSaltBalance({
          applied: litres(applied),
          drained: litres(applied * share),
          feedEC: ec(feed),
          drainEC: ec(drain),
          uptakeEC: ec(uptake),
          rootZoneWater: litres(6),
        })
        const { saltIn, saltOut, saltTaken, saltStored } = balance
        const most = Math.max(saltIn, saltOut, saltTaken)
        expect(Math.abs(saltIn - saltOut - saltTaken - saltStored)).toBeLessThanOrEqual(1e-12 * most)
        const doubted = balance.findings.some(({ code }) => code === 'ec-doubted')
        expect(balance.findings.length).toBe(balance.steady && !doubted ? 0 : 1)
      }),
    )
  })
  it('is quiet at a steady state, and there the ratio is the drain fraction', () => {
    const balance = checkSaltBalance({ ...day, drained: litres(1), feedEC: ec(2.6), drainEC: ec(5.2) })
    expect(balance).toMatchObject({ steady: true, findings: [], drainFraction: 0.5, steadyFraction: 0.5 })
  })
  it('was drawn from a drain EC of 0.0, of a dead sensor', () => {
    const told = (feed: number, drain: number, drained = 1) =>
      checkSaltBalance({ ...day, drained: litres(drained), feedEC: ec(feed), drainEC: ec(drain) }).findings
    const [dead] = told(2.6, 0)
    expect(dead).toEqual({ code: 'ec-doubted', level: 'caution', about: 'drainEC', value: 0, beside: 2.6 })
    expect(explainIrrigationFinding(dead!).message).toMatch(
      /drain EC of 0\.00 dS\/m with a feed of 2\.60 dS\/m .*by hand/,
    )
    expect(told(2.6, 0.099)[0]).toMatchObject({ code: 'ec-doubted' })
    expect(told(2.6, 0.1)[0]).toMatchObject({ code: 'not-steady' })
    // Both sensors dead: nothing that drains is purer than the purest water, whatever was given.
    expect(told(0, 0)[0]).toMatchObject({ code: 'ec-doubted', about: 'drainEC', value: 0, beside: 0 })
    expect(told(0.005, 0.009)[0]).toMatchObject({ code: 'ec-doubted', about: 'drainEC' })
    expect(told(0.005, 0.02)[0]).toMatchObject({ code: 'not-steady' })
    // Rain that is given drains as rain, and what did not drain has no EC.
    expect(told(0.09, 0.09)[0]).toMatchObject({ code: 'not-steady' })
    expect(told(2.6, 0, 0)[0]).toMatchObject({ code: 'not-steady' })
  })
  it('was drawn from an EC in mS/m, which is saltier than the sea', () => {
    const told = (feed: number, drain: number) =>
      checkSaltBalance({ ...day, drained: litres(1), feedEC: ec(feed), drainEC: ec(drain) }).findings[0]
    expect(told(180, 200)).toMatchObject({ code: 'ec-doubted', about: 'feedEC', value: 180 })
    expect(told(2.6, 150)).toMatchObject({ code: 'ec-doubted', about: 'drainEC', value: 150 })
    expect(explainIrrigationFinding(told(180, 200)!).message).toContain('a number in mS/m would be 1.80 dS/m')
    expect(told(4, 15)?.code).toBe('not-steady')
    expect(told(50, 50)?.code).not.toBe('ec-doubted')
  })
  it('was drawn from a feed EC of 0.0, and asked for no drain at all', () => {
    const [dead] = checkSaltBalance({ ...day, drained: litres(1), feedEC: ec(0), drainEC: ec(4) }).findings
    expect(dead).toMatchObject({ code: 'ec-doubted', about: 'feedEC', value: 0, beside: 4 })
    expect(explainIrrigationFinding(dead!).message).toMatch(/feed EC of 0\.00 dS\/m .* unless you are flushing/)
    expectInputError(() => steadyDrainFraction({ feedEC: ec(0), drainEC: ec(4) }), 'feedEC')
    expect(steadyDrainFraction({ feedEC: ec(0.01), drainEC: ec(4) })).toBe(0.0025)
  })
  it('says that salts are stored, or lost', () => {
    const [stored] = checkSaltBalance({ ...day, drained: litres(0), feedEC: ec(2.6), drainEC: ec(5.2) }).findings
    expect(stored).toMatchObject({ code: 'not-steady', level: 'caution' })
    expect(stored && explainIrrigationFinding(stored).message).toMatch(/being stored/)
    const lost = checkSaltBalance({ ...day, drained: litres(1.5), feedEC: ec(1), drainEC: ec(5) })
    expect(lost.findings.map(explainIrrigationFinding)[0]?.message).toMatch(/being lost/)
    expect(lost.saltStored).toBeLessThan(0)
  })
  it('takes what plants take from the water that did not drain, and heads for a drain without it (by hand)', () => {
    const balance = checkSaltBalance({
      ...day,
      drained: litres(0.5),
      feedEC: ec(3),
      drainEC: ec(4),
      uptakeEC: ec(1),
    })
    // In 6, out 2, taken 1 · 1.5; stored 2.5 in 6 L. Steady: (3 - 1) / (4 - 1); heading for (3 - 0.75 · 1) / 0.25.
    expect(balance).toMatchObject({ saltIn: 6, saltOut: 2, saltTaken: 1.5, saltStored: 2.5, steady: false })
    expect(balance.rise).toBeCloseTo(2.5 / 6, 12)
    expect(balance.steadyFraction).toBeCloseTo(2 / 3, 12)
    expect(balance.headingFor).toBeCloseTo(9, 12)
    expect(balance.findings.map(explainIrrigationFinding)[0]?.message).toMatch(
      /25\.0 % drains .* changes by 0\.42 dS\/m .* heading for 9\.0 dS\/m .* the 67 % that the ECs suggest/,
    )
  })
  it('names no drain fraction and no end where there is none', () => {
    const balance = (drained: number, feed: number, drain: number, uptake: number) => {
      const { steadyFraction, headingFor, findings } = checkSaltBalance({
        ...day,
        drained: litres(drained),
        feedEC: ec(feed),
        drainEC: ec(drain),
        uptakeEC: ec(uptake),
      })
      return [steadyFraction, headingFor, findings.map((finding) => explainIrrigationFinding(finding).message).join()]
    }
    expect(balance(0.5, 3, 2, 0).slice(0, 2)).toEqual([undefined, 12])
    expect(balance(0.5, 2, 4, 3)).toEqual([undefined, undefined, expect.not.stringMatching(/suggest|heading/)])
    expect(balance(0.5, 3, 1, 2)[0]).toBeUndefined()
    expect(balance(0, 3, 4, 0)).toEqual([0.75, undefined, expect.not.stringMatching(/heading/)])
    expect(balance(0.5, 2, 2, 1)[0]).toBe(1)
    expect(balance(0.5, 2, 4, 2)[0]).toBe(0)
    expect(balance(1, 1, 2, 2)[1]).toBe(0)
  })
  it('is steady while no more than a tenth of what came in is stored or lost', () => {
    const steady = (drain: number) =>
      checkSaltBalance({ ...day, drained: litres(1), feedEC: ec(5), drainEC: ec(drain) }).steady
    expect([8.9, 9, 11, 11.1].map(steady)).toEqual([false, true, true, false])
  })
})

describe('a well-mixed root zone', () => {
  it('follows the differential equation of its salts (Runge–Kutta as oracle)', () => {
    fc.assert(
      fc.property(salinities, salinities, amounts, amounts, shares, (start, feed, water, applied, share) => {
        const drained = applied * share
        fc.pre(drained / water < 5)
        const slope = (c: number) => (feed * applied - c * drained) / water
        let c = start
        const n = 2000
        for (let i = 0; i < n; i++) {
          const h = 3 / n
          const a = slope(c)
          const b = slope(c + (h / 2) * a)
          const d = slope(c + (h / 2) * b)
          c += (h / 6) * (a + 2 * b + 2 * d + slope(c + h * d))
        }
        const course = reservoirCourse({
          start: ec(start),
          feedEC: ec(feed),
          rootZoneWater: litres(water),
          dailyApplied: litres(applied),
          dailyDrained: litres(drained),
          time: days(3),
        })
        expect(Math.abs(course.ec - c)).toBeLessThanOrEqual(1e-8 * (1 + c))
      }),
      { numRuns: 50 },
    )
  })
  it('comes to a wanted EC in the time that is foretold', () => {
    fc.assert(
      fc.property(salinities, salinities, shares, amounts, (start, steady, way, constant) => {
        fc.pre(Math.abs(start - steady) > 0.1)
        const target = start + (steady - start) * way
        const time = timeToEC({
          start: ec(start),
          target: ec(target),
          steady: ec(steady),
          timeConstant: days(constant),
        })
        expect(steady + (start - steady) * Math.exp(-inDays(time) / constant)).toBeCloseTo(target, 9)
      }),
    )
    expectInputError(() => timeToEC({ start: ec(3), target: ec(5), steady: ec(4), timeConstant: days(1) }), 'target')
  })
  it('loses no water and no salt in any run of events', () => {
    const events = fc.array(
      fc.record({
        applied: fc.double({ min: 0, max: 3, noNaN: true }).map(litres),
        feedEC: salinities.map(ec),
        use: fc.double({ min: 0, max: 0.3, noNaN: true }).map(litres),
        uptakeEC: fc.double({ min: 0, max: 1, noNaN: true }).map(ec),
        maxWater: fc.double({ min: 4, max: 8, noNaN: true }).map(litres),
      }),
      { maxLength: 12 },
    )
    fc.assert(
      fc.property(events, fc.double({ min: 1, max: 10, noNaN: true }), (list, start) => {
        const before = { water: litres(6), ec: ec(start) }
        const run = (() => {
          try {
            return reservoirRun(before, list as ReservoirEvent[])
          } catch (error) {
            expect((error as { code: string }).code).toBe('bad-input')
            return undefined
          }
        })()
        fc.pre(run !== undefined)
        if (!run) return
        const used = list.reduce((sum, event) => sum + event.use, 0)
        expect(Math.abs(6 + run.totalApplied - used - run.totalDrained - run.state.water)).toBeLessThan(1e-12 * 60)
        const all = 6 * start + run.saltIn
        const stored = run.state.ec * run.state.water - 6 * start
        expect(Math.abs(run.saltIn - run.saltOut - run.saltTaken - stored)).toBeLessThanOrEqual(1e-12 * all)
      }),
    )
  })
  it('tends to the feed over the drain fraction: 13 for 2.6 at a fifth', () => {
    const event = { applied: litres(0.4), feedEC: ec(2.6), use: litres(0.32), maxWater: litres(6) }
    expect(reservoirRun({ water: litres(6), ec: ec(2.6) }, Array(3000).fill(event)).state.ec).toBeCloseTo(13, 6)
  })
  it('is flushed to the target by the volume that is foretold', () => {
    fc.assert(
      fc.property(salinities, salinities, shares, amounts, (start, feed, way, water) => {
        fc.pre(Math.abs(start - feed) > 0.1)
        const target = ec(start + (feed - start) * way)
        const root = { start: ec(start), feedEC: ec(feed), rootZoneWater: litres(water) }
        expect(flushedEC({ ...root, volume: flushVolume({ ...root, target }) })).toBeCloseTo(target, 9)
      }),
    )
  })
  it('refuses what cannot be', () => {
    const root = { water: litres(1), ec: ec(1) }
    const event = { applied: litres(0), feedEC: ec(1), use: litres(0.5), maxWater: litres(6) }
    expectInputError(() => followReservoir(root).step(root, { ...event, use: litres(1) }), 'use')
    expectInputError(() => followReservoir(root).step(root, { ...event, uptakeEC: ec(3) }), 'uptakeEC')
    expectInputError(
      () => flushVolume({ start: ec(6), feedEC: ec(2), target: ec(1), rootZoneWater: litres(6) }),
      'target',
    )
    const course = { start: ec(1), feedEC: ec(1), rootZoneWater: litres(6), dailyApplied: litres(1), time: days(9) }
    expectInputError(() => reservoirCourse({ ...course, dailyDrained: litres(2) }), 'dailyDrained')
    expectInputError(() => reservoirCourse({ ...course, dailyDrained: litres(0.9), uptakeEC: ec(40) }), 'uptakeEC')
    expectDomainError(() => reservoirCourse({ ...course, dailyDrained: litres(0) }), { quantity: 'drain' })
  })
})

describe('the leaching requirement', () => {
  it('is undone by the EC of the extract', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 5, noNaN: true }),
        fc.double({ min: 0.5, max: 9, noNaN: true }),
        (w, e) => {
          fc.pre(w < 2.49 * e)
          const need = fieldLeachingRequirement({ irrigationEC: ec(w), extractEC: ec(e) })
          expect(need).toBeLessThan(1)
          expect(extractECFromLeaching({ irrigationEC: ec(w), leachingFraction: per(need) })).toBeCloseTo(e, 9)
        },
      ),
    )
  })
  it('is not attainable with water of 2.5 times the tolerated EC, and says so', () => {
    for (const water of [2.5, 4, 5, 8])
      expectInputError(() => fieldLeachingRequirement({ irrigationEC: ec(water), extractEC: ec(1) }), 'irrigationEC')
    expectInputError(() => leachingRequirementFrequent({ waterEC: ec(26), zeroYieldEC: ec(13) }), 'waterEC')
    expectInputError(
      () =>
        leachingOfInfiltration({
          infiltrationRate: millimetresPerHour<ApplicationRate>(1),
          time: days(1),
          use: millimetresOfDepth(30),
        }),
      'use',
    )
  })
})

describe('yield and salinity', () => {
  it('is full up to the threshold and nothing from the zero-yield EC on', () => {
    for (const crop of ['tomato', 'cucumber', 'strawberry', 'squash, zucchini', 'tomato, cherry']) {
      const tolerance = saltTolerance(crop)
      const at = (value: number) => yieldUnderSalt({ ...tolerance, extractEC: ec(value) })
      expect(at(tolerance.thresholdEC)).toBe(1)
      expect(at(zeroYieldEC(tolerance))).toBeCloseTo(0, 12)
      expect(at(zeroYieldEC(tolerance) + 1)).toBe(0)
    }
    expectInputError(() => saltTolerance('toString'), 'crop')
  })
})

describe('drain records', () => {
  it('weight EC by volume', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(amounts, salinities), { minLength: 1, maxLength: 20 }), (portions) => {
        const volumes = portions.map(([v]) => v)
        const conductivities = portions.map(([, c]) => Math.min(50, Math.max(0.01, c)))
        const mean: DrainEC = meanDrainEC({ volumes, conductivities })
        expect(mean).toBeGreaterThanOrEqual(Math.min(...conductivities) - 1e-9)
        expect(mean).toBeLessThanOrEqual(Math.max(...conductivities) + 1e-9)
      }),
    )
    expectInputError(() => meanDrainEC({ volumes: [1], conductivities: [] }), 'volumes')
    expectInputError(() => meanDrainEC({ volumes: [0], conductivities: [3] }), 'volumes')
    // A sensor that died for one portion had thinned the mean of the day from 4.2 to 2.8 dS/m.
    expectInputError(() => meanDrainEC({ volumes: [0.2, 0.1], conductivities: [4.2, 0] }), 'conductivities')
    expect(meanDrainEC({ volumes: [0.2, 0], conductivities: [4.2, 0] })).toBe(4.2)
  })
  it('hold what leaves: 100 m³ of 100 mg/L are 10 kg', () => {
    expect(
      dischargeLoad({
        drained: cubicMetres(100),
        area: hectares(2),
        concentration: milligramsPerLitreOfSolids(100),
      }),
    ).toEqual({ depth: 5, mass: 10000, perHectare: 5 })
  })
})
