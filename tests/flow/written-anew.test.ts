import { boxContainer, brooksCorey1964, vanGenuchten1980, wettingCurveKoolParker1987 } from 'porewater/medium'
import { describe, expect, it } from 'vitest'
import { assembleMatrix, columnBalance, sumFlows } from '../../src/flow/column/equations/balance.js'
import { carryOn } from '../../src/flow/column/equations/carry-on.js'
import { columnEquations } from '../../src/flow/column/equations/equations.js'
import { addFilling, carryContents, elementFilling, fillFrom } from '../../src/flow/column/equations/filling.js'
import { columnTerms } from '../../src/flow/column/equations/terms.js'
import { columnGrid } from '../../src/flow/column/grid/grid.js'
import { columnHistory, follow, forget } from '../../src/flow/column/scanning/history.js'
import { columnSimulation } from '../../src/flow/column/simulation.js'
import type { Passed } from '../../src/flow/column/step/passed.js'
import { columnSolver } from '../../src/flow/column/step/solver.js'
import { tableRows } from '../../src/flow/column/table/table-rows.js'
import { richardsColumn } from '../../src/flow/richards-column.js'
import { soluteTransport } from '../../src/flow/salt/solute.js'
import { uniformFrom } from '../record/random.js'

// The loops of the simulation beside the same equations written the plain way, one term after the other, with numbers drawn from a seed.

// Brands say nothing about values; plain numbers keep the cases readable.
const curve = { residual: 0.08, saturated: 0.88, alpha: 0.09, n: 1.7 }
const medium = vanGenuchten1980(curve as never)
const box = boxContainer({ length: 20, width: 10, height: 10 } as never)
const still = { applied: 0, evaporation: 0, sink: undefined }

const close = (list: Iterable<number>, digits = 10) => [...list].map((one) => expect.closeTo(one, digits))
/** Fills all lists and all other numbers of an object with numbers from -0.5 to 0.5. */
function draw(into: object, uniform: () => number): void {
  const record = into as Record<string, Float64Array | number>
  for (const [name, value] of Object.entries(record)) {
    if (typeof value === 'number') record[name] = uniform() - 0.5
    else if (value instanceof Float64Array) for (let i = 0; i < value.length; i++) value[i] = uniform() - 0.5
  }
}
/** The solution of linear equations by elimination; a diagonal that outweighs its row needs no pivots. */
function solved(matrix: readonly (readonly number[])[], right: readonly number[]): number[] {
  const rows = matrix.map((row, i) => [...row, right[i]!])
  for (let k = 0; k < rows.length; k++)
    for (let i = 0; i < rows.length; i++) {
      const factor = i === k ? 0 : rows[i]![k]! / rows[k]![k]!
      rows[i] = rows[i]!.map((value, j) => value - factor * rows[k]![j]!)
    }
  return rows.map((row, i) => row.at(-1)! / row[i]!)
}

describe('the balance of cells', () => {
  const NODES = 5
  const at = (list: Float64Array, i: number) => list[i] ?? 0
  const filled = (seed: number, heldBase = false, heldTop = false) => {
    const uniform = uniformFrom(seed)
    const terms = columnTerms({ nodes: NODES } as never)
    draw(terms, uniform)
    // Of a node that is not there nothing is known.
    for (const list of [terms.waterByBelow, terms.takenByBelow]) list[0] = 0
    for (const list of [terms.waterByAbove, terms.takenByAbove]) list[NODES - 1] = 0
    return { terms, balance: columnBalance({ nodes: NODES } as never, terms, heldBase, heldTop), uniform }
  }
  it.each([
    [1, false, false],
    [2, true, false],
    [3, false, true],
    [4, true, true],
  ])(
    'sums what comes from below less what goes up and to the roots, and what passes open ends: %d',
    (seed, base, top) => {
      const { terms, balance } = filled(seed, base, top)
      sumFlows(balance)
      const wanted = Array.from({ length: NODES }, (_, i) => at(terms.up, i - 1) - at(terms.up, i) - terms.taken[i]!)
      if (!base) wanted[0]! -= terms.drained
      if (!top) wanted[NODES - 1]! += terms.entered - terms.runOff - terms.evaporated
      expect([...balance.net]).toEqual(close(wanted, 14))
    },
  )
  it.each([
    [5, false, false],
    [6, true, false],
    [7, false, true],
  ])('has in its matrix the slopes of each cell against itself and its neighbours: %d', (seed, base, top) => {
    const { terms, balance, uniform } = filled(seed, base, top)
    const dt = 7
    assembleMatrix(balance, dt)
    const { lower, diagonal, upper } = balance
    const move = Array.from({ length: NODES }, () => uniform() - 0.5)
    const by = (i: number) => move[i] ?? 0
    const flow = (e: number) => at(terms.upByBelow, e) * by(e) + at(terms.upByAbove, e) * by(e + 1)
    for (let i = 0; i < NODES; i++) {
      const three = (name: 'water' | 'taken') =>
        terms[`${name}ByBelow`][i]! * by(i - 1) +
        terms[`${name}ByOwn`][i]! * by(i) +
        terms[`${name}ByAbove`][i]! * by(i + 1)
      let wanted = three('water') - dt * (flow(i - 1) - flow(i) - three('taken'))
      if (i === 0) wanted += dt * terms.drainedSlope * by(0)
      if (i === NODES - 1) wanted += dt * (terms.runOffSlope + terms.evaporatedSlope) * by(i)
      // A suction that is held stays.
      if ((base && i === 0) || (top && i === NODES - 1)) wanted = by(i)
      expect(lower[i]! * by(i - 1) + diagonal[i]! * by(i) + upper[i]! * by(i + 1)).toBeCloseTo(wanted, 12)
    }
  })
  it('carries water and flows on by their slopes, uptake from nothing to all that is asked for, and no end backwards', () => {
    const { terms, balance, uniform } = filled(8)
    const before = structuredClone(terms)
    const move = Float64Array.from({ length: NODES }, () => uniform() - 0.5)
    const max = Float64Array.of(1, 0.1, 0.2, 1, 0.05)
    carryOn(balance, move, max)
    const three = (name: 'water' | 'taken', i: number) =>
      before[name][i]! +
      before[`${name}ByBelow`][i]! * at(move, i - 1) +
      before[`${name}ByOwn`][i]! * move[i]! +
      before[`${name}ByAbove`][i]! * at(move, i + 1)
    const indices = [...move.keys()]
    expect([...terms.water]).toEqual(close(indices.map((i) => three('water', i))))
    const taken = indices.map((i) => three('taken', i))
    expect([...terms.taken]).toEqual(close(taken.map((one, i) => Math.min(Math.max(one, 0), max[i]!))))
    expect(taken.some((one) => one < 0) && taken.some((one, i) => one > max[i]!)).toBe(true)
    const flows = indices
      .slice(1)
      .map((i) => before.up[i - 1]! + before.upByBelow[i - 1]! * move[i - 1]! + before.upByAbove[i - 1]! * move[i]!)
    expect([...terms.up]).toEqual(close(flows))
    for (const [name, i] of [
      ['drained', 0],
      ['runOff', NODES - 1],
      ['evaporated', NODES - 1],
    ] as const)
      expect(terms[name]).toBeCloseTo(Math.max(0, before[name] + before[`${name}Slope`] * move[i]!), 12)
    expect(terms.entered).toBe(before.entered)
    const net = indices.map((i) => at(terms.up, i - 1) - at(terms.up, i) - terms.taken[i]!)
    net[0]! -= terms.drained
    net[NODES - 1]! += terms.entered - terms.runOff - terms.evaporated
    expect([...balance.net]).toEqual(close(net, 12))
    // Where nobody drinks, what was taken stays as it was.
    const bare = filled(8)
    carryOn(bare.balance, move, undefined)
    expect([...bare.terms.taken]).toEqual([...before.taken])
  })
})

describe('what fills elements', () => {
  it('adds to their flows the share that fits how their conductivity falls, with its slopes, in each layer', () => {
    const uniform = uniformFrom(11)
    const grid = columnGrid([boxContainer({ length: 20, width: 10, height: 4 } as never), box], 11)
    const { nodes } = grid
    const points = {
      at: Object.fromEntries(
        ['waterContent', 'capacity', 'conductivity', 'conductivitySlope'].map((name) => [
          name,
          new Float64Array(nodes + 1),
        ]),
      ),
    }
    const { at } = points as never as {
      at: Record<'waterContent' | 'capacity' | 'conductivity' | 'conductivitySlope', Float64Array>
    }
    draw(at, uniform)
    for (let p = 0; p <= nodes; p++) {
      at.conductivity[p] = 0.1 + uniform()
      at.conductivitySlope[p] = -0.3 * uniform()
    }
    const terms = columnTerms(grid)
    draw(terms, uniform)
    const before = structuredClone(terms)
    const filling = elementFilling(nodes - 1, nodes + 1)
    const from = Float64Array.from({ length: nodes + 1 }, () => uniform())
    fillFrom(filling, from, 40)
    addFilling(filling, grid, points as never, terms)
    for (let e = 0; e < nodes - 1; e++) {
      const p = e + grid.layers[e]!
      // A share a of the conductivity for each centimetre, and x = a L / 2.
      const a =
        -(at.conductivitySlope[p]! + at.conductivitySlope[p + 1]!) / (at.conductivity[p]! + at.conductivity[p + 1]!)
      const x = (a * grid.lengths[e]!) / 2
      const share = (before.trust[e]! * (grid.lowerHalves[e]! + grid.upperHalves[e]!) * (x / (3 + x ** 2 / 5))) / 4
      // (coth x - 1/x) = x / (3 + x²/5) to the fourth order.
      expect(Math.abs(x / (3 + x ** 2 / 5) - (1 / Math.tanh(x) - 1 / x))).toBeLessThan(0.01 * x ** 5)
      const rate = (i: number) =>
        (at.waterContent[i + grid.layers[e]!]! - from[i + grid.layers[e]!]!) / 40 + before.taken[i]! / grid.volumes[i]!
      const slope = (i: number) => -at.capacity[i + grid.layers[e]!]! / 40 + before.takenByOwn[i]! / grid.volumes[i]!
      expect(terms.up[e]).toBeCloseTo(before.up[e]! + share * (rate(e) + rate(e + 1)), 12)
      expect(terms.upByBelow[e]).toBeCloseTo(before.upByBelow[e]! + share * slope(e), 12)
      expect(terms.upByAbove[e]).toBeCloseTo(before.upByAbove[e]! + share * slope(e + 1), 12)
    }
    // The shares stay until points fill from other contents.
    at.conductivity.fill(9)
    terms.up.fill(0)
    addFilling(filling, grid, points as never, terms)
    const second = terms.up.slice()
    fillFrom(filling, from, 40)
    terms.up.fill(0)
    addFilling(filling, grid, points as never, terms)
    expect(Math.abs(second[0]! / terms.up[0]! - 1)).toBeGreaterThan(0.5)
  })
  it('goes along with a small move, in each layer by the slope of its own medium', () => {
    const uniform = uniformFrom(12)
    const grid = columnGrid([box, box], 11)
    const at = { waterContent: new Float64Array(grid.nodes + 1), capacity: new Float64Array(grid.nodes + 1) }
    draw(at, uniform)
    const before = structuredClone(at)
    const move = Float64Array.from({ length: grid.nodes }, () => uniform())
    carryContents(grid, { at } as never, move)
    const boundary = grid.boundaries[1]!
    for (let p = 0; p <= grid.nodes; p++) {
      const node = p <= boundary ? p : p - 1
      expect(at.waterContent[p]).toBeCloseTo(before.waterContent[p]! - before.capacity[p]! * move[node]!, 12)
    }
  })
})

describe('salt that goes with the flows of a step', () => {
  const grid = columnGrid([boxContainer({ length: 20, width: 10, height: 4 } as never), box], 11)
  const { nodes } = grid
  const top = nodes - 1
  const layers = [
    { dispersivity: 0.4, saturated: 0.88 },
    { dispersivity: 0.02, saturated: 0.7 },
  ]
  /** γ of three implicit stages of the third order: γ³ - 3γ² + 3γ/2 - 1/6 = 0 (Alexander 1977). */
  let gamma = 0.4
  for (let k = 0; k < 20; k++)
    gamma -= (gamma ** 3 - 3 * gamma ** 2 + 1.5 * gamma - 1 / 6) / (3 * gamma ** 2 - 6 * gamma + 1.5)
  const weights = [(-6 * gamma ** 2 + 16 * gamma - 1) / 4, (6 * gamma ** 2 - 20 * gamma + 5) / 4, gamma] as const

  it.each([
    ['that drains and runs off', 21, { drained: 0.4, entered: 0.9, runOff: 0.1, evaporated: 0.05 }, 0.3],
    ['that comes from a mat', 22, { drained: -0.4, entered: 0, runOff: 0, evaporated: 0.2 }, 0],
    ['of which roots leave nothing', 23, { drained: 0.2, entered: 0.4, runOff: 0, evaporated: 0 }, 1],
  ])('is that of three stages, each solved as a whole: water %s', (_, seed, ends, uptakeShare) => {
    const uniform = uniformFrom(seed)
    const dt = 30
    const up = Float64Array.from({ length: top }, () => 1.5 * (uniform() - 0.5))
    // What comes in from below goes up.
    if (ends.drained < 0) up[0] = 0.4
    const taken = Float64Array.from({ length: nodes }, () => 0.05 * uniform())
    const before = grid.volumes.map((volume) => volume * (0.4 + 0.3 * uniform()))
    const after = before.map((held) => held * (0.95 + 0.1 * uniform()))
    const middle = Float64Array.from({ length: top }, () => 0.3 + 0.3 * uniform())
    const salt = before.map((held) => held * (1 + 4 * uniform()))
    const start = salt.slice()
    const at = { feed: 1.7, fromBelow: 2.9, uptakeShare, diffusion: 2e-4 }
    const passed = { given: 1, drained: 2, taken: 3, runOff: 4, fromBelow: 5 }
    soluteTransport(grid, layers)(salt, { up, taken, before, after, middle, dt, ...ends }, at, passed)

    /** Salt that leaves each cell at concentrations, beside what comes from outside. */
    const leaving = (c: readonly number[]) => {
      const out = c.map((one, i) => uptakeShare * taken[i]! * one)
      for (let e = 0; e < top; e++) {
        const { dispersivity, saturated } = layers[grid.layers[e]!]!
        const spread =
          (dispersivity * Math.abs(up[e]!) +
            grid.sections[e]! * at.diffusion * (middle[e]! ** (10 / 3) / saturated ** 2)) /
          grid.lengths[e]!
        const [donor, other] = up[e]! > 0 ? [c[e]!, c[e + 1]!] : [c[e + 1]!, c[e]!]
        // Central where dispersion is enough for it, and else as little against the stream as keeps all shares above zero.
        const lean = Math.max(0.5, 1 - spread / Math.abs(up[e]!))
        const flow = up[e]! * (lean * donor + (1 - lean) * other) + spread * (c[e]! - c[e + 1]!)
        out[e]! += flow
        out[e + 1]! -= flow
      }
      out[0]! += Math.max(ends.drained, 0) * c[0]!
      out[top]! += ends.runOff * c[top]!
      return out
    }
    const units = Array.from({ length: nodes }, (_, j) => leaving(Array.from({ length: nodes }, (_, i) => +(i === j))))
    const coming = Array.from(
      { length: nodes },
      (_, i) => (i === 0 ? Math.max(-ends.drained, 0) * at.fromBelow : 0) + (i === top ? ends.entered * at.feed : 0),
    )
    const rates: number[][] = []
    const wanted = { ...passed, given: 1, drained: 2, taken: 3, runOff: 4, fromBelow: 5 }
    const shares = [gamma, (1 + gamma) / 2, 1]
    for (const [k, share] of shares.entries()) {
      const by = k === 1 ? [(1 - gamma) / 2] : [weights[0], weights[1]]
      const base = [...start].map((one, i) => one + dt * rates.reduce((sum, rate, j) => sum + by[j]! * rate[i]!, 0))
      const water = [...before].map((held, i) => held + share * (after[i]! - held))
      const matrix = water.map((held, i) => units.map((unit, j) => dt * gamma * unit[i]! + (i === j ? held : 0)))
      const c = solved(
        matrix,
        base.map((one, i) => one + dt * gamma * coming[i]!),
      )
      rates.push(leaving(c).map((one, i) => coming[i]! - one))
      const time = weights[k]! * dt
      wanted.given += time * ends.entered * at.feed
      wanted.drained += time * Math.max(ends.drained, 0) * c[0]!
      wanted.runOff += time * ends.runOff * c[top]!
      wanted.fromBelow += time * Math.max(-ends.drained, 0) * at.fromBelow
      wanted.taken += time * c.reduce((sum, one, i) => sum + uptakeShare * taken[i]! * one, 0)
    }
    const end = [...start].map((one, i) => one + dt * rates.reduce((sum, rate, k) => sum + weights[k]! * rate[i]!, 0))
    expect([...salt]).toEqual(close(end, 8))
    expect(passed).toEqual(
      Object.fromEntries(Object.entries(wanted).map(([name, one]) => [name, expect.closeTo(one, 9)])),
    )
  })
})

describe('a medium between its two curves', () => {
  const wetting = wettingCurveKoolParker1987(curve as never)
  const dry = (s: number) => medium.waterContent(Math.max(s, 0) as never)
  const wet = (s: number) => wetting.waterContent(Math.max(s, 0) as never)
  const layers = [{ container: box, medium, saturatedConductivity: 40, wetting }]
  /** Contents through a turn: the wetting curve shrunk towards saturation, the drying curve towards the driest, the ends a hair beyond. */
  const rewetted = (turn: number, s: number) => {
    const full = 0.88 + 1e-9
    return full - ((full - dry(turn)) / (full - wet(turn))) * (full - wet(s))
  }
  const dried = (turn: number, content: number, s: number) => {
    const driest = 0.08 - 1e-5
    return driest + ((content - driest) / (dry(turn) - driest)) * (dry(s) - driest)
  }
  const read = (path: readonly number[], s: readonly number[]) => {
    const { grid, media, ends } = richardsColumn(layers as never, { nodes: 5 } as never)
    const history = columnHistory(grid, media, 1e-4)!
    forget(history, false)
    for (const one of path) follow(history, grid, new Float64Array(5).fill(one))
    const equations = columnEquations(grid, media, ends, 'nodal', history)
    equations.evaluate(Float64Array.from(s), still)
    return equations.points
  }
  it.each([
    ['drained to 60 cm', [60], (s: number) => (s >= 60 ? dry(s) : rewetted(60, s))],
    [
      'drained to 60 cm and wetted to 9',
      [60, 9],
      (s: number) => (s <= 9 ? rewetted(60, s) : dried(9, rewetted(60, 9), s)),
    ],
    ['under water', [60, -5], (s: number) => dry(s)],
  ] as const)(
    'holds what the scaled curve does, at nodes and in their middle, and conducts what it would then draining: %s',
    (_, path, content) => {
      for (const s of [
        [80, 30, 12, 5, 70],
        [5, 6, 7, 30, 31],
        [65, 66, 61, 57, 3],
        [-2, 0.5, 20, -1, 90],
      ]) {
        const { at, effective, effectiveSlope, middleWaterContent, middleCapacity } = read(path, s)
        for (const [i, one] of s.entries()) {
          const [wanted, step] = [content(one), 1e-4 * Math.max(one, 0.1)]
          expect(at.waterContent[i], `at ${one}`).toBeCloseTo(wanted, 6)
          const capacity = one <= 0 ? 0 : (content(one - step) - content(one + step)) / (2 * step)
          expect(at.capacity[i], `capacity at ${one}`).toBeCloseTo(capacity, 5)
          if (one <= 0) continue
          expect(dry(effective[i]!), `effective at ${one}`).toBeCloseTo(wanted, 6)
          expect(at.conductivity[i]! / medium.relativeConductivity(effective[i]! as never)).toBeCloseTo(1, 4)
          const own = medium.capacity(effective[i]! as never)
          expect(effectiveSlope[i]! / Math.min(capacity / own, 100)).toBeCloseTo(1, 2)
        }
        for (const e of [0, 1, 2, 3]) {
          const one = (s[e]! + s[e + 1]!) / 2
          expect(middleWaterContent[e], `in the middle at ${one}`).toBeCloseTo(content(one), 6)
          const step = 1e-4 * Math.max(one, 0.1)
          const capacity = one <= 0 ? 0 : (content(one - step) - content(one + step)) / (2 * step)
          expect(middleCapacity[e]).toBeCloseTo(capacity, 5)
        }
      }
    },
  )
})

describe('the rows of a table', () => {
  /** Of a medium that conducts alike at any suction, so that its water content alone decides. */
  const rows = (more: object) =>
    tableRows({ ...vanGenuchten1980({ ...curve, ...more } as never), relativeConductivity: () => 1 } as never).count
  it('are as many whatever the medium holds in all, for their cubics are as exact as a share of its range', () => {
    for (const n of [1.3, 2, 4])
      for (const [residual, saturated] of [
        [0, 0.3],
        [0.6, 0.61],
        [0.5, 0.95],
      ])
        expect(rows({ n, residual, saturated })).toBe(rows({ n }))
  })
  it('are so many that no cubic misses by more than some ten-millionths of the range, and no more than that takes', () => {
    const worst = (medium: ReturnType<typeof vanGenuchten1980>) => {
      const { rows: all, count } = tableRows(medium)
      let max = 0
      for (let r = 0; r < count * 14; r += 14) {
        const s = (all[r]! + 0.5 / all[r + 1]!) as never
        // Value, slope, square and cube at a half; films hold a ten-millionth.
        const half = (at: number) => all[r + at]! + all[r + at + 1]! / 2 + all[r + at + 2]! / 4 + all[r + at + 3]! / 8
        const film = 1e-7 * Math.log1p(s / 1000)
        max = Math.max(
          max,
          Math.abs(half(2) + film - medium.waterContent(s)) / (medium.saturated - medium.residual),
          Math.abs(half(6) - medium.relativeConductivity(s)),
        )
      }
      return { max, octaves: count / Math.log2(1e8) }
    }
    // The difference falls to a sixteenth with each halving: from sixteen parts of an octave on it is halved as often as that takes.
    for (const n of [1.4, 2, 3, 6, 9]) {
      const { max, octaves } = worst(vanGenuchten1980({ ...curve, n } as never))
      const halvings = Math.log2(octaves)
      expect(Math.abs(halvings - Math.round(halvings))).toBeLessThan(0.1)
      expect(max, `n ${n}`).toBeLessThan(4e-7)
      if (Math.round(halvings) > 4) expect(max, `n ${n}`).toBeGreaterThan(1e-7 / 16 / 8)
    }
  })
  it('begin and end with their stretch: a kink parts one into two', () => {
    const kinked = brooksCorey1964({ residual: 0.05, saturated: 0.6, airEntry: 12, lambda: 1.4 } as never)
    const { rows: all, count, kinks } = tableRows(kinked)
    expect([...kinks]).toEqual([12])
    let apart = 0
    for (let r = 0; r + 14 < count * 14; r += 14)
      if (all[r + 1] !== 0) apart = Math.max(apart, Math.abs((all[r]! + 1 / all[r + 1]!) / all[r + 14]! - 1))
    expect(apart).toBeLessThan(1e-12)
    expect(all[0]).toBe(0.1)
    expect(all[(count - 1) * 14]! + 1 / all[(count - 1) * 14 + 1]!).toBeCloseTo(1e7, 3)
  })
})

describe('the ways through a time', () => {
  /** A column whose media say something else each time they are read: of the middles of elements, or of their nodes too. */
  const swinging = (what: 'nothing' | 'middles' | 'all') => {
    const { grid, media, ends } = richardsColumn(
      [{ container: box, medium, saturatedConductivity: 40 }] as never,
      { nodes: 5 } as never,
    )
    const { table } = media[0]!
    let [sign, on] = [1, false]
    const spoilt = {
      ...table,
      read: (...given: Parameters<typeof table.read>) => {
        table.read(...given)
        const [, { waterContent }, start, end] = given
        if (on && what === 'all') for (let p = start; p < end; p++) waterContent[p]! += 0.3 * sign
        sign = -sign
      },
      readWaterContents: (...given: Parameters<typeof table.readWaterContents>) => {
        table.readWaterContents(...given)
        const [, waterContent, , start, end] = given
        if (on && what !== 'nothing') for (let e = start; e < end; e++) waterContent[e]! += 0.3 * sign
      },
    }
    const own = [{ ...media[0]!, table: spoilt }]
    const suctions = grid.heights.map((height) => 6 + height)
    const equations = columnEquations(grid, media, ends, 'nodal', undefined)
    equations.store(suctions)
    const state = { suctions, held: equations.terms.water.slice() }
    const none = (): Passed => ({ entered: 0, drained: 0, taken: 0, runOff: 0, evaporated: 0, steps: 0 })
    const go = () => {
      const { advance } = columnSimulation(grid, own, ends, 1e-3)
      on = true
      return advance(state, 60, { ...still, applied: 0.5 }, undefined)
    }
    const nodal = () => {
      const passed = none()
      const limits = { tolerance: 1e-3, small: 1e-9, bold: false, maxSteps: 4000 }
      const left = columnSolver(equations, limits).advance(state, 60, { ...still, applied: 0.5 }, passed, undefined)
      return { left, passed }
    }
    return { go, nodal, state }
  }
  it('are gone one after the other: where middles swing, by the nodes alone', () => {
    const [spoilt, plain] = [swinging('middles'), swinging('nothing')]
    const passed = spoilt.go()
    const { left, passed: wanted } = plain.nodal()
    expect(left).toBe(0)
    expect(passed).toEqual(wanted)
    expect(spoilt.state).toEqual(plain.state)
    expect(passed.entered).toBeCloseTo(30, 9)
  })
  it('are none where all swings: that is refused, with the time that is left', () => {
    expect(swinging('all').go).toThrow(expect.objectContaining({ code: 'no-convergence' }))
    expect(() => swinging('all').go()).toThrow('60')
  })
})
