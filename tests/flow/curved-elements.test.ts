import { describe, expect, it } from 'vitest'
import { columnGrid } from '../../src/flow/column/grid/grid.js'
import { curvedElements } from '../../src/flow/column/table/curved.js'
import { mediumTable } from '../../src/flow/column/table/medium-table.js'
import { boxContainer } from '../../src/medium/container/box-container.js'
import { vanGenuchten1980 } from '../../src/medium/curves/van-genuchten-1980.js'

describe('elements that are short enough for a parabola', () => {
  const flags = (lengths: readonly number[], capacity: number, wetting?: number) => {
    // Full at zero, and from there on a straight line.
    const line = (slope: number) => ({
      readWaterContent: (s: number, into: Float64Array, _: Float64Array, k: number) => {
        into[k] = 0.9 - slope * Math.max(s, 0)
      },
    })
    const grid = { lengths: Float64Array.from(lengths), layers: lengths.map(() => 0), boundaries: [0, lengths.length] }
    const layer = { table: line(capacity), wetting: wetting === undefined ? undefined : line(wetting) }
    return [...curvedElements(grid as never, [layer] as never)]
  }
  const lengths = Array.from({ length: 257 }, (_, k) => 1 + k / 256)
  // From a kink in the middle of a stretch on, by a slope c: its lower half has by the parabola (5 w + 8 w + w - c d / 2) / 12 in the mean, w
  // and c d / 24 more than it can hold. Of stretches of four lengths that is 3e-4 where the length is 1.8e-3 / c.
  it.each([1.1, 1.25, 1.5, 1.7, 1.99])('are those up to a length of %d', (longest) => {
    const longestFound = lengths[flags(lengths, 1.8e-3 / longest).lastIndexOf(1)]!
    expect(longestFound).toBeGreaterThan(longest - 2 / 256)
    expect(longestFound).toBeLessThanOrEqual(longest)
    expect(flags(lengths, 1e-9, 1.8e-3 / longest)).toEqual(flags(lengths, 1.8e-3 / longest))
  })
  it('are found to a 256th of the difference between the shortest and the longest', () => {
    // Those up to 1.5 + 0.7 / 256, of which 1.5 is found.
    const some = [1, 1.5, 1.5 + 0.4 / 256, 2]
    expect(flags(some, 1.8e-3 / (1.5 + 0.7 / 256))).toEqual([1, 1, 0, 0])
    expect(flags(some, 1.8e-3 / (1.5 + 1.3 / 256))).toEqual([1, 1, 1, 0])
  })
  it('are all where the longest is, and none where the shortest is not', () => {
    expect(flags([1, 1.5, 2], 0.89e-3)).toEqual([1, 1, 1])
    expect(flags([1, 1.5, 2], 1.81e-3)).toEqual([0, 0, 0])
    expect(flags([1, 1.5, 2], 1.79e-3)).toEqual([1, 0, 0])
  })
  /** Of a curve that is level up to a suction, and goes up and down from there on. */
  const bent = (length: number, from: number): number => {
    const table = {
      readWaterContent: (s: number, into: Float64Array, _: Float64Array, k: number) => {
        into[k] = s < from ? 0.9 : 0.5 + 0.4 * Math.cos(1.7 * (s - from))
      },
    }
    const grid = { lengths: Float64Array.of(length), layers: Uint16Array.of(0), boundaries: [0, 1] }
    return curvedElements(grid as never, [{ table }] as never)[0]!
  }
  it('are none where the curve turns within them, as far as it is looked at: to a hundred lengths', () => {
    expect(bent(2, 5)).toBe(0)
    expect(bent(2, 100)).toBe(0)
    expect(bent(2, 300)).toBe(1)
    expect(bent(5, 300)).toBe(0)
  })
})

describe('elements of a column that are short enough for a parabola', () => {
  const box = (height: number) => boxContainer({ length: 20, width: 10, height } as never)
  const layer = (alpha: number, n = 1.8) => ({
    table: mediumTable(vanGenuchten1980({ residual: 0.1, saturated: 0.9, alpha, n } as never)),
    wetting: undefined,
    saturatedConductivity: 0.01,
  })
  it('are those in which the medium bends little, and not those in which it bends much', () => {
    const fine = columnGrid([box(10)], 201)
    const coarse = columnGrid([box(40)], 5)
    const steep = layer(0.3, 9)
    expect(curvedElements(fine, [layer(0.02)]).every((one) => one === 1)).toBe(true)
    expect(curvedElements(coarse, [steep]).every((one) => one === 0)).toBe(true)
    // The wetting curve counts as well, and each layer for itself.
    expect(curvedElements(coarse, [{ ...layer(0.02), wetting: steep.table }]).every((one) => one === 0)).toBe(true)
    const two = columnGrid([box(4), box(4)], 9)
    const both = curvedElements(two, [layer(0.005), steep])
    expect([...both.subarray(0, two.boundaries[1])].every((one) => one === 1)).toBe(true)
    expect([...both.subarray(two.boundaries[1])].every((one) => one === 0)).toBe(true)
  })
  it('are those up to one length in a layer: shorter ones are, longer ones are not', () => {
    for (const [alpha, nodes] of [
      [0.03, 9],
      [0.05, 15],
      [0.2, 61],
    ] as const) {
      const cut = columnGrid([box(20)], nodes)
      const flags = curvedElements(cut, [layer(alpha, 3)])
      const lengths = (flag: number) => [...cut.lengths].filter((_, e) => flags[e] === flag)
      // Some are, and some are not.
      const [longest, shortest] = [Math.max(...lengths(1)), Math.min(...lengths(0))]
      expect(longest).toBeGreaterThan(0)
      expect(shortest).toBeLessThan(Number.POSITIVE_INFINITY)
      expect(longest).toBeLessThanOrEqual(shortest)
    }
  })
})
