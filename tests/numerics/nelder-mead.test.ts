import { describe, expect, it } from 'vitest'
import { nelderMead } from '../../src/numerics/nelder-mead.js'

// The functions on which Nelder and Mead (1965), The Computer Journal 7:308-313, tried their method, from the starts that they took; from memory.
const rosenbrock = ([x, y]: readonly number[]) => 100 * (y! - x! * x!) ** 2 + (1 - x!) ** 2
const powell = ([a, b, c, d]: readonly number[]) =>
  (a! + 10 * b!) ** 2 + 5 * (c! - d!) ** 2 + (b! - 2 * c!) ** 4 + 10 * (a! - d!) ** 4

/** How often a function is asked. */
function counted(f: (x: readonly number[]) => number) {
  const asked = { times: 0 }
  return {
    asked,
    f: (x: readonly number[]) => {
      asked.times++
      return f(x)
    },
  }
}

describe('the downhill simplex', () => {
  it("finds the end of Rosenbrock's valley, in no more than a thousand looks", () => {
    const { f, asked } = counted(rosenbrock)
    const { at, value } = nelderMead(f, [-1.2, 1], [0.5, 0.5])
    expect(at[0]).toBeCloseTo(1, 5)
    expect(at[1]).toBeCloseTo(1, 5)
    expect(value).toBe(rosenbrock(at))
    expect(asked.times).toBeLessThan(1000)
  })
  it("finds the flat bottom of Powell's function of four numbers", () => {
    const { at, value } = nelderMead(powell, [3, -1, 0, 1], [0.5, 0.5, 0.5, 0.5])
    expect(value).toBeLessThan(1e-9)
    for (const x of at) expect(x).toBeCloseTo(0, 2)
  })
  it('finds a kink, where a slope would mislead', () => {
    const { at } = nelderMead(([x, y]) => Math.abs(x! - 2) + 3 * Math.abs(y! + x!), [10, 10], [1, 2])
    expect(at[0]).toBeCloseTo(2, 4)
    expect(at[1]).toBeCloseTo(-2, 4)
  })
  it('needs for one number about as many looks as halvings, and stays where nothing is better', () => {
    const { f, asked } = counted(([x]) => (x! - 7) ** 2)
    expect(nelderMead(f, [0], [1]).at[0]).toBeCloseTo(7, 5)
    expect(asked.times).toBeLessThan(200)
    expect(nelderMead(() => 4, [3, 5], [1, 1])).toEqual({ at: [3, 5], value: 4 })
  })
})
