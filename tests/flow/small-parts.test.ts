import fc from 'fast-check'
import { containerFlowRichards1931, drainageTimes, maxEvaporationPowerGardner1958 } from 'porewater/flow'
import { boxContainer, vanGenuchten1980, wettingCurveKoolParker1987 } from 'porewater/medium'
import { describe, expect, it } from 'vitest'
import { columnEquations } from '../../src/flow/column/equations/equations.js'
import { columnGrid } from '../../src/flow/column/grid/grid.js'
import { rootMeanSquare } from '../../src/flow/inverse/medium-findings.js'
import { richardsColumn } from '../../src/flow/richards-column.js'
import { saltOutcome } from '../../src/flow/salt/salt-account.js'
import { saltSetting } from '../../src/flow/salt/salt-setting.js'
import { soluteTransport } from '../../src/flow/salt/solute.js'

const amount = fc.double({ min: 0, max: 1e4, noNaN: true })

describe('the account of salt', () => {
  it('gives and drains alike what runs past the medium, with the concentration of the feed', () => {
    fc.assert(
      fc.property(amount, amount, (past, feed) => {
        const nothing = { given: 0, drained: 0, taken: 0, runOff: 0, fromBelow: 0 }
        const { given, drained } = saltOutcome(nothing as never, past, feed, 0)
        expect(given).toBeCloseTo((past * feed) / 1000, 9)
        expect(drained).toBe(given)
      }),
    )
  })
  it('adds it to what went into the medium and what came out of it', () => {
    const passed = { given: 3000, drained: 1500, taken: 200, runOff: 100, fromBelow: 500 }
    expect(saltOutcome(passed as never, 2, 1000, 4)).toMatchObject({ given: 5, drained: 3, taken: 0.2, ranOff: 0.1 })
  })
})

const curve = { residual: 0.08, saturated: 0.88, alpha: 0.09, n: 1.7 }
const medium = vanGenuchten1980(curve as never)
const container = boxContainer({ length: 20, width: 10, height: 10 } as never)

describe('salt that comes in from below', () => {
  const grid = columnGrid([container], 5)
  const layers = [{ dispersivity: 1, saturated: 0.88 }]
  /** A minute in which a mat gives a tenth of a cubic centimetre a second, which roots take from the second cell, or goes with it. */
  const carried = (drained: number, fromBelow: number) => {
    const water = grid.volumes.map((volume) => 0.5 * volume)
    const salt = water.map((held) => 2 * held)
    const before = salt.reduce((sum, one) => sum + one, 0)
    const flows = {
      up: Float64Array.of(-drained, 0, 0, 0),
      taken: Float64Array.of(0, -drained, 0, 0, 0),
      drained,
      entered: 0,
      runOff: 0,
      evaporated: 0,
      dt: 60,
      before: water,
      after: water,
      middle: new Float64Array(4).fill(0.5),
    }
    const passed = { given: 0, drained: 0, taken: 0, runOff: 0, fromBelow: 0 }
    const at = { feed: 9, fromBelow, uptakeShare: 0, diffusion: 0 }
    soluteTransport(grid, layers)(salt, flows, at, passed)
    return { passed, salt, gained: salt.reduce((sum, one) => sum + one, 0) - before }
  }
  it('is the water that it brings times its concentration, and stays', () => {
    const { passed, gained, salt } = carried(-0.1, 3)
    expect(passed).toEqual({ given: 0, drained: 0, taken: 0, runOff: 0, fromBelow: expect.closeTo(0.1 * 60 * 3, 10) })
    expect(gained).toBeCloseTo(18, 9)
    // It is carried up from the lowest cell to the second, where roots leave it.
    expect(salt[1]! / grid.volumes[1]!).toBeGreaterThan(1.005)
    expect(salt[4]! / grid.volumes[4]!).toBeCloseTo(1, 6)
  })
  it('is none of clean water, and goes with what drains', () => {
    expect(carried(-0.1, 0).gained).toBeCloseTo(0, 9)
    const { passed, gained } = carried(0.1, 3)
    expect(passed.fromBelow).toBe(0)
    expect(passed.drained).toBeGreaterThan(0.1 * 60 * 1.9)
    expect(gained).toBeCloseTo(-passed.drained, 9)
  })
  it('has an EC that is told, from 0 to 200 dS/m', () => {
    const setting = (salt: object, drawsFromBelow = false) =>
      saltSetting({ startEC: 2, ...salt } as never, grid, [{ medium }], drawsFromBelow)!
    expect(setting({})).toMatchObject({ startEC: 2, uptakeShare: 0, diffusion: 1.5e-5, fromBelow: 0 })
    expect(setting({ matEC: 200 }, true).fromBelow).toBe(200)
    expect(() => setting({}, true)).toThrow('salt.matEC')
    for (const [name, value, quantity] of [
      ['matEC', 201, 'EC of the mat'],
      ['startEC', -1, 'EC at the start'],
    ] as const)
      expect(() => setting({ [name]: value })).toThrow(expect.objectContaining({ argument: name, quantity, value }))
  })
})

describe('a start from a water content', () => {
  it('is on the draining curve, whatever was asked for before', () => {
    const made = () =>
      containerFlowRichards1931({
        container,
        medium,
        wetting: wettingCurveKoolParker1987(curve as never),
        saturatedConductivity: 40,
        nodes: 7,
      } as never)
    const asked = made()
    asked.startAt((() => 20) as never, 'wetted')
    const state = asked.startFrom(0.6 as never)
    expect(state).toEqual(made().startFrom(0.6 as never))
    expect(asked.waterContent(state)).toBeCloseTo(0.6, 9)
  })
})

describe('a state that is given', () => {
  it('may hold a thousandth of each cell less than nothing, or more than its pores, but for what stands on it', () => {
    const around = { container, medium, saturatedConductivity: 40 }
    const { grid, media, ends } = richardsColumn([around] as never, { nodes: 7 } as never)
    const { full } = columnEquations(grid, media, ends, 'averaged', undefined)
    const flow = containerFlowRichards1931({ ...around, nodes: 7 } as never)
    const room = (i: number) => 1e-3 * grid.volumes[i]!
    const taken = (i: number, held: number, suction = 20) => {
      const { water, ...state } = flow.startAt((() => suction) as never)
      return () =>
        flow.profile({ ...state, water: water.map((one: number, k: number) => (k === i ? held / 1000 : one)) } as never)
    }
    for (const i of [0, 3, 6]) {
      for (const held of [-0.999 * room(i), 0, full[i]! + 0.999 * room(i)]) expect(taken(i, held)).not.toThrow()
      for (const held of [-1.001 * room(i), full[i]! + 1.001 * room(i)]) expect(taken(i, held)).toThrow(`cell ${i}`)
    }
    // Of media that drain and wet on two curves it has a curve and a turn for each point.
    const two = containerFlowRichards1931({
      ...around,
      wetting: wettingCurveKoolParker1987(curve as never),
      nodes: 7,
    } as never)
    const { curves, turns, ...state } = two.start
    expect(() => two.profile({ ...state, curves, turns } as never)).not.toThrow()
    for (const [name, less] of [
      ['curves', { curves: curves!.slice(1), turns }],
      ['turns', { curves, turns: turns!.slice(1) }],
      ['turns', { curves, turns: [...turns!, 5] }],
    ] as const)
      expect(() => two.profile({ ...state, ...less } as never)).toThrow(name)
    // Two centimetres stand on 200 cm².
    expect(taken(6, full[6]! + 400, -2)).not.toThrow()
    expect(taken(6, full[6]! + 400 + 1.01 * room(6), -2)).toThrow('cell 6')
    expect(taken(5, full[5]! + 400, -2)).toThrow('cell 5')
  })
})

describe('times of drainage', () => {
  it('are refused where a thousand days are not enough, with what is left of the share', () => {
    const slow = { container, medium, saturatedConductivity: 1e-9, nodes: 5, tolerance: 1e-3, shares: [0.9] }
    // Nine tenths of at most 2 L of pores, of which as good as nothing has come.
    expect(() => drainageTimes(slow as never)).toThrow(
      expect.objectContaining({ code: 'no-convergence', method: 'drainage', residual: expect.any(Number) }),
    )
    let left = 0
    try {
      drainageTimes(slow as never)
    } catch (error) {
      left = (error as { residual: number }).residual
    }
    const flow = containerFlowRichards1931({ container, medium, saturatedConductivity: 1, nodes: 5 } as never)
    const drainable = (0.88 - flow.waterContent(flow.start)) * 2
    expect(left).toBeLessThan(0.9 * drainable)
    expect(left).toBeGreaterThan(0.8 * drainable)
  })
})

describe('the most that evaporates by Gardner (1958), e = a (c/L)ⁿ and less by b', () => {
  it.each([1e-6, 1, 1e4, 1e8, 1e12])('is the root of a square where n is 2: b of %d', (b) => {
    // ∫ ds / (1 + x (s² + b)) of x = e/a is π/2 over the root of x (1 + x b), which is the depth.
    const q = (Math.PI / 2 / 10) ** 2
    const x = (2 * q) / (1 + Math.sqrt(1 + 4 * b * q))
    const flux = maxEvaporationPowerGardner1958({ a: 30, b, n: 2, depth: 10 } as never)
    expect(flux / (10 * 30 * x)).toBeCloseTo(1, 10)
  })
})

describe('the root of the mean square', () => {
  it('is the length of a vector over the root of its dimension, and zero of nothing', () => {
    expect(rootMeanSquare(Float64Array.of(3, 4))).toBeCloseTo(5 / Math.SQRT2, 12)
    expect(rootMeanSquare(Float64Array.of(-2))).toBe(2)
    expect(rootMeanSquare(new Float64Array(0))).toBe(0)
  })
})
