import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { columnEnds } from '../../src/flow/column/equations/ends.js'
import { columnEquations } from '../../src/flow/column/equations/equations.js'
import {
  addFlows,
  BEND_FIRST,
  flowRates,
  PER_REST,
  PER_STAGE,
  REST,
  STAGE,
} from '../../src/flow/column/equations/flow-rates.js'
import { columnTerms } from '../../src/flow/column/equations/terms.js'
import type { Sink } from '../../src/flow/column/equations/uptake.js'
import type { ColumnGrid } from '../../src/flow/column/grid/grid.js'
import { columnGrid } from '../../src/flow/column/grid/grid.js'
import { dryingShare, scanOf, wettingShare, whileDrying, whileWetting } from '../../src/flow/column/scanning/scan.js'
import { moveAll } from '../../src/flow/column/step/moved.js'
import { arePossible, canHold, passesSaturation } from '../../src/flow/column/step/possible.js'
import { factorFor, growth, stepControl } from '../../src/flow/column/step/step-control.js'
import {
  cubicAt,
  cubicIntegral,
  cubicSlopeAt,
  hermite,
  placeAtOnce,
  placeIn,
} from '../../src/flow/column/table/cubic.js'
import { mediumTable } from '../../src/flow/column/table/medium-table.js'
import { octaveCells } from '../../src/flow/column/table/octave-cells.js'
import { richardsColumn } from '../../src/flow/richards-column.js'
import { boxContainer } from '../../src/medium/container/box-container.js'
import { frustumContainer } from '../../src/medium/container/frustum-container.js'
import { measuredContainer } from '../../src/medium/container/measured-container.js'
import { vanGenuchten1980 } from '../../src/medium/curves/van-genuchten-1980.js'
import {
  centimetres,
  centimetresOfSuction,
  centimetresPerHour,
  perCentimetre,
  squareCentimetres,
  waterContent,
} from '../../src/quantity/index.js'

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true })

const BOX = { length: centimetres(20), width: centimetres(10), height: centimetres(10) }
const medium = vanGenuchten1980({
  residual: waterContent(0.1),
  saturated: waterContent(0.9),
  alpha: perCentimetre(0.1),
  n: 1.8,
})

describe('a cubic of a cell', () => {
  // f(x) = 2 - 3x + 4x² - x³, by hand: f(0) = 2, f(1) = 2, f'(0) = -3, f'(1) = 2.
  const cubics = new Float64Array(8)
  hermite(cubics, 4, 2, 2, -3, 2)
  it('has the values, slopes and integral of the polynomial it was made from', () => {
    expect([...cubics.subarray(4)]).toEqual([2, -3, 4, -1])
    fc.assert(
      fc.property(number(0, 1), (x) => {
        expect(cubicAt(cubics, 4, x)).toBeCloseTo(2 - 3 * x + 4 * x * x - x ** 3, 12)
        expect(cubicSlopeAt(cubics, 4, x)).toBeCloseTo(-3 + 8 * x - 3 * x * x, 12)
        expect(cubicIntegral(cubics, 4, x)).toBeCloseTo(2 * x - 1.5 * x * x + (4 / 3) * x ** 3 - x ** 4 / 4, 12)
      }),
    )
  })
  it('is found at the place of a value, however it bends while it falls', () => {
    const falling = fc.record({ drop: number(1e-6, 10), left: number(0, 3), right: number(0, 3), x: number(0, 1) })
    fc.assert(
      fc.property(falling, ({ drop, left, right, x }) => {
        const cubic = new Float64Array(4)
        // Slopes up to three times the mean keep a cubic falling (Fritsch and Carlson 1980, from memory).
        hermite(cubic, 0, drop, 0, -left * drop, -right * drop)
        const values = Float64Array.of(0, cubicAt(cubic, 0, x))
        const into = new Float64Array(2)
        placeIn(cubic, 0, values, into, 1)
        expect(into[0]).toBe(0)
        expect(Math.abs(cubicAt(cubic, 0, into[1]!) - values[1]!)).toBeLessThan(1e-7 * drop)
      }),
    )
  })
  it('is found at once where it bends little, and is left to the patient search or found where it bends much', () => {
    const at = (left: number, right: number, x: number) => {
      const cubic = new Float64Array(4)
      hermite(cubic, 0, 2, 0, -2 * left, -2 * right)
      const value = cubicAt(cubic, 0, x)
      const into = Float64Array.of(7, 7)
      const found = placeAtOnce(cubic, 0, Float64Array.of(0, value), into, 1)
      expect(into[0]).toBe(7)
      return { found, place: into[1]!, off: Math.abs(cubicAt(cubic, 0, into[1]!) - value) }
    }
    fc.assert(
      fc.property(number(0.7, 1.3), number(0.7, 1.3), number(0.01, 0.99), (left, right, x) => {
        // A last move of a hundredth misses by its third power.
        const { found, off } = at(left, right, x)
        expect(found).toBe(true)
        expect(off).toBeLessThan(3e-6)
      }),
    )
    fc.assert(
      fc.property(number(0, 3), number(0, 3), number(0, 1), (left, right, x) => {
        const { found, place, off } = at(left, right, x)
        if (found) expect(off).toBeLessThan(1e-4)
        else expect(place).toBe(7)
      }),
    )
    // A straight line: at the chord.
    expect(at(1, 1, 0.25)).toEqual({ found: true, place: expect.closeTo(0.25, 14), off: expect.closeTo(0, 14) })
    // At its ends, too.
    expect(at(1.2, 0.9, 0)).toEqual({ found: true, place: 0, off: 0 })
    expect(at(1.2, 0.9, 1)).toEqual({ found: true, place: expect.closeTo(1, 14), off: expect.closeTo(0, 14) })
    // Between slopes of three times the mean it is level in the middle.
    expect(at(3, 3, 0.5).found).toBe(false)
  })
  it('is not found at once beyond its ends, nor where it rises', () => {
    const tried = (left: number, right: number, value: number) => {
      const cubic = new Float64Array(4)
      hermite(cubic, 0, left, right, right - left, right - left)
      const into = Float64Array.of(7)
      return [placeAtOnce(cubic, 0, Float64Array.of(value), into, 0), into[0]]
    }
    expect(tried(3, 1, 2)).toEqual([true, 0.5])
    for (const value of [3.1, 0.9]) expect(tried(3, 1, value)).toEqual([false, 7])
    expect(tried(1, 3, 2)).toEqual([false, 7])
    expect(tried(1, 1, 1)).toEqual([false, 7])
  })
  it('is found at its ends for values beyond them, and at its begin where it does not fall', () => {
    const into = new Float64Array(1)
    const line = new Float64Array(4)
    hermite(line, 0, 3, 1, -2, -2)
    for (const [value, place] of [
      [4, 0],
      [3, 0],
      [2, 0.5],
      [1, 1],
      [0, 1],
    ] as const) {
      placeIn(line, 0, Float64Array.of(value), into, 0)
      expect(into[0]).toBeCloseTo(place, 7)
    }
    const level = new Float64Array(4)
    hermite(level, 0, 1, 1, 0, 0)
    placeIn(level, 0, Float64Array.of(1), into, 0)
    expect(into[0]).toBeGreaterThanOrEqual(0)
    expect(into[0]).toBeLessThanOrEqual(1)
  })
})

describe('cells of octaves', () => {
  it('cut each octave into as many equal parts as told, in the order of the numbers', () => {
    const { cellOf, startOf } = octaveCells(3)
    const first = cellOf(1)
    for (let part = 0; part < 8; part++) {
      expect(startOf(first + part)).toBe(1 + part / 8)
      expect(cellOf(1 + part / 8)).toBe(first + part)
      expect(cellOf(1.124 + part / 8)).toBe(first + part)
    }
    expect(cellOf(2)).toBe(first + 8)
    expect(startOf(first + 8)).toBe(2)
    expect(cellOf(0.5)).toBe(first - 8)
  })
})

describe('the grid of a column', () => {
  const stone = boxContainer(BOX)
  const cone = frustumContainer({
    bottomDiameter: centimetres(10),
    topDiameter: centimetres(14),
    height: centimetres(8),
  })
  it.each([
    ['a box', [stone], 11],
    ['a cone', [cone], 31],
    ['a cone on a box', [stone, cone], 31],
    ['a thin layer under a high one', [boxContainer({ ...BOX, height: centimetres(0.5) }), stone], 21],
  ] as const)('holds what the containers hold, from the bottom up: %s', (_, containers, wanted) => {
    const grid = columnGrid(containers, wanted)
    const height = containers.reduce((sum, one) => sum + one.height, 0)
    const litresIn = containers.reduce((sum, one) => sum + one.volume, 0)
    const sum = (list: Float64Array) => list.reduce((a, b) => a + b, 0)
    expect(grid.nodes).toBe(grid.heights.length)
    if (containers.length === 1) expect(grid.nodes).toBe(wanted)
    expect(grid.heights[0]).toBe(0)
    expect(grid.heights.at(-1)).toBeCloseTo(height, 12)
    for (let e = 0; e < grid.nodes - 1; e++) {
      expect(grid.lengths[e]).toBeGreaterThan(0)
      expect(grid.heights[e + 1]).toBeCloseTo(grid.heights[e]! + grid.lengths[e]!, 12)
      // By Simpson's rule within a half each is nearly its section times its length.
      const whole = grid.lowerHalves[e]! + grid.upperHalves[e]!
      expect(whole).toBeGreaterThan(0)
      expect(Math.abs(whole / (grid.sections[e]! * grid.lengths[e]!) - 1)).toBeLessThan(0.01)
    }
    expect(sum(grid.volumes)).toBeCloseTo(1000 * litresIn, 8)
    expect(sum(grid.lowerHalves) + sum(grid.upperHalves)).toBeCloseTo(1000 * litresIn, 8)
    expect(grid.volume).toBeCloseTo(1000 * litresIn, 8)
    expect(grid.boundaries).toHaveLength(containers.length + 1)
    expect(grid.boundaries.at(-1)).toBe(grid.nodes - 1)
    containers.forEach((container, layer) => {
      const [from, to] = [grid.boundaries[layer]!, grid.boundaries[layer + 1]!]
      expect(to - from).toBeGreaterThanOrEqual(4)
      expect(grid.heights[to]! - grid.heights[from]!).toBeCloseTo(container.height, 12)
      for (let e = from; e < to; e++) expect(grid.layers[e]).toBe(layer)
      // The lowest nodes of a layer stand at 0.8 of the mean distance, and nowhere twice as far apart.
      const mean = container.height / (to - from)
      expect(grid.lengths[from]! / mean).toBeGreaterThan(0.79)
      expect(grid.lengths[from]! / mean).toBeLessThan(0.9)
    })
  })
  it('is closest at the bottom, at 0.8 of the mean distance, widest at two thirds of the height, and as the mean at the top', () => {
    const { lengths } = columnGrid([stone], 1001)
    const ofMean = Array.from(lengths, (length) => (length * 1000) / stone.height)
    expect(ofMean[0]).toBeCloseTo(0.8, 2)
    expect(ofMean.at(-1)).toBeCloseTo(1, 2)
    const widest = Math.max(...ofMean)
    // 0.8 + 0.8 x - 0.6 x².
    expect(widest).toBeCloseTo(16 / 15, 4)
    expect(ofMean.indexOf(widest) / 1000).toBeCloseTo(2 / 3, 2)
  })
  it('shares its elements among layers by their heights, each of which has four', () => {
    // 30 elements over 18 cm: 16.7 and 13.3; over 50.5 cm a layer of half a centimetre would have 0.3.
    expect(columnGrid([stone, cone], 31).boundaries).toEqual([0, 17, 30])
    const high = boxContainer({ ...BOX, height: centimetres(50) })
    expect(columnGrid([high, boxContainer({ ...BOX, height: centimetres(0.5) })], 31).boundaries).toEqual([0, 30, 34])
  })
  it('has the areas of bottom and surface, and sections of the shape between them', () => {
    const grid = columnGrid([stone, cone], 31)
    expect(grid.bottom).toBeCloseTo(200, 12)
    expect(grid.surface).toBeCloseTo(Math.PI * 49, 10)
    const last = grid.nodes - 2
    const middle = grid.heights[last]! + grid.lengths[last]! / 2 - 10
    expect(grid.sections[last]).toBeCloseTo(Math.PI * (5 + (2 * middle) / 8) ** 2, 10)
    const [low, high] = [grid.heights[last]! - 10, grid.heights[last]! + grid.lengths[last]! / 2 - 10]
    const filled = (z: number) => (Math.PI * 4 * ((5 + z / 4) ** 3 - 125)) / 3
    expect(grid.lowerHalves[last]).toBeCloseTo(filled(high) - filled(low), 8)
  })
  it('counts with the volume of a container whose walls bend', () => {
    const bent = measuredContainer({
      heights: [0, 1.234, 10].map(centimetres),
      areas: [50, 300, 120].map(squareCentimetres),
    })
    expect(columnGrid([bent], 9).volumes.reduce((a, b) => a + b, 0)).toBeCloseTo(1000 * bent.volume, 8)
  })
})

describe('the ends of a column', () => {
  const grid = { bottom: 150, surface: 200 } as ColumnGrid
  const terms = columnTerms({ nodes: 2 } as ColumnGrid)
  const ends = { base: 'seepage', surface: 'shots', rim: 1.5, dryFrom: 400, dryAt: 1000 } as const
  const at = (below: number, above: number, more: object = {}) => {
    const made = columnEnds(grid, { ...ends, ...more }, 0.02)
    made.fill(below, above, 7, 0.6, terms)
    const { drained, drainedSlope, runOff, runOffSlope, evaporated, evaporatedSlope, entered } = terms
    return { drained, drainedSlope, runOff, runOffSlope, evaporated, evaporatedSlope, entered }
  }
  it('let a surface dry from half of the suction on at which it is air-dry', () => {
    const layer = { container: boxContainer(BOX), medium, saturatedConductivity: centimetresPerHour(60) }
    const { ends: made } = richardsColumn([layer], { airDry: centimetresOfSuction(400) })
    expect(made).toMatchObject({ dryFrom: 200, dryAt: 400 })
  })
  it('let water out at the bottom only under pressure, ten thousand times as willingly as the full medium lets it through a centimetre', () => {
    expect(at(3, 20)).toMatchObject({ drained: 0, drainedSlope: 0, entered: 7 })
    // A film may begin at no suction.
    expect(at(0, 20)).toMatchObject({ drained: 0, drainedSlope: -1e4 * 0.02 * 150 })
    expect(at(-0.25, 20)).toMatchObject({ drained: 1e4 * 0.02 * 150 * 0.25, drainedSlope: -1e4 * 0.02 * 150 })
    expect(at(-0.25, 20, { base: 'closed' })).toMatchObject({ drained: 0 })
    expect(at(-0.25, 20, { base: 5 }).drained).toBe(0)
  })
  it('let water run off above the rim, with the second in which it does', () => {
    expect(at(3, -1.5)).toMatchObject({ runOff: 0, runOffSlope: 0 })
    expect(at(3, -1)).toMatchObject({ runOff: 0, runOffSlope: 0 })
    expect(at(3, -2)).toMatchObject({ runOff: 100, runOffSlope: -200 })
  })
  it('give the air all from a wet surface, and less and less from where it falls to where it is dry', () => {
    expect(at(3, 400)).toMatchObject({ evaporated: 0.6, evaporatedSlope: 0 })
    expect(at(3, -5)).toMatchObject({ evaporated: 0.6, evaporatedSlope: 0 })
    expect(at(3, 550).evaporated).toBeCloseTo(0.45, 12)
    expect(at(3, 550).evaporatedSlope).toBeCloseTo(-0.001, 12)
    expect(at(3, 1000)).toMatchObject({ evaporated: 0, evaporatedSlope: 0 })
    expect(at(3, 5000)).toMatchObject({ evaporated: 0, evaporatedSlope: 0 })
  })
  it('know which of them is held', () => {
    const held = (more: object) => {
      const { heldBase, heldTop } = columnEnds(grid, { ...ends, ...more }, 1)
      return [heldBase, heldTop]
    }
    expect(held({})).toEqual([false, false])
    expect(held({ base: 0 })).toEqual([true, false])
    expect(held({ base: 'closed', surface: 3 })).toEqual([false, true])
  })
})

describe('a suction that moves', () => {
  const moved = (suction: number, change: number, share: number, driest: number): number => {
    const into = new Float64Array(1)
    moveAll(Float64Array.of(suction), Float64Array.of(change), share, driest, into)
    return into[0]!
  }
  const suctions = number(-20, 1e5)
  const changes = number(-1e6, 1e6)
  it('goes the way of its change, not further than that nor than a medium allows, and all the further the greater the share', () => {
    fc.assert(
      fc.property(suctions, changes, number(0, 1), (s, change, share) => {
        const way = moved(s, change, share, Infinity) - s
        const whole = moved(s, change, 1, Infinity) - s
        expect(Math.sign(way) * Math.sign(change)).toBeGreaterThanOrEqual(0)
        expect(Math.abs(way)).toBeLessThanOrEqual(Math.abs(whole) * (1 + 1e-9))
        if (s < 1) {
          expect(way).toBeCloseTo(share * Math.max(-1000, Math.min(change, 3 + Math.max(-s, 0))), 8)
        } else {
          // No further than to a tenth or to the fourfold.
          expect(s + way).toBeGreaterThanOrEqual(0.1 * s)
          expect(s + way).toBeLessThanOrEqual(4.06 * s)
          if (Math.abs(change) < 0.01 * s) expect(way).toBeCloseTo(share * change, 6)
        }
      }),
    )
  })
  it('is that of the logarithm in dry medium', () => {
    expect(moved(100, 50, 1, Infinity)).toBeCloseTo(100 * Math.exp(0.5), 10)
    expect(moved(100, 50, 0.5, Infinity)).toBeCloseTo(100 * Math.exp(0.25), 10)
    expect(moved(100, -50, 1, Infinity)).toBeCloseTo(100 * Math.exp(-0.5), 10)
    expect(moved(100, 4, 1, Infinity)).toBe(104)
    // From a centimetre on.
    expect(moved(1, 5, 1, Infinity)).toBeCloseTo(Math.exp(1.4), 10)
    expect(moved(0.999, 5, 1, Infinity)).toBeCloseTo(3.999, 10)
    expect(moved(100, -1e9, 1, Infinity)).toBeCloseTo(100 * Math.exp(-2.3), 10)
    expect(moved(100, 1e9, 1, Infinity)).toBeCloseTo(100 * Math.exp(1.4), 10)
  })
  it('does not cross the suction at which roots stop, but comes nine tenths of the way to it', () => {
    expect(moved(100, 120, 1, 200)).toBeCloseTo(190, 10)
    expect(moved(100, 10, 1, 200)).toBeCloseTo(100 * Math.exp(0.1), 10)
    expect(moved(200, 2, 1, 200)).toBe(202)
    expect(moved(250, 2, 1, 200)).toBe(252)
    expect(moved(198, 2, 1, 200)).toBeCloseTo(199.8, 10)
  })
})

describe('flows that are possible', () => {
  const still = () => flowRates(3)
  const sink = { max: Float64Array.of(1, 2, 3) } as unknown as Sink
  const dry = { applied: 0, evaporation: 0.5, sink: undefined }
  const open = { heldBase: false } as Parameters<typeof arePossible>[0]
  it.each([
    ['nothing', {}, true],
    ['drain', { drained: 1 }, true],
    ['water drawn in by a seepage face', { drained: -1e-9 }, false],
    ['run-off', { runOff: 1 }, true],
    ['run-off that comes back', { runOff: -1e-9 }, false],
    ['all that the air asks', { evaporated: 0.5 }, true],
    ['more than the air asks', { evaporated: 0.51 }, false],
    ['dew', { evaporated: -1e-9 }, false],
    ['all that roots ask', { taken: Float64Array.of(1, 2, 3) }, true],
    ['more than roots ask', { taken: Float64Array.of(1, 2.001, 3) }, false],
    ['roots that give water', { taken: Float64Array.of(0, 0, -1e-6) }, false],
  ])('%s', (_, more, possible) => {
    expect(arePossible(open, { ...still(), ...more }, { ...dry, sink })).toBe(possible)
  })
  it('need no roots, and take water up from a mat', () => {
    expect(arePossible(open, { ...still(), taken: Float64Array.of(9, 9, 9) }, dry)).toBe(true)
    expect(arePossible({ heldBase: true } as typeof open, { ...still(), drained: -1 }, dry)).toBe(true)
  })
  it('leave no cell below nothing nor above its pores, but the highest, on which water stands', () => {
    const cells = { full: Float64Array.of(10, 10, 10) } as unknown as Parameters<typeof canHold>[0]
    const held = Float64Array.of(9, 1, 9)
    const flows = (more: object) => ({ ...still(), ...more })
    const holds = (more: object, dt = 2) => canHold(cells, held, flows(more), dt)
    expect(holds({})).toBe(true)
    expect(holds({ drained: 4.5 })).toBe(true)
    expect(holds({ drained: 4.6 })).toBe(false)
    expect(holds({ drained: -0.4 })).toBe(true)
    expect(holds({ drained: -0.6 })).toBe(false)
    expect(holds({ taken: Float64Array.of(0, 0.6, 0) })).toBe(false)
    expect(holds({ up: Float64Array.of(4, 3.8) })).toBe(true)
    expect(holds({ up: Float64Array.of(4.6, 4) })).toBe(false)
    expect(holds({ up: Float64Array.of(0, 0.6) })).toBe(false)
    expect(holds({ up: Float64Array.of(0, -4.5) })).toBe(true)
    expect(holds({ up: Float64Array.of(0, -4.6) })).toBe(false)
    expect(holds({ entered: 100 })).toBe(true)
    expect(holds({ runOff: 4.6 })).toBe(false)
    expect(holds({ evaporated: 4.6 })).toBe(false)
    expect(holds({ taken: Float64Array.of(0, 0, 4.6) })).toBe(false)
    expect(holds({ entered: 1, evaporated: 2, runOff: 3, taken: Float64Array.of(0, 0, 0.4) })).toBe(true)
  })
  it('add up to what cells hold behind them', () => {
    const held = Float64Array.of(9, 1, 9)
    addFlows(
      held,
      {
        ...still(),
        up: Float64Array.of(0.5, -1),
        taken: Float64Array.of(0.1, 0.2, 0.3),
        drained: 2,
        entered: 3,
        runOff: 0.25,
        evaporated: 0.5,
      },
      2,
    )
    // 9 + 2(-2 - 0.5 - 0.1), 1 + 2(0.5 + 1 - 0.2), 9 + 2(-1 - 0.3 + 3 - 0.25 - 0.5)
    ;[3.8, 3.6, 10.9].forEach((value, i) => {
      expect(held[i]).toBeCloseTo(value, 12)
    })
  })
  it('pass saturation where a node goes from suction to pressure or back', () => {
    const passes = (s: number, move: number) => passesSaturation(Float64Array.of(5, s), Float64Array.of(1, move))
    expect(passes(5, -4)).toBe(false)
    expect(passes(5, -5)).toBe(true)
    expect(passes(-1, 2)).toBe(true)
    expect(passes(-1, 0.5)).toBe(false)
    expect(passes(0, 1e-9)).toBe(true)
  })
})

describe('rates of a step', () => {
  it('have no bend along a straight line, and that of a parabola', () => {
    // The first stage stands at 1 - 1/√2 of the step (Alexander 1977).
    expect(STAGE).toBeCloseTo(1 - Math.SQRT1_2, 15)
    expect(REST + STAGE).toBeCloseTo(1, 15)
    const bend = (end: number, first: number, begin: number) => PER_REST * end + BEND_FIRST * first + PER_STAGE * begin
    expect(bend(3, 1 + 2 * STAGE, 1)).toBeCloseTo(0, 12)
    // Second divided difference of t² times the whole: (1 + γ) - γ.
    expect(bend(1, STAGE * STAGE, 0)).toBeCloseTo(1, 12)
  })
})

describe('the length of steps', () => {
  it('goes with the third root of the tolerance over the error, a little below it', () => {
    expect(factorFor(1e-3, 1e-3)).toBeCloseTo(0.95, 12)
    expect(factorFor(8e-3, 1e-3)).toBeCloseTo(0.475, 12)
    expect(factorFor(1e-3 / 8, 1e-3)).toBeCloseTo(1.9, 12)
    expect(factorFor(0, 1e-3)).toBe(5)
  })
  it('takes the fall of the error along, but no chance', () => {
    const control = stepControl()
    const next = (dt: number, error: number) => growth({ control, tolerance: 1e-3 }, dt, error)
    expect(next(1, 1e-3)).toBeCloseTo(0.95, 12)
    expect(control).toMatchObject({ error: 1e-3, length: 1 })
    // The same error over the double: half of it is due to the length alone, and half of that, as a length, is believed.
    expect(next(2, 1e-3)).toBeCloseTo(0.95 * Math.SQRT2, 12)
    expect(next(2, 8e-3)).toBeCloseTo(0.95 * 0.5 * Math.SQRT1_2, 12)
    expect(next(2, 64e-3)).toBeCloseTo(0.95 * 0.5 * 0.5 * Math.SQRT1_2, 12)
    // No further than twice either way.
    expect(next(20, 64e-3)).toBeCloseTo(0.95 * 0.25 * 2, 12)
    expect(next(2, 64e-3)).toBeCloseTo(0.95 * 0.25 * 0.5, 12)
    expect(next(2, 0)).toBe(5)
    expect(next(2, 1e-3)).toBeCloseTo(0.95, 12)
    control.triedByDrain = true
    expect(next(2, 1e-3)).toBeCloseTo(0.95, 12)
    expect(control.byDrain).toBe(true)
    // The drain's error fell by chance: to less than three tenths.
    expect(next(2, 1e-6)).toBeCloseTo(1.2, 12)
    expect(next(2, 0.301e-6)).toBeGreaterThan(5)
    expect(next(2, 0.299 * 0.301e-6)).toBeCloseTo(1.2, 12)
  })
})

describe('a medium between its two curves', () => {
  const wetter = vanGenuchten1980({
    residual: waterContent(0.1),
    saturated: waterContent(0.9),
    alpha: perCentimetre(0.2),
    n: 1.8,
  })
  const scanned = () => scanOf(mediumTable(medium), mediumTable(wetter))
  it('is scaled to ends a hair beyond its curves: a hundred thousandth below, a billionth above', () => {
    const scan = scanned()
    expect(scan.driest).toBeCloseTo(0.1 - 1e-5, 12)
    expect(scan.fullest - 0.9).toBeCloseTo(1e-9, 14)
    // So that a full medium is on the wetting curve of a share that is a number.
    expect(wettingShare(scan, 0, 0.9)).toBeCloseTo(1, 6)
  })
  it('is on the main curves at a share of one, and passes through the point of its share', () => {
    const scan = scanned()
    fc.assert(
      fc.property(number(0.2, 1000), number(0, 1), (suction, part) => {
        const s = centimetresOfSuction(suction)
        const [wet, dry] = [wetter.waterContent(s), medium.waterContent(s)]
        expect(whileDrying(scan, 1, suction)).toBeCloseTo(dry, 6)
        expect(whileWetting(scan, 1, suction)).toBeCloseTo(wet, 6)
        const between = wet + part * (dry - wet)
        expect(whileDrying(scan, dryingShare(scan, suction, between), suction)).toBeCloseTo(between, 9)
        expect(whileWetting(scan, wettingShare(scan, suction, between), suction)).toBeCloseTo(between, 9)
      }),
    )
  })
  it('drains from saturation on the main curve', () => {
    const scan = scanned()
    expect(dryingShare(scan, 0, 0.5)).toBe(1)
    expect(dryingShare(scan, -3, 0.5)).toBe(1)
    expect(dryingShare(scan, 1, 0.5)).toBeLessThan(1)
  })
})

describe('what a column holds and lets through', () => {
  const grid = columnGrid([boxContainer(BOX)], 41)
  const KS = 0.01
  // Made in each test: what is made while tests are gathered shows no change of the code.
  const media = () => [{ table: mediumTable(medium), wetting: undefined, saturatedConductivity: KS }]
  const ends = { base: 'seepage', surface: 'shots', rim: Infinity, dryFrom: 5e4, dryAt: 1e5 } as const
  const sink: Sink = {
    fromLower: grid.lowerHalves.map((volume) => 1e-5 * volume),
    fromUpper: grid.upperHalves.map((volume) => 1e-5 * volume),
    max: grid.volumes.map((volume) => 1e-5 * volume),
    h1: 1,
    h2: 12,
    h3: 60,
    h4: 200,
  }
  const during = { applied: 0, evaporation: 0, sink }
  /** Mean of a function between two numbers by many midpoints. */
  const meanOf = (f: (x: number) => number, a: number, b: number, parts = 2000) => {
    let sum = 0
    for (let k = 0; k < parts; k++) sum += f(a + ((k + 0.5) / parts) * (b - a))
    return sum / parts
  }
  const content = (s: number) => medium.waterContent(centimetresOfSuction(Math.max(s, 0)))
  const share = (s: number) => Math.max(0, Math.min((s - 1) / 11, 1, s > 60 ? (200 - s) / 140 : 1))
  const slopes = [0.6, 1.3]

  it.each(slopes)('averages water and uptake over the halves around a node where suction is a line: %s', (slope) => {
    const equations = columnEquations(grid, media(), ends, 'averaged', undefined)
    const at = (height: number) => 2 + slope * height
    equations.evaluate(grid.heights.map(at), during)
    const { water, taken } = equations.terms
    for (let i = 1; i < grid.nodes - 1; i++) {
      const [below, z, above] = [grid.heights[i - 1]!, grid.heights[i]!, grid.heights[i + 1]!]
      const upper = grid.upperHalves[i - 1]! * meanOf((height) => content(at(height)), (below + z) / 2, z)
      const lower = grid.lowerHalves[i]! * meanOf((height) => content(at(height)), z, (z + above) / 2)
      expect(Math.abs(water[i]! / (upper + lower) - 1)).toBeLessThan(1e-5)
      const drunk =
        sink.fromUpper[i - 1]! * meanOf((height) => share(at(height)), (below + z) / 2, z) +
        sink.fromLower[i]! * meanOf((height) => share(at(height)), z, (z + above) / 2)
      expect(Math.abs(taken[i]! - drunk)).toBeLessThan(1e-6 * sink.max[i]!)
    }
  })
  it('has the share of the node where it is too dry, and nothing beyond the limits', () => {
    const equations = columnEquations(grid, media(), ends, 'averaged', undefined)
    for (const s of [0.5, 1, 12, 40, 60, 100, 199, 200, 300]) {
      equations.evaluate(
        grid.heights.map(() => s),
        during,
      )
      equations.terms.taken.forEach((drunk, i) => {
        expect(drunk).toBeCloseTo(sink.max[i]! * share(s), 12)
      })
    }
  })
  it('is as its nodes are, seen by them', () => {
    const equations = columnEquations(grid, media(), ends, 'nodal', undefined)
    const at = (height: number) => 2 + 5 * height
    equations.evaluate(grid.heights.map(at), during)
    equations.terms.water.forEach((held, i) => {
      expect(held).toBeCloseTo(grid.volumes[i]! * content(at(grid.heights[i]!)), 4)
    })
    equations.terms.taken.forEach((drunk, i) => {
      expect(drunk).toBeCloseTo(sink.max[i]! * share(at(grid.heights[i]!)), 10)
    })
  })
  it('lets through what the mean conductivity does, less its own weight; upstream it sinks as the upper node lets it', () => {
    const k = (s: number) => medium.relativeConductivity(centimetresOfSuction(Math.max(s, 0)))
    const at = (height: number) => 3 + 2.5 * height
    for (const manner of ['nodal', 'upstream'] as const) {
      const equations = columnEquations(grid, media(), ends, manner, undefined)
      equations.evaluate(grid.heights.map(at), during)
      for (let e = 0; e < grid.nodes - 1; e++) {
        const [below, above] = [at(grid.heights[e]!), at(grid.heights[e + 1]!)]
        const mean = meanOf(k, below, above)
        const sinking = manner === 'upstream' ? k(above) : mean
        const flow = KS * 200 * ((mean * (above - below)) / grid.lengths[e]! - sinking)
        expect(Math.abs(equations.terms.up[e]! - flow)).toBeLessThan(1e-5 * KS * 200)
      }
    }
  })
  it('conducts all between nodes that a hair parts from saturation, where differences of potentials have no digits left', () => {
    const equations = columnEquations(grid, media(), ends, 'nodal', undefined)
    for (const hair of [1e-300, 1e-19, 1e-12, 1e-7]) {
      equations.evaluate(
        grid.heights.map((_, i) => (i % 2 ? hair : -hair)),
        { ...during, sink: undefined },
      )
      equations.terms.mean.forEach((mean) => {
        expect(mean).toBeCloseTo(1, 6)
      })
      equations.terms.up.forEach((flow) => {
        expect(flow / (-KS * 200)).toBeCloseTo(1, 5)
      })
      equations.terms.meanByBelow.forEach((slope) => {
        expect(Math.abs(slope)).toBeLessThan(1)
      })
    }
  })
  it('has the steady flow of Gardner (1958) between two suctions where conductivity falls by a share for each centimetre', () => {
    const a = 0.2
    const exponential = { ...medium, relativeConductivity: (s: number) => Math.exp(-a * Math.max(s, 0)) }
    const gardner = [{ ...media()[0]!, table: mediumTable(exponential as unknown as typeof medium) }]
    const equations = columnEquations(grid, gardner, ends, 'averaged', undefined)
    for (const slope of [0.4, 1, 1.8, 2.5]) {
      const at = (height: number) => 5 + slope * height
      equations.evaluate(grid.heights.map(at), { ...during, sink: undefined })
      for (let e = 0; e < grid.nodes - 1; e++) {
        const [below, above] = [at(grid.heights[e]!), at(grid.heights[e + 1]!)]
        // q = (K(below) - K(above) exp(aL)) / (exp(aL) - 1), up.
        const grown = Math.exp(a * grid.lengths[e]!)
        const flow = (KS * 200 * (Math.exp(-a * below) - grown * Math.exp(-a * above))) / (grown - 1)
        expect(Math.abs(equations.terms.up[e]! - flow)).toBeLessThan(1e-6 * KS * 200)
      }
    }
  })
  it('knows what stands on it and what its cells hold when they are full', () => {
    const equations = columnEquations(grid, media(), ends, 'averaged', undefined)
    const s = grid.heights.map((_, i) => (i === grid.nodes - 1 ? -2 : 0))
    expect(equations.standing(s)).toBeCloseTo(400, 10)
    expect(equations.standing(grid.heights.map(() => 3))).toBe(0)
    equations.store(s)
    const top = grid.nodes - 1
    expect(equations.terms.water[top]).toBeCloseTo(0.9 * grid.volumes[top]! + 400, 8)
    equations.full.forEach((full, i) => {
      expect(full).toBeCloseTo(0.9 * grid.volumes[i]!, 8)
    })
  })
})
