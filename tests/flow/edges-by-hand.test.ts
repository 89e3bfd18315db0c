import { capillaryFlux, fitWaterStore, sorptivityParlange1975, steadySuctionGardner1958 } from 'porewater/flow'
import { boxContainer, gardner1958, vanGenuchten1980, wettingCurveKoolParker1987 } from 'porewater/medium'
import { describe, expect, it } from 'vitest'
import { columnEquations } from '../../src/flow/column/equations/equations.js'
import { columnPoints } from '../../src/flow/column/equations/points.js'
import { columnTerms } from '../../src/flow/column/equations/terms.js'
import { fillUptake } from '../../src/flow/column/equations/uptake.js'
import { columnHistory, follow, forget, passesTurn } from '../../src/flow/column/scanning/history.js'
import { columnNewton } from '../../src/flow/column/step/newton.js'
import { goesAstray } from '../../src/flow/column/step/possible.js'
import { reconcile } from '../../src/flow/column/step/reconcile.js'
import { isSmallMove } from '../../src/flow/column/step/small-move.js'
import { columnSolver } from '../../src/flow/column/step/solver.js'
import { curvedElements } from '../../src/flow/column/table/curved.js'
import { richardsColumn } from '../../src/flow/richards-column.js'
import { conductivityByImages, fromSurface } from '../../src/flow/srivastava-yeh-early.js'
import { afterRoot, conductivityBySeries } from '../../src/flow/srivastava-yeh-series.js'
import { bestCapacity } from '../../src/flow/store/search-store.js'

describe('a step goes astray', () => {
  // Two cells of 50 cm³ that hold 40, for two seconds; a suction below zero stands on the upper one as ten times as much water.
  const astray = (held: readonly number[], more: object, from = 5, to = 5) =>
    goesAstray(
      {
        full: Float64Array.of(40, 40),
        grid: { volumes: Float64Array.of(50, 50) },
        standing: (s: Float64Array) => 10 * Math.max(0, -s[1]!),
      } as never,
      Float64Array.from(held),
      {
        up: new Float64Array(2),
        taken: new Float64Array(2),
        drained: 0,
        entered: 0,
        runOff: 0,
        evaporated: 0,
        ...more,
      },
      2,
      Float64Array.of(5, from),
      Float64Array.of(5, to),
    )
  it('where roots take what a cell does not have, not where they take what it has', () => {
    expect(astray([20, 20], { taken: Float64Array.of(9.9, 9.9) })).toBe(false)
    expect(astray([20, 20], { taken: Float64Array.of(10.1, 0) })).toBe(true)
    expect(astray([20, 20], { taken: Float64Array.of(0, 10.1) })).toBe(true)
  })
  it('where water that stood has gone by no flow, not where it ran off, evaporated or sank', () => {
    // 40 cm³ in the cell and 20 on it.
    expect(astray([20, 60], {}, -2, -2)).toBe(false)
    expect(astray([20, 60], {}, -2, 5)).toBe(true)
    expect(astray([20, 60], { runOff: 10 }, -2, 5)).toBe(false)
    expect(astray([20, 60], { evaporated: 10 }, -2, 5)).toBe(false)
    expect(astray([20, 60], { up: Float64Array.of(-10, 0) }, -2, 5)).toBe(false)
    expect(astray([20, 40], { entered: 10 }, 5, -2)).toBe(false)
    expect(astray([20, 40], { entered: 10 }, 5, 5)).toBe(true)
  })
  it('where more drains than the lowest cell has', () => {
    expect(astray([20, 20], { drained: 9.9 })).toBe(false)
    expect(astray([20, 20], { drained: 10.1 })).toBe(true)
    expect(astray([20, 20], { drained: 10.1, up: Float64Array.of(-1, 0) })).toBe(false)
  })
})

describe('a small move', () => {
  /** Three cells of 50 cm³ that hold 2 cm³ less for each centimetre, of which small is a hundredth: half a cubic centimetre. */
  const small = (suctions: readonly number[], move: readonly number[], more: { k?: number; trust?: number } = {}) =>
    isSmallMove(
      {
        nodes: 3,
        grid: { volumes: new Float64Array(3).fill(50), layers: [0, 0] },
        terms: {
          waterByOwn: new Float64Array(3).fill(-2),
          trustByBelow: new Float64Array(2).fill(more.trust ?? 0),
          trustByAbove: new Float64Array(2).fill(more.trust ?? 0),
        },
        points: {
          history: undefined,
          at: {
            conductivity: new Float64Array(3).fill(0.5),
            conductivitySlope: new Float64Array(3).fill(-(more.k ?? 0)),
          },
        },
      } as never,
      Float64Array.from(suctions),
      Float64Array.from(move),
      0.01,
    )
  it('brings no more than what is small to any cell', () => {
    for (const sign of [1, -1]) {
      expect(small([30, 30, 30], [0, 0.25 * sign, 0])).toBe(true)
      expect(small([30, 30, 30], [0, 0.2501 * sign, 0])).toBe(false)
    }
  })
  it('brings no more than a hundredth of that to one that passes saturation or is full, but for what stands on the surface', () => {
    expect(small([30, 0.001, 30], [0, -0.0025, 0])).toBe(true)
    expect(small([30, 0.001, 30], [0, -0.0026, 0])).toBe(false)
    expect(small([30, -1, 30], [0, 0.0025, 0])).toBe(true)
    expect(small([30, -1, 30], [0, 0.0026, 0])).toBe(false)
    expect(small([30, 0, 30], [0, -0.0026, 0])).toBe(false)
    expect(small([30, 30, -1], [0, 0, 0.2])).toBe(true)
  })
  it('passes saturation at neither end', () => {
    expect(small([1e-4, 30, 30], [-2e-4, 0, 0])).toBe(false)
    expect(small([30, 30, 1e-4], [0, 0, -2e-4])).toBe(false)
    expect(small([-1e-4, 30, 30], [1.5e-4, 0, 0])).toBe(false)
    // Zero is full.
    expect(small([1e-4, 30, 30], [-1e-4, 0, 0])).toBe(false)
    expect(small([-1e-4, 30, 30], [1e-4, 0, 0])).toBe(true)
  })
  it('is at most fifteen hundredths of the suction and of two millimetres', () => {
    expect(small([30, 0.8, 30], [0, 0.15, 0])).toBe(true)
    expect(small([30, 0.8, 30], [0, -0.1501, 0])).toBe(false)
  })
  it('changes no conductivity by more than fifteen hundredths, as its slope has it', () => {
    // Of the node below each element: the highest counts nowhere.
    expect(small([30, 30, 30], [0.125, 0, 0], { k: 0.6 })).toBe(true)
    expect(small([30, 30, 30], [0, -0.126, 0], { k: 0.6 })).toBe(false)
    expect(small([30, 30, 30], [0, 0, 0.2], { k: 0.6 })).toBe(true)
  })
  it('changes the trust in no element by more than a hundredth', () => {
    // Powers of two, so that the sum is exact.
    expect(small([30, 30, 30], [0.125, 0.125, 0.125], { trust: 0.04 })).toBe(true)
    expect(small([30, 30, 30], [0.125, 0.125, 0.125], { trust: 0.041 })).toBe(false)
    expect(small([30, 30, 30], [0.125, -0.125, 0.125], { trust: 0.5 })).toBe(true)
  })
})

describe('elements that are short enough for a parabola', () => {
  const flags = (lengths: readonly number[], capacity: number, wetting?: number) => {
    // Full at zero, and from there on a straight line.
    const line = (slope: number) => ({
      readWaterContent: (s: number, into: Float64Array, _: Float64Array, k: number) => {
        into[k] = 0.9 - slope * Math.max(s, 0)
      },
    })
    const grid = { lengths: Float64Array.from(lengths), layers: lengths.map(() => 0), boundaries: [0, lengths.length] }
    const layer = { table: line(capacity), wetting: wetting === undefined ? undefined : line(wetting) }
    return [...curvedElements(grid as never, [layer] as never)]
  }
  const lengths = Array.from({ length: 257 }, (_, k) => 1 + k / 256)
  // From a kink in the middle of a stretch on, by a slope c: its lower half has by the parabola (5 w + 8 w + w - c d / 2) / 12 in the mean, w
  // and c d / 24 more than it can hold. Of stretches of four lengths that is 3e-4 where the length is 1.8e-3 / c.
  it.each([1.1, 1.25, 1.5, 1.7, 1.99])('are those up to a length of %d', (longest) => {
    const longestFound = lengths[flags(lengths, 1.8e-3 / longest).lastIndexOf(1)]!
    expect(longestFound).toBeGreaterThan(longest - 2 / 256)
    expect(longestFound).toBeLessThanOrEqual(longest)
    expect(flags(lengths, 1e-9, 1.8e-3 / longest)).toEqual(flags(lengths, 1.8e-3 / longest))
  })
  it('are found to a 256th of the difference between the shortest and the longest', () => {
    // Those up to 1.5 + 0.7 / 256, of which 1.5 is found.
    const some = [1, 1.5, 1.5 + 0.4 / 256, 2]
    expect(flags(some, 1.8e-3 / (1.5 + 0.7 / 256))).toEqual([1, 1, 0, 0])
    expect(flags(some, 1.8e-3 / (1.5 + 1.3 / 256))).toEqual([1, 1, 1, 0])
  })
  it('are all where the longest is, and none where the shortest is not', () => {
    expect(flags([1, 1.5, 2], 0.89e-3)).toEqual([1, 1, 1])
    expect(flags([1, 1.5, 2], 1.81e-3)).toEqual([0, 0, 0])
    expect(flags([1, 1.5, 2], 1.79e-3)).toEqual([1, 0, 0])
  })
})

describe('a balance', () => {
  /** Cells that do not know of each other, of one cubic centimetre. */
  const solved = (
    water: (s: number, i: number) => number,
    held: object,
    s: number[],
    bold = true,
    sink: object | undefined = undefined,
  ) => {
    const nodes = s.length
    const room = () => new Float64Array(nodes)
    const terms = { water: room(), waterByOwn: room().fill(-1) }
    const [lower, diagonal, upper] = [room(), room(), room()]
    let tried = 0
    let second = Number.NaN
    const equations = {
      nodes,
      grid: { volumes: room().fill(1), perVolume: room().fill(1), layers: [] },
      points: { history: undefined, at: {} },
      terms,
      net: room(),
      lower,
      diagonal,
      upper,
      heldBase: false,
      heldTop: false,
      ...held,
      evaluate: (at: Float64Array) => {
        if (++tried === 2) second = at[0]!
        for (let i = 0; i < nodes; i++) terms.water[i] = water(at[i]!, i)
      },
      assemble: () => {
        lower.fill(0)
        upper.fill(0)
        diagonal.set(terms.waterByOwn)
      },
      carryOn: () => {},
      closeHeldEnds: () => {},
    }
    const at = Float64Array.from(s)
    const { solve } = columnNewton(equations as never, { small: 1e-12, bold })
    const done = solve(at, room(), { applied: 0, evaporation: 0, sink } as never, 1)
    return { done, at: [...at], tried, second }
  }
  it('is that of all cells but those whose suction is held, which stay', () => {
    // The middle one is to hold nothing at 20 cm, and the others never do.
    const water = (s: number, i: number) => (i === 1 ? 20 - s : 7)
    expect(solved(water, { heldBase: true, heldTop: true }, [30, 19.5, 30])).toMatchObject({
      done: true,
      at: [30, 20, 30],
      tried: 2,
    })
    for (const held of [{ heldBase: true }, { heldTop: true }, {}])
      expect(solved(water, held, [30, 19.5, 30]).done).toBe(false)
  })
  it('is sought on this side of the suction at which roots stop, nine tenths of the way to it', () => {
    expect(solved((s) => 300 - s, {}, [100], true, { h4: 200 }).second).toBeCloseTo(190, 10)
    // Without roots as far as a move goes, to the fourfold.
    expect(solved((s) => 300 - s, {}, [100]).second).toBeCloseTo(100 * Math.exp(1.4), 10)
  })
  it('counts as found below what is enough, not at it', () => {
    const off = (by: number) => solved(() => by, {}, [30], false).tried
    expect(off(0.999e-10)).toBe(1)
    // All four shares of six moves, until 1e-7 is enough.
    expect(off(1e-10)).toBe(1 + 6 * 4)
  })
})

describe('what roots take', () => {
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
})

describe('sorptivity', () => {
  it('has by Parlange (1975), of a medium that is dry behind a hair, the whole of its integral', () => {
    // θ and K fall alike by a share α a centimetre: S² = K_s Δθ (1/α + 1/2α), of which 10⁻⁵ cm have a hundredth.
    const [alpha, rise, conductivity] = [1000, 0.8, 10]
    const medium = gardner1958({ residual: 0.1, saturated: 0.1 + rise, alpha } as never)
    const found = sorptivityParlange1975({ medium, saturatedConductivity: conductivity, initialSuction: 1e7 } as never)
    expect(found / Math.sqrt((1.5 * conductivity * rise) / alpha)).toBeCloseTo(1, 6)
  })
})

describe('the series of a change of flux', () => {
  it('ends behind its sixtieth root where that is too early, and bounds what is left by it', () => {
    const column = { height: 3, bottom: 1, before: 0.1, since: 0.5 }
    const time = 1e-4
    const { error } = conductivityBySeries(column, 1.5, time)
    const left = 4 * 0.4 * Math.exp(1.5 / 2 - time / 4) * afterRoot(60, 3, time)
    expect(error / left).toBeCloseTo(1, 6)
  })
})

describe('the capacity of a store', () => {
  it('is sought by moves of no more than its range, down from its upper half and up from its lower', () => {
    const sought = (capacityOfRecord: number) => {
      const asked: number[] = []
      const found = bestCapacity(
        { drained: Float64Array.of(0.4) } as never,
        ([capacity]) => {
          asked.push(capacity)
          return Float64Array.of(2 * (capacityOfRecord - capacity) + 0.4)
        },
        [0.7, 0.7005],
        [0, 60],
        2,
      )
      expect(found).toBeCloseTo(capacityOfRecord, 12)
      return asked.map((one) => expect.closeTo(one, 12))
    }
    expect([0.7005, 0.7, 0.7004, 0.6999]).toEqual(sought(0.7004))
    expect([0.7005, 0.7, 0.7001, 0.7006]).toEqual(sought(0.7001))
  })
})

describe('images of a change of flux', () => {
  const images = (height: number, at: number, time: number) =>
    conductivityByImages({ height, bottom: 1, before: 0.1, since: 0.5 }, at, time)
  it('are off by what both of those that are written out are off', () => {
    // At the bottom the echo is as large as what comes directly, of a change of 0.4; further ones are nothing, and a steady conductivity of one is
    // known to 1e-14.
    const { error } = fromSurface(5, 1)
    expect((images(5, 0, 1).error - 1e-14) / (2 * 0.4 * error)).toBeCloseTo(1, 6)
  })
  it('have a bound where an echo fades by just a half', () => {
    expect(images(2 * Math.LN2, 1, 10).error).toBeLessThan(Number.POSITIVE_INFINITY)
    expect(images(2 * Math.LN2 * (1 - 1e-15), 1, 10).error).toBe(Number.POSITIVE_INFINITY)
  })
})

describe('a steady suction by Gardner (1958)', () => {
  it('is refused where all conductivity is used up, just there', () => {
    // q - (q - 1) e^(-a z) with q = -1 and e^(-a z) = 1/2 is nothing.
    const at = (height: number) =>
      steadySuctionGardner1958({ saturatedConductivity: 1, alpha: 1, downwardFlux: -10, height } as never)
    expect(() => at(Math.LN2)).toThrow('so much water cannot rise so high')
    expect(at(Math.LN2 - 1e-6)).toBeGreaterThan(10)
  })
})

const still = { applied: 0, evaporation: 0, sink: undefined }
/** A column of layers of one medium, some of which drain and wet on two curves. */
function made(around: object, scans: readonly boolean[]) {
  const curve = { residual: 0.08, saturated: 0.88, alpha: 0.09, n: 1.7 }
  const layer = {
    container: boxContainer({ length: 20, width: 10, height: 10 } as never),
    medium: vanGenuchten1980(curve as never),
    saturatedConductivity: 40,
  }
  const wetting = wettingCurveKoolParker1987(curve as never)
  return richardsColumn(
    scans.map((both) => (both ? { ...layer, wetting } : layer)) as never,
    { nodes: 5, ...around } as never,
  )
}

describe('suctions at the begin of a time', () => {
  it('stay where they say what cells hold to three tenths of the tolerance, and are made to say it where they do not', () => {
    const tolerance = 1e-3
    const { grid, media, ends } = made({}, [false])
    const equations = columnEquations(grid, media, ends, 'averaged', undefined)
    const moved = (share: number) => {
      const suctions = grid.heights.map((height) => 12 + height)
      equations.store(suctions)
      const held = equations.terms.water.map((one, i) => one + (i === 2 ? share * tolerance * grid.volumes[2]! : 0))
      const before = suctions.slice()
      const passed = { entered: 0, drained: 0, taken: 0, runOff: 0, evaporated: 0, steps: 0 }
      const { advance } = columnSolver(equations, { tolerance, small: 1e-9, bold: false, maxSteps: 10 })
      expect(advance({ suctions, held }, 0, still, passed, undefined)).toBe(0)
      return before[2]! - suctions[2]!
    }
    expect(moved(0.29)).toBe(0)
    // By what fills it over the slope of its curve.
    expect(moved(0.31)).toBeGreaterThan(0.01)
    expect(moved(-0.31)).toBeLessThan(-0.01)
  })
})

describe('suctions made to say what a cell holds', () => {
  it('are left alone by a cell that loses less than a billionth of its volume for a centimetre', () => {
    const left = (slope: number) => {
      const room = () => new Float64Array(1)
      const terms = { water: room(), waterByOwn: room(), waterByBelow: room(), waterByAbove: room() }
      const store = (s: Float64Array) => {
        terms.water[0] = slope * s[0]!
        terms.waterByOwn[0] = slope
      }
      const grid = { volumes: room().fill(50) }
      const equations = { nodes: 1, grid, terms, store, lower: room(), diagonal: room(), upper: room() }
      const s = Float64Array.of(-2)
      reconcile(s, Float64Array.of(slope * -3), equations as never, 1e-12)
      return s[0]
    }
    expect(left(-4.9e-8)).toBe(-2)
    expect(left(-5.1e-8)).toBeCloseTo(-3, 12)
  })
})

describe('a turn of a medium', () => {
  // Two layers of two elements: six points of nodes, and four of middles.
  const turn = Float64Array.of(10, 20, 30, 40, 50, 60, 100, 200, 300, 400)
  const passes = (i: number, s: readonly number[], move: readonly number[]) =>
    passesTurn(
      { nodePoints: 6, turn } as never,
      { layers: [0, 0, 1, 1] } as never,
      Float64Array.from(s),
      Float64Array.from(move),
      i,
    )
  const still = [5, 5, 5, 5, 5]
  const one = (i: number, s: number, move: number) =>
    passes(
      i,
      still.map((at, k) => (k === i ? s : at)),
      still.map((_, k) => (k === i ? move : 0)),
    )
  it('is passed by the node that turned there, from either side; at a boundary that of either layer', () => {
    for (const [i, ...turns] of [
      [0, 10],
      [1, 20],
      [2, 30, 40],
      [3, 50],
      [4, 60],
    ] as const)
      for (const at of turns) {
        expect([one(i, at - 1, 2), one(i, at + 1, -2)]).toEqual([true, true])
        expect([one(i, at - 2, 1), one(i, at + 2, -1), one(i, at, 1), one(i, at, -1)]).toEqual([
          false,
          false,
          false,
          true,
        ])
      }
  })
  it('is passed by the middle of the element below a node', () => {
    for (const [i, at] of [
      [1, 100],
      [2, 200],
      [3, 300],
      [4, 400],
    ] as const) {
      const s = still.map((own, k) => (k === i || k === i - 1 ? at - 1 : own))
      const move = (by: number) => still.map((_, k) => (k === i || k === i - 1 ? by : 0))
      expect([passes(i, s, move(2)), passes(i, s, move(0.5))]).toEqual([true, false])
      // Half a move of one node.
      expect(
        passes(
          i,
          s,
          still.map((_, k) => (k === i - 1 ? 2.1 : 0)),
        ),
      ).toBe(true)
      expect(
        passes(
          i,
          s,
          still.map((_, k) => (k === i - 1 ? 1.9 : 0)),
        ),
      ).toBe(false)
    }
  })
})

describe('the points of a column', () => {
  it('hold what those that drain would at their own suctions, in a layer with one curve beside one with two', () => {
    const { grid, media } = made({}, [false, true, false])
    const history = columnHistory(grid, media, 1e-3)!
    forget(history, false)
    follow(
      history,
      grid,
      grid.heights.map(() => 50),
    )
    const points = columnPoints(grid, media, history)
    const suctions = grid.heights.map((_, i) => 3 + (i % 4))
    points.read(suctions)
    const [first, last] = [grid.boundaries[1]!, grid.boundaries[2]!]
    for (const [layer, from, to] of [
      [0, 0, first],
      [1, first, last],
      [2, last, grid.nodes - 1],
    ] as const)
      for (let i = from; i <= to; i++) {
        expect(points.suction[i + layer]).toBe(suctions[i])
        // What was drained to 50 cm holds less than at 3 to 6 cm while draining.
        if (layer === 1) expect(points.effective[i + layer]).toBeGreaterThan(suctions[i]! + 0.1)
        else expect(points.effective[i + layer]).toBe(suctions[i])
      }
    for (const [e, middle] of points.middle.entries()) expect(middle).toBe((suctions[e]! + suctions[e + 1]!) / 2)
  })
})

describe('an end that stays at the suction that it had', () => {
  it.each([{ base: 12 }, { surface: 22 }])('gives and takes nothing at once, whatever its cell holds: %o', (around) => {
    const { grid, media, ends } = made(around, [false])
    const equations = columnEquations(grid, media, ends, 'averaged', undefined)
    const suctions = grid.heights.map((height) => 12 + height)
    equations.store(suctions)
    const held = equations.terms.water.map((one) => one - 0.01)
    const passed = { entered: 0, drained: 0, taken: 0, runOff: 0, evaporated: 0, steps: 0 }
    const limits = { tolerance: 1e-3, small: 1e-9, bold: false, maxSteps: 10 }
    const before = [...held]
    columnSolver(equations, limits).advance({ suctions, held }, 0, still, passed, undefined)
    expect([passed.entered, passed.drained]).toEqual([0, 0])
    expect([...held]).toEqual(before)
  })
})

describe('a rise where nothing conducts from some suction on', () => {
  it('ends there: no water comes higher, however little', () => {
    const medium = { relativeConductivity: (s: number) => (s < 1 ? 1 : 0), breakpoints: [1] }
    const flux = (height: number) => capillaryFlux({ medium, saturatedConductivity: 10, height, suction: 20 } as never)
    expect(flux(5)).toBe(0)
    // Up to a centimetre all conducts alike: of that 1 / (1 + e / K).
    expect(flux(0.5)).toBeCloseTo(10 * 10, 6)
  })
})

describe('a record of a store', () => {
  it('has at least four steps', () => {
    const record = (count: number) => ({
      substrateVolume: 10,
      minWaterContent: 0.1,
      start: 0.6,
      steps: Array.from({ length: count }, () => ({ duration: 600, applied: 0.3, demand: 0 })),
      drained: Array.from({ length: count }, () => 0),
    })
    expect(() => fitWaterStore(record(3) as never)).toThrow('give at least four')
    expect(() => fitWaterStore(record(4) as never)).toThrow('is zero in all steps')
  })
})

describe('steps that do not grow', () => {
  it('are given up at the second look, where they would not end', () => {
    const { grid, media, ends } = made({}, [false])
    const equations = columnEquations(grid, media, ends, 'averaged', undefined)
    let called = 0
    const trembling = {
      ...equations,
      // A flow to and fro between two cells, which asks for steps of always the same length.
      evaluate: (...given: Parameters<typeof equations.evaluate>) => {
        equations.evaluate(...given)
        const sign = ++called % 2 === 0 ? 1 : -1
        equations.net[1]! += 0.5 * sign
        equations.net[2]! -= 0.5 * sign
      },
    }
    const suctions = grid.heights.map((height) => 12 + height)
    equations.store(suctions)
    const held = equations.terms.water.slice()
    const passed = { entered: 0, drained: 0, taken: 0, runOff: 0, evaporated: 0, steps: 0 }
    const limits = { tolerance: 1e-3, small: 0.5, bold: true, maxSteps: 4000 }
    const left = columnSolver(trembling, limits).advance({ suctions, held }, 1e9, still, passed, undefined)
    expect(passed.steps).toBe(2000)
    expect(left).toBeGreaterThan(0.99e9)
  })
})
