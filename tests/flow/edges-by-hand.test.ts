import { capillaryFlux, fitWaterStore, sorptivityParlange1975, steadySuctionGardner1958 } from 'porewater/flow'
import { boxContainer, gardner1958, vanGenuchten1980, wettingCurveKoolParker1987 } from 'porewater/medium'
import { describe, expect, it } from 'vitest'
import { columnEquations } from '../../src/flow/column/equations/equations.js'
import { columnPoints } from '../../src/flow/column/equations/points.js'
import { columnHistory, follow, forget, passesTurn } from '../../src/flow/column/scanning/history.js'
import { goesAstray } from '../../src/flow/column/step/possible.js'
import { reconcile } from '../../src/flow/column/step/reconcile.js'
import { columnSolver } from '../../src/flow/column/step/solver.js'
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
