import { boxContainer, brooksCorey1964, vanGenuchten1980 } from 'porewater'
import { describe, expect, it } from 'vitest'
import { riseTo, riseWithoutEnd } from '../../src/flow/capillary-integral.js'
import { mediumProblem } from '../../src/flow/inverse/medium-problem.js'
import { simulatedRecord } from '../../src/flow/inverse/simulated-record.js'

// Brands say nothing about values; plain numbers keep the cases readable.
const container = boxContainer({ length: 20, width: 10, height: 10 } as never)
const guess = { residual: 0.1, saturated: 0.9, alpha: 0.1, n: 1.8, saturatedConductivity: 60 }
const numbers = { ...guess, poreConnection: 0.5, bypass: 0, probeOffset: 0, start: 0 }
const shot = { duration: 1800, applied: 0.3, demand: 0 }
const night = { duration: 7200, applied: 0, demand: 0 }
const probe = { height: 3, sensedHeight: 4 }
const record = (more: object = {}) => ({ container, steps: [shot, night], guess, fit: ['alpha'], nodes: 7, ...more })
const simulated = (more: object = {}, look = true) => simulatedRecord(record(more) as never, numbers as never, look)

describe('a record that is simulated', () => {
  it('begins at rest over its base, from which nothing drains', () => {
    const still = (more: object) => simulated({ steps: [night], ...more }).drained[0]
    expect(still({})).toBeCloseTo(0, 6)
    expect(still({ base: 20 })).toBeCloseTo(0, 6)
    // It is drier over a base that sucks, so that less of a shot drains.
    expect(simulated({ base: 20 }).drained[0]).not.toBeCloseTo(simulated().drained[0]!, 3)
  })
  it('reads a probe only where it is asked for and there is one', () => {
    expect(simulated({ probe }).read[0]).toBeGreaterThan(0.3)
    expect([...simulated({ probe }, false).read]).toEqual([0, 0])
    expect([...simulated().read]).toEqual([0, 0])
  })
  it('has the roots, the rim and the dry air that it is told', () => {
    const limits = { h1: 0, h2: 1, h3HighDemand: 300, h3LowDemand: 800, h4: 8000, highDemand: 5, lowDemand: 1 }
    const steps = [{ ...shot, demand: 0.1 }, night]
    const kept = ({ drained }: ReturnType<typeof simulated>) => drained[0]! + drained[1]!
    expect(kept(simulated({ steps, roots: { limits } }))).toBeLessThan(kept(simulated({ roots: { limits } })) - 0.02)
    // A flood of 3 L in a minute stands above the rim, and runs off.
    const flood = [{ duration: 60, applied: 3, demand: 0 }, night]
    expect(kept(simulated({ steps: flood, rim: 0.5 }))).toBeLessThan(kept(simulated({ steps: flood, rim: 20 })) - 0.5)
    // A surface that is dry from 100 cm on gives the air less.
    const air = [{ ...night, evaporation: 0.9 }]
    const high = { ...probe, height: 8 }
    const left = (airDry: number) => simulated({ steps: air, probe: high, airDry }).read[0]!
    expect(left(100)).toBeGreaterThan(left(1e7) + 0.01)
  })
})

describe('differences of a record', () => {
  it('are simulated less measured, in their uncertainties: drains, then readings with the offset of the probe', () => {
    const steps = [shot, night, shot, night]
    const { drained, read } = simulated({ probe, steps })
    const given = record({
      steps,
      fit: ['alpha', 'probeOffset'],
      drain: { volumes: [drained[0]! + 0.02, drained[1], undefined, drained[3]], uncertainty: 0.01 },
      probe: { ...probe, waterContents: [undefined, read[1]! - 0.03, undefined, read[3]], uncertainty: 0.006 },
    })
    const problem = mediumProblem(given as never)
    const out = new Float64Array(5)
    const place = problem.sought.map(({ name, guess: at }) => (name === 'probeOffset' ? 0.012 : at))
    problem.residuals(place, out)
    ;[-2, 0, 0, 7, 2].forEach((off, i) => {
      expect(out[i]).toBeCloseTo(off, 6)
    })
    expect(problem.count).toBe(5)
  })
  it('end with what is known of the start: how far it is from what was told, and from what the medium can hold', () => {
    const drain = { volumes: [0.1, 0.1, 0.1, 0.1] }
    const steps = [shot, night, shot, night]
    const given = record({ steps, drain, start: 0.6, startUncertainty: 0.02, fit: ['start'] })
    const problem = mediumProblem(given as never)
    expect(problem.count).toBe(6)
    const out = new Float64Array(6)
    problem.residuals([0.63], out)
    expect([out[4], out[5]]).toEqual([expect.closeTo(1.5, 9), 0])
    // The medium holds no more than 0.9, less a ten-thousandth.
    problem.residuals([0.92], out)
    expect([out[4], out[5]]).toEqual([expect.closeTo(16, 9), expect.closeTo((0.92 - 0.8999) / 0.02, 9)])
    expect(mediumProblem(record({ steps, drain }) as never).count).toBe(4)
  })
})

describe('a probe that read nothing', () => {
  it('is not looked at, wherever it hangs', () => {
    const given = record({
      drain: { volumes: [0.1, 0.1, 0.1] },
      steps: [shot, night, night],
      probe: { ...probe, height: 50 },
    })
    const out = new Float64Array(3)
    mediumProblem(given as never).residuals([Math.log(0.1)], out)
    expect([...out].every(Number.isFinite)).toBe(true)
  })
})

describe('a rise without end', () => {
  it('of a curve with a kink is that of its pieces, wherever the kink lies', () => {
    // Also just inside a piece between powers of ten, where no node of a quadrature would see it.
    for (const [airEntry, share] of [
      [0.4, 0.01],
      [3, 0.01],
      [70, 0.01],
      [9.97, 1],
      [99.8, 1],
    ] as const) {
      const medium = brooksCorey1964({ residual: 0.05, saturated: 0.5, airEntry, lambda: 1 } as never)
      // K falls as the suction to the power of -5 beyond the air entry: 2 + 3 λ (Brooks and Corey, 1964).
      const k = (s: number) => medium.relativeConductivity(s as never)
      expect(k(2 * airEntry)).toBeCloseTo(2 ** -5, 12)
      let beyond = 0
      // In the share x of the air entry in the suction, from 1 down to 0: ds = h / x² dx.
      const parts = 20_000
      for (let i = 0; i < parts; i++) {
        const x = (i + 0.5) / parts
        beyond += airEntry / x ** 2 / (1 + share * x ** -5) / parts
      }
      expect(riseWithoutEnd(medium, share) / (airEntry / (1 + share) + beyond)).toBeCloseTo(1, 7)
      // To the tenfold, and from there on as the power of the suction alone: all but s⁻⁴ / 4 of that.
      const rest = airEntry ** 5 / share / (4 * (10 * airEntry) ** 4)
      const [to, whole] = [riseTo(medium, share, 10 * airEntry), airEntry / (1 + share) + beyond]
      expect((whole - to) / rest).toBeCloseTo(1, 2)
    }
  })
  it('to a suction counts each side of a kink, wherever it lies', () => {
    for (const airEntry of [12, 99.8, 100.2]) {
      const medium = brooksCorey1964({ residual: 0.05, saturated: 0.5, airEntry, lambda: 1 } as never)
      let wanted = airEntry / 2
      for (let i = 0; i < 20_000; i++) {
        // Again in the share of the air entry in the suction.
        const x = airEntry / 1000 + ((i + 0.5) / 20_000) * (1 - airEntry / 1000)
        wanted += ((1 - airEntry / 1000) * airEntry) / x ** 2 / (1 + x ** -5) / 20_000
      }
      expect(riseTo(medium, 1, 1000) / wanted).toBeCloseTo(1, 6)
      // Nothing flows: it is the suction itself.
      expect(riseTo(medium, 0, 1000)).toBe(1000)
    }
    // Below the kink all is as at saturation.
    const coarse = brooksCorey1964({ residual: 0.05, saturated: 0.5, airEntry: 30, lambda: 1 } as never)
    expect(riseTo(coarse, 0.25, 20)).toBeCloseTo(20 / 1.25, 10)
  })
  it('ends where nothing conducts any more', () => {
    // Of pores that are long empty at a centimetre no number is left: all that rises does so below.
    const dry = vanGenuchten1980({ residual: 0.1, saturated: 0.9, alpha: 1e20, n: 12 } as never)
    expect(dry.relativeConductivity(1 as never)).toBe(0)
    expect(riseWithoutEnd(dry, 0.5)).toBe(riseTo(dry, 0.5, 1))
  })
  it('goes on over decades that bring next to nothing, where each brings more than the last', () => {
    // Conducts all up to a centimetre, 1e-20 of it up to 1e30 cm, and nothing beyond: 1 / (1 + e) and nearly 1e30 / (1 + e / 1e-20).
    const thin = { relativeConductivity: (s: number) => (s <= 1 ? 1 : s <= 1e30 ? 1e-20 : 0), breakpoints: [1, 1e30] }
    expect(riseWithoutEnd(thin as never, 0.5) / (1 / 1.5 + 1e30 / (1 + 0.5e20))).toBeCloseTo(1, 10)
  })
  it('is the shorter the more flows', () => {
    const medium = vanGenuchten1980({ residual: 0.1, saturated: 0.9, alpha: 0.1, n: 2.2 } as never)
    expect(riseWithoutEnd(medium, 0.02)).toBeLessThan(riseWithoutEnd(medium, 0.01))
  })
})
