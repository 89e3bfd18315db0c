import {
  boxContainer,
  containerFlowRichards1931,
  type RichardsSurroundings,
  uptakeFeddes1978,
  vanGenuchten1980,
  wettingCurveKoolParker1987,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { columnEquations } from '../../src/flow/column/equations/equations.js'
import { columnHistory, forget } from '../../src/flow/column/scanning/history.js'
import { goOn } from '../../src/flow/column/step/step-ends.js'
import { stepWork } from '../../src/flow/column/step/step-work.js'
import { richardsColumn } from '../../src/flow/richards-column.js'
import { conductivityByImages, fromSurface } from '../../src/flow/srivastava-yeh-early.js'
import { afterRoot, conductivityBySeries } from '../../src/flow/srivastava-yeh-series.js'

// Brands say nothing about values; plain numbers keep the cases readable.
const box = boxContainer({ length: 20, width: 10, height: 10 } as never)
const curve = { residual: 0.08, saturated: 0.88, alpha: 0.09, n: 1.7 }
const medium = vanGenuchten1980(curve as never)
const layer = { container: box, medium, saturatedConductivity: 40 }

describe('a surface that is held at a suction', () => {
  const flow = (around: object) =>
    containerFlowRichards1931({ ...layer, nodes: 11, ...around } as never as Parameters<
      typeof containerFlowRichards1931
    >[0])
  const around = { base: 'closed', surface: 2 } as object as RichardsSurroundings
  const still = { duration: 3600, applied: 0, demand: 0 } as never
  it('lets in what the column then holds more', () => {
    const held = flow(around)
    const dry = held.startAt((z) => (60 - z) as never)
    const litresIn = ({ water }: typeof dry) => water.reduce((sum, one) => sum + one, 0)
    let state = dry
    let entered = 0
    for (let k = 0; k < 4; k++) {
      const [next, outcome] = held.step(state, k === 0 ? still : ({ ...(still as object), duration: 86_400 } as never))
      state = next
      entered += outcome.entered
      expect(entered).toBeCloseTo(litresIn(state) - litresIn(dry), 9)
      expect(state.pressureHeads.at(-1)).toBe(-2)
    }
    expect(entered).toBeGreaterThan(0.1)
    // At rest: 10 cm below a suction of 2 cm there is a pressure of 8 cm, and the medium holds what its curve says.
    expect(state.pressureHeads[0]).toBeCloseTo(8, 3)
    let rest = 0
    for (let k = 0; k < 1000; k++) rest += 0.002 * medium.waterContent(Math.max(0, 0.01 * (k + 0.5) - 8) as never)
    expect(litresIn(state)).toBeCloseTo(rest, 2)
  })
  it('takes no shots, and loses nothing to the air by another way', () => {
    const held = flow(around)
    const start = held.startAt((z) => (60 - z) as never)
    for (const more of [{ applied: 0.1 }, { evaporation: 0.1 }])
      expect(() => held.step(start, { ...(still as object), ...more } as never)).toThrow(
        'cannot be given to a surface that keeps a suction',
      )
  })
})

describe('a step that is taken over', () => {
  it('turns the points of a medium that drained where it wets again', () => {
    const layers = [{ ...layer, wetting: wettingCurveKoolParker1987(curve as never) }]
    const { grid, media, ends } = richardsColumn(layers as never, { nodes: 5 } as never)
    const history = columnHistory(grid, media, 1e-3)!
    forget(history, false)
    const equations = columnEquations(grid, media, ends, 'averaged', history)
    const work = stepWork(equations, 1e-3)
    const passed = { entered: 0, drained: 0, taken: 0, runOff: 0, evaporated: 0, steps: 0 }
    const go = (suction: number) => goOn(work, new Float64Array(grid.nodes).fill(suction), 1, passed, undefined)
    go(50)
    expect([...history.turn.subarray(0, grid.nodes)]).toEqual([50, 50, 50, 50, 50])
    expect([...history.wets.subarray(0, grid.nodes)]).toEqual([0, 0, 0, 0, 0])
    go(20)
    expect([...history.turn.subarray(0, grid.nodes)]).toEqual([20, 20, 20, 20, 20])
    expect([...history.wets.subarray(0, grid.nodes)]).toEqual([1, 1, 1, 1, 1])
    expect(passed.steps).toBe(2)
  })
})

describe('images of a change of flux', () => {
  const error = (height: number, time: number) =>
    conductivityByImages({ height, bottom: 1, before: 0.1, since: 0.5 }, height / 2, time).error
  it('have a bound where an echo that is doubled fades by more than a half on its way, and else none', () => {
    // Two heights on within time: by 3 h²/t, here 2.03, where the way is longer than the time.
    expect(error(1.3, 2.5)).toBeLessThan(Number.POSITIVE_INFINITY)
    // Where the time is longer than two heights, by the height itself: below 2 ln 2.
    expect(error(1, 2.1)).toBe(Number.POSITIVE_INFINITY)
    expect(error(1.5, 9)).toBeLessThan(Number.POSITIVE_INFINITY)
    expect(error(1, 1)).toBeLessThan(error(1, 1.9))
  })
  // ½ erfc(a) + √(t/π) e^(-a²) - ½ (1 + d + t) e^d erfc(b), a and b of d ∓ t over 2√t: 60 digits of mpmath 1.3.
  it.each([
    [1, 0.1, 0.005943716476366373],
    [5, 0.1, 2.3368479593324584e-29],
    [7, 0.05, 6.584261033633782e-109],
    [10, 0.1, 2.7141802858891555e-110],
    [12, 0.2, 3.5247321260893377e-79],
    [30, 2, 1.8130857174427479e-45],
    [40, 1, 9.927757886101975e-169],
    [0.5, 0.01, 1.808428934754226e-5],
    [3, 3, 0.47151065043874296],
    [100, 100, 0.499726064723393],
    [0.01, 10, 0.9943093892697437],
  ])('are off by no more than they say, also where their parts cancel: %d cm after %d', (distance, time, wanted) => {
    const { value, error } = fromSurface(distance, time)
    expect(Math.abs(value - wanted)).toBeLessThanOrEqual(error)
    // The parts are at most five thousand times what is left of them, and the exponent some 400.
    expect(error).toBeLessThan(1e-8 * value)
  })
})

describe('the series of a change of flux', () => {
  it.each([
    [2, 0.2, 0.2],
    [2, 0.2, 0.4],
    [2, 1, 0.4],
    [4, 0.4, 1],
    [4, 2, 1],
    [8, 0.8, 2],
    [8, 0.8, 4],
    [8, 4, 4],
  ])('agrees with its images, to what both leave out: a column of %d at %d after %d', (top, height, time) => {
    // Two solutions of the same problem; the echo from the bottom is far more than what is left out.
    for (const [before, since] of [
      [0.1, 0.5],
      [0.6, 0.2],
    ] as const) {
      const column = { height: top, bottom: 1, before, since }
      const [early, late] = [conductivityByImages(column, height, time), conductivityBySeries(column, height, time)]
      expect(Math.abs(early.value - late.value)).toBeLessThanOrEqual(early.error + late.error)
      expect(early.error + late.error).toBeLessThan(1e-2 * fromSurface(top + height, time).value)
    }
  })
  it('has behind a root a bound of what all further ones bring, and a close one where that is little', () => {
    for (const [top, time, n, most] of [
      [2, 0.5, 1, 2],
      [2, 0.5, 4, 2],
      [2, 0.01, 4, 3],
      [2, 0.01, 60, 1.02],
      [30, 1, 60, 1.1],
    ] as const) {
      let rest = 0
      for (let k = n + 1; k < n + 20_000; k++) {
        // tan(y) = -2 y / top, by iteration: y = kπ - atan(2 y / top).
        let y = (k - 0.5) * Math.PI
        for (let turn = 0; turn < 40; turn++) y = k * Math.PI - Math.atan2(2 * y, top)
        const x = y / top
        const one = Math.exp(-x * x * time) / (1 + top / 2 + 2 * x * x * top)
        rest += one
        if (one < 1e-12 * rest) break
      }
      const bound = afterRoot(n, top, time)
      expect(bound).toBeGreaterThanOrEqual(rest)
      expect(bound / rest).toBeLessThan(most)
    }
  })
})

describe('limits of uptake', () => {
  const limits = { h1: 1, h2: 10, h3HighDemand: 20, h3LowDemand: 40, h4: 90, highDemand: 5, lowDemand: 1 }
  it.each([{ h1: 11 }, { h2: 21 }, { h3HighDemand: 41 }, { h3LowDemand: 90 }])(
    'are refused where one stands above the next: %o',
    (more) => {
      const at = (given: object) => () => uptakeFeddes1978({ suction: 5, demand: 3, limits: given } as never)
      expect(at(limits)).not.toThrow()
      expect(at({ ...limits, ...more })).toThrow('the suctions are not in order')
    },
  )
})
