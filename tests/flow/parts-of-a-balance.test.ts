import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { bendConduction } from '../../src/flow/column/equations/bent-conduction.js'
import type { Points } from '../../src/flow/column/equations/points.js'
import { columnTerms } from '../../src/flow/column/equations/terms.js'
import { averageUptake, fillUptake, type Sink } from '../../src/flow/column/equations/uptake.js'
import type { ColumnGrid } from '../../src/flow/column/grid/grid.js'
import { isSmallMove } from '../../src/flow/column/step/small-move.js'
import { curvedElements } from '../../src/flow/column/table/curved.js'

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const two = { nodes: 2, layers: Uint16Array.of(0), lengths: Float64Array.of(2) } as unknown as ColumnGrid

describe('a flow through an element in which the conductivity bends', () => {
  /** A flow of 3 that does not hang on the suctions, where the conductivity is exp(-a s). */
  const bent = (a: number, below: number, above: number, trust = 1) => {
    const suction = Float64Array.of(below, above)
    const conductivity = suction.map((s) => Math.exp(-a * s))
    const at = { conductivity, conductivitySlope: conductivity.map((k) => -a * k) }
    const terms = columnTerms(two)
    terms.up[0] = 3
    terms.trust[0] = trust
    bendConduction(two, { suction, at } as unknown as Points, terms)
    return terms
  }
  const by = (x: number) => (x === 0 ? 1 : Math.sinh(x) / x)
  it('is that of the steady flow between two suctions to the second order', () => {
    fc.assert(
      fc.property(number(0.001, 0.05), number(1, 3), number(-3, 3), (a, below, apart) => {
        fc.pre(Math.abs(apart) > 0.01)
        const [x, y] = [a, (a * apart) / 2]
        const exact = (3 * by(y - x)) / (by(x) * by(y))
        expect(Math.abs(bent(a, below, below + apart).up[0]! / exact - 1)).toBeLessThan(x ** 4 + y ** 4 + 1e-12)
      }),
    )
  })
  it('never turns back, however steep', () => {
    fc.assert(
      fc.property(number(0.1, 9), number(-9, 9), number(0, 1), (a, apart, trust) => {
        expect(bent(a, 1, 1 + apart, trust).up[0]).toBeGreaterThan(0)
      }),
    )
  })
  it('has the slopes that differences of it give', () => {
    fc.assert(
      fc.property(number(0.05, 1.5), number(1, 4), number(-3, 3), number(0.1, 1), (a, below, apart, trust) => {
        fc.pre(Math.abs(apart) > 0.05)
        const at = (b: number, c: number) => bent(a, b, c, trust).up[0]!
        const [above, step] = [below + apart, 1e-5]
        const { upByBelow, upByAbove } = bent(a, below, above, trust)
        const ofBelow = (at(below + step, above) - at(below - step, above)) / (2 * step)
        const ofAbove = (at(below, above + step) - at(below, above - step)) / (2 * step)
        expect(upByBelow[0]).toBeCloseTo(ofBelow, 6)
        expect(upByAbove[0]).toBeCloseTo(ofAbove, 6)
      }),
    )
  })
})

describe('what roots take from two cells', () => {
  const sink: Sink = {
    fromLower: Float64Array.of(2),
    fromUpper: Float64Array.of(3),
    max: Float64Array.of(2, 3),
    h1: 1,
    h2: 11,
    h3: 60,
    h4: 200,
  }
  const taken = (below: number, above: number, trust: number) => {
    const terms = columnTerms(two)
    terms.trust[0] = trust
    const s = Float64Array.of(below, above)
    fillUptake(s, sink, terms)
    averageUptake(s, sink, terms)
    return terms
  }
  /** The mean of the rising share between two suctions, added up in small parts. */
  const meanShare = (from: number, to: number) => {
    let sum = 0
    for (let k = 0; k < 4000; k++) sum += Math.min(1, Math.max(0, (from + ((k + 0.5) / 4000) * (to - from) - 1) / 10))
    return sum / 4000
  }
  it('is the mean over their halves, as far as the element is trusted', () => {
    fc.assert(
      fc.property(number(-4, 20), number(-4, 20), number(0.01, 1), (below, above, trust) => {
        const [lower, upper] = taken(below, above, trust).taken
        const middle = (below + above) / 2
        const atNode = (s: number) => Math.min(1, Math.max(0, (s - 1) / 10))
        const [low, high] = [meanShare(below, middle), meanShare(middle, above)]
        expect(lower).toBeCloseTo(2 * (atNode(below) + trust * (low - atNode(below))), 4)
        expect(upper).toBeCloseTo(3 * (atNode(above) + trust * (high - atNode(above))), 4)
      }),
      { numRuns: 60 },
    )
  })
  it('has the slopes that differences of it give', () => {
    fc.assert(
      fc.property(number(-4, 20), number(-4, 20), number(0.01, 1), (below, above, trust) => {
        const middle = (below + above) / 2
        // At h1 and h2 there are two slopes; nearly level elements have those of level ones.
        fc.pre([below, above, middle].every((s) => Math.abs(s - 1) > 0.01 && Math.abs(s - 11) > 0.01))
        fc.pre(Math.abs(above - below) > 0.05)
        const { takenByOwn, takenByAbove, takenByBelow } = taken(below, above, trust)
        const step = 1e-5
        const slope = (i: number, down: number, up: number) => {
          const at = (sign: number) => taken(below + sign * down, above + sign * up, trust).taken[i]!
          return (at(1) - at(-1)) / (2 * step)
        }
        expect(takenByOwn[0]).toBeCloseTo(slope(0, step, 0), 6)
        expect(takenByAbove[0]).toBeCloseTo(slope(0, 0, step), 6)
        expect(takenByBelow[1]).toBeCloseTo(slope(1, step, 0), 6)
        expect(takenByOwn[1]).toBeCloseTo(slope(1, 0, step), 6)
      }),
    )
  })
})

describe('an element is short enough for parabolas', () => {
  /** Of a curve that is level up to a suction, and goes up and down from there on. */
  const curved = (length: number, from: number): number => {
    const table = {
      readWaterContent: (s: number, into: Float64Array, _: Float64Array, k: number) => {
        into[k] = s < from ? 0.9 : 0.5 + 0.4 * Math.cos(1.7 * (s - from))
      },
    }
    const grid = { lengths: Float64Array.of(length), layers: Uint16Array.of(0), boundaries: [0, 1] }
    return curvedElements(grid as unknown as ColumnGrid, [{ table }] as never)[0]!
  }
  it('unless the curve turns within it, as far as it is looked at: to a hundred lengths', () => {
    expect(curved(2, 5)).toBe(0)
    expect(curved(2, 100)).toBe(0)
    expect(curved(2, 300)).toBe(1)
    expect(curved(5, 300)).toBe(0)
  })
})

describe('a move is small', () => {
  const small = (s: readonly number[], move: readonly number[], { waterByOwn = [1, 1, 1], bend = 0 } = {}) => {
    const equations = {
      nodes: 3,
      grid: { volumes: Float64Array.of(100, 100, 100), layers: Uint16Array.of(0, 0) },
      terms: {
        waterByOwn: Float64Array.from(waterByOwn),
        trustByBelow: new Float64Array(2),
        trustByAbove: new Float64Array(2),
      },
      points: { at: { conductivity: Float64Array.of(1, 1, 1), conductivitySlope: Float64Array.of(bend, bend, bend) } },
    }
    // A hundredth of each cell: 1 cm³.
    return isSmallMove(equations as never, Float64Array.from(s), Float64Array.from(move), 0.01)
  }
  it('where no cell takes or gives more water than told, and no suction goes far', () => {
    expect(small([20, 20, 20], [0.9, -0.9, 0.9])).toBe(true)
    expect(small([20, 20, 20], [0, 1.1, 0])).toBe(false)
    expect(small([20, 20, 20], [0, 0, 1.1])).toBe(false)
    expect(small([20, 20, 20], [3.1, 0, 0], { waterByOwn: [0, 0, 0] })).toBe(false)
    expect(small([20, 20, 20], [2.9, 0, 0], { waterByOwn: [0, 0, 0] })).toBe(true)
  })
  it('where no end crosses saturation, and no cell between them with water', () => {
    expect(small([0.01, 20, 20], [-0.02, 0, 0])).toBe(false)
    expect(small([20, 20, 0.01], [0, 0, -0.02])).toBe(false)
    expect(small([20, 0.01, 20], [0, -0.02, 0])).toBe(false)
    expect(small([20, 0.01, 20], [0, -0.011, 0], { waterByOwn: [1, 0.5, 1] })).toBe(true)
  })
  it('where the conductivity changes by less than its 0.15', () => {
    expect(small([20, 20, 20], [0.5, 0, 0], { bend: -0.29 })).toBe(true)
    expect(small([20, 20, 20], [0.5, 0, 0], { bend: -0.31 })).toBe(false)
  })
})
