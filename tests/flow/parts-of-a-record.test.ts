import { boxContainer, brooksCorey1964, vanGenuchten1980 } from 'porewater'
import { describe, expect, it } from 'vitest'
import { riseWithoutEnd } from '../../src/flow/capillary-integral.js'
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
})

describe('a rise without end', () => {
  it('of a curve with a kink is that of its pieces, wherever the kink lies', () => {
    for (const airEntry of [0.4, 3, 70]) {
      const medium = brooksCorey1964({ residual: 0.05, saturated: 0.5, airEntry, lambda: 1 } as never)
      // K falls as the suction to the power of -5 beyond the air entry: 2 + 3 λ (Brooks and Corey, 1964).
      const k = (s: number) => medium.relativeConductivity(s as never)
      expect(k(2 * airEntry)).toBeCloseTo(2 ** -5, 12)
      const share = 0.01
      let beyond = 0
      // In the share x of the air entry in the suction, from 1 down to 0: ds = h / x² dx.
      const parts = 20_000
      for (let i = 0; i < parts; i++) {
        const x = (i + 0.5) / parts
        beyond += airEntry / x ** 2 / (1 + share * x ** -5) / parts
      }
      expect(riseWithoutEnd(medium, share) / (airEntry / 1.01 + beyond)).toBeCloseTo(1, 6)
    }
  })
  it('is the shorter the more flows', () => {
    const medium = vanGenuchten1980({ residual: 0.1, saturated: 0.9, alpha: 0.1, n: 2.2 } as never)
    expect(riseWithoutEnd(medium, 0.02)).toBeLessThan(riseWithoutEnd(medium, 0.01))
  })
})
