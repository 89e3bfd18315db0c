import { containerFlowRichards1931, uptakeFeddes1978 } from 'porewater/flow'
import { boxContainer, vanGenuchten1980, wettingCurveKoolParker1987 } from 'porewater/medium'
import { describe, expect, it } from 'vitest'
import { columnEquations, type Manner } from '../../src/flow/column/equations/equations.js'
import { columnTerms } from '../../src/flow/column/equations/terms.js'
import { averageUptake, fillUptake } from '../../src/flow/column/equations/uptake.js'
import { columnGrid } from '../../src/flow/column/grid/grid.js'
import { columnHistory, follow, forget } from '../../src/flow/column/scanning/history.js'
import { remembered } from '../../src/flow/column/scanning/remembered.js'
import { columnNewton } from '../../src/flow/column/step/newton.js'
import type { Passed } from '../../src/flow/column/step/passed.js'
import { reconcile } from '../../src/flow/column/step/reconcile.js'
import { tryStep } from '../../src/flow/column/step/step.js'
import { failed, goOn } from '../../src/flow/column/step/step-ends.js'
import { stepWork } from '../../src/flow/column/step/step-work.js'
import { richardsColumn } from '../../src/flow/richards-column.js'

// Brands say nothing about values; plain numbers keep the cases readable.
const curve = { residual: 0.08, saturated: 0.88, alpha: 0.09, n: 1.7 }
const medium = vanGenuchten1980(curve as never)
const wetting = wettingCurveKoolParker1987(curve as never)
const box = boxContainer({ length: 20, width: 10, height: 10 } as never)
const still = { applied: 0, evaporation: 0, sink: undefined }

/** A column of one layer for each `true` or `false`: whether it drains and wets on two curves. */
function made(scans: readonly boolean[], around: object = {}, nodes = 5, manner: Manner = 'averaged') {
  const layers = scans.map((two) => ({
    container: box,
    medium,
    saturatedConductivity: 40,
    ...(two ? { wetting } : {}),
  }))
  const { grid, media, ends, sink } = richardsColumn(layers as never, { nodes, ...around } as never)
  const history = columnHistory(grid, media, 1e-3)
  if (history !== undefined) forget(history, false)
  const equations = columnEquations(grid, media, ends, manner, history)
  return { grid, equations, history, sink, work: stepWork(equations, 1e-3) }
}

describe('a column of media that drain and wet on two curves', () => {
  /** It drained to 30 cm over its base and rests at 12 cm over it, between its curves. */
  const rested = (scans: readonly boolean[]) => {
    const column = made(scans)
    const over = (bottom: number) => column.grid.heights.map((height) => bottom + height)
    for (const bottom of [30, 12]) follow(column.history!, column.grid, over(bottom))
    const s = over(12)
    column.equations.evaluate(s, still)
    return { ...column, s }
  }
  it.each([[[true]], [[true, false]], [[false, true]], [[true, true]]])(
    'is at rest where its suctions are, %o',
    (scans) => {
      const { equations } = rested(scans)
      // Gravity alone would let some 2 cm³/s through the full medium.
      for (const flow of equations.terms.up) expect(Math.abs(flow)).toBeLessThan(1e-9)
    },
  )
  it('holds less than it did while draining and more than while wetting from dry', () => {
    const { grid, equations, s } = rested([true])
    for (let i = 0; i < grid.nodes; i++) {
      const own = equations.points.at.waterContent[i]!
      expect(own).toBeLessThan(medium.waterContent(s[i] as never) - 0.01)
      expect(own).toBeGreaterThan(wetting.waterContent(s[i] as never) + 0.01)
    }
  })
  it('lets a layer with one curve conduct as it does by the mean of its conductivity', () => {
    const { grid, equations } = made([true, false])
    const s = grid.heights.map((height, i) => 5 + 0.4 * height + (i % 2))
    equations.evaluate(s, still)
    for (let e = grid.boundaries[1]!; e < grid.boundaries[2]!; e++) {
      const [below, above] = [s[e]!, s[e + 1]!]
      let mean = 0
      for (let k = 0; k < 2000; k++)
        mean += medium.relativeConductivity((below + ((k + 0.5) / 2000) * (above - below)) as never)
      const flow = (40 / 3600) * grid.sections[e]! * (mean / 2000) * ((above - below) / grid.lengths[e]! - 1)
      expect(equations.terms.up[e]! / flow).toBeCloseTo(1, 4)
    }
  })
  it('remembers nothing of a layer with one curve', () => {
    for (const scans of [
      [false, true],
      [true, false],
    ]) {
      const { grid, history } = made(scans)
      follow(history!, grid, new Float64Array(grid.nodes).fill(25))
      const [first, last] = [grid.boundaries[scans[0] ? 0 : 1]!, grid.boundaries[scans[0] ? 1 : 2]!]
      const layer = scans[0] ? 0 : 1
      for (let p = 0; p < history!.turn.length; p++) {
        const at = p < history!.nodePoints ? p - layer : p - history!.nodePoints
        const scanning = at >= first && (p < history!.nodePoints ? at <= last : at < last)
        expect(history!.turn[p], `${scans} ${p}`).toBe(scanning ? 25 : Number.NEGATIVE_INFINITY)
      }
    }
  })
  it('remembers of each layer what it would alone', () => {
    const both = made([true, true], {}, 9)
    const one = made([true], {}, 5)
    const own = one.grid.nodes
    const path = [(i: number) => 30 + i, (i: number) => 12 + i, (i: number) => 14 + 0.5 * i, (i: number) => 9 + 0.3 * i]
    for (const at of path)
      follow(
        both.history!,
        both.grid,
        both.grid.heights.map((_, i) => at(i)),
      )
    const points = both.history!
    for (const layer of [0, 1]) {
      const alone = made([true], {}, 5)
      for (const at of path)
        follow(
          alone.history!,
          alone.grid,
          alone.grid.heights.map((_, i) => at(i + layer * (own - 1))),
        )
      const { history } = alone
      for (let i = 0; i < own; i++) {
        const p = i + layer * own
        expect([points.turn[p], points.wets[p]]).toEqual([history!.turn[i], history!.wets[i]])
      }
      for (let e = 0; e < own - 1; e++) {
        const p = points.nodePoints + e + layer * (own - 1)
        expect([points.turn[p], points.wets[p]]).toEqual([history!.turn[own + e], history!.wets[own + e]])
      }
    }
    expect(remembered(points, both.grid).turns).toHaveLength(points.turn.length)
  })
})

describe('a balance in which no time passes', () => {
  it('has the flows of one that knows of no time', () => {
    const limits = { h1: 1, h2: 5, h3HighDemand: 60, h3LowDemand: 90, h4: 700, highDemand: 5, lowDemand: 1 }
    const flows = (endless: boolean) => {
      const { grid, equations, sink } = made([false], { roots: { limits } })
      const s = grid.heights.map((height) => 6 + height / 2)
      if (endless) equations.fillFrom(new Float64Array(grid.nodes).fill(0.3), Infinity)
      equations.evaluate(s, { ...still, sink: sink(0.02) })
      return [...equations.net]
    }
    expect(flows(true)).toEqual(flows(false))
  })
})

describe('what roots take where two nodes are as good as level', () => {
  const grid = columnGrid([box], 5)
  const taken = (below: number, above: number, trust: number) => {
    const terms = columnTerms(grid)
    terms.trust[0] = trust
    const part = (first: number) => Float64Array.of(first, 0, 0, 0)
    const sink = {
      fromLower: part(2),
      fromUpper: part(3),
      max: Float64Array.of(2, 3, 0, 0, 0),
      h1: 1,
      h2: 11,
      h3: 60,
      h4: 200,
    }
    const s = Float64Array.of(below, above, 50, 50, 50)
    fillUptake(s, sink, terms)
    averageUptake(s, sink, terms)
    return terms
  }
  it.each([1, 0.4])(
    'is the share at the node, with the slopes of a share a quarter of the way off: trust %d',
    (trust) => {
      for (const apart of [0, 1e-4, -1e-4]) {
        const { taken: both, takenByOwn, takenByAbove, takenByBelow } = taken(6, 6 + apart, trust)
        // Half of what is asked, at 6 of 1 to 11 cm.
        expect(both[0]).toBeCloseTo(1, 4)
        expect(both[1]).toBeCloseTo(1.5, 4)
        // The mean over a half lies a quarter of the way to the other node.
        expect(takenByOwn[0]).toBeCloseTo(0.2 * (1 - trust / 4), 10)
        expect(takenByAbove[0]).toBeCloseTo((0.2 * trust) / 4, 10)
        expect(takenByOwn[1]).toBeCloseTo(0.3 * (1 - trust / 4), 10)
        expect(takenByBelow[1]).toBeCloseTo((0.3 * trust) / 4, 10)
      }
    },
  )
  it('is refused by the name of its demand', () => {
    const limits = { h1: 1, h2: 10, h3HighDemand: 20, h3LowDemand: 40, h4: 90, highDemand: 5, lowDemand: -1 }
    const refused = () => uptakeFeddes1978({ suction: 5, demand: 3, limits } as never)
    expect(refused).toThrow(expect.objectContaining({ argument: 'lowDemand', quantity: 'low demand', value: -1 }))
  })
})

describe('a step that is taken over, or not', () => {
  const taking = () => {
    const column = made([false])
    const { equations, work, grid } = column
    const s = grid.heights.map((height) => 6 + height / 2)
    equations.evaluate(s, still)
    work.suctions.set(s)
    work.held.set(equations.terms.water)
    const passed: Passed = { entered: 0, drained: 0, taken: 0, runOff: 0, evaporated: 0, steps: 0 }
    return { ...column, s, passed }
  }
  it('asks for less mending behind each failure, and for all of it after as many steps', () => {
    const { work, s, passed } = taking()
    const mending = (step: () => unknown) => {
      step()
      return work.mending
    }
    const fail = () => expect(failed(work)).toEqual({ done: 0, factor: 0.25 })
    const take = () => goOn(work, s, 1, passed, undefined)
    expect([fail, fail, take, take, take].map(mending)).toEqual(
      [0.3, 0.09, 0.3, 1, 1].map((one) => expect.closeTo(one, 12)),
    )
    expect(passed.steps).toBe(3)
  })
  it('tells the contents of middles half-way between begin and end, and keeps those of the end', () => {
    const { equations, work, s, passed } = taking()
    const before = equations.points.middleWaterContent.map((content) => content + 0.1)
    work.middles.set(before)
    const told: number[][] = []
    goOn(work, s, 2, passed, ({ middle, dt }) => told.push([dt, ...middle]))
    const end = [...equations.points.middleWaterContent]
    expect(told).toEqual([[2, ...end.map((content) => expect.closeTo(content + 0.05, 12))]])
    expect([...work.middles]).toEqual(end)
  })
  it('counts as apart, where it failed, what suctions say beyond what cells hold', () => {
    const { equations, work } = taking()
    const water = [...equations.terms.water]
    work.held.forEach((one, i) => {
      work.held[i] = one - 0.1 * (i + 1)
    })
    failed(work)
    expect([...work.apart]).toEqual(water.map((_, i) => expect.closeTo(0.1 * (i + 1), 10)))
  })
})

describe('a step of two stages', () => {
  /** What cells hold and what suctions say after a time from one begin, in so many steps of the same length. */
  const gone = (time: number, steps: number, manner: Manner) => {
    const { equations, work, grid } = made([false], {}, 5, manner)
    const { solve } = columnNewton(equations, { small: 1e-9, bold: false })
    const during = { applied: 0.4, evaporation: 0, sink: undefined }
    const s = grid.heights.map((height) => 14 + height)
    equations.evaluate(s, during)
    work.suctions.set(s)
    work.held.set(equations.terms.water)
    work.contents.set(equations.points.at.waterContent)
    work.before.set(equations.net)
    work.begun.up.set(equations.terms.up)
    work.begun.entered = equations.terms.entered
    const passed: Passed = { entered: 0, drained: 0, taken: 0, runOff: 0, evaporated: 0, steps: 0 }
    const wide = { ...work, tolerance: 1 }
    for (let k = 0; k < steps; k++)
      expect(tryStep(wide, solve, time / steps, during, passed, undefined).done).toBe(time / steps)
    equations.store(work.suctions)
    const apart = work.held.map((held, i) => Math.abs(equations.terms.water[i]! - held) / grid.volumes[i]!)
    return { held: [...work.held], apart: Math.max(...apart), entered: passed.entered }
  }
  it('comes closer with the third power of its length where cells are as their nodes are', () => {
    const held = (steps: number) => gone(20, steps, 'nodal').held
    const exact = held(32)
    const errors = [1, 2, 4].map((steps) => Math.max(...held(steps).map((one, i) => Math.abs(one - exact[i]!))))
    expect(Math.log2(errors[0]! / errors[1]!)).toBeGreaterThan(2.7)
    expect(Math.log2(errors[1]! / errors[2]!)).toBeGreaterThan(2.7)
  })
  it('leaves suctions that say what cells hold, and lets in what is given', () => {
    for (const manner of ['averaged', 'nodal'] as const) {
      const { apart, entered } = gone(10, 1, manner)
      expect(apart).toBeLessThan(1e-7)
      expect(entered).toBeCloseTo(4, 10)
    }
  })
})

describe('suctions made to say what cells hold', () => {
  it.each([{ base: 4 }, { surface: 9 }])('leave those that are held as they are, and move all others: %o', (around) => {
    const { equations, grid } = made([false], around)
    const wanted = grid.heights.map((height) => 4 + height / 2)
    equations.store(wanted)
    const held = equations.terms.water.slice()
    const s = wanted.map((one, i) => (('base' in around ? i === 0 : i === 4) ? one : one * 1.3))
    reconcile(s, held, equations, 1e-9)
    for (const [i, one] of wanted.entries()) expect(s[i]).toBeCloseTo(one, 3)
  })
})

describe('the account of a container', () => {
  const limits = { h1: 1, h2: 5, h3HighDemand: 60, h3LowDemand: 90, h4: 700, highDemand: 5, lowDemand: 1 }
  const flowOf = (around: object) =>
    containerFlowRichards1931({
      container: box,
      medium,
      saturatedConductivity: 40,
      nodes: 7,
      roots: { limits },
      ...around,
    } as never)
  it.each([{}, { base: 4 }, { base: 'closed' }])(
    'has in its change of water what came less what left: %o',
    (around) => {
      const flow = flowOf(around)
      const volume = 2 // 20 × 10 × 10 cm
      const during = { duration: 600, applied: 0.1, demand: 0.01, evaporation: 0.002 }
      let state = flow.startAt(((height: number) => 8 + height) as never)
      let stood = 0
      for (let k = 0; k < 3; k++) {
        const [next, after] = flow.step(state, during as never)
        expect(Math.abs(after.imbalance)).toBeLessThan(1e-12)
        expect(after.taken).toBeGreaterThan(0)
        const change = (flow.waterContent(next) - flow.waterContent(state)) * volume
        const came = after.entered - after.drained - after.taken - after.evaporated - after.ranOff
        expect(change + after.standing - stood).toBeCloseTo(came, 5)
        stood = after.standing
        state = next
      }
    },
  )
  it('counts the water that a base gives at once, where it is set at another suction', () => {
    const [open, mat] = [flowOf({}), flowOf({ base: 2 })]
    const state = open.startAt(((height: number) => 20 + height) as never)
    const [next, after] = mat.step(state, { duration: 60, applied: 0, demand: 0 } as never)
    expect(after.drained).toBeLessThan(-0.01)
    expect(Math.abs(after.imbalance)).toBeLessThan(1e-12)
    expect((mat.waterContent(next) - open.waterContent(state)) * 2).toBeCloseTo(-after.drained - after.taken, 4)
  })
})
