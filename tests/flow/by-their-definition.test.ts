import { maxEvaporationPowerGardner1958, probeReading } from 'porewater/flow'
import { boxContainer, brooksCorey1964, vanGenuchten1980 } from 'porewater/medium'
import { describe, expect, it } from 'vitest'
import { columnEquations } from '../../src/flow/column/equations/equations.js'
import { columnGrid } from '../../src/flow/column/grid/grid.js'
import { firstStageAlone } from '../../src/flow/column/step/first-stage-alone.js'
import type { Passed } from '../../src/flow/column/step/passed.js'
import { errorOfStep } from '../../src/flow/column/step/step-correction.js'
import { stepWork } from '../../src/flow/column/step/step-work.js'
import { mediumTable } from '../../src/flow/column/table/medium-table.js'
import { nodeValues } from '../../src/flow/column/table/node-values.js'
import { tableRows } from '../../src/flow/column/table/table-rows.js'
import { richardsColumn } from '../../src/flow/richards-column.js'
import { prepare, transportOf } from '../../src/flow/salt/transport.js'
import { solveTridiagonal } from '../../src/numerics/tridiagonal.js'

// Brands say nothing about values; plain numbers keep the cases readable.
const smooth = vanGenuchten1980({ residual: 0.08, saturated: 0.88, alpha: 0.09, n: 1.7 } as never)
const kinked = brooksCorey1964({ residual: 0.05, saturated: 0.6, airEntry: 12, lambda: 1.4 } as never)
const box = boxContainer({ length: 20, width: 10, height: 10 } as never)
const NAMES = ['waterContent', 'capacity', 'conductivity', 'conductivitySlope', 'potential'] as const

describe.each([
  ['without a kink', smooth],
  ['with a kink', kinked],
  [
    'with a kink where a cell ends',
    brooksCorey1964({ residual: 0.05, saturated: 0.6, airEntry: 16, lambda: 1.4 } as never),
  ],
  [
    // 26 sixteenths of a sixteenth: a cell ends there however finely octaves are cut.
    'with a kink where one of the first cells ends',
    brooksCorey1964({ residual: 0.05, saturated: 0.6, airEntry: 0.1015625, lambda: 0.4 } as never),
  ],
  [
    'with a kink below its first row',
    brooksCorey1964({ residual: 0.05, saturated: 0.6, airEntry: 0.04, lambda: 0.4 } as never),
  ],
])('a medium written out %s', (_, medium) => {
  // Made in each test: what is made while tests are gathered shows no change of the code.
  const written = () => {
    const table = mediumTable(medium)
    const read = (suctions: readonly number[]) => {
      const into = nodeValues(suctions.length)
      table.read(Float64Array.from(suctions), into, 0, suctions.length)
      return into
    }
    return { table, read }
  }
  const WET = [0.01, 0.05, 0.0999]
  const ROWS = [0.1, 0.3, 1.7, 5, 11.9, 12.1, 14.8, 15.3, 15.8, 16.2, 17, 40, 333, 2500, 7e4, 9e6]
  it('loses a ten-millionth of its volume with every e-fold beyond the driest row', () => {
    const { read } = written()
    const beyond = [1, Math.E, Math.E ** 2, 3 * Math.E ** 3].map((fold) => fold * 1e7)
    const { waterContent, capacity, conductivity, conductivitySlope, potential } = read(beyond)
    for (const [k, lost] of [0, 1e-7, 2e-7, 1e-7 * (3 + Math.log(3))].entries()) {
      expect(waterContent[k]! - waterContent[0]!).toBeCloseTo(-lost, 14)
      // Minus the slope of that.
      expect(capacity[k]! * beyond[k]!).toBeCloseTo(1e-7, 14)
      expect([conductivity[k], conductivitySlope[k], potential[k]]).toEqual([0, 0, 0])
    }
    expect(read([1e7 * (1 - 1e-9)]).waterContent[0]).toBeCloseTo(waterContent[0]!, 12)
  })
  it('has slopes that are those of its contents and conductivities, and conductivities that are those of its potential', () => {
    const { read } = written()
    for (const s of [...WET, ...ROWS, 2e7]) {
      const step = 1e-6 * s
      const [at, both] = [read([s]), read([s - step, s + step])]
      const isSlope = (slope: number, of: 'waterContent' | 'conductivity' | 'potential', least: number) => {
        const difference = (both[of][1]! - both[of][0]!) / (2 * step)
        const rounding = (4e-16 * at[of][0]!) / step
        expect(Math.abs(slope - difference), `${of} at ${s}`).toBeLessThanOrEqual(
          1e-4 * Math.max(Math.abs(slope), least) + rounding,
        )
      }
      isSlope(-at.capacity[0]!, 'waterContent', 1e-6 / s)
      isSlope(at.conductivitySlope[0]!, 'conductivity', (1e-2 * at.conductivity[0]!) / s)
      isSlope(-at.conductivity[0]!, 'potential', 0)
    }
  })
  it('read by what it holds has the values of the suction at which it holds that, wherever it is looked for first', () => {
    const { table, read } = written()
    const near = [-5, 0, 0.03, ...ROWS, 3e7, 1e12]
    for (const s of [...WET, ...ROWS, 1.3e7, 8e7]) {
      const there = read([s])
      // On a level curve more than one suction holds the same.
      if (there.capacity[0]! < 1e-9 / s) continue
      const found = nodeValues(near.length)
      const suctions = Float64Array.from(near)
      table.readByContent(new Float64Array(near.length).fill(there.waterContent[0]!), suctions, found, 0, near.length)
      for (const [k] of near.entries()) {
        expect(Math.abs(suctions[k]! / s - 1), `${s} from ${near[k]}`).toBeLessThan(
          (1e-7 / (s * there.capacity[0]!)) * 1e-5 + 1e-7,
        )
        const own = read([suctions[k]!])
        expect(own.waterContent[0]).toBeCloseTo(there.waterContent[0]!, 12)
        for (const name of NAMES.slice(1))
          expect(found[name][k]! / (own[name][0]! || 1)).toBeCloseTo(own[name][0]! === 0 ? 0 : 1, 8)
      }
    }
  })
  it('read by more than it can hold is full, and by less stops seven e-folds beyond its driest', () => {
    const { table } = written()
    const suctions = Float64Array.of(30, 30)
    const found = nodeValues(2)
    table.readByContent(Float64Array.of(table.saturated + 0.01, -0.2), suctions, found, 0, 2)
    expect(suctions[0]).toBe(0)
    expect([found.waterContent[0], found.capacity[0], found.conductivity[0]]).toEqual([table.saturated, 0, 1])
    expect(Math.log(suctions[1]! / 1e7)).toBeCloseTo(7, 12)
  })
})

describe('salt between two nodes', () => {
  const grid = columnGrid([box], 5)
  const flowOf = (flow: number, dispersivity: number) => {
    const transport = transportOf(grid, [{ dispersivity, saturated: 0.8 }])
    const up = new Float64Array(4).fill(flow)
    prepare(transport, { up, middle: new Float64Array(4).fill(0.5) } as never, 1e-5)
    return { below: transport.byBelow[1]!, above: transport.byAbove[1]! }
  }
  it.each([0.3, -0.3])('comes all from upstream where it is carried faster than it spreads: %d', (flow) => {
    const { below, above } = flowOf(flow, 0.1)
    expect(below).toBeCloseTo(Math.max(flow, 0), 12)
    expect(above).toBeCloseTo(Math.min(flow, 0), 12)
  })
  it.each([0.3, -0.3, 0])(
    'comes from both sides, less what spreads from more to less, where it spreads faster: %d',
    (flow) => {
      const [dispersivity, diffusion, { lengths, sections }] = [5, 1e-5, grid]
      // Bear's dispersion and Millington and Quirk's diffusion over the length of the element.
      const spreads =
        (dispersivity * Math.abs(flow) + sections[1]! * diffusion * (0.5 ** (10 / 3) / 0.8 ** 2)) / lengths[1]!
      const { below, above } = flowOf(flow, dispersivity)
      expect(below).toBeCloseTo(flow / 2 + spreads, 12)
      expect(above).toBeCloseTo(flow / 2 - spreads, 12)
    },
  )
})

describe('a probe at the end of a profile', () => {
  const profile = [0, 5, 10].map((height) => ({ height, suction: height, waterContent: 0.8 - 0.02 * height }))
  const reading = (height: number) => probeReading(profile as never, { height, sensedHeight: 4 } as never)
  it.each([12, 12.5, 1e6])('is refused where nothing of the profile lies within what it senses: %d', (height) => {
    expect(() => reading(height)).toThrow('height: lies outside the profile')
  })
  it('reads what lies within', () => {
    // From 9.9 to 10 cm, of which the middle holds 0.8 - 0.02 · 9.95.
    expect(reading(11.9)).toBeCloseTo(0.601, 10)
  })
})

describe('the most that evaporates by Gardner (1958), e = a (c/L)ⁿ with c = (π/n) / sin(π/n)', () => {
  const most = (n: number, depth: number) =>
    maxEvaporationPowerGardner1958({ a: 2e-8, b: 0, n, depth } as never) / (10 * 2e-8)
  it.each([20, 30, 40])(
    'is that of the series of x / sin x where the exponent is 2 to the power of -%d above one',
    (power) => {
      const above = 2 ** -power
      const n = 1 + above
      // sin(π/n) = sin x of x = π (n - 1)/n, so that c = (1 + x²/6) / (n - 1).
      const x = (Math.PI * above) / n
      expect(most(n, 60) / Math.exp(n * (Math.log((1 + x ** 2 / 6) / 60) + power * Math.LN2))).toBeCloseTo(1, 11)
    },
  )
  it.each([10, 20, 30])('is next to a over a depth of one, where the exponent is 2 to the power of %d', (power) => {
    const n = 2 ** power
    // x of π/n, and n times the logarithm of 1 + x²/6.
    expect(most(n, 1)).toBeCloseTo(Math.exp(Math.PI ** 2 / (6 * n)), 6)
  })
})

describe('the steps of a column', () => {
  const made = (around: object = {}) => {
    const layers = [{ container: box, medium: smooth, saturatedConductivity: 40 }]
    const { grid: own, media, ends } = richardsColumn(layers as never, { nodes: 5, ...around } as never)
    const equations = columnEquations(own, media, ends, 'averaged', undefined)
    return { equations, work: stepWork(equations, 1e-3) }
  }
  const still = { applied: 0, evaporation: 0, sink: undefined }
  const none = (): Passed => ({ entered: 0, drained: 0, taken: 0, runOff: 0, evaporated: 0, steps: 0 })
  /** γ of Alexander's two stages. */
  const stage = 1 - 1 / Math.SQRT2

  /** A step from rest whose rates of inflow changed by so much in one cell. */
  const alone = (cell: number, change: number, around: object = {}) => {
    const { equations, work } = made(around)
    const s = equations.grid.heights.map((height) => 4 + height)
    equations.evaluate(s, still)
    work.suctions.set(s)
    work.halfway.set(s)
    work.held.set(equations.terms.water)
    work.before.fill(0)
    work.first.fill(0)
    work.first[cell] = change
    const passed = none()
    const { volumes } = equations.grid
    // An implicit Euler step of a time t errs by t²/2 times the second derivative: t/2 times what the rate changed.
    const error = (dt: number) => (stage * dt * Math.abs(change)) / 2 / volumes[cell]!
    return { tried: (dt: number) => firstStageAlone(work, dt, passed, undefined), error, passed, work }
  }
  it.each([1, -1])('whose first stage stands alone are as long as an Euler step may be: change %d', (sign) => {
    const { tried, error, passed } = alone(2, 0.01 * sign)
    const dt = 0.5e-3 / error(1)
    const { done, factor } = tried(dt)
    expect(done).toBeCloseTo(stage * dt, 12)
    // The error goes with the square of the length: 0.9 of the root.
    expect(factor).toBeCloseTo(0.9 * Math.sqrt(1e-3 / error(dt)), 10)
    expect(passed.steps).toBe(1)
  })
  it('are tried again, shorter, where that errs too much, and longer by no more than four times', () => {
    const { tried, error, passed } = alone(2, 0.01)
    expect(tried(1.01e-3 / error(1))).toEqual({ done: 0, factor: 0.25 })
    expect(passed.steps).toBe(0)
    expect(tried(1e-5 / error(1)).factor).toBe(4)
    expect(alone(2, 0).tried(10).factor).toBe(4)
  })
  it('err nothing at an end that is held', () => {
    expect(alone(0, 1e6, { base: 4 }).tried(10).factor).toBe(4)
    expect(alone(4, 1e6, { surface: 14 }).tried(10).factor).toBe(4)
    expect(alone(0, 1e6).tried(10).done).toBe(0)
    expect(alone(4, 1e6).tried(10).done).toBe(0)
  })

  /** What a step leaves out by the order conditions, with the matrix solved for each time, and which error is largest. */
  const leftOut = (around: object, seed: number) => {
    const { equations, work } = made(around)
    const draw = (k: number) => Math.sin(12.9898 * (k + 1) * seed) * 0.5
    const { terms, lower, diagonal, upper, net, grid: own } = equations
    const s = own.heights.map((height, i) => 6 + height + draw(i))
    equations.evaluate(s, still)
    equations.assemble(30)
    const matrix = [lower.slice(), diagonal.slice(), upper.slice()] as const
    const [, b] = matrix
    for (let i = 0; i < 5; i++) {
      net[i] = 0.02 * draw(i + 10)
      work.before[i] = 0.02 * draw(i + 20)
      work.first[i] = 0.02 * draw(i + 30)
    }
    solveTridiagonal(lower, diagonal, upper, new Float64Array(5))
    const from = 'base' in around ? 1 : 0
    const to = 'surface' in around ? 4 : 5
    const free = (value: (i: number) => number) =>
      Float64Array.from({ length: 5 }, (_, i) => (i >= from && i < to ? value(i) : 0))
    const through = (right: Float64Array) => {
      const move = right.slice()
      const copies = matrix.map((list) => list.slice())
      solveTridiagonal(copies[0]!, copies[1]!, copies[2]!, move)
      const water = move.map(
        (one, i) =>
          terms.waterByBelow[i]! * (move[i - 1] ?? 0) +
          terms.waterByOwn[i]! * one +
          terms.waterByAbove[i]! * (move[i + 1] ?? 0),
      )
      return { move, water }
    }
    expect(b.every((one) => one !== 0)).toBe(true)
    const bent = 1 / 3 - (1 - stage) * stage ** 2 - stage
    const answered = 1 / (6 * stage) - stage * (3 - 2 * stage) - bent
    const change = free((i) => 30 * (net[i]! - work.before[i]!))
    const answer = through(change)
    const rest = 1 - stage
    const left = through(
      free((i) => {
        const bend = work.before[i]! / stage - (1 / stage + 1 / rest) * work.first[i]! + net[i]! / rest
        return 30 * bent * bend + answered * (answer.water[i]! - change[i]!)
      }),
    )
    let together = 0
    const cells = [...left.water].map((water, i) => {
      if (i < from || i >= to) return 0
      together += water
      // A little of the depth of the column everywhere, and a hundred times more at the bottom.
      const passes = ((10 + 100 * Math.exp(-own.heights[i]! / 4)) * Math.abs(together)) / own.volume
      return Math.max(Math.abs(water) / own.volumes[i]!, passes)
    })
    const drain = 'base' in around ? 0 : (300 * Math.abs(together)) / own.volume
    const all = left.move.map((one, i) => one + answered * answer.move[i]!)
    return { work, cells: Math.max(...cells), drain, all }
  }
  it.each([
    [{}, 1],
    [{}, 2],
    [{}, 3],
    [{ base: 4 }, 1],
    [{ base: 4 }, 2],
    [{ surface: 7 }, 1],
    [{ surface: 7 }, 5],
  ])('leave out what their order conditions say: %o %d', (around, seed) => {
    const { work, cells, drain, all } = leftOut(around, seed)
    expect(errorOfStep(work, 30) / Math.max(cells, drain)).toBeCloseTo(1, 8)
    expect(work.control.triedByDrain).toBe(drain > cells)
    for (const [i, one] of all.entries()) expect(work.correction.all[i]).toBeCloseTo(one, 10)
  })
})

describe('the rows of a table', () => {
  it('give where pores are long empty the water of films: a ten-millionth for each e-fold beyond a metre', () => {
    const steep = vanGenuchten1980({ residual: 0.05, saturated: 0.9, alpha: 0.3, n: 9 } as never)
    const found = nodeValues(1)
    for (const s of [700, 990, 1010, 1500, 2e4, 3e6]) {
      mediumTable(steep).read(Float64Array.of(s), found, 0, 1)
      // Of 10 m the logarithm begins to count.
      expect(found.capacity[0]! * (1000 + s)).toBeCloseTo(1e-7, 10)
      expect(found.waterContent[0]! - 0.05).toBeCloseTo(-1e-7 * Math.log1p(s / 1000), 10)
    }
  })
  it('are as many where a kink lies at the end of a cell as where it lies beside it', () => {
    const rows = (airEntry: number) =>
      tableRows(brooksCorey1964({ residual: 0.05, saturated: 0.6, airEntry, lambda: 1.4 } as never)).count
    expect(rows(16)).toBe(rows(16.01))
    expect(rows(64)).toBe(rows(63.9))
  })
  it('are found by the content at a kink, also where an empty row lies behind it', () => {
    for (const airEntry of [16, 12]) {
      const medium = brooksCorey1964({ residual: 0.05, saturated: 0.6, airEntry, lambda: 1.4 } as never)
      const table = mediumTable(medium)
      const found = nodeValues(1)
      for (const near of [-1, 3, airEntry, 20, 500]) {
        const suctions = Float64Array.of(near)
        const content = medium.waterContent((1.0001 * airEntry) as never)
        table.readByContent(Float64Array.of(content), suctions, found, 0, 1)
        expect(suctions[0]! / airEntry).toBeCloseTo(1.0001, 7)
        const full = Float64Array.of(near)
        table.readByContent(Float64Array.of(0.6), full, found, 0, 1)
        expect(full[0]! / airEntry).toBeLessThanOrEqual(1 + 1e-7)
        expect(found.waterContent[0]).toBeCloseTo(0.6, 12)
      }
    }
  })
  it('are parted by kinks in whatever order a medium names them', () => {
    const named = (...breakpoints: number[]) => tableRows({ ...kinked, breakpoints } as never)
    expect([...named(100, 12, 1e9, 0.01).kinks]).toEqual([12, 100])
    expect(named(100, 12).rows).toEqual(named(12, 100).rows)
  })
})
