import fc from 'fast-check'
import { bestProbeHeight, waterStore } from 'porewater/flow'
import { boxContainer, vanGenuchten1980, wettingCurveKoolParker1987 } from 'porewater/medium'
import { describe, expect, it } from 'vitest'
import { type ColumnEquations, columnEquations } from '../../src/flow/column/equations/equations.js'
import { type flowRates, REST, STAGE } from '../../src/flow/column/equations/flow-rates.js'
import { columnHistory, forget } from '../../src/flow/column/scanning/history.js'
import { meanOfStages, meanOfThirdOrder } from '../../src/flow/column/step/mean-rates.js'
import { dampCorrection } from '../../src/flow/column/step/step-correction.js'
import { stepWork } from '../../src/flow/column/step/step-work.js'
import { mediumTable } from '../../src/flow/column/table/medium-table.js'
import { richardsColumn } from '../../src/flow/richards-column.js'
import { solveTridiagonal } from '../../src/numerics/tridiagonal.js'
import { uniformFrom } from '../record/random.js'

// Brands say nothing about values; plain numbers keep the cases readable.
const curve = { residual: 0.08, saturated: 0.88, alpha: 0.09, n: 1.7 }
const medium = vanGenuchten1980(curve as never)
const box = boxContainer({ length: 20, width: 10, height: 10 } as never)

/** A column, its equations, and the work of a step in it. */
function made(around: object, lower: object = {}, layers = 1) {
  const one = { container: box, medium, saturatedConductivity: 40 }
  const { grid, media, ends } = richardsColumn(
    Array.from({ length: layers }, (_, k) => (k === 0 ? { ...one, ...lower } : one)) as never,
    { nodes: 5, ...around } as never,
  )
  const history = columnHistory(grid, media, 1e-3)
  if (history !== undefined) forget(history, false)
  const equations = columnEquations(grid, media, ends, 'averaged', history)
  return { grid, equations, history, work: stepWork(equations, 1e-3) }
}

type Rates = ReturnType<typeof flowRates>
const NAMES = ['drained', 'entered', 'runOff', 'evaporated'] as const

/** Every flow of a column, one list after the other. */
const all = ({ up, taken, ...single }: Rates): number[] => [...up, ...taken, ...NAMES.map((name) => single[name])]

describe('the mean of the flows of a step', () => {
  const uniform = uniformFrom(7)
  /** Flows that go along parabolas, each its own. */
  const parabolas = Array.from({ length: 13 }, () => [uniform() - 0.5, uniform() - 0.5, uniform() - 0.5] as const)
  const write = (into: Rates, values: readonly number[]) => {
    into.up.set(values.slice(0, 4))
    into.taken.set(values.slice(4, 9))
    NAMES.forEach((name, k) => {
      into[name] = values[9 + k]!
    })
  }
  const at = (share: number) => parabolas.map(([a, b, c]) => a + b * share + c * share * share)
  const filled = () => {
    const { equations, work } = made({})
    write(work.begun, at(0))
    write(work.early, at(STAGE))
    write(equations.terms as never, at(1))
    for (const name of ['up', 'taken'] as const)
      for (const side of ['ByBelow', 'ByOwn', 'ByAbove'] as const) {
        const list = (equations.terms as never as Record<string, Float64Array>)[`${name}${side}`]
        for (let i = 0; i < (list?.length ?? 0); i++) list![i] = uniform() - 0.5
      }
    return { equations, work }
  }
  it('of third order is that of parabolas through begin, first stage and end', () => {
    const { work } = filled()
    work.correction.all.fill(0)
    meanOfThirdOrder(work)
    const means = parabolas.map(([a, b, c]) => a + b / 2 + c / 3)
    expect(all(work.flows)).toEqual(means.map((one) => expect.closeTo(one, 14)))
  })
  it('of third order moves with the suctions of the end, by the slopes of each flow', () => {
    const { equations, work } = filled()
    const { terms } = equations
    terms.drainedSlope = 0.3
    terms.runOffSlope = -0.2
    terms.evaporatedSlope = 0.7
    const moved = [0.1, -0.2, 0.3, 0.5, -0.4]
    work.correction.all.fill(0)
    meanOfThirdOrder(work)
    const before = all(work.flows)
    work.correction.all.set(moved)
    meanOfThirdOrder(work)
    const by = (i: number) => moved[i] ?? 0
    const wanted = [
      ...[0, 1, 2, 3].map((e) => terms.upByBelow[e]! * by(e) + terms.upByAbove[e]! * by(e + 1)),
      ...[0, 1, 2, 3, 4].map(
        (i) => terms.takenByBelow[i]! * by(i - 1) + terms.takenByOwn[i]! * by(i) + terms.takenByAbove[i]! * by(i + 1),
      ),
      0.3 * by(0),
      0,
      -0.2 * by(4),
      0.7 * by(4),
    ]
    expect(all(work.flows)).toEqual(before.map((one, k) => expect.closeTo(one + STAGE * wanted[k]!, 12)))
  })
  it('of two stages weighs the first by what is left, and the end by the first stage', () => {
    const { work } = filled()
    meanOfStages(work)
    const [early, late] = [at(STAGE), at(1)]
    expect(all(work.flows)).toEqual(early.map((one, k) => expect.closeTo(REST * one + STAGE * late[k]!, 12)))
  })
  it.each([{ base: 4 }, { surface: 7 }, { base: 4, surface: 7 }])(
    'of third order lets a held end pass what its cell needs in two stages: %o',
    (around) => {
      const { equations, work } = made(around)
      const uniformly = () => Array.from({ length: 13 }, () => uniform() - 0.5)
      write(work.begun, uniformly())
      write(work.early, uniformly())
      write(equations.terms as never, uniformly())
      for (let i = 0; i < 5; i++) work.correction.all[i] = uniform()
      equations.terms.upByBelow.fill(0.4)
      equations.terms.takenByOwn.fill(0.9)
      meanOfThirdOrder(work)
      const stages = (of: (rates: Rates) => number) => REST * of(work.early) + STAGE * of(equations.terms as never)
      const base = ({ drained, up, taken }: Rates) => drained + up[0]! + taken[0]!
      const top = ({ entered, up, taken }: Rates) => entered + up[3]! - taken[4]!
      if ('base' in around) expect(base(work.flows)).toBeCloseTo(stages(base), 12)
      if ('surface' in around) expect(top(work.flows)).toBeCloseTo(stages(top), 12)
    },
  )
})

describe('what a step leaves out', () => {
  it.each([{}, { base: 4 }, { surface: 7 }])(
    'is damped by the matrix of the step, but at ends that are held: %o',
    (around) => {
      const { equations, work } = made(around)
      const { lower, diagonal, upper } = equations
      lower.set([0, -1, -2, -1, -0.5])
      diagonal.set([4, 5, 6, 5, 4])
      upper.set([-1, -0.5, -1, -2, 0])
      const [a, b, c] = [lower.slice(), diagonal.slice(), upper.slice()]
      solveTridiagonal(lower, diagonal, upper, new Float64Array(5))
      work.correction.water.set([1, -2, 3, 4, 5])
      work.correction.all.set([10, 20, 30, 40, 50])
      dampCorrection(work)
      const added = work.correction.all.map((one, i) => one - 10 * (i + 1))
      const through = added.map((one, i) => a[i]! * (added[i - 1] ?? 0) + b[i]! * one + c[i]! * (added[i + 1] ?? 0))
      const wanted = ['base' in around ? 0 : 1, -2, 3, 4, 'surface' in around ? 0 : 5]
      expect([...through]).toEqual(wanted.map((one) => expect.closeTo(one, 10)))
    },
  )
})

describe('a medium read by what it holds', () => {
  it.each([
    ['gentle', medium, 0.2, 5000],
    // Where it falls from full to empty within two octaves; its rows bend.
    ['steep', vanGenuchten1980({ residual: 0.05, saturated: 0.9, alpha: 0.03, n: 9 } as never), 15, 70],
  ])(
    'holds it at the suction that is found, to rounding, wherever it is looked for first: %s',
    (_, curved, from, to) => {
      const table = mediumTable(curved)
      const values = () => ({
        waterContent: new Float64Array(1),
        capacity: new Float64Array(1),
        conductivity: new Float64Array(1),
        conductivitySlope: new Float64Array(1),
        potential: new Float64Array(1),
      })
      const log = fc.double({ min: Math.log(from), max: Math.log(to), noNaN: true })
      fc.assert(
        fc.property(log, log, (logOf, logNear) => {
          const [first, found] = [values(), values()]
          const at = Float64Array.of(Math.exp(logOf))
          table.read(at, first as never, 0, 1)
          const content = first.waterContent.slice()
          const suctions = Float64Array.of(Math.exp(logNear))
          table.readByContent(content, suctions, found as never, 0, 1)
          expect(Math.abs(suctions[0]! / at[0]! - 1)).toBeLessThan(1e-9)
          for (const name of ['capacity', 'conductivity', 'conductivitySlope', 'potential'] as const)
            expect(Math.abs(found[name][0]! - first[name][0]!)).toBeLessThan(1e-8 * Math.abs(first[name][0]!))
        }),
      )
    },
  )
})

describe('two curves in a column', () => {
  const still = { applied: 0, evaporation: 0, sink: undefined }
  const wetting = wettingCurveKoolParker1987(curve as never)
  it('are nothing to a layer that has but one', () => {
    const [one, two] = [made({}, {}, 2), made({}, { wetting }, 2)]
    const s = Float64Array.from(one.grid.heights, (height, i) => 4 + height + (i % 3))
    for (const { equations } of [one, two]) equations.evaluate(s, still)
    const boundary = one.grid.boundaries[1]!
    const above = ({ terms }: ColumnEquations) => [...terms.up.subarray(boundary)]
    // Beside a curve that scans no flow knows that its element is bent or fills, which is some per cent.
    above(two.equations).forEach((flow, e) => {
      expect(flow / above(one.equations)[e]!).toBeCloseTo(1, 1)
    })
  })
  it('are read of each point as if it were alone', () => {
    const contents = (s: readonly number[]) => {
      const { grid, equations, history } = made({}, { wetting })
      // All points went to 30 cm and back to 12: those that are wetter now wet, the others dry.
      history!.turn.fill(12)
      history!.wets.fill(1)
      history!.wetting.fill(0.9)
      history!.drying.fill(0.95)
      equations.evaluate(Float64Array.from(s), still)
      return [...equations.points.at.waterContent.subarray(0, grid.nodes)]
    }
    for (const s of [
      [20, 8, 20, 8, 20],
      [8, 8, 20, 20, 8],
      [20, 20, 8, 20, 20],
    ]) {
      const together = contents(s)
      const alone = s.map((suction, i) => contents(Array(5).fill(suction))[i]!)
      expect(together).toEqual(alone.map((one) => expect.closeTo(one, 12)))
    }
  })
})

describe('a store', () => {
  it('begins full, with nothing on its way out', () => {
    const flow = waterStore({
      substrateVolume: 10,
      containerCapacity: 0.6,
      minWaterContent: 0.1,
      bypass: 0.1,
      drainLag: 600,
    } as never)
    expect(flow.start).toEqual({ held: 6, draining: 0 })
    expect(flow.waterContent(flow.start)).toBeCloseTo(0.6, 12)
  })
})

describe('what probes at several heights tell', () => {
  /** A simulation whose profiles are straight lines from bottom to surface, given one by one. */
  const lines = [
    [0.6, 0.4],
    [0.7, 0.6],
    [0.8, 0.5],
    [0.6, 0.4],
    [0.7, 0.7],
    [0.6, 0.5],
  ] as const
  const flow = {
    step: (state: number) => [state + 1, {}],
    profile: (state: number) => [
      { height: 0, waterContent: lines[state]![0] },
      { height: 10, waterContent: lines[state]![1] },
    ],
    waterContent: (state: number) => (lines[state]![0] + lines[state]![1]) / 2 + (state === 5 ? 0.02 : 0),
  }
  const step = (applied: number, duration: number) => ({ applied, duration, demand: 0 })
  const seen = (heights: readonly number[]) =>
    bestProbeHeight({
      flow,
      start: 0,
      steps: [step(1, 300), step(0, 1800), step(0, 1800), step(1, 300), step(0, 3600)],
      heights,
      sensedHeight: 0.001,
    } as never)
  it('is their bias and what is left of it, over all and before and after shots', () => {
    // At 0.2 of the height it reads 0.68, 0.74, 0.56, 0.7 and 0.58 beside means of 0.65, 0.65, 0.5, 0.7 and 0.57.
    const offs = [0.03, 0.09, 0.06, 0, 0.01]
    const [view] = seen([2]).views
    const mean = 0.19 / 5
    expect(view).toEqual({
      height: 2,
      bias: expect.closeTo(mean, 9),
      spread: expect.closeTo(Math.sqrt(offs.reduce((sum, off) => sum + (off - mean) ** 2, 0) / 5), 9),
      // Only the third interval is dry with a shot behind it.
      biasBeforeShots: expect.closeTo(0.06, 9),
      spreadBeforeShots: expect.closeTo(0, 9),
      biasAfterShots: expect.closeTo(0.015, 9),
      spreadAfterShots: expect.closeTo(0.015, 9),
      // 0.74 half an hour behind the first shot; after the second it only falls.
      lag: expect.closeTo(900, 9),
    })
  })
  it('is best where least is left, each for itself, and the first of those that are alike', () => {
    const { best, bestBeforeShots, bestAfterShots, views } = seen([2, 5, 8])
    const least = (name: 'spread' | 'spreadBeforeShots' | 'spreadAfterShots') =>
      views.find((one) => one[name] === Math.min(...views.map((view) => view[name])))!.height
    expect([best, bestBeforeShots, bestAfterShots]).toEqual([
      least('spread'),
      least('spreadBeforeShots'),
      least('spreadAfterShots'),
    ])
    expect(best).toBe(5)
  })
})
