import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type LeastSquares, nonlinearLeastSquares } from '../../src/numerics/levenberg-marquardt.js'
import { localLevel } from '../../src/numerics/local-level.js'
import { nelderMead } from '../../src/numerics/nelder-mead.js'
import { logNormalTail, normalTailInverse } from '../../src/numerics/normal-tail.js'
import { integrate } from '../../src/numerics/quadrature.js'
import { randomNumbers } from '../../src/numerics/random.js'
import { rootBetween } from '../../src/numerics/root.js'
import { followPair, type Pair } from '../../src/numerics/runge-kutta.js'
import { studentTail, studentTwoSided } from '../../src/numerics/student-t.js'
import { ConvergenceError } from '../../src/quantity/errors.js'

// What steers a search changes no answer, but how often it has to look. The numbers of looks are bounds with some room, not counts of today.

/** The error that is thrown, by its kind. */
function givenUp(call: () => unknown): ConvergenceError {
  try {
    call()
  } catch (error) {
    expect(error).toBeInstanceOf(ConvergenceError)
    return error as ConvergenceError
  }
  throw new Error('nothing was given up')
}

describe('a root', () => {
  const found = (f: (x: number) => number, slope: (x: number) => number, low: number, high: number) => {
    let looks = 0
    const root = rootBetween(
      (x) => {
        looks++
        return [f(x), slope(x)]
      },
      low,
      high,
    )
    return { root, looks }
  }
  it('is found by Newton’s steps where they lead, from either side', () => {
    for (const sign of [1, -1]) {
      const { root, looks } = found(
        (x) => sign * (x * x - 2),
        (x) => sign * 2 * x,
        0,
        4,
      )
      expect(root).toBeCloseTo(Math.SQRT2, 15)
      expect(looks).toBeLessThan(10)
    }
  })
  it('is found by halving where they would leave the ends or hardly move', () => {
    // The slope of the arc tangent far out sends Newton’s steps further out.
    const far = found(
      (x) => Math.atan(x - 1),
      (x) => 1 / (1 + (x - 1) ** 2),
      -1000,
      3000,
    )
    expect(far.root).toBeCloseTo(1, 14)
    expect(far.looks).toBeLessThan(25)
    // A slope that is much too steep makes steps that hardly move, one that is wrong makes steps the other way.
    for (const wrong of [50, -1, 0, Number.NaN, Number.POSITIVE_INFINITY]) {
      const { root, looks } = found(
        (x) => x ** 3 - 5,
        () => wrong,
        0,
        2,
      )
      expect(root).toBeCloseTo(Math.cbrt(5), 14)
      expect(looks).toBeLessThan(90)
    }
  })
  it('of a power from far away needs no more looks than digits', () => {
    const { root, looks } = found(
      (x) => x ** 9 - 1e-9,
      (x) => 9 * x ** 8,
      0,
      1,
    )
    expect(root).toBeCloseTo(0.1, 14)
    expect(looks).toBeLessThan(60)
  })
  it('at an end is that end, and of one sign there is none: it tells how far the nearer end is off', () => {
    const line = (x: number) => [x - 3, 1] as const
    expect(rootBetween(line, 3, 9)).toBe(3)
    expect(rootBetween(line, -9, 3)).toBe(3)
    expect(givenUp(() => rootBetween(line, 5, 9)).residual).toBe(2)
    expect(givenUp(() => rootBetween(line, -4, 1)).residual).toBe(2)
    expect(givenUp(() => rootBetween(line, 1, -4)).method).toBe('root search')
  })
})

describe('a sum of squares', () => {
  /** Counts looks of a problem; how many of them were for one place. */
  const solved = (problem: Omit<LeastSquares, 'lower' | 'upper'> & Partial<LeastSquares>) => {
    let looks = 0
    const n = problem.start.length
    const whole: LeastSquares = {
      lower: Array(n).fill(-1e9),
      upper: Array(n).fill(1e9),
      ...problem,
      residuals: (p, out) => {
        looks++
        problem.residuals(p, out)
      },
    }
    return { ...nonlinearLeastSquares(whole), looks }
  }
  const line = {
    start: [0, 0],
    count: 4,
    residuals: ([a, b]: readonly number[], out: Float64Array) => {
      for (const i of [0, 1, 2, 3]) out[i] = a! + b! * i - [1, 3, 2, 5][i]!
    },
  }
  it('of a plane is at its end in a few steps, and has the curvature of its columns', () => {
    const { parameters, curvature, sumOfSquares, iterations, looks, free } = solved(line)
    // By the normal equations: slope 11/10, mean 11/4 at 3/2.
    expect(parameters[1]).toBeCloseTo(1.1, 9)
    expect(parameters[0]).toBeCloseTo(1.1, 9)
    expect(sumOfSquares).toBeCloseTo(2.7, 9)
    for (const [i, row] of [
      [4, 6],
      [6, 14],
    ].entries())
      row.forEach((entry, j) => {
        expect(curvature[i]![j]).toBeCloseTo(entry, 6)
      })
    expect(free).toEqual([0, 1])
    expect(iterations).toBeLessThan(6)
    expect(looks).toBeLessThan(35)
  })
  it('that is nothing ends at once, and one that comes to nothing soon', () => {
    const exact = solved({
      ...line,
      start: [1.1, 1.1],
      count: 1,
      residuals: ([a, b], out) => {
        out[0] = a! - b!
      },
    })
    expect(exact).toMatchObject({ iterations: 0, looks: 5, sumOfSquares: 0 })
    const met = solved({
      start: [3, 7],
      count: 2,
      residuals: ([a, b], out) => {
        out[0] = a! - 1
        out[1] = a! * b! - 4
      },
    })
    expect(met.parameters[0]).toBeCloseTo(1, 10)
    expect(met.parameters[1]).toBeCloseTo(4, 10)
    expect(met.looks).toBeLessThan(70)
  })
  it('in a curved valley is followed in some tens of looks (Rosenbrock 1960, from memory)', () => {
    const valley = solved({
      start: [-1.2, 1],
      count: 2,
      residuals: ([x, y], out) => {
        out[0] = 10 * (y! - x! * x!)
        out[1] = 1 - x!
      },
    })
    expect(valley.parameters[0]).toBeCloseTo(1, 9)
    expect(valley.parameters[1]).toBeCloseTo(1, 9)
    expect(valley.looks).toBeLessThan(180)
  })
  it('leaves alone what has equal ends, without looking for its slope', () => {
    const held = solved({ ...line, start: [9, 0.5], lower: [-9, 0.5], upper: [9, 0.5] })
    // The mean of what 0.5 i leaves: 11/4 - 3/4.
    expect(held.parameters[0]).toBeCloseTo(2, 9)
    expect(held.parameters[1]).toBe(0.5)
    expect(held.free).toEqual([0])
    expect(held.looks).toBeLessThan(16)
  })
  it('is held by an end only while it presses outwards', () => {
    const box = (start: readonly number[], wanted: readonly number[]) =>
      solved({
        start,
        lower: [0, 0],
        upper: [1, 1],
        count: 2,
        residuals: (p, out) =>
          p.forEach((value, j) => {
            out[j] = value - wanted[j]!
          }),
      })
    for (const start of [
      [0, 1],
      [1, 0],
      [-5, 7],
    ]) {
      const inside = box(start, [0.25, 0.75])
      expect(inside.parameters[0]).toBeCloseTo(0.25, 9)
      expect(inside.parameters[1]).toBeCloseTo(0.75, 9)
      expect(inside.free).toEqual([0, 1])
      const below = box(start, [-2, 0.5])
      expect(below.parameters[0]).toBe(0)
      expect(below.free).toEqual([1])
      const above = box(start, [0.5, 2])
      expect(above.parameters[1]).toBe(1)
      expect(above.free).toEqual([0])
    }
    expect(box([0, 1], [0, 1]).parameters).toEqual([0, 1])
  })
  it('ends by moves that are told, and by the share that is told', () => {
    const rounded = (p: readonly number[], out: Float64Array) => {
      out[0] = Math.round((p[0]! ** 2 - 2) * 1e4) / 1e4
      out[1] = 1
    }
    const coarse = solved({ start: [3], count: 2, residuals: rounded, moves: [0.01] })
    expect(coarse.parameters[0]).toBeCloseTo(Math.SQRT2, 3)
    expect(coarse.looks).toBeLessThan(45)
    const curved = {
      start: [4],
      count: 2,
      residuals: ([x]: readonly number[], out: Float64Array) => {
        out[0] = x! ** 2 - 2
        out[1] = 3
      },
    }
    const [sooner, later] = [solved({ ...curved, settled: 1e-2 }), solved({ ...curved, settled: 1e-15 })]
    expect(sooner.looks).toBeLessThan(later.looks)
    expect(sooner.sumOfSquares).toBeLessThan(9.1)
    expect(later.parameters[0]).toBeCloseTo(Math.SQRT2, 7)
  })
  it('goes on where two parameters say the same, also where their squares are at the end of all numbers', () => {
    for (const scale of [1, 1e-160]) {
      const same = solved({
        start: [0, 0],
        count: 3,
        residuals: ([a, b], out) => {
          out.fill(scale * (a! + b! - 3))
        },
      })
      expect(same.parameters[0]! + same.parameters[1]!).toBeCloseTo(3, scale === 1 ? 8 : 1)
    }
  })
  it('goes nowhere where there is no answer, and comes from the other side to where one begins', () => {
    const half = solved({
      start: [1],
      count: 1,
      residuals: ([x], out) => {
        out[0] = x! < 0.5 ? Number.NaN : x!
      },
    })
    expect(half.parameters[0]).toBeGreaterThanOrEqual(0.5)
    expect(half.parameters[0]).toBeLessThan(0.51)
    // A single place with an answer is its own end.
    const alone = solved({
      start: [1, 2],
      count: 1,
      residuals: ([x, y], out) => {
        out[0] = x === 1 && y === 2 ? 5 : Number.NaN
      },
    })
    expect(alone).toMatchObject({ parameters: [1, 2], sumOfSquares: 25, iterations: 0 })
  })
  it('that falls for ever is given up, with what is left of a residual', () => {
    // Less at each look, wherever it looks.
    let asked = 0
    const error = givenUp(() =>
      solved({ start: [0], count: 4, settled: 0, moves: [1e-3], residuals: (_, out) => out.fill(1 + 1 / ++asked) }),
    )
    expect(error.iterations).toBe(300)
    expect(error.residual).toBeGreaterThan(1)
    expect(error.residual).toBeLessThan(1.01)
  })
})

describe('a simplex', () => {
  const looked = (f: (x: readonly number[]) => number, start: readonly number[], sizes: readonly number[]) => {
    let looks = 0
    const end = nelderMead(
      (x) => {
        looks++
        return f(x)
      },
      start,
      sizes,
    )
    return { ...end, looks }
  }
  it('goes down a bowl of two and of five numbers in as many looks as others need', () => {
    const bowl = (x: readonly number[]) => x.reduce((sum, value, i) => sum + (i + 1) * (value - i) ** 2, 0)
    const two = looked(bowl, [3, 3], [1, 1])
    two.at.forEach((value, i) => {
      expect(value).toBeCloseTo(i, 5)
    })
    expect(two.looks).toBeLessThan(330)
    const five = looked(bowl, Array(5).fill(2), Array(5).fill(0.5))
    five.at.forEach((value, i) => {
      expect(value).toBeCloseTo(i, 4)
    })
    expect(five.looks).toBeLessThan(1800)
  })
  it('gives up behind six hundred moves on what falls for ever', () => {
    // Two looks a move, at the mirrored place and twice as far, from two corners; from there no size is left to begin again with.
    expect(looked(([x]) => -x!, [0], [1]).looks).toBe(1 + 2 + 2 * 600 + 2)
  })
  it('draws together where nothing around is lower, as in a narrow pit', () => {
    // All corners but the first lie on the plain: only shrinking helps.
    const pit = (x: readonly number[]) => Math.min(Math.hypot(x[0]! - 0.01, x[1]! + 0.02), 0.1)
    const { at, looks } = looked(pit, [0, 0], [8, 8])
    expect(at[0]).toBeCloseTo(0.01, 5)
    expect(at[1]).toBeCloseTo(-0.02, 5)
    expect(looks).toBeLessThan(420)
  })
  it('begins again until that brings no more', () => {
    // A ridge on which the first descent ends early.
    const ridge = ([x, y]: readonly number[]) => Math.abs(x! + y!) * 100 + Math.abs(x! - y! - 6)
    const { value } = looked(ridge, [40, -38], [0.5, 0.5])
    expect(value).toBeLessThan(1e-3)
  })
})

describe('an integral', () => {
  const looked = (f: (x: number) => number, ends: readonly number[], ...more: [number?, number?]) => {
    let looks = 0
    const value = integrate(
      (x) => {
        looks++
        return f(x)
      },
      ends,
      ...more,
    )
    return { value, looks }
  }
  it('of a polynomial needs one look at each node of one piece, and two of two', () => {
    expect(looked((x) => x ** 9, [0, 2])).toMatchObject({ looks: 15 })
    expect(looked((x) => x ** 9, [0, 1, 2])).toMatchObject({ looks: 30 })
    expect(looked((x) => x ** 9, [0, 2]).value).toBeCloseTo(102.4, 10)
  })
  it('that cancels out is as exact as its parts ask for', () => {
    const { value, looks } = looked(Math.sin, [-3, 3])
    expect(value).toBeCloseTo(0, 14)
    expect(looks).toBeLessThan(46)
    expect(looked((x) => -Math.exp(x), [0, 1]).looks).toBe(15)
  })
  it('halves the worst piece: towards a singular end, not elsewhere', () => {
    const root = looked(Math.sqrt, [0, 1], 1e-10)
    expect(root.value).toBeCloseTo(2 / 3, 10)
    expect(root.looks).toBeLessThan(15 + 30 * 22)
    const middle = looked((x) => Math.sqrt(Math.abs(x - 1 / 3)), [0, 1], 1e-10)
    expect(middle.value).toBeCloseTo((2 / 3) * ((1 / 3) ** 1.5 + (2 / 3) ** 1.5), 9)
    expect(middle.looks).toBeLessThan(15 + 30 * 45)
  })
  it('is as coarse as its tolerance and its floor allow', () => {
    const peak = (x: number) => 1 / (1 + 400 * x * x)
    const [fine, coarse, floored] = [
      looked(peak, [-1, 1]),
      looked(peak, [-1, 1], 1e-4),
      looked(peak, [-1, 1], 1e-13, 1e9),
    ]
    expect(fine.value).toBeCloseTo(Math.atan(20) / 10, 13)
    expect(coarse.value).toBeCloseTo(Math.atan(20) / 10, 4)
    expect(coarse.looks).toBeLessThan(fine.looks)
    expect(floored.looks).toBeLessThan(coarse.looks + 1)
    expect(looked(peak, [-1, 1], 1e-13, 1e-9).looks).toBe(fine.looks)
  })
  it('that is without end is given up', () => {
    expect(givenUp(() => integrate((x) => 1 / x, [0, 1])).method).toBe('quadrature')
    expect(givenUp(() => integrate(() => Number.POSITIVE_INFINITY, [0, 1])).iterations).toBe(0)
  })
  it('that no halving makes better is given up behind two thousand', () => {
    let looks = 0
    const error = givenUp(() => integrate((x) => Math.sin(1e9 * x) + 0 * looks++, [0, 1]))
    expect(error.iterations).toBe(2000)
    expect(looks).toBe(15 * (1 + 2 * 2000))
  })
})

describe('two differential equations', () => {
  const circle = (tolerance: number, to: number, ended: (y: Pair) => boolean = () => false) => {
    let looks = 0
    const [place, y] = followPair({
      slopes: (_, [a, b]) => {
        looks++
        return [b, -a]
      },
      from: 0,
      to,
      start: [0, 1],
      tolerance,
      scale: [1, 1],
      ended,
    })
    return { place, y, looks }
  }
  it('need some thirty looks for a radian at 1e-6, and ten times as many for the fifth power of ten', () => {
    const [rough, fine] = [circle(1e-6, 20), circle(1e-11, 20)]
    for (const { y, place } of [rough, fine]) {
      expect(place).toBe(20)
      expect(y[0]).toBeCloseTo(Math.sin(20), 4)
      expect(y[1]).toBeCloseTo(Math.cos(20), 4)
    }
    expect(Math.abs(fine.y[0] - Math.sin(20))).toBeLessThan(2e-9)
    expect(rough.looks).toBeLessThan(600)
    expect(fine.looks / rough.looks).toBeGreaterThan(5)
    expect(fine.looks / rough.looks).toBeLessThan(13)
  })
  it('end behind the first step that is told to be the last', () => {
    const { place, y } = circle(1e-9, 20, ([a]) => a > 0.5)
    expect(y[0]).toBeCloseTo(Math.sin(place), 8)
    expect(y[0]).toBeGreaterThan(0.5)
    expect(place).toBeLessThan(1.5)
  })
  it('are given up where the slope has no end', () => {
    const error = givenUp(() =>
      followPair({
        slopes: (x) => [1 / (1 - x) ** 2, 0],
        from: 0,
        to: 2,
        start: [0, 0],
        tolerance: 1e-9,
        scale: [1, 1],
        ended: () => false,
      }),
    )
    expect(error.residual).toBeGreaterThan(0.99)
    expect(error.residual).toBeLessThan(1.01)
  })
  it('are given up behind twenty thousand steps or where none can go on, and say behind how many', () => {
    const upTo = (to: number, slope: (x: number) => number) => {
      let looks = 0
      const slopes = (x: number): Pair => [slope(x) + 0 * looks++, 0]
      const error = givenUp(() =>
        followPair({ slopes, from: 0, to, start: [0, 0], tolerance: 1e-9, scale: [1, 1], ended: () => false }),
      )
      return { told: error.iterations, steps: (looks - 1) / 6 }
    }
    expect(upTo(1, (x) => 1e6 * Math.cos(1e6 * x))).toEqual({ told: 20_000, steps: 20_000 })
    const stuck = upTo(2, (x) => 1 / (1 - x) ** 2)
    expect(stuck.told).toBe(stuck.steps)
    expect(stuck.told).toBeLessThan(20_000)
  })
})

describe('distributions', () => {
  it('Student’s t of very many degrees of freedom is that of its tail, by the expansion', () => {
    for (const degrees of [1.00001e5, 3e5, 1e6])
      for (const confidence of [0.5, 0.95, 1 - 1e-7, 1 - 1e-12]) {
        const t = studentTwoSided(confidence, degrees)
        expect(studentTail(degrees)(t) / ((1 - confidence) / 2)).toBeCloseTo(1, 9)
      }
    // The same from both sides of where the expansion takes over.
    expect(studentTwoSided(1 - 1e-9, 99999.9) / studentTwoSided(1 - 1e-9, 100000.1)).toBeCloseTo(1, 9)
  })
  it('leave nothing between -0 and 0 where no confidence is asked for', () => {
    expect(studentTwoSided(0, 7)).toBe(0)
    expect(studentTwoSided(0, 1e9)).toBe(0)
    expect(studentTail(4)(0)).toBe(0.5)
  })
  it('the normal tail is found again however far out', () => {
    for (const z of [0, 1e-6, 0.5, 3, 40, 1e4]) expect(normalTailInverse(logNormalTail(z))).toBeCloseTo(z, 8)
  })
  it('normal numbers come in pairs from two even ones (Box and Muller 1958)', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 2 ** 32 - 1 }), (seed) => {
        const [even, normal] = [randomNumbers(seed), randomNumbers(seed)]
        for (let pair = 0; pair < 3; pair++) {
          const [u, v] = [even.uniform(), even.uniform()]
          const radius = Math.sqrt(-2 * Math.log(1 - u))
          expect(normal.normal()).toBeCloseTo(radius * Math.cos(2 * Math.PI * v), 12)
          expect(normal.normal()).toBeCloseTo(radius * Math.sin(2 * Math.PI * v), 12)
        }
      }),
      { numRuns: 20 },
    )
  })
})

describe('a level that wanders', () => {
  it('knows as little at first as a variance of 1e8 says, and after one row of its own as the noise', () => {
    const { forecasts, spreads, state, variance } = localLevel([[], []], Float64Array.of(3, 5), 0.5)
    expect(forecasts[0]).toBe(0)
    expect(spreads[0]).toBeCloseTo(1e8 + 1.5, 6)
    expect(forecasts[1]).toBeCloseTo(3, 6)
    // Variance 1 of the first row, half a step, 1 of the second.
    expect(spreads[1]).toBeCloseTo(2.5, 6)
    expect(state[0]).toBeCloseTo(3 + (2 * 1.5) / 2.5, 6)
    expect(variance[0]![0]).toBeCloseTo(1.5 - 1.5 ** 2 / 2.5, 6)
  })
})
