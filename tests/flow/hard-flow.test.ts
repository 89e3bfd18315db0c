import {
  boxContainer,
  type ConductiveModel,
  centimetres,
  centimetresOfSuction,
  centimetresPerHour,
  containerFlowRichards1931,
  cylinderContainer,
  decisiemensPerMetre,
  type FeddesLimits,
  fraction,
  frustumContainer,
  litres,
  type PoreWaterEC,
  perCentimetre,
  type SolutionEC,
  seconds,
  vanGenuchten1980,
  waterContent,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { randomNumbers } from '../../src/numerics/random.js'

/** How many random containers are drawn: POREWATER_RUNS=1700 makes some ten thousand steps. */
const RUNS = Number(process.env.POREWATER_RUNS ?? 60)
const SEED = Number(process.env.POREWATER_SEED ?? 1)
const STEPS = 6

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

/** A container drawn at random: n 1.1 to 4, six decades of conductivity, three shapes, three bottoms, wet and dry starts. */
function drawn(k: number) {
  const { uniform } = randomNumbers(SEED * 100003 + k)
  const between = (low: number, high: number) => low + (high - low) * uniform()
  const power = (low: number, high: number) => 10 ** between(low, high)
  const pick = <T>(...all: readonly T[]) => all[Math.floor(between(0, all.length))] as T
  const height = centimetres(between(3, 30))
  const container = pick(
    () => boxContainer({ length: centimetres(between(10, 100)), width: centimetres(between(8, 30)), height }),
    () => cylinderContainer({ diameter: centimetres(between(6, 40)), height }),
    () =>
      frustumContainer({
        bottomDiameter: centimetres(between(6, 20)),
        topDiameter: centimetres(between(8, 30)),
        height,
      }),
  )()
  const saturated = between(0.4, 0.97)
  const limits = {
    h1: pick(0, 5),
    h2: between(10, 25),
    h3HighDemand: 300,
    h3LowDemand: 800,
    h4: 8000,
    highDemand: 5,
    lowDemand: 1,
  } as unknown as FeddesLimits
  const flow = containerFlowRichards1931({
    container,
    medium: vg(between(0, 0.2), saturated, power(-2.5, -0.2), 1.1 + 2.9 * uniform() ** 2),
    saturatedConductivity: centimetresPerHour(power(-2, 4)),
    base: pick<'seepage' | 'closed' | ReturnType<typeof centimetresOfSuction>>(
      'seepage',
      'seepage',
      'closed',
      centimetresOfSuction(between(0, 20)),
    ),
    nodes: pick(11, 21, 31, 61),
    tolerance: pick(1e-3, 3e-4, 1e-4),
    rim: centimetres(between(0, 3)),
    bypass: fraction(pick(0, 0.1)),
    roots: { limits },
    salt: {
      startEC: decisiemensPerMetre<PoreWaterEC>(2),
      dispersivity: centimetres(between(0, 3)),
      uptakeShare: between(0, 1),
      matEC: decisiemensPerMetre<SolutionEC>(1),
    },
  })
  const suction = power(-1, 4)
  const even = uniform() < 0.5
  const start = flow.startAt((z) => centimetresOfSuction(even ? suction : suction + z))
  const steps = Array.from({ length: STEPS }, () => {
    const rest = uniform() < 0.4
    const duration = power(0, rest ? 4.8 : 3)
    const demand = container.volume * power(-4, -1) * Math.min(1, duration / 3600)
    return {
      duration: seconds(duration),
      applied: litres(rest ? 0 : container.volume * power(-3, -0.5)),
      demand: litres(demand),
      evaporation: litres(pick(0, 0.3) * demand),
      feedEC: decisiemensPerMetre<SolutionEC>(3),
    }
  })
  return { flow, container, saturated, start, steps }
}

describe(`${RUNS} random containers with ${STEPS} steps each`, () => {
  const sum = (list: readonly number[] = []) => list.reduce((total, part) => total + part, 0)
  let refused = 0
  it('keep their water and salt to 1e-9 of what is given, and hold no more than they can', () => {
    for (let k = 0; k < RUNS; k++) {
      const { flow, container, saturated, start, steps } = drawn(k)
      let state = start
      for (const during of steps) {
        let after: ReturnType<typeof flow.step>
        try {
          after = flow.step(state, during)
        } catch (error) {
          // The only way out that is not a fault: to say that there is no convergence.
          expect((error as { code?: string }).code, `container ${k}`).toBe('no-convergence')
          refused++
          break
        }
        const { salt } = after
        const passed = after.entered + after.bypassed - after.drained - after.taken - after.evaporated - after.ranOff
        const scale = Math.max(during.applied, 1e-3 * container.volume)
        expect(Math.abs(sum(after.state.water) - sum(state.water) - passed) / scale, `container ${k}`).toBeLessThan(
          1e-9,
        )
        const salts = salt === undefined ? Number.NaN : salt.given - salt.drained - salt.taken - salt.ranOff
        expect(Math.abs(sum(after.state.salt) - sum(state.salt) - salts) / scale, `container ${k}`).toBeLessThan(3e-9)
        expect(after.taken).toBeLessThanOrEqual(during.demand * (1 + 1e-9))
        for (const part of [after.taken, after.evaporated, after.ranOff]) expect(part).toBeGreaterThanOrEqual(0)
        expect(flow.waterContent(after.state)).toBeLessThan(saturated + 1e-4)
        state = after.state
      }
    }
  })
  it('are refused less than once in a thousand steps, or twice at all', () => {
    expect(refused).toBeLessThanOrEqual(Math.max(2, (RUNS * STEPS) / 1000))
  })
})
