import {
  boxContainer,
  type ConductiveModel,
  centimetres,
  centimetresOfSuction,
  centimetresPerHour,
  containerFlowRichards1931,
  litres,
  perCentimetre,
  seconds,
  vanGenuchten1980,
  waterContent,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { drawn, follow, type RunOutcome, STEPS } from './random-runs.js'

/** How many random runs there are: POREWATER_RUNS=10000 takes some ten minutes. */
const RUNS = Number(process.env.POREWATER_RUNS ?? 60)
const SEED = Number(process.env.POREWATER_SEED ?? 1)

const vg = (residual: number, saturated: number, alpha: number, n: number): ConductiveModel =>
  vanGenuchten1980({
    residual: waterContent(residual),
    saturated: waterContent(saturated),
    alpha: perCentimetre(alpha),
    n,
  })

it('an intense shot into a fine medium: 0.524 L in 4.83 s at n 1.216 ends, and is balanced', () => {
  const container = boxContainer({ length: centimetres(20), width: centimetres(20), height: centimetres(12.8) })
  const flow = containerFlowRichards1931({
    container,
    medium: vg(0.1, 0.9, 0.0941, 1.216),
    saturatedConductivity: centimetresPerHour(1620),
    nodes: 11,
    tolerance: 1e-6,
  })
  const start = flow.startAt((height) => centimetresOfSuction(17 + height))
  const after = flow.step(start, { duration: seconds(4.83), applied: litres(0.524), demand: litres(0) })
  const gain = (flow.waterContent(after.state) - flow.waterContent(start)) * container.volume + after.standing
  expect(Math.abs(gain + after.drained - 0.524)).toBeLessThan(1e-12)
  // Finer grids, which no swing from node to node reaches, let no drain pass either.
  expect(after.drained).toBe(0)
})

describe(`${RUNS} random runs of ${STEPS} steps each`, () => {
  const outcomes: RunOutcome[] = []
  it('keep their water and salt to 1e-9 of what is given, and hold no more than they can', () => {
    for (let k = 0; k < RUNS; k++) {
      const outcome = follow(drawn(k, SEED))
      outcomes.push(outcome)
      expect(outcome.faults, `run ${k}`).toEqual([])
      expect(outcome.water, `run ${k}`).toBeLessThan(1e-9)
      expect(outcome.salt, `run ${k}`).toBeLessThan(1e-9)
    }
  })
  it('are refused less than once in a thousand runs, or once at all', () => {
    expect(outcomes).toHaveLength(RUNS)
    expect(outcomes.filter(({ refused }) => refused).length).toBeLessThanOrEqual(Math.max(1, RUNS / 1000))
  })
})
