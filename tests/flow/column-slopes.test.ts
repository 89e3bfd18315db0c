import fc from 'fast-check'
import {
  boxContainer,
  type Container,
  centimetres,
  centimetresOfSuction,
  centimetresPerHour,
  type FeddesLimits,
  frustumContainer,
  perCentimetre,
  type RichardsSurroundings,
  vanGenuchten1980,
  waterContent,
  wettingCurveKoolParker1987,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { type Conditions, columnEquations, type Manner } from '../../src/flow/column/equations/equations.js'
import { columnHistory, follow, forget } from '../../src/flow/column/scanning/history.js'
import { richardsColumn } from '../../src/flow/richards-column.js'

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true })

/** The lower layer drains and wets on two curves where `scans`, the upper always on one. */
function columnOf(containers: readonly Container[], scans: boolean, around: RichardsSurroundings) {
  const drying = { residual: waterContent(0.08), saturated: waterContent(0.88), alpha: perCentimetre(0.09), n: 1.7 }
  const coarse = { residual: waterContent(0.05), saturated: waterContent(0.7), alpha: perCentimetre(0.2), n: 2.4 }
  const layers = containers.map((container, layer) => ({
    container,
    medium: vanGenuchten1980(layer === 0 ? drying : coarse),
    saturatedConductivity: centimetresPerHour(layer === 0 ? 40 : 300),
    ...(scans && layer === 0 ? { wetting: wettingCurveKoolParker1987(drying) } : {}),
  }))
  return richardsColumn(layers, { nodes: 9, ...around })
}

const box = boxContainer({ length: centimetres(20), width: centimetres(10), height: centimetres(10) })
const cone = frustumContainer({
  bottomDiameter: centimetres(10),
  topDiameter: centimetres(16),
  height: centimetres(12),
})
const limits = { h1: 2, h2: 12, h3HighDemand: 60, h3LowDemand: 90, h4: 700, highDemand: 5, lowDemand: 1 }
const rooted: RichardsSurroundings = { roots: { limits: limits as unknown as FeddesLimits }, rim: centimetres(1) }

const setting = fc.record({
  containers: fc.constantFrom([box], [cone], [box, box]),
  scans: fc.boolean(),
  around: fc.constantFrom<RichardsSurroundings>(
    rooted,
    { ...rooted, base: 'closed', airDry: centimetresOfSuction(200) },
    { ...rooted, base: centimetresOfSuction(4) },
    { ...rooted, surface: centimetresOfSuction(7) },
  ),
  manner: fc.constantFrom<Manner>('averaged', 'nodal', 'upstream'),
  // Films and water that stands, wet, moist and dry, with jumps from node to node.
  suctions: fc.array(fc.oneof(number(-3, 0.2), number(0.2, 30), number(1, 150), number(30, 900)), {
    minLength: 17,
    maxLength: 17,
  }),
  before: fc.array(number(0.5, 80), { minLength: 17, maxLength: 17 }),
  smooth: fc.boolean(),
  // Seconds in which points came from a little less than they hold; zero where nothing fills.
  fills: fc.constantFrom(0, 50),
  pull: number(0.1, 20),
})

type Setting = typeof setting extends fc.Arbitrary<infer C> ? C : never

function made({ containers, scans, around, manner, suctions, before, smooth, fills, pull }: Setting) {
  const { grid, media, ends, sink } = columnOf(containers, scans, around)
  const history = columnHistory(grid, media, 1e-3)
  if (history !== undefined) {
    forget(history, false)
    follow(
      history,
      grid,
      Float64Array.from(grid.heights, (_, i) => before[i]!),
    )
    follow(
      history,
      grid,
      Float64Array.from(grid.heights, (_, i) => before[i]! / 3),
    )
  }
  const equations = columnEquations(grid, media, ends, manner, history)
  const start = suctions[0]!
  // Gentle slopes are trusted, jumps are not. Neighbours that are level have a slope of their own, which differences do not see.
  const s = Float64Array.from(grid.heights, (height, i) =>
    smooth ? start + 1.6 * height : suctions[i]! + 0.017 * (i % 4),
  )
  equations.hold(s)
  const during: Conditions = {
    applied: 2,
    evaporation: 0.01,
    sink: sink(pull / 3600),
  }
  if (fills > 0) {
    equations.store(s)
    equations.fillFrom(
      equations.points.at.waterContent.map((content, p) => content - 0.002 * (1 + (p % 3))),
      fills,
    )
  }
  return { grid, media, ends, equations, s, during }
}

describe('the balance of a column', () => {
  it('has the slopes that differences of it give, seen in any manner', () => {
    let compared = 0
    let apart = 0
    fc.assert(
      fc.property(setting, (given) => {
        const { equations, s, during } = made(given)
        const { nodes, lower, diagonal, upper, net, terms, heldBase, heldTop } = equations
        const dt = 50
        const left = (at: Float64Array): Float64Array => {
          equations.evaluate(at, during)
          return net.map((inflow, i) => terms.water[i]! - dt * inflow)
        }
        const here = left(s)
        equations.assemble(dt)
        const slopes = [lower, diagonal, upper].map((list) => list.slice())
        for (let j = 0; j < nodes; j++) {
          const step = 1e-5 * Math.max(Math.abs(s[j]!), 0.1)
          const [more, less] = [1, -1].map((sign) => left(s.map((value, i) => (i === j ? value + sign * step : value))))
          for (let i = Math.max(j - 1, 0); i <= Math.min(j + 1, nodes - 1); i++) {
            if ((heldBase && i === 0) || (heldTop && i === nodes - 1)) continue
            const [ahead, behind] = [(more![i]! - here[i]!) / step, (here[i]! - less![i]!) / step]
            const size = Math.max(Math.abs(ahead), Math.abs(behind), 1e-3 * Math.abs(diagonal[i]!), 1e-4)
            // At a kink there are two slopes.
            if (Math.abs(ahead - behind) > 1e-3 * size) continue
            compared++
            const own = slopes[j - i + 1]![i]!
            if (Math.abs(own - (ahead + behind) / 2) > 5e-3 * size) apart++
          }
        }
      }),
      { numRuns: 60 },
    )
    expect(compared).toBeGreaterThan(20)
    expect(apart).toBe(0)
  })
  it('moves within it by slopes as by working it out anew, and loses no water by it', () => {
    fc.assert(
      fc.property(setting, (given) => {
        const { equations, s, during } = made({ ...given, smooth: true })
        const { nodes, net, terms } = equations
        // At saturation there are two slopes.
        fc.pre(s.every((value) => Math.abs(value) > 1e-2))
        equations.evaluate(s, during)
        equations.carryOn(
          s.map(() => 0),
          during,
        )
        const still = net.slice()
        equations.evaluate(s, during)
        expect(still).toEqual(net)
        const before = terms.water.slice()
        const small = s.map((value, i) => 1e-5 * Math.max(Math.abs(value), 0.1) * (i % 2 ? 1 : -0.6))
        equations.carryOn(small, during)
        const brought = Math.max(...terms.water.map((one, i) => Math.abs(one - before[i]!)))
        const [water, taken, flows] = [terms.water.slice(), terms.taken.slice(), net.slice()]
        const inflow = terms.entered - terms.runOff - terms.evaporated - terms.drained
        if (!equations.heldBase && !equations.heldTop) {
          const kept = net.reduce((sum, one) => sum + one, 0) + taken.reduce((sum, one) => sum + one, 0)
          expect(kept).toBeCloseTo(inflow, 6)
        }
        equations.evaluate(
          s.map((value, i) => value + small[i]!),
          during,
        )
        const scale = 1e-4 * (1 + Math.max(...net.map(Math.abs)))
        for (let i = 0; i < nodes; i++) {
          expect(Math.abs(water[i]! - terms.water[i]!)).toBeLessThan(0.01 * brought + 1e-13 * terms.water[i]!)
          expect(Math.abs(taken[i]! - terms.taken[i]!)).toBeLessThan(1e-6)
          expect(Math.abs(flows[i]! - net[i]!)).toBeLessThan(scale)
        }
      }),
      { numRuns: 60 },
    )
  })
  /** Suctions that rise or fall over each element by some share more than is trusted wholly; the lowest of all is told. */
  const partly = (lowest: number, lengths: Float64Array, shares: readonly number[]): Float64Array => {
    const s = [lowest]
    lengths.forEach((length, e) => {
      const last = s[e]!
      const over = 1 + shares[e % shares.length]!
      // Up by what the lower end allows, down to where the upper one would have allowed it.
      if (e % 2 === 0) s.push(last + over * (4 * length + 0.4 * Math.max(last, 0)))
      else s.push(last > over * 4 * length ? (last - over * 4 * length) / (1 + 0.4 * over) : last - over * 4 * length)
    })
    return Float64Array.from(s)
  }
  it.each([
    ['under water and just above it', [box], false, rooted, -7, [0.3, 0.7]],
    ['where roots lack air', [box], false, rooted, 2.5, [0.5, 0.25, 0.75]],
    ['where roots lack water', [box], false, { ...rooted, base: 'closed' } as const, 70, [0.2, 0.6]],
    ['where an element is dry', [box], false, rooted, 115, [0.15, 0.45, 0.3]],
    ['of two layers, one of which scans', [box, box], true, rooted, 4, [0.35, 0.65, 0.5]],
    ['of a cone that fills', [cone], false, rooted, 6, [0.6, 0.3, 0.45]],
  ] as const)('has them %s, where elements are trusted by a part', (_, containers, scans, around, lowest, shares) => {
    const given = { manner: 'averaged', smooth: false, pull: 5, fills: containers[0] === cone ? 50 : 0 } as const
    const { equations, during } = made({
      ...given,
      containers: [...containers],
      scans,
      around,
      suctions: Array(17).fill(20),
      before: Array(17).fill(30),
    })
    const { nodes, grid, terms, net, lower, diagonal, upper } = equations
    const s = partly(lowest, grid.lengths, shares)
    const dt = 50
    const left = (at: Float64Array): Float64Array => {
      equations.evaluate(at, during)
      return net.map((inflow, i) => terms.water[i]! - dt * inflow)
    }
    left(s)
    expect(terms.trust.filter((trust) => trust > 0 && trust < 1).length).toBeGreaterThan(nodes / 2)
    equations.assemble(dt)
    const slopes = [lower, diagonal, upper].map((list) => list.slice())
    for (let j = 0; j < nodes; j++) {
      const step = 1e-6 * Math.max(Math.abs(s[j]!), 1)
      const [more, less] = [1, -1].map((sign) => left(s.map((value, i) => (i === j ? value + sign * step : value))))
      for (let i = Math.max(j - 1, 0); i <= Math.min(j + 1, nodes - 1); i++) {
        const difference = (more![i]! - less![i]!) / (2 * step)
        const size = Math.max(Math.abs(difference), 1e-3 * Math.abs(slopes[1]![i]!), 1e-6)
        expect(Math.abs(slopes[j - i + 1]![i]! - difference) / size, `of cell ${i} against ${j}`).toBeLessThan(1e-4)
      }
    }
  })
})
