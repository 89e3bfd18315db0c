import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { columnBalance } from '../../src/flow/column/equations/balance.js'
import { bendConduction } from '../../src/flow/column/equations/bent-conduction.js'
import { carryOn } from '../../src/flow/column/equations/carry-on.js'
import { fillMeanConductivity } from '../../src/flow/column/equations/conduction.js'
import { addFilling, carryContents } from '../../src/flow/column/equations/filling.js'
import type { Points } from '../../src/flow/column/equations/points.js'
import { fillStorage } from '../../src/flow/column/equations/storage.js'
import { columnTerms } from '../../src/flow/column/equations/terms.js'
import { averageUptake, fillUptake, type Sink } from '../../src/flow/column/equations/uptake.js'
import type { ColumnGrid } from '../../src/flow/column/grid/grid.js'

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

describe('what roots take where two rules meet', () => {
  const sink: Sink = {
    fromLower: Float64Array.of(0.7, 1.1),
    fromUpper: Float64Array.of(1.3, 0.9),
    max: Float64Array.of(0.7, 2.4, 0.9),
    h1: 1,
    h2: 11,
    h3: 60,
    h4: 200,
  }
  const terms = columnTerms({ nodes: 3 } as ColumnGrid)
  const at = (...s: number[]) => {
    terms.trust.fill(1)
    fillUptake(Float64Array.from(s), sink, terms)
    averageUptake(Float64Array.from(s), sink, terms)
    return terms
  }
  it('is all that they ask from h2 to h3, the ends with them, whatever moves', () => {
    for (const s of [
      [11, 11, 60],
      [60, 35, 11],
      [12.3, 47.1, 13.9],
    ]) {
      const { taken, takenByOwn, takenByBelow, takenByAbove } = at(...s)
      expect([...taken]).toEqual([...sink.max])
      for (const slopes of [takenByOwn, takenByBelow, takenByAbove]) expect([...slopes]).toEqual([0, 0, 0])
    }
  })
  it('goes at each limit on with the slope of what lies behind it', () => {
    const terms = columnTerms({ nodes: 5 } as never)
    const sink = { max: new Float64Array(5).fill(8), h1: 2, h2: 10, h3: 40, h4: 80 }
    fillUptake(Float64Array.of(1.999, 2, 10, 40, 80), sink as never, terms)
    expect([...terms.taken]).toEqual([0, 0, 8, 8, 0])
    expect([...terms.takenByOwn]).toEqual([0, 1, 0, 0, 0])
    fillUptake(Float64Array.of(6, 9.999, 40.001, 60, 79.999), sink as never, terms)
    for (const [i, wanted] of [4, 7.999, 7.9998, 4, 0.0002].entries()) expect(terms.taken[i]).toBeCloseTo(wanted, 10)
    for (const [i, wanted] of [1, 1, -0.2, -0.2, -0.2].entries()) expect(terms.takenByOwn[i]).toBeCloseTo(wanted, 12)
  })
  it('is nothing below h1 and from h4 on', () => {
    for (const s of [0.99, -5, 200, 1e6]) expect([...at(s, s, s).taken]).toEqual([0, 0, 0])
    expect(at(199, 199, 199).taken[0]).toBeCloseTo(0.7 / 140, 12)
    expect(at(199, 199, 199).takenByOwn[0]).toBeCloseTo(-0.7 / 140, 12)
  })
  it('is that of the node where the suction between two nodes is not known', () => {
    terms.trust.fill(0)
    const s = Float64Array.of(2, 9, 30)
    fillUptake(s, sink, terms)
    averageUptake(s, sink, terms)
    expect([...terms.taken]).toEqual([0.07, 1.92, 0.9].map((one) => expect.closeTo(one, 12)))
  })
})

describe('water in an element that is too long for a parabola', () => {
  const grid = { layers: [0], lowerHalves: Float64Array.of(40), upperHalves: Float64Array.of(50), nodes: 2 }
  const points = (curved: 0 | 1) => ({
    at: { waterContent: Float64Array.of(0.8, 0.3), capacity: Float64Array.of(0.02, 0.01) },
    middleWaterContent: Float64Array.of(0.7),
    middleCapacity: Float64Array.of(0.03),
    curved: Uint8Array.of(curved),
  })
  const stored = (curved: 0 | 1, trust = 1) => {
    const terms = columnTerms(grid as never)
    terms.trust[0] = trust
    fillStorage(grid as never, points(curved) as never, terms)
    return terms
  }
  it('is that of straight lines between nodes and middle', () => {
    const { water, waterByOwn, waterByAbove, waterByBelow } = stored(0)
    expect([...water]).toEqual([40 * 0.75, 50 * 0.5].map((one) => expect.closeTo(one, 12)))
    // Half of each, and of the middle half against either node.
    expect(waterByOwn[0]).toBeCloseTo(-40 * (0.02 / 2 + 0.03 / 4), 12)
    expect(waterByAbove[0]).toBeCloseTo(-40 * (0.03 / 4), 12)
    expect(waterByOwn[1]).toBeCloseTo(-50 * (0.01 / 2 + 0.03 / 4), 12)
    expect(waterByBelow[1]).toBeCloseTo(-50 * (0.03 / 4), 12)
    expect([waterByBelow[0], waterByAbove[1]]).toEqual([0, 0])
  })
  it('is by a parabola where it is short: 5/12, 8/12 and -1/12', () => {
    const { water } = stored(1)
    expect(water[0]).toBeCloseTo((40 * (5 * 0.8 + 8 * 0.7 - 0.3)) / 12, 12)
    expect(water[1]).toBeCloseTo((50 * (5 * 0.3 + 8 * 0.7 - 0.8)) / 12, 12)
  })
  it('is what the nodes hold where the suction jumps, and between both where it is half trusted', () => {
    expect([...stored(0, 0).water]).toEqual([32, 15])
    expect(stored(1, 0.5).water[0]).toBeCloseTo((32 + (40 * (5 * 0.8 + 8 * 0.7 - 0.3)) / 12) / 2, 12)
  })
})

describe('the mean conductivity of an element', () => {
  it('is that of its ends, and from a hundredth to two of the larger suction on that of its potential', () => {
    const mean = (apart: number) => {
      const terms = columnTerms({ nodes: 2 } as ColumnGrid)
      const at = {
        conductivity: Float64Array.of(0.5, 0.3),
        conductivitySlope: Float64Array.of(-0.2, -0.1),
        // So that the quotient is 0.8.
        potential: Float64Array.of(0.8 * apart, 0),
      }
      const larger = 100
      const points = { effective: Float64Array.of(larger - apart, larger), at }
      fillMeanConductivity({ layers: [0] } as never, points as never, terms)
      return [terms.mean[0]!, terms.meanByBelow[0]!, terms.meanByAbove[0]!]
    }
    const close = (...list: number[]) => list.map((one) => expect.closeTo(one, 10))
    // The trapezoid with the correction of its ends, (s₂ - s₁)² (K₂' - K₁') / 12 over the length.
    const ends = (apart: number) => 0.4 - (apart * 0.05) / 6
    expect(mean(0.9)).toEqual(close(ends(0.9), -0.1, -0.05))
    for (const [apart, smooth] of [
      [1.25, 0.15625],
      [1.5, 0.5],
      [1.75, 0.84375],
      [2, 1],
      [4, 1],
    ] as const)
      expect(mean(apart)).toEqual(
        close(
          ends(apart) + smooth * (0.8 - ends(apart)),
          -0.1 + smooth * ((0.8 - 0.5) / apart + 0.1),
          -0.05 + smooth * ((0.3 - 0.8) / apart + 0.05),
        ),
      )
  })
})

describe('what an element fills by', () => {
  it('goes up through it by its share, with what roots take from it meanwhile', () => {
    const grid = { layers: [0], perVolume: Float64Array.of(0.1, 0.2) }
    const filling = { perTime: 0.5, isNew: false, from: Float64Array.of(0.2, 0.4), share: Float64Array.of(3) }
    const at = { waterContent: Float64Array.of(0.5, 0.6), capacity: Float64Array.of(0.02, 0.01) }
    const terms = columnTerms({ nodes: 2 } as ColumnGrid)
    terms.up[0] = 7
    terms.taken.set([0.4, 0.6])
    terms.takenByOwn.set([0.3, -0.5])
    addFilling(filling, grid as never, { at } as never, terms)
    // Half a second's worth of 0.3 and 0.2, and a tenth and a fifth of what is taken.
    expect(terms.up[0]).toBeCloseTo(7 + 3 * (0.15 + 0.04 + 0.1 + 0.12), 12)
    expect(terms.upByBelow[0]).toBeCloseTo(3 * (0.03 - 0.01), 12)
    expect(terms.upByAbove[0]).toBeCloseTo(3 * (-0.1 - 0.005), 12)
  })
})

describe('flows that are carried on', () => {
  const terms = () => {
    const made = columnTerms({ nodes: 2 } as ColumnGrid)
    made.water.set([10, 20])
    made.waterByOwn.set([-2, -3])
    made.waterByAbove[0] = -0.5
    made.waterByBelow[1] = -0.25
    made.up[0] = 4
    made.upByBelow[0] = -1
    made.upByAbove[0] = 0.5
    made.taken.set([0.5, 0.2])
    made.takenByOwn.set([1, -1])
    made.takenByAbove[0] = 0.1
    made.takenByBelow[1] = 0.2
    return Object.assign(made, {
      drained: 3,
      drainedSlope: -4,
      runOff: 2,
      runOffSlope: -5,
      evaporated: 0.6,
      evaporatedSlope: -0.5,
      entered: 7,
    })
  }
  const carried = (move: readonly number[], max?: readonly number[]) => {
    const balance = columnBalance({ nodes: 2 } as ColumnGrid, terms(), false, false)
    carryOn(balance, Float64Array.from(move), max && Float64Array.from(max))
    return balance
  }
  const numbers = (list: readonly number[]) => list.map((one) => expect.closeTo(one, 12))
  it('change by their slopes, and so does what comes to each cell', () => {
    const { terms: now, net } = carried([0.2, -0.4], [1, 1])
    expect([...now.water]).toEqual(numbers([10 - 0.4 + 0.2, 20 - 0.05 + 1.2]))
    expect([...now.up]).toEqual(numbers([4 - 0.2 - 0.2]))
    expect([...now.taken]).toEqual(numbers([0.5 + 0.2 - 0.04, 0.2 + 0.04 + 0.4]))
    expect([now.drained, now.runOff, now.evaporated]).toEqual(numbers([3 - 0.8, 2 + 2, 0.6 + 0.2]))
    expect([...net]).toEqual(numbers([-3.6 - 0.66 - 2.2, 3.6 - 0.64 + 7 - 4 - 0.8]))
  })
  it('do not turn back, and roots take from nothing to all that they ask', () => {
    const { terms: now } = carried([1, 2], [0.9, 1])
    expect([...now.taken]).toEqual([0.9, 0])
    expect([now.drained, now.runOff, now.evaporated]).toEqual([0, 0, 0])
    expect([...carried([1, 1]).terms.taken]).toEqual([0.5, 0.2])
  })
})

describe('contents that are carried on', () => {
  it('fall by capacity times move, on both sides of where two layers meet', () => {
    const waterContent = Float64Array.of(0.5, 0.6, 0.7, 0.8, 0.9)
    const capacity = Float64Array.of(0.1, 0.2, 0.3, 0.4, 0.5)
    // Four nodes, of which the third is the boundary: a point on either side of it.
    const grid = { boundaries: [0, 2, 3] }
    carryContents(grid as never, { at: { waterContent, capacity } } as never, Float64Array.of(1, -1, 0.5, 0.2))
    expect([...waterContent]).toEqual([0.4, 0.8, 0.55, 0.6, 0.8].map((one) => expect.closeTo(one, 12)))
  })
})

describe('a flow where nothing conducts', () => {
  it('is bent ever less: both ends together conduct less than 1e-30 of what they do when full', () => {
    const grid = { layers: [0], lengths: Float64Array.of(1) }
    const bent = (below: number, above: number) => {
      const terms = columnTerms({ nodes: 2 } as ColumnGrid)
      terms.up[0] = 5
      terms.trust[0] = 1
      const at = { conductivity: Float64Array.of(below, above), conductivitySlope: Float64Array.of(0, 0) }
      bendConduction(grid as never, { suction: Float64Array.of(10, 20), at } as never, terms)
      return terms.up[0]
    }
    expect(bent(0, 0)).toBe(5)
    expect(bent(1e-34, 0)).toBeCloseTo(5, 7)
    // x and y of a fall by all within half of the way: 1 + x y / 3 below the line.
    expect(bent(1e-30, 0)).toBeCloseTo(5 / (1 + 1 / 30), 12)
  })
})
