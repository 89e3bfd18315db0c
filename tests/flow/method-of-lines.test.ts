import { readFileSync } from 'node:fs'
import {
  boxContainer,
  centimetres,
  centimetresOfSuction,
  centimetresPerHour,
  containerFlowRichards1931,
  type FeddesLimits,
  litres,
  perCentimetre,
  seconds,
  vanGenuchten1980,
  waterContent,
} from 'porewater'
import { describe, expect, it } from 'vitest'

interface Case {
  n: number
  alpha: number
  ks: number
  residual: number
  saturated: number
  height: number
  start: number
  use: number
  steps: [duration: number, depth: number][]
  rows: { drained: number; waterContent: number }[]
}
/** Rows from method-of-lines.py: another discretisation, integrated by BDF of scipy. */
const { cases } = JSON.parse(readFileSync(new URL('./method-of-lines.json', import.meta.url), 'utf8')) as {
  cases: Case[]
}
const limits = { h1: 0, h2: 1, h3HighDemand: 1e6, h3LowDemand: 1e6, h4: 2e6, highDemand: 5, lowDemand: 1 }

describe('twenty random containers by a method of lines', () => {
  it.each(cases.map((given, k) => ({ k, given })))('hold and drain the same: case $k', ({ given }) => {
    const area = 100
    const flow = containerFlowRichards1931({
      container: boxContainer({ length: centimetres(10), width: centimetres(10), height: centimetres(given.height) }),
      medium: vanGenuchten1980({
        residual: waterContent(given.residual),
        saturated: waterContent(given.saturated),
        alpha: perCentimetre(given.alpha),
        n: given.n,
      }),
      saturatedConductivity: centimetresPerHour(given.ks),
      roots: { limits: limits as unknown as FeddesLimits },
      nodes: 101,
      tolerance: 1e-5,
    })
    const litresOf = (depth: number) => litres((depth * area) / 1000)
    let state = flow.startAt((z) => centimetresOfSuction(z + given.start))
    let [drained, expected, applied] = [0, 0, 0]
    given.steps.forEach(([duration, depth], i) => {
      const demand = litresOf((given.use * duration) / 86400)
      const [next, after] = flow.step(state, { duration: seconds(duration), applied: litresOf(depth), demand })
      state = next
      drained += after.drained
      applied += litresOf(depth)
      expected += litresOf(given.rows[i]?.drained ?? Number.NaN)
      expect(Math.abs(flow.waterContent(state) - (given.rows[i]?.waterContent ?? Number.NaN))).toBeLessThan(1e-3)
    })
    // Half a per cent of the drain, or of a tenth of the water given where hardly any drained.
    expect(Math.abs(drained - expected)).toBeLessThan(0.005 * Math.max(expected, 0.1 * applied))
  })
})
