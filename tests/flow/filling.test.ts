import { boxContainer, centimetres, centimetresPerHour, gardner1958, perCentimetre, waterContent } from 'porewater'
import { describe, expect, it } from 'vitest'
import { columnEquations } from '../../src/flow/column/equations/equations.js'
import { richardsColumn } from '../../src/flow/richards-column.js'

const SLOPE = 0.15
const SECTION = 2000
const FULL = 100 / 3600

/**
 * A column of a medium whose conductivity falls by e^(-a s), for which Richards' equation is linear. Where all of it fills at a rate r and the
 * flow is q - r z upwards, its conductivity is A e^(-a z) - q - r/a + r z: put into dK/dz + a K = -a (q - r z) it holds exactly.
 */
function fillingColumn(nodes: number) {
  const medium = gardner1958({ residual: waterContent(0.1), saturated: waterContent(0.7), alpha: perCentimetre(SLOPE) })
  const column = richardsColumn(
    [
      {
        medium,
        container: boxContainer({ length: centimetres(100), width: centimetres(20), height: centimetres(15) }),
        saturatedConductivity: centimetresPerHour(100),
      },
    ],
    { nodes },
  )
  const { grid, media, ends } = column
  const equations = columnEquations(grid, media, ends, 'averaged', undefined)
  const [flow, rate, share] = [-0.004, 2e-4, 0.004]
  const conductivity = (z: number) => share * Math.exp(-SLOPE * z) - flow - rate / SLOPE + rate * z
  const suctions = grid.heights.map((z) => -Math.log(conductivity(z) / FULL) / SLOPE)
  const conditions = { applied: 0, evaporation: 0, sink: undefined }
  const off = () =>
    grid.lengths.reduce((max, length, e) => {
      const middle = grid.heights[e]! + length / 2
      return Math.max(max, Math.abs(equations.terms.up[e]! / SECTION - (flow - rate * middle)))
    }, 0)
  equations.evaluate(suctions, conditions)
  const without = off()
  const time = 30
  equations.fillFrom(
    equations.points.at.waterContent.map((content) => content - rate * time),
    time,
  )
  equations.evaluate(suctions, conditions)
  return { without, told: off(), largest: Math.abs(flow - rate * 15) }
}

describe('the flow through elements that fill', () => {
  it('is that of the exact solution to the fourth order, and to the second where it is not told of the filling', () => {
    const [coarse, fine] = [fillingColumn(9), fillingColumn(17)]
    expect(coarse.without / fine.without).toBeGreaterThan(3.5)
    expect(coarse.without / fine.without).toBeLessThan(5)
    expect(coarse.told / fine.told).toBeGreaterThan(10)
    expect(coarse.told).toBeLessThan(coarse.without / 20)
    expect(fine.told).toBeLessThan(1e-5 * fine.largest)
  })
})
