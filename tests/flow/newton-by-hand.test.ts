import { describe, expect, it } from 'vitest'
import { columnNewton } from '../../src/flow/column/step/newton.js'

/** Cells that do not know of each other, each with its water and its slope at a suction; the suctions that are tried are kept. */
function cells(
  water: (s: number, i: number) => number,
  slope: (s: number, i: number) => number,
  { nodes = 1, heldBase = false, heldTop = false } = {},
) {
  const room = () => new Float64Array(nodes)
  const terms = { water: room(), waterByOwn: room() }
  const [lower, diagonal, upper, net] = [room(), room(), room(), room()]
  const tried: number[] = []
  const equations = {
    nodes,
    grid: { volumes: room().fill(1), perVolume: room().fill(1), layers: [] },
    points: { history: undefined, at: {} },
    terms,
    net,
    lower,
    diagonal,
    upper,
    heldBase,
    heldTop,
    evaluate: (s: Float64Array) => {
      tried.push(s[0]!)
      for (let i = 0; i < nodes; i++) {
        terms.water[i] = water(s[i]!, i)
        terms.waterByOwn[i] = slope(s[i]!, i)
      }
    },
    assemble: () => {
      lower.fill(0)
      upper.fill(0)
      diagonal.set(terms.waterByOwn)
    },
    carryOn: () => {},
    closeHeldEnds: () => {},
  }
  const solve = (start: readonly number[], target: number, bold = true, small = 1e-9, sink?: object) => {
    const s = Float64Array.from(start)
    const { solve: solved } = columnNewton(equations as never, { small, bold })
    const done = solved(s, room().fill(target), { applied: 0, evaporation: 0, sink } as never, 1)
    return { done, s: [...s] }
  }
  return { solve, tried }
}
const each = [true, false]

describe('the balance of a stage', () => {
  it('of a straight line is found by one move', () => {
    for (const bold of each) {
      const { solve, tried } = cells(
        (s) => -s,
        () => -1,
      )
      expect(solve([-10], 20, bold)).toEqual({ done: true, s: [-20] })
      expect(tried).toEqual([-10, -20])
    }
  })
  it('is that of all cells but those whose suction is held, which stay', () => {
    const solved = (held: object) =>
      cells(
        // The middle one is to hold nothing at 20 cm, and the others never do.
        (s, i) => (i === 1 ? 20 - s : 7),
        () => -1,
        { nodes: 3, ...held },
      ).solve([30, 19.5, 30], 0)
    expect(solved({ heldBase: true, heldTop: true })).toEqual({ done: true, s: [30, 20, 30] })
    for (const held of [{ heldBase: true }, { heldTop: true }, {}]) expect(solved(held).done).toBe(false)
  })
  it('is sought on this side of the suction at which roots stop, nine tenths of the way to it', () => {
    const second = (sink?: object) => {
      const { solve, tried } = cells(
        (s) => 300 - s,
        () => -1,
      )
      solve([100], 0, true, 1e-9, sink)
      return tried[1]
    }
    expect(second({ h4: 200 })).toBeCloseTo(190, 10)
    // Without roots as far as a move goes, to the fourfold.
    expect(second()).toBeCloseTo(100 * Math.exp(1.4), 10)
  })
  it('is found by a small move along its slopes, which is not looked at again', () => {
    const { solve, tried } = cells(
      (s) => -s - 0.01 * (s + 10) ** 2,
      (s) => -1 - 0.02 * (s + 10),
    )
    expect(solve([-10], 10.005, true, 0.01)).toEqual({ done: true, s: [expect.closeTo(-10.005, 12)] })
    expect(tried).toEqual([-10])
    // A larger one is.
    expect(solve([-10], 10.02, true, 0.01).done).toBe(true)
    expect(tried.slice(1)).toEqual([-10, expect.closeTo(-10.02, 12)])
  })
  it('is given up after 20 moves that come ever closer to what cannot be, by a bold solver after 14', () => {
    for (const bold of each) {
      // Water of -1/s is never less than nothing.
      const { solve, tried } = cells(
        (s) => -1 / s,
        (s) => 1 / s ** 2,
      )
      expect(solve([-2], -1, bold).done).toBe(false)
      expect(tried).toHaveLength(bold ? 15 : 21)
    }
  })
  it('may become worse in six moves of a bold solver, and in no other', () => {
    // Newton's method takes the cube root of u from u to -2u; three tenths of that move end at u / 10.
    const root = () =>
      cells(
        (s) => -Math.cbrt(s + 50),
        (s) => -1 / 3 / Math.cbrt(s + 50) ** 2,
      )
    const bold = root()
    expect(bold.solve([-49.9], 0).done).toBe(false)
    const free = [0.1, -0.2, 0.4, -0.8, 1.6, -3.2, 6.4]
    const shortened = [-12.8, 0.64, -1.28, 0.064, -0.128, 0.0064]
    expect(bold.tried.slice(0, 13)).toEqual([...free, ...shortened].map((u) => expect.closeTo(u - 50, 9)))
    expect(bold.tried).toHaveLength(1 + 6 + 8 * 2)
    const careful = root()
    careful.solve([-49.9], 0, false)
    expect(careful.tried.slice(0, 5)).toEqual([0.1, -0.2, 0.01, -0.02, 0.001].map((u) => expect.closeTo(u - 50, 9)))
  })
  it('counts as found where it is off by less than 1e-10, however far the move would be', () => {
    const off = (by: number, slope: number, start: number, small = 1e-9) => {
      const { solve, tried } = cells(
        () => by,
        () => slope,
      )
      return { ...solve([start], 0, false, small), tried: tried.length }
    }
    // The whole move is to -0.999 cm, over saturation.
    expect(off(0.99e-10, 0.99e-10, 1e-3)).toEqual({ done: true, s: [1e-3], tried: 1 })
    expect(off(0.999e-10, -1, 30, 1e-12).tried).toBe(1)
    // All four shares of six moves, until 1e-7 is enough.
    expect(off(1e-10, -1, 30, 1e-12).tried).toBe(1 + 6 * 4)
  })
  it('counts as found where it hovers about saturation by less than 1e-7, from the seventh iteration on', () => {
    const hovering = (by: number, bold: boolean) => {
      // Water that is always too much by so much, and slopes that send the suction to the other side.
      const { solve, tried } = cells(
        () => by,
        (s) => (s > 0 ? by : -by) / 2e-3,
      )
      return { done: solve([1e-3], 0, bold).done, tried: tried.length }
    }
    expect(hovering(0.99e-7, true)).toEqual({ done: true, tried: 7 })
    // Four shares of each of six moves: 1, 0.3, 0.09 and 0.027.
    expect(hovering(0.99e-7, false)).toEqual({ done: true, tried: 1 + 6 * 4 })
    expect(hovering(1e-7, true).done).toBe(false)
    expect(hovering(1.01e-7, true).done).toBe(false)
  })
  it('counts as found where no suction would move by more than its rounding', () => {
    const rounding = (dry: number, by = 5e-7) => {
      const { solve, tried } = cells(
        () => by,
        (_, i) => by / (i === 0 ? 1e-14 : dry),
        { nodes: 2 },
      )
      return [solve([5e-15, 1000], 0).done, tried.length]
    }
    // A hundredth of a billionth of a centimetre is nothing to a thousand, and a billionth is more than rounding.
    expect(rounding(1e-11)).toEqual([true, 1])
    expect(rounding(1e-9)[1]).toBeGreaterThan(1)
    expect(rounding(1e-11, 2e-6)[1]).toBeGreaterThan(1)
  })
  it('of a film on a seepage face is sought by a bold solver from where it begins', () => {
    const line = () =>
      cells(
        (s) => -s,
        () => -1,
      )
    for (const [start, bold, next] of [
      [0.5, true, 0],
      [0.5, false, -2],
      [-0.5, true, -2],
    ] as const) {
      const { solve, tried } = line()
      expect(solve([start], 2, bold)).toEqual({ done: true, s: [-2] })
      expect(tried[1]).toBe(next)
    }
  })
  it('has none where no share of a move leads to a number', () => {
    const { solve, tried } = cells(
      (s) => (s === -10 ? 10 : Number.NaN),
      () => -1,
    )
    expect(solve([-10], 20)).toEqual({ done: false, s: [-10] })
    expect(tried).toEqual([0, 1, 0.3, 0.09, 0.027].map((share) => -10 - 10 * share))
  })
})
