import { readFileSync } from 'node:fs'
import {
  boxContainer,
  centimetres,
  centimetresOfSuction,
  centimetresPerHour,
  containerFlowRichards1931,
  litres,
  perCentimetre,
  seconds,
  vanGenuchten1980,
  waterContent,
  wettingCurveKoolParker1987,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { limits } from './method-of-lines-cases.js'

interface Case {
  n: number
  alpha: number
  ratio: number
  ks: number
  residual: number
  saturated: number
  height: number
  start: number
  steps: [duration: number, depth: number, use: number][]
  rows: { drained: number; waterContent: number }[]
}
/** Rows from method-of-lines-scanning.py: another discretisation, integrated by BDF of scipy, with curves in closed form. */
const { cases } = JSON.parse(readFileSync(new URL('./method-of-lines-scanning.json', import.meta.url), 'utf8')) as {
  cases: Case[]
}

describe('random containers that drain and wet on different curves, by a method of lines', () => {
  it.each(cases.map((given, k) => ({ k, given })))('hold and drain the same: case $k', ({ given }) => {
    const area = 100
    const drying = {
      residual: waterContent(given.residual),
      saturated: waterContent(given.saturated),
      alpha: perCentimetre(given.alpha),
      n: given.n,
    }
    const flow = containerFlowRichards1931({
      container: boxContainer({ length: centimetres(10), width: centimetres(10), height: centimetres(given.height) }),
      medium: vanGenuchten1980(drying),
      wetting: wettingCurveKoolParker1987({ ...drying, alphaRatio: given.ratio }),
      saturatedConductivity: centimetresPerHour(given.ks),
      roots: { limits },
      nodes: 101,
      tolerance: 1e-5,
    })
    const litresOf = (depth: number) => litres((depth * area) / 1000)
    let state = flow.startAt((z) => centimetresOfSuction(z + given.start))
    let [drained, expected, applied] = [0, 0, 0]
    given.steps.forEach(([duration, depth, use], i) => {
      const demand = litresOf((use * duration) / 86400)
      const [next, after] = flow.step(state, { duration: seconds(duration), applied: litresOf(depth), demand })
      state = next
      drained += after.drained
      applied += litresOf(depth)
      expected += litresOf(given.rows[i]!.drained)
      expect(Math.abs(flow.waterContent(state) - given.rows[i]!.waterContent)).toBeLessThan(1e-3)
    })
    // Half a per cent of the drain, or of a tenth of the water given where hardly any drained.
    expect(Math.abs(drained - expected)).toBeLessThan(0.005 * Math.max(expected, 0.1 * applied))
  })
})
