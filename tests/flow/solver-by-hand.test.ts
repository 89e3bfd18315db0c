import { boxContainer, vanGenuchten1980, wettingCurveKoolParker1987 } from 'porewater/medium'
import { describe, expect, it } from 'vitest'
import { closeHeldEnds, columnBalance } from '../../src/flow/column/equations/balance.js'
import { type ColumnEquations, columnEquations } from '../../src/flow/column/equations/equations.js'
import { REST, STAGE } from '../../src/flow/column/equations/flow-rates.js'
import { fillScanningConduction } from '../../src/flow/column/equations/scanning-conduction.js'
import { columnTerms } from '../../src/flow/column/equations/terms.js'
import { columnHistory, follow, forget } from '../../src/flow/column/scanning/history.js'
import { columnSimulation } from '../../src/flow/column/simulation.js'
import { columnNewton } from '../../src/flow/column/step/newton.js'
import { firstLook, isHopeless } from '../../src/flow/column/step/pace.js'
import type { Passed } from '../../src/flow/column/step/passed.js'
import { goesAstray } from '../../src/flow/column/step/possible.js'
import { reconcile } from '../../src/flow/column/step/reconcile.js'
import { isSmallMove } from '../../src/flow/column/step/small-move.js'
import { columnSolver } from '../../src/flow/column/step/solver.js'
import { tryStep } from '../../src/flow/column/step/step.js'
import { errorOfStep } from '../../src/flow/column/step/step-correction.js'
import { stepWork } from '../../src/flow/column/step/step-work.js'
import { richardsColumn } from '../../src/flow/richards-column.js'

// Brands say nothing about values; plain numbers keep the cases readable.
const curve = { residual: 0.08, saturated: 0.88, alpha: 0.09, n: 1.7 }
const medium = vanGenuchten1980(curve as never)
const box = boxContainer({ length: 20, width: 10, height: 10 } as never)
const still = { applied: 0, evaporation: 0, sink: undefined }
const TOLERANCE = 1e-3
const none = (): Passed => ({ entered: 0, drained: 0, taken: 0, runOff: 0, evaporated: 0, steps: 0 })

function made(around: object = {}, scans = false) {
  const layer = { container: box, medium, saturatedConductivity: 40 }
  const both = { ...layer, wetting: wettingCurveKoolParker1987(curve as never) }
  const { grid, media, ends } = richardsColumn([scans ? both : layer] as never, { nodes: 5, ...around } as never)
  const history = columnHistory(grid, media, TOLERANCE)
  if (history !== undefined) forget(history, false)
  return { grid, history, equations: columnEquations(grid, media, ends, 'averaged', history) }
}

/** A state at rest over a suction at its bottom. */
function atRest(equations: ColumnEquations, bottom: number) {
  const suctions = equations.grid.heights.map((height) => bottom + height)
  equations.store(suctions)
  return { suctions, held: equations.terms.water.slice() }
}

describe('steps through a time', () => {
  const limits = { tolerance: TOLERANCE, small: 0.5 * Math.sqrt(TOLERANCE), bold: true, maxSteps: 4000 }
  const shot = { ...still, applied: 0.5 }
  /** Lengths of the steps that stand. */
  const through = (equations: ColumnEquations, duration: number, during = shot, more: object = {}) => {
    const lengths: number[] = []
    const passed = none()
    const { advance } = columnSolver(equations, { ...limits, ...more })
    const state = atRest(equations, 12)
    const left = advance(state, duration, during, passed, ({ dt }) => lengths.push(dt))
    return { lengths, left, passed, state }
  }
  it('begin with one in which the cell that changes fastest changes by twenty tolerances, or with all of it', () => {
    const { grid, equations } = made()
    // Half a cubic centimetre a second comes to the highest cell, and all others rest.
    const first = (20 * TOLERANCE * grid.volumes[4]!) / 0.5
    const { lengths, left } = through(equations, 1000)
    const turn = lengths[0]! / first
    // Tried again, shorter, where it errs too much.
    expect(turn).toBeLessThanOrEqual(1 + 1e-12)
    expect(left).toBe(0)
    expect(lengths.reduce((sum, one) => sum + one, 0)).toBeCloseTo(1000, 8)
    expect(through(equations, 0.999 * first * 0.05).lengths).toEqual([0.999 * first * 0.05])
    const tried: number[] = []
    const { fillFrom } = equations
    through({ ...equations, fillFrom: (contents, time) => fillFrom(contents, tried.push(time) > 0 ? time : 0) }, 1000)
    // The first fills from what suctions say, the second in the first stage of the first step.
    expect(tried.slice(0, 2)).toEqual([Infinity, expect.closeTo(STAGE * first, 8)])
    // At rest nothing changes: one step.
    expect(through(equations, 1e5, still).lengths).toEqual([1e5])
  })
  it('grow by no more than a half in the two behind one that failed', () => {
    const { equations } = made()
    let fails = 0
    let spoilt = false
    const spoiling: ColumnEquations = {
      ...equations,
      evaluate: (s, during) => {
        equations.evaluate(s, during)
        if (spoilt) equations.terms.water[0] = Number.NaN
      },
      // A step that failed begins by reading where it began.
      store: (s) => {
        equations.store(s)
        if (spoilt) fails++
        spoilt = false
      },
    }
    const { advance } = columnSolver(spoiling, limits)
    const lengths: number[] = []
    const state = atRest(equations, 12)
    advance(state, 4000, { ...still, applied: 0.01 }, none(), ({ dt }) => {
      lengths.push(dt)
      spoilt = lengths.length === 2
    })
    expect(fails).toBe(1)
    const grown = lengths.slice(1).map((one, k) => one / lengths[k]!)
    // It stands in the second place, and what was tried before it was four times as long.
    expect(grown[2]).toBeCloseTo(1.5, 10)
    expect(grown[3]).toBeCloseTo(1.5, 10)
    expect(grown[4]).toBeGreaterThan(1.6)
  })
  it('end where none is short enough, with all that is left', () => {
    const { equations } = made()
    const tried: number[] = []
    let evaluated = 0
    const swinging: ColumnEquations = {
      ...equations,
      // Thirty cubic centimetres too much and too little in turn, which no suction can meet.
      evaluate: (s, during) => {
        equations.evaluate(s, during)
        evaluated++
        equations.terms.water[2]! += evaluated % 2 === 0 ? 30 : -30
      },
      fillFrom: (contents, time) => {
        tried.push(time / STAGE)
        equations.fillFrom(contents, time)
      },
    }
    const { advance } = columnSolver(swinging, limits)
    const state = atRest(equations, 12)
    const before = [...state.suctions]
    expect(advance(state, 1000, still, none(), undefined)).toBe(1000)
    const [last, ...longer] = tried.reverse()
    expect(last).toBeLessThan(1e-9)
    expect(longer[0]).toBeGreaterThanOrEqual(1e-9)
    expect([...state.suctions]).toEqual(before)
  })
  it('end behind more than are allowed', () => {
    const { equations } = made()
    const passed = { ...none(), steps: 7 }
    const { advance } = columnSolver(equations, { ...limits, maxSteps: 3 })
    const left = advance(atRest(equations, 12), 5000, shot, passed, undefined)
    expect(passed.steps).toBe(7 + 4)
    expect(left).toBeGreaterThan(0)
    expect(passed.entered).toBeCloseTo(0.5 * (5000 - left), 8)
  })
  it('are given up at the very look that finds them hopeless', () => {
    const { equations } = made()
    // Rain that comes and goes with every step keeps all of them short; the second thousand is the first that has another to compare with.
    const during = { ...shot }
    const comesAndGoes = () => {
      during.applied = 0.5 - during.applied
    }
    const passed = none()
    const { advance } = columnSolver(equations, limits)
    expect(advance(atRest(equations, 12), 1e9, during, passed, comesAndGoes)).toBeGreaterThan(9e8)
    expect(passed.steps).toBe(2000)
  })
  it('leave nothing behind in a solver for the next time', () => {
    const { equations } = made()
    const go = (solver: ReturnType<typeof columnSolver>, duration: number, during: typeof still, bottom = 12) => {
      const state = atRest(equations, bottom)
      const passed = none()
      const left = solver.advance(state, duration, during, passed, undefined)
      return { left, passed, suctions: [...state.suctions], held: [...state.held] }
    }
    const used = columnSolver(equations, { ...limits, maxSteps: 40 })
    const fresh = go(columnSolver(equations, { ...limits, maxSteps: 40 }), 300, shot)
    // Ended on the way to a drain, in the middle of it, behind it, and given up.
    for (const [duration, bottom] of [
      [20, 3],
      [300, 0.5],
      [900, 12],
      [1e6, 2],
    ] as const) {
      go(used, duration, { ...shot, applied: 3 }, bottom)
      expect(go(used, 300, shot)).toEqual(fresh)
    }
  })
  it('take nothing at an open end, whatever its suction says beside what its cell holds', () => {
    const { equations } = made()
    const state = atRest(equations, 12)
    // As another manner of looking at cells may leave it.
    for (const i of [0, 4]) state.held[i]! -= 3
    const before = state.held.reduce((sum, one) => sum + one, 0)
    const passed = none()
    columnSolver(equations, limits).advance(state, 30, still, passed, undefined)
    expect(passed).toMatchObject({ entered: 0, drained: 0, taken: 0, runOff: 0, evaporated: 0 })
    expect(state.held.reduce((sum, one) => sum + one, 0)).toBeCloseTo(before, 9)
  })
  it('give or take at once what an end needs whose suction is set', () => {
    for (const around of [{ base: 30 }, { surface: 5 }]) {
      const { equations } = made(around)
      const state = atRest(made().equations, 12)
      const before = state.held.slice()
      const passed = none()
      const at = 'base' in around ? 0 : 4
      const { advance } = columnSolver(equations, limits)
      advance(state, 1e-7, still, passed, undefined)
      expect(state.suctions[at]).toBe('base' in around ? 30 : 5)
      const sum = (list: Float64Array) => list.reduce((all, one) => all + one, 0)
      const change = sum(state.held) - sum(before)
      expect(passed.entered - passed.drained).toBeCloseTo(change, 9)
      expect('base' in around ? passed.entered : passed.drained).toBe(0)
      // What suctions say that cells hold, with that of the end set.
      equations.store(state.suctions)
      expect(state.held[at]).toBeCloseTo(equations.terms.water[at]!, 3)
      expect(Math.abs(change)).toBeGreaterThan(1)
    }
  })
})

describe('a simulation of a column', () => {
  it('goes the bold way first, with moves small by half the root of its tolerance', () => {
    const during = { ...still, applied: 0.8 }
    const layer = { container: box, medium, saturatedConductivity: 40 }
    const { grid, media, ends } = richardsColumn([layer] as never, { nodes: 7 } as never)
    const { equations, advance } = columnSimulation(grid, media, ends, 1e-4)
    const whole = atRest(equations, 4)
    const passed = advance(whole, 600, during, undefined)
    const alone = (bold: boolean) => {
      const own = columnEquations(grid, media, ends, 'averaged', undefined)
      const state = atRest(own, 4)
      const flows = none()
      const small = bold ? 0.5 * Math.sqrt(1e-4) : 1e-9
      columnSolver(own, { tolerance: 1e-4, small, bold, maxSteps: 4000 }).advance(state, 600, during, flows, undefined)
      return { state, flows }
    }
    expect(passed.drained).toBeGreaterThan(1)
    expect(alone(true)).toEqual({ state: whole, flows: passed })
    // The careful way comes to nearly the same.
    const careful = alone(false)
    expect(careful).not.toEqual({ state: whole, flows: passed })
    expect(careful.flows.drained / passed.drained).toBeCloseTo(1, 2)
  })
})

describe('a flow of media that drain and wet on two curves', () => {
  const grid = { layers: [0], lengths: Float64Array.of(2), nodes: 2 }
  const points = {
    suction: Float64Array.of(10, 16),
    // They hold what they would at these while draining, and those move by 1.5 and 2 for each centimetre.
    effective: Float64Array.of(14, 14),
    effectiveSlope: Float64Array.of(1.5, 2),
    conductance: Float64Array.of(5),
    at: {
      conductivity: Float64Array.of(0.6, 0.6),
      conductivitySlope: Float64Array.of(-0.04, -0.04),
      potential: Float64Array.of(9, 9),
    },
  }
  const filled = (upstream: boolean) => {
    const terms = columnTerms(grid as never)
    fillScanningConduction(grid as never, points as never, terms, upstream)
    return [terms.up[0], terms.upByBelow[0], terms.upByAbove[0]]
  }
  const close = (...list: number[]) => list.map((one) => expect.closeTo(one, 12))
  it('is driven by the suctions themselves, with the mean of what they conduct', () => {
    // A gradient of three less that of weight; the mean moves by half the slope of either end, the gradient by half.
    expect(filled(false)).toEqual(close(5 * 0.6 * 2, 5 * (-0.02 * 1.5) * 2 - 1.5, 5 * (-0.02 * 2) * 2 + 1.5))
  })
  it('sinks, where upstream, as the upper end conducts', () => {
    expect(filled(true)).toEqual(
      close(5 * (0.6 * 3 - 0.6), 5 * (-0.02 * 1.5) * 3 - 1.5, 5 * (-0.02 * 2 * 3 + 0.04 * 2) + 1.5),
    )
  })
})

describe('the pace of steps', () => {
  /** Looks at a time of which so much is left every thousand steps. */
  const looks = (maxSteps: number, ...left: number[]) => {
    const look = firstLook(500, 10_000)
    return left.map((one) => [look.at, isHopeless(look, one, maxSteps)])
  }
  it('is looked at every thousand steps, and hopeless where twenty times those that are allowed would not do', () => {
    // Four thousand are allowed: what goes in a thousand steps, times four, times twenty.
    expect(looks(4000, 9900, 9800, 9701)).toEqual([
      [1500, false],
      [2500, true],
      [3500, true],
    ])
    expect(looks(4000, 9870, 9745)[1]).toEqual([2500, false])
    // 121 a look, of which 80 make 9,680.
    expect(looks(4000, 9801, 9680)[1]).toEqual([2500, false])
    expect(looks(4000, 9802, 9682)[1]).toEqual([2500, true])
    expect(looks(40_000, 9500, 9000)[1]).toEqual([2500, false])
  })
  it('is not hopeless at first, nor where it grows by a fifth', () => {
    expect(looks(4000, 9999.9)).toEqual([[1500, false]])
    expect(looks(4000, 9990, 9978)[1]).toEqual([2500, false])
    expect(looks(4000, 9990, 9978.1)[1]).toEqual([2500, true])
  })
})

describe('a step goes astray', () => {
  it('where a cell would hold a ten-thousandth of its volume more than it can, or less than nothing', () => {
    const astray = (up: number, before = 40) =>
      goesAstray(
        { full: Float64Array.of(40, 40), grid: { volumes: Float64Array.of(50, 50) }, standing: () => 0 } as never,
        Float64Array.of(before, 20),
        { up: Float64Array.of(up), taken: new Float64Array(2), drained: 0, entered: 0, runOff: 0, evaporated: 0 },
        2,
        new Float64Array(2),
        new Float64Array(2),
      )
    // Two seconds of 0.0025 cm³/s are 1e-4 of 50 cm³.
    expect(astray(-0.00249)).toBe(false)
    expect(astray(-0.00251)).toBe(true)
    expect(astray(-0.00251, 39.9)).toBe(false)
    // What was beyond already does not count.
    expect(astray(-0.00249, 41)).toBe(false)
    expect(astray(-0.00251, 41)).toBe(true)
    expect(astray(0.00249, 0)).toBe(false)
    expect(astray(0.00251, 0)).toBe(true)
  })
})

/** Tries a step from a state, at whose top a shot begins. */
function stepFrom(
  { suctions, held }: ReturnType<typeof atRest>,
  equations: ColumnEquations,
  work: ReturnType<typeof stepWork>,
  applied = 0.4,
) {
  const during = { ...still, applied }
  equations.evaluate(suctions, during)
  work.suctions.set(suctions)
  work.held.set(held)
  work.before.set(equations.net)
  work.begun.entered = applied
  const { solve } = columnNewton(equations, { small: 1e-9, bold: false })
  return tryStep(work, solve, 20, during, none(), undefined)
}

describe('the way of suctions at the end of a step', () => {
  it.each([false, true])(
    'is that of the parabola through begin, first stage and end, or the chord: two curves %s',
    (scans) => {
      const { equations, grid, history } = made({}, scans)
      const work = stepWork(equations, 1)
      const state = atRest(equations, 12)
      const { suctions } = state
      if (history !== undefined) follow(history, grid, suctions)
      const dt = 20
      expect(stepFrom(state, equations, work).done).toBe(dt)
      for (const [i, begin] of suctions.entries()) {
        const [first, end, early] = [work.halfway[i]!, work.suctions[i]!, STAGE * dt]
        // Newton's divided differences, and the slope of their parabola at the end.
        const [one, two] = [(first - begin) / early, (end - first) / (dt - early)]
        const parabola = one + ((two - one) / dt) * (2 * dt - early)
        expect(work.trend[i]).toBeCloseTo(scans ? (end - begin) / dt : parabola, 10)
      }
      expect(Math.abs(work.trend[4]!)).toBeGreaterThan(0.01)
    },
  )
})

describe('a step that errs', () => {
  it('as much as it may stands, and one that errs more is tried again', () => {
    const tried = (tolerance: number) => {
      const { equations } = made()
      const work = stepWork(equations, tolerance)
      return { ...stepFrom(atRest(equations, 12), equations, work), error: work.control.error }
    }
    const { error } = tried(1)
    expect(error).toBeGreaterThan(0)
    expect(tried(error).done).toBe(20)
    const again = tried(0.999 * error)
    expect(again.done).toBe(0)
    // Shorter by the third root of nearly one, but by three tenths at least.
    expect(again.factor).toBeCloseTo(0.7, 12)
    expect(tried(error / 100).factor).toBeCloseTo(0.95 * 0.01 ** (1 / 3), 12)
    expect(tried(error / 1e6).factor).toBe(0.1)
  })
})

describe('a step towards the onset of a drain', () => {
  it('is followed by one as long as what is left of the way and the step behind it', () => {
    const followed = (applied: number, bottom: number) => {
      const { equations } = made()
      const work = stepWork(equations, 1)
      work.control.behind = 7
      const { done, factor } = stepFrom(atRest(equations, bottom), equations, work, applied)
      expect(done).toBe(20)
      return { length: factor * 20, left: work.suctions[0]!, trend: work.trend[0]!, behind: work.control.behind }
    }
    const { length, left, trend, behind } = followed(3, 4)
    expect(left).toBeGreaterThan(0)
    expect(trend).toBeLessThan(0)
    expect(length).toBeCloseTo((1.01 * left) / -trend + 7, 8)
    expect(behind).toBe(7)
  })
})

describe('an end whose suction is held', () => {
  it('lets pass what its cell needs to hold what it is to, beside what comes from its neighbour', () => {
    const terms = columnTerms({ nodes: 3 } as never)
    terms.water.set([10, 20, 30])
    const balance = columnBalance({ nodes: 3 } as never, terms, true, true)
    balance.net.set([0.4, 0.1, -0.3])
    closeHeldEnds(balance, Float64Array.of(11, 20, 28), 5)
    // Of 11 cm³ and what comes in five seconds 10 stay; 30 are to be where 28 were, and 0.3 a second go.
    expect(terms.drained).toBeCloseTo(0.2 + 0.4, 12)
    expect(terms.entered).toBeCloseTo(0.4 + 0.3, 12)
    expect([...balance.net]).toEqual([-0.2, 0.1, 0.4].map((one) => expect.closeTo(one, 12)))
  })
})

describe('water on a full surface', () => {
  it('begins at a suction of zero, with the slope of what stands', () => {
    const { equations, grid } = made()
    const slope = (top: number) => {
      equations.store(grid.heights.map((_, i) => (i === 4 ? top : -1)))
      return equations.terms.waterByOwn[4]!
    }
    expect(slope(0)).toBeCloseTo(-200, 6)
    expect(slope(-3)).toBeCloseTo(-200, 6)
    expect(slope(1e-9)).toBeGreaterThan(-1)
  })
})

describe('a step of media that drain and wet on two curves', () => {
  it('takes the mean of its two stages, and leaves what they leave out', () => {
    const { equations, grid, history } = made({}, true)
    const work = stepWork(equations, 1)
    const state = atRest(equations, 12)
    follow(history!, grid, state.suctions)
    expect(stepFrom(state, equations, work).done).toBe(20)
    const { flows, early, begun } = work
    for (const e of flows.up.keys()) expect(flows.up[e]).toBeCloseTo(REST * early.up[e]! + STAGE * begun.up[e]!, 12)
    expect(Math.max(...flows.up.map(Math.abs))).toBeGreaterThan(0.01)
  })
})

describe('a small move where a medium turns', () => {
  it('brings no more than two fifths of what is small across a turn', () => {
    const { equations, grid, history } = made({}, true)
    for (const bottom of [30, 12]) follow(history!, grid, atRest(equations, bottom).suctions)
    const { suctions } = atRest(equations, 12.02)
    equations.evaluate(suctions, still)
    const small = (move: number, share: number) => {
      const brings = Math.abs(move * equations.terms.waterByOwn[2]!) / grid.volumes[2]!
      return isSmallMove(
        equations,
        suctions,
        suctions.map((_, i) => (i === 2 ? move : 0)),
        brings / share,
      )
    }
    // It turned at 12 cm, and has come back by 0.02.
    expect([small(-0.05, 0.39), small(-0.05, 0.41), small(-0.05, 0.99)]).toEqual([true, false, false])
    expect([small(0.05, 0.41), small(0.05, 0.99), small(0.05, 1.01)]).toEqual([true, true, false])
  })
})

describe('suctions made to say what cells hold', () => {
  it('need few readings, for all cells are moved together', () => {
    const { equations, grid } = made({ nodes: 31 })
    const wanted = grid.heights.map((height) => 8 + 0.7 * height)
    equations.store(wanted)
    const held = equations.terms.water.slice()
    let read = 0
    const counting = {
      ...equations,
      store: (s: Float64Array) => {
        read++
        equations.store(s)
      },
    }
    const s = wanted.map((one, i) => one * (1 + 0.05 * Math.sin(i)))
    reconcile(s, held, counting, 1e-9)
    // Errors go with the square: 5e-2, 3e-3, 1e-5, 1e-10.
    expect(read).toBeLessThanOrEqual(5)
    for (const [i, one] of wanted.entries()) expect(s[i]).toBeCloseTo(one, 6)
  })
  /** One cell of a cubic centimetre. */
  const sought = (water: (s: number) => number, slope: (s: number) => number, start: number, wanted: number) => {
    const room = () => new Float64Array(1)
    const terms = { water: room(), waterByOwn: room(), waterByBelow: room(), waterByAbove: room() }
    let read = 0
    const store = (s: Float64Array) => {
      read++
      terms.water[0] = water(s[0]!)
      terms.waterByOwn[0] = slope(s[0]!)
    }
    const [lower, diagonal, upper] = [room(), room(), room()]
    const s = Float64Array.of(start)
    const equations = { nodes: 1, grid: { volumes: room().fill(1) }, terms, store, lower, diagonal, upper }
    reconcile(s, Float64Array.of(wanted), equations as never, 1e-6)
    return { s: s[0]!, read }
  }
  it('are given up after fifteen moves: as they came, or as they were where that is no closer', () => {
    const closer = sought(
      (s) => -1 / s,
      (s) => 1 / s ** 2,
      -2,
      -1,
    )
    expect(closer.read).toBe(16)
    expect(closer.s).toBeLessThan(-1000)
    const none = sought(
      () => 1,
      () => -0.1,
      -2,
      -1,
    )
    expect(none).toEqual({ s: -2, read: 16 })
  })
  it('stay where they are close enough, and are left alone where they say nothing', () => {
    const line = (wanted: number, slope = -1) =>
      sought(
        (s) => slope * s,
        () => slope,
        -2,
        wanted,
      )
    expect(line(2 + 0.9e-6)).toEqual({ s: -2, read: 1 })
    expect(line(2 + 1.1e-6)).toEqual({ s: expect.closeTo(-2 - 1.1e-6, 12), read: 2 })
    expect(line(1e-5, -0.9e-9)).toEqual({ s: -2, read: 1 })
    expect(line(4.2e-9, -1.1e-9).read).toBe(1)
    expect(line(3e-6, -1.1e-9).s).toBeLessThan(-2)
  })
})

describe('the error of a step', () => {
  it('is not that of the drain where there is none', () => {
    const { equations } = made()
    const work = stepWork(equations, TOLERANCE)
    equations.evaluate(atRest(equations, 12).suctions, still)
    equations.assemble(30)
    // Nothing has changed, and nothing flows.
    equations.net.fill(0)
    columnNewton(equations, { small: 1e-9, bold: false })
    expect(errorOfStep(work, 30)).toBe(0)
    expect(work.control.triedByDrain).toBe(false)
  })
})
