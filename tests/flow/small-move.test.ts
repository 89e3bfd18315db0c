import { describe, expect, it } from 'vitest'
import { columnEquations } from '../../src/flow/column/equations/equations.js'
import { columnGrid } from '../../src/flow/column/grid/grid.js'
import { isSmallMove } from '../../src/flow/column/step/small-move.js'
import { mediumTable } from '../../src/flow/column/table/medium-table.js'
import { boxContainer } from '../../src/medium/container/box-container.js'
import { vanGenuchten1980 } from '../../src/medium/curves/van-genuchten-1980.js'

describe('a small move', () => {
  /** Three cells of 50 cm³ that hold 2 cm³ less for each centimetre, of which small is a hundredth: half a cubic centimetre. */
  const small = (suctions: readonly number[], move: readonly number[], { water = -2, k = 0, trusts = [0, 0] } = {}) =>
    isSmallMove(
      {
        nodes: 3,
        grid: { volumes: new Float64Array(3).fill(50), layers: [0, 0] },
        terms: {
          waterByOwn: new Float64Array(3).fill(water),
          trustByBelow: new Float64Array(2).fill(trusts[0]!),
          trustByAbove: new Float64Array(2).fill(trusts[1]!),
        },
        points: {
          history: undefined,
          at: { conductivity: new Float64Array(3).fill(0.5), conductivitySlope: new Float64Array(3).fill(-k) },
        },
      } as never,
      Float64Array.from(suctions),
      Float64Array.from(move),
      0.01,
    )
  it('brings no more than what is small to any cell', () => {
    for (const sign of [1, -1])
      for (const i of [0, 1, 2]) {
        const one = (by: number) => [0, 1, 2].map((cell) => (cell === i ? by * sign : 0))
        expect(small([30, 30, 30], one(0.25))).toBe(true)
        expect(small([30, 30, 30], one(0.2501))).toBe(false)
      }
    expect(small([30, 30, 30], [0.2, -0.2, 0.2])).toBe(true)
  })
  it('brings no more than a hundredth of that to one that passes saturation or is full, but for what stands on the surface', () => {
    expect(small([30, 0.001, 30], [0, -0.0025, 0])).toBe(true)
    expect(small([30, 0.001, 30], [0, -0.0026, 0])).toBe(false)
    expect(small([30, -1, 30], [0, 0.0025, 0])).toBe(true)
    expect(small([30, -1, 30], [0, 0.0026, 0])).toBe(false)
    expect(small([30, 0, 30], [0, -0.0026, 0])).toBe(false)
    expect(small([30, 30, -1], [0, 0, 0.2])).toBe(true)
  })
  it('passes saturation at neither end, however little it brings', () => {
    expect(small([1e-6, 30, 30], [-2e-6, 0, 0])).toBe(false)
    expect(small([30, 30, 1e-6], [0, 0, -2e-6])).toBe(false)
    expect(small([-1e-6, 30, 30], [1.5e-6, 0, 0])).toBe(false)
    expect(small([30, 30, -1e-6], [0, 0, 1.5e-6])).toBe(false)
    expect(small([1e-6, 30, -1e-6], [-0.5e-6, 0, 0.5e-6])).toBe(true)
    // Zero is full.
    expect(small([1e-6, 30, 30], [-1e-6, 0, 0])).toBe(false)
    expect(small([-1e-6, 30, 30], [1e-6, 0, 0])).toBe(true)
    expect(small([0, 30, 30], [-1e-6, 0, 0])).toBe(true)
    expect(small([0, 30, 30], [1e-6, 0, 0])).toBe(false)
  })
  it('is at most fifteen hundredths of the suction and of two millimetres', () => {
    expect(small([30, 0.8, 30], [0, 0.15, 0])).toBe(true)
    expect(small([30, 0.8, 30], [0, -0.1501, 0])).toBe(false)
    expect(small([19.8, 30, 30], [2.999, 0, 0], { water: 0 })).toBe(true)
    expect(small([19.8, 30, 30], [3.001, 0, 0], { water: 0 })).toBe(false)
  })
  it('changes no conductivity by more than fifteen hundredths, as its slope has it', () => {
    // Of the node below each element: the highest counts nowhere.
    expect(small([30, 30, 30], [0.125, 0, 0], { k: 0.6 })).toBe(true)
    expect(small([30, 30, 30], [0, -0.126, 0], { k: 0.6 })).toBe(false)
    expect(small([30, 30, 30], [0, 0, 0.2], { k: 0.6 })).toBe(true)
  })
  it('changes the trust in no element by more than a hundredth', () => {
    // Powers of two, so that the sum is exact.
    expect(small([30, 30, 30], [0.125, 0.125, 0.125], { trusts: [0.04, 0.04] })).toBe(true)
    expect(small([30, 30, 30], [0.125, 0.125, 0.125], { trusts: [0.041, 0.041] })).toBe(false)
    expect(small([30, 30, 30], [-0.125, -0.125, -0.125], { trusts: [0.041, 0.041] })).toBe(false)
    // By both its nodes, each with its own slope.
    expect(small([30, 30, 30], [0.125, -0.125, 0.125], { trusts: [0.5, 0.5] })).toBe(true)
    expect(small([30, 30, 30], [0.24, -0.12, 0.06], { trusts: [0.1, 0.2] })).toBe(true)
    expect(small([30, 30, 30], [0.06, -0.12, 0.24], { trusts: [0.1, 0.2] })).toBe(false)
  })
})

describe('a small move of a column', () => {
  const box = boxContainer({ length: 20, width: 10, height: 10 } as never)
  const medium = vanGenuchten1980({ residual: 0.1, saturated: 0.9, alpha: 0.1, n: 1.8 } as never)
  const layer = { table: mediumTable(medium), wetting: undefined, saturatedConductivity: 0.01 }
  const ends = { base: 'seepage', surface: 'shots', rim: Number.POSITIVE_INFINITY, dryFrom: 5e4, dryAt: 1e5 } as const
  const grid = columnGrid([box], 11)
  const isSmall = (s: number, at: number, move: number) => {
    const suctions = new Float64Array(11).fill(s)
    const equations = columnEquations(grid, [layer], ends, 'averaged', undefined)
    equations.evaluate(suctions, { applied: 0, evaporation: 0, sink: undefined })
    return isSmallMove(
      equations,
      suctions,
      suctions.map((_, i) => (i === at ? move : 0)),
      0.01,
    )
  }
  it('is none, and one that changes little water', () => {
    expect(isSmall(20, 5, 0)).toBe(true)
    expect(isSmall(20, 5, 0.1)).toBe(true)
    // Of 20 cm a capacity of 0.015 a cm takes a hundredth at some 0.7 cm.
    expect(isSmall(20, 5, 0.3)).toBe(true)
    expect(isSmall(20, 5, 1.5)).toBe(false)
    expect(isSmall(20, 5, -1.5)).toBe(false)
  })
  it('is none across saturation at either end, and hardly any within', () => {
    for (const at of [0, 10]) {
      expect(isSmall(0.05, at, -0.1)).toBe(false)
      expect(isSmall(-0.05, at, 0.1)).toBe(false)
    }
    expect(isSmall(-1, 5, 2)).toBe(false)
    expect(isSmall(-1, 5, 0.5)).toBe(true)
  })
  it('is none that changes the conductivity of a dry cell by a seventh', () => {
    expect(isSmall(2000, 5, 40)).toBe(true)
    expect(isSmall(2000, 5, 200)).toBe(false)
    expect(isSmall(2000, 5, 320)).toBe(false)
    expect(isSmall(2000, 5, -320)).toBe(false)
  })
})
