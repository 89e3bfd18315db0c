import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { columnEquations } from '../../src/flow/column/equations/equations.js'
import { REST, STAGE } from '../../src/flow/column/equations/flow-rates.js'
import { trustElements } from '../../src/flow/column/equations/storage.js'
import { columnTerms } from '../../src/flow/column/equations/terms.js'
import { columnGrid } from '../../src/flow/column/grid/grid.js'
import {
  type ColumnHistory,
  columnHistory,
  follow,
  forget,
  passesTurn,
} from '../../src/flow/column/scanning/history.js'
import { countOfScanning, recall, remembered } from '../../src/flow/column/scanning/remembered.js'
import { comeCloser, countApart, MENDED } from '../../src/flow/column/step/come-closer.js'
import { pastOnset, shareToEnd, shareToOnset } from '../../src/flow/column/step/onset.js'
import { reconcile } from '../../src/flow/column/step/reconcile.js'
import { DRAIN, stepControl, weightOfPassing } from '../../src/flow/column/step/step-control.js'
import type { StepWork } from '../../src/flow/column/step/step-work.js'
import { type MediumTable, mediumTable } from '../../src/flow/column/table/medium-table.js'
import { boxContainer } from '../../src/medium/container/box-container.js'
import { vanGenuchten1980 } from '../../src/medium/curves/van-genuchten-1980.js'
import { centimetres, centimetresOfSuction, perCentimetre, waterContent } from '../../src/quantity/index.js'

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true })
const curve = (alpha: number, n = 1.8) =>
  vanGenuchten1980({ residual: waterContent(0.1), saturated: waterContent(0.9), alpha: perCentimetre(alpha), n })
const box = (height: number) =>
  boxContainer({ length: centimetres(20), width: centimetres(10), height: centimetres(height) })
const TABLES = new Map<number, MediumTable>()
/** To make a table takes longer than most that is done with it here. */
const tableOf = (alpha: number): MediumTable => {
  const table = TABLES.get(alpha) ?? mediumTable(curve(alpha))
  TABLES.set(alpha, table)
  return table
}
const layer = (alpha: number, wetting?: number) => ({
  table: tableOf(alpha),
  wetting: wetting === undefined ? undefined : tableOf(wetting),
  saturatedConductivity: 0.01,
})
const ends = { base: 'seepage', surface: 'shots', rim: Number.POSITIVE_INFINITY, dryFrom: 5e4, dryAt: 1e5 } as const
const all = (count: number, value: number) => new Float64Array(count).fill(value)

describe('the curves of a column', () => {
  const LEAST = 1e-3
  const grid = columnGrid([box(10)], 5)
  const [dry, wet] = [curve(0.1), curve(0.2)]
  const dryAt = (s: number) => dry.waterContent(centimetresOfSuction(s))
  const wetAt = (s: number) => wet.waterContent(centimetresOfSuction(s))
  const made = (onWetting = false): ColumnHistory => {
    const history = columnHistory(grid, [layer(0.1, 0.2)], LEAST)!
    forget(history, onWetting)
    return history
  }
  const through = (history: ColumnHistory, ...suctions: number[]) => {
    for (const s of suctions) follow(history, grid, all(5, s))
    return remembered(history, grid)
  }
  it('are none where no medium scans, and one a node and one an element where one does', () => {
    expect(columnHistory(grid, [layer(0.1)], LEAST)).toBeUndefined()
    expect(countOfScanning(made(), grid)).toBe(9)
    const two = columnGrid([box(4), box(4)], 9)
    const upper = columnHistory(two, [layer(0.1), layer(0.1, 0.2)], LEAST)!
    // Nodes on both sides of the boundary are points of their own.
    expect(upper.turn).toHaveLength(two.nodes + 1 + two.nodes - 1)
    expect(countOfScanning(upper, two)).toBe(2 * (two.boundaries[2]! - two.boundaries[1]!) + 1)
  })
  it('are the main drying curve for what drains from saturation, and the main wetting curve for what was never wetter', () => {
    expect(through(made(), 5, 20)).toEqual({ curves: Array(9).fill(1), turns: Array(9).fill(20) })
    expect(through(made(true), 20, 5)).toEqual({ curves: Array(9).fill(-1), turns: Array(9).fill(5) })
  })
  it('pass through the turn, scaled so that they end where the main ones do', () => {
    fc.assert(
      fc.property(number(20, 200), number(1, 15), (high, low) => {
        const wetted = through(made(), high, low)
        // The share of the wetting curve that holds at the turn what the drying one does.
        const share = (0.9 - dryAt(high)) / (0.9 - wetAt(high))
        for (const one of wetted.curves) expect(one).toBeCloseTo(-share, 4)
        for (const one of wetted.turns) expect(one).toBe(low)
        const content = 0.9 - share * (0.9 - wetAt(low))
        const dried = through(made(), high, low, low + 3)
        const back = (content - 0.1) / (dryAt(low) - 0.1)
        for (const one of dried.curves) expect(one).toBeCloseTo(back, 4)
        for (const one of dried.turns) expect(one).toBe(low + 3)
      }),
      { numRuns: 40 },
    )
  })
  it('do not turn for less water than counts, and go on as if nothing had been', () => {
    const before = through(made(), 40)
    // 0.01 cm of 40 is some 2e-5.
    expect(through(made(), 40, 39.99)).toEqual(before)
    expect(through(made(), 40, 39.99, 60)).toEqual(through(made(), 60))
    expect(through(made(), 40, 30).curves[0]).toBeLessThan(0)
    const wetted = through(made(), 40, 20)
    expect(through(made(), 40, 20, 20.01)).toEqual(wetted)
    expect(through(made(), 40, 20, 30).curves[0]).toBeGreaterThan(0)
  })
  it('are the main drying curve again from under water', () => {
    expect(through(made(), 40, -3, 10)).toEqual(through(made(), 10))
    // No turn is remembered further under water than a centimetre.
    expect(through(made(), 40, -3).turns).toEqual(Array(9).fill(-1))
  })
  it('are the same written down and taken up again, with the way back', () => {
    fc.assert(
      fc.property(fc.array(number(0.5, 150), { minLength: 1, maxLength: 6 }), number(0.5, 150), (path, next) => {
        const first = made()
        const kept = through(first, ...path)
        const second = made()
        recall(second, grid, kept)
        expect(remembered(second, grid)).toEqual(kept)
        const [a, b] = [through(first, next), through(second, next)]
        a.curves.forEach((one, k) => {
          expect(b.curves[k]).toBeCloseTo(one, 6)
        })
        expect(b.turns).toEqual(a.turns)
      }),
      { numRuns: 40 },
    )
  })
  it('are passed over at their turn by a move of a node or of a middle', () => {
    const history = made()
    through(history, 40, 20)
    const passes = (i: number, s: number, move: number) =>
      passesTurn(
        history,
        grid,
        all(5, s),
        Float64Array.from({ length: 5 }, (_, k) => (k === i ? move : 0)),
        i,
      )
    for (const i of [0, 2, 4]) {
      expect(passes(i, 22, -1)).toBe(false)
      expect(passes(i, 22, -3)).toBe(true)
      expect(passes(i, 18, 3)).toBe(true)
      expect(passes(i, 18, 1)).toBe(false)
    }
    // At its turn it is on the drying curve, and on the other as soon as it is wetter.
    for (const i of [0, 4])
      expect([passes(i, 20, -1), passes(i, 20, 1), passes(i, 22, -2), passes(i, 18, 2)]).toEqual([
        true,
        false,
        false,
        true,
      ])
    // A middle passes where the mean of both does.
    const both = (i: number, s: readonly number[], move: readonly number[]) =>
      passesTurn(history, grid, Float64Array.from(s), Float64Array.from(move), i)
    expect(both(1, [30, 15, 30, 30, 30], [-6, 0, 0, 0, 0])).toBe(true)
    expect(both(1, [30, 15, 30, 30, 30], [-4, 0, 0, 0, 0])).toBe(false)
    expect(both(0, [30, 15, 30, 30, 30], [-6, 0, 0, 0, 0])).toBe(false)
  })
  it('are those of the layer that scans alone', () => {
    const two = columnGrid([box(4), box(4)], 9)
    const history = columnHistory(two, [layer(0.1), layer(0.1, 0.2)], LEAST)!
    forget(history, false)
    for (const s of [40, 20]) follow(history, two, all(two.nodes, s))
    const passes = (i: number) =>
      passesTurn(
        history,
        two,
        all(two.nodes, 22),
        Float64Array.from({ length: two.nodes }, (_, k) => (k === i ? -3 : 0)),
        i,
      )
    const boundary = two.boundaries[1]!
    expect(passes(boundary - 1)).toBe(false)
    expect(passes(boundary)).toBe(true)
    expect(passes(two.nodes - 1)).toBe(true)
  })
})

describe('the onset of a drain', () => {
  const tolerance = 1e-3
  /** A step of a bottom whose suction goes by a parabola from 1 cm. */
  const at = (
    rate: number,
    bend: number,
    dt: number,
    more: Partial<Record<'begin' | 'end' | 'middle', number>> = {},
  ) => {
    const s = (t: number) => (more.begin ?? 1) + rate * t + bend * t * t
    const work = {
      equations: { heldBase: false },
      suctions: Float64Array.of(s(0)),
      halfway: Float64Array.of(more.middle ?? s(STAGE * dt)),
      stage: Float64Array.of(more.end ?? s(dt)),
      trend: Float64Array.of(0),
      tolerance,
      control: stepControl(),
    } as unknown as StepWork
    return { work, share: shareToOnset(work, dt, rate, 8e-3), behind: work.control.behind }
  }
  it('is where the parabola is zero, and a hundredth beyond', () => {
    // 1 - t - t² is zero at the golden section.
    const golden = (Math.sqrt(5) - 1) / 2
    const { share, behind } = at(-1, -1, 1)
    expect(share).toBeCloseTo(1.01 * golden, 10)
    // Behind it errors go with the power 3/2 of the length, and 0.6 of the tolerance is aimed at.
    expect(behind).toBeCloseTo((1 - golden) * (0.6 / 8) ** (2 / 3), 10)
    expect(at(-1, 0, 2).share).toBeCloseTo((1.01 * 1) / 2, 10)
    expect(at(-3, 1, 1).share).toBeCloseTo((1.01 * (3 - Math.sqrt(5))) / 2, 10)
    // 3 - t - t² is zero at half of √13 - 1.
    expect(at(-1, -1, 2, { begin: 3 }).share).toBeCloseTo((1.01 * (Math.sqrt(13) - 1)) / 4, 10)
  })
  it('is where the chord is zero, if the suction did not fall at first', () => {
    // From 1 to 0.5 at the first stage: zero at twice that time.
    expect(at(0, 0, 1, { middle: 0.5, end: -1 }).share).toBeCloseTo(1.01 * 2 * STAGE, 10)
    expect(at(2, 0, 1, { middle: 0.4, end: -1 }).share).toBeCloseTo((1.01 * STAGE) / 0.6, 10)
    expect(at(0, 0, 1, { middle: 1.5, end: -1 }).share).toBe(0)
    // From 3 to 2: zero at three times that time.
    expect(at(0, 0, 1, { begin: 3, middle: 2, end: -1 }).share).toBeCloseTo(1.01 * 3 * STAGE, 10)
  })
  it('comes from the rate where it was over at the first stage, not beyond that', () => {
    expect(at(-10, 0, 1, { middle: -0.1, end: -1 }).share).toBeCloseTo(1.01 * 0.1, 10)
    expect(at(-1e-3, 0, 1, { middle: -0.1, end: -1 }).share).toBeCloseTo(1.01 * Math.min(STAGE, REST * STAGE), 10)
    expect(at(-1e9, 0, 1, { middle: -0.1, end: -1 }).share).toBe(0.02)
  })
  it('is none where drain does not begin within the step, and where the base is held', () => {
    expect(at(-1, 0, 2, { end: 0.1 }).share).toBe(0)
    expect(at(-1, 0, 2, { begin: 0 }).share).toBe(0)
    expect(at(-1, 0, 1.02).share).toBe(0)
    const { work } = at(-1, -1, 1)
    ;(work.equations as { heldBase: boolean }).heldBase = true
    expect(shareToOnset(work, 1, -1, 8e-3)).toBe(0)
  })
  it('leaves to the next step what is left of the way, and the step behind it', () => {
    const { work } = at(-1, -1, 1)
    const past = (left: number, trend: number) => {
      work.suctions[0] = left
      work.trend[0] = trend
      work.control.behind = 0
      return [pastOnset(work, 7), work.control.behind]
    }
    expect(past(0, -1)).toEqual([7, 0])
    expect(past(-2, -1)).toEqual([7, 0])
    expect(past(2, 1)).toEqual([7, 7])
    expect(past(2, 0)).toEqual([7, 7])
    expect(past(2, -4)).toEqual([1.01 * 0.5 + 7, 7])
  })
})

describe('the end of a drain', () => {
  const DT = 40
  /** A step of a column of a litre that drains at 1 cm³/s when it begins, at another rate at its first stage, and on average at a third. */
  const at = (early: number, flows = 0.1, more: Record<string, unknown> = {}) =>
    shareToEnd(
      {
        equations: { heldBase: false, points: { history: undefined }, grid: { volume: 1000 } },
        suctions: Float64Array.of(-1e-6),
        stage: Float64Array.of(0.1),
        begun: { drained: 1 },
        early: { drained: early },
        flows: { drained: flows },
        tolerance: 1e-3,
        ...more,
      } as unknown as StepWork,
      DT,
    )
  it('is where the straight line through two rates is zero, or before the first stage where that drains no more', () => {
    expect(at(0.5)).toBeCloseTo(2 * STAGE, 12)
    expect(at(0.6)).toBeCloseTo(2.5 * STAGE, 12)
    expect(at(0)).toBe(STAGE / 2)
  })
  it('is not gone to where it is late, where little drains, and where the drain does not fall', () => {
    // 2.9 first stages are 0.8494 of the step, 3 are 0.879.
    expect(at(1 - 1 / 2.9)).toBeCloseTo(2.9 * STAGE, 12)
    expect(at(2 / 3)).toBe(0)
    expect(at(1.1)).toBe(0)
    // A tenth of what drains, counted as often as the drain is, beside the tolerance of the whole column.
    const enough = (1e-3 * 1000) / (0.1 * DRAIN * DT)
    expect(at(0.5, 0.99 * enough)).toBe(0)
    expect(at(0.5, 1.01 * enough)).toBeGreaterThan(0)
  })
  it('is none where it goes on, where it had not begun, where the base is held and where media have two curves', () => {
    expect(at(0.5, 0.1, { stage: Float64Array.of(0) })).toBe(0)
    expect(at(0.5, 0.1, { suctions: Float64Array.of(0.01) })).toBe(0)
    expect(at(0.5, 0.1, { suctions: Float64Array.of(0) })).toBeCloseTo(2 * STAGE, 12)
    expect(at(0, 0.1, { begun: { drained: 0 } })).toBe(0)
    const equations = { heldBase: true, points: { history: undefined }, grid: { volume: 1000 } }
    expect(at(0.5, 0.1, { equations })).toBe(0)
    expect(at(0.5, 0.1, { equations: { ...equations, heldBase: false, points: { history: {} } } })).toBe(0)
  })
})

describe('the weight of what passes at a height', () => {
  it('is ten times that of a cell as deep as the column, and a hundred times more at the bottom', () => {
    const grid = columnGrid([box(10)], 6)
    const weights = weightOfPassing(grid)
    expect(weights[0]! * grid.volume).toBeCloseTo(110, 10)
    expect(weights[5]! * grid.volume).toBeCloseTo(10 + 100 * Math.exp(-2.5), 10)
    expect(weights.every((weight, i) => i === 0 || weight < weights[i - 1]!)).toBe(true)
  })
})

describe('suctions that come closer to what cells hold', () => {
  const work = (apart: number, s: number, mending = 1) => {
    const one = {
      equations: { grid: { volumes: Float64Array.of(50) }, terms: { waterByOwn: Float64Array.of(-2) } },
      suctions: Float64Array.of(s),
      held: Float64Array.of(20),
      apart: Float64Array.of(apart),
      closer: Float64Array.of(0),
      from: Float64Array.of(0),
      conductance: Float64Array.of(3),
      mending,
      tolerance: 1e-3,
    }
    comeCloser(one as unknown as StepWork, 0.004)
    return [apart - one.closer[0]!, one.from[0]! - 20 - one.closer[0]!]
  }
  it('by a part of the tolerance, or a tenth of what is left, but no more than the cell can do at once', () => {
    expect(MENDED).toBe(0.3)
    const close = (pair: readonly number[], wanted: number) => {
      expect(pair[0]).toBeCloseTo(wanted, 12)
      expect(pair[1]).toBeCloseTo(0, 12)
    }
    // 0.3 of 1e-3 of 50 cm³.
    close(work(0.1, 40), 0.015)
    close(work(-0.1, 40), -0.015)
    close(work(0.01, 40), 0.01)
    close(work(5, 40), 0.5)
    close(work(0.1, 40, 0.2), 0.003)
    // A full cell: half a centimetre of its slope of 2, and 3 cm³/s for 4 ms.
    close(work(50, 0.5), 1.012)
    close(work(50, -7), 1.012)
    // At 1.5 cm half of that of its slope, without flow.
    close(work(50, 1.5), 1.5)
    close(work(500, 40), 40)
  })
  it('which is counted as what suctions say less what cells hold', () => {
    const one = {
      equations: { terms: { water: Float64Array.of(5, 1) } },
      held: Float64Array.of(4, 3),
      apart: all(2, 0),
    }
    countApart(one as unknown as StepWork)
    expect([...one.apart]).toEqual([1, -2])
  })
})

describe('how far suction is a straight line within an element', () => {
  const grid = columnGrid([box(10)], 11)
  const terms = columnTerms(grid)
  const trustAt = (below: number, above: number, averaged = true) => {
    const s = all(11, below)
    s[1] = above
    trustElements(s, grid, terms, averaged)
    return terms.trust[0]!
  }
  const length = grid.lengths[0]!
  it('is wholly so up to four lengths and two fifths of the smaller suction, and not at all at twice that', () => {
    const usual = 4 * length + 0.4 * 20
    for (const [times, trust] of [
      [0, 1],
      [1, 1],
      [1.5, 0.5],
      [1.25, 1 - 0.25 ** 2 * 2.5],
      [2, 0],
      [3, 0],
    ] as const) {
      expect(trustAt(20, 20 + times * usual)).toBeCloseTo(trust, 12)
      expect(trustAt(20 + times * usual, 20)).toBeCloseTo(trust, 12)
    }
    // Under water its lengths alone count.
    expect(trustAt(-5, -5 + 4 * length)).toBeCloseTo(1, 12)
    expect(trustAt(-5, -5 + 6 * length)).toBeCloseTo(0.5, 12)
    expect(trustAt(20, 20, false)).toBe(0)
  })
  it('is so up to a hundred lengths of suction, and not at all at twice that', () => {
    expect(trustAt(100 * length, 100 * length)).toBeCloseTo(1, 12)
    expect(trustAt(150 * length, 150 * length)).toBeCloseTo(0.5, 12)
    expect(trustAt(200 * length, 200 * length)).toBe(0)
    expect(terms.trustByAbove[0]).toBe(0)
  })
})

describe('suctions made to say what cells hold', () => {
  const grid = columnGrid([box(10)], 11)
  const made = () => columnEquations(grid, [layer(0.1)], ends, 'averaged', undefined)
  it('come from any guess that is not too far to those that held it', () => {
    const equations = made()
    fc.assert(
      fc.property(number(2, 60), number(-0.4, 1), number(0, 1.5), (suction, off, slope) => {
        const wanted = grid.heights.map((height) => suction + slope * height)
        equations.store(wanted)
        const held = equations.terms.water.slice()
        const s = wanted.map((value) => value * (1 + off))
        reconcile(s, held, equations, 1e-9)
        s.forEach((value, i) => {
          expect(Math.abs(value / wanted[i]! - 1)).toBeLessThan(1e-4)
        })
      }),
      { numRuns: 40 },
    )
  })
  it('stay as they are where nothing would come closer', () => {
    const equations = made()
    const s = all(11, -2)
    equations.store(s)
    const held = equations.terms.water.slice()
    const before = s.slice()
    reconcile(s, held, equations, 1e-9)
    expect(s).toEqual(before)
    // Full cells say nothing: more water than they can hold changes no suction.
    reconcile(
      s,
      held.map((water, i) => (i === 5 ? water + 3 : water)),
      equations,
      1e-9,
    )
    expect(s[5]).toBe(-2)
  })
})
