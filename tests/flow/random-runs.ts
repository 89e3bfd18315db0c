import {
  boxContainer,
  type ConductingLayer,
  centimetres,
  centimetresOfSuction,
  centimetresPerHour,
  cylinderContainer,
  decisiemensPerMetre,
  type FeddesLimits,
  fraction,
  frustumContainer,
  layeredFlowRichards1931,
  litres,
  type PoreWaterEC,
  perCentimetre,
  type RichardsStep,
  type SolutionEC,
  seconds,
  vanGenuchten1980,
  waterContent,
  wettingCurveKoolParker1987,
} from 'porewater'
import { randomNumbers } from '../../src/numerics/random.js'
import { limits as usual } from '../support/uptake-limits.js'

/** Steps of a run. */
export const STEPS = 6

/** Draws for one run: numbers between two others, powers of ten, one of several. */
function draws(k: number, seed: number) {
  const { uniform } = randomNumbers(seed * 100003 + k)
  const between = (low: number, high: number) => low + (high - low) * uniform()
  return {
    uniform,
    between,
    power: (low: number, high: number) => 10 ** between(low, high),
    pick: <T>(...all: readonly T[]) => all[Math.floor(between(0, all.length))] as T,
  }
}
type Draws = ReturnType<typeof draws>

/** A medium in a shape: n 1.1 to 4, six decades of conductivity, half of them with a wetting curve of its own. */
function layer({ uniform, between, power, pick }: Draws, height: ReturnType<typeof centimetres>): ConductingLayer {
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
  const drying = {
    residual: waterContent(between(0, 0.2)),
    saturated: waterContent(between(0.4, 0.97)),
    alpha: perCentimetre(power(-2.5, -0.2)),
    n: 1.1 + 2.9 * uniform() ** 2,
  }
  const alphaRatio = pick(1, 1, between(1, 3), between(1, 3))
  return {
    container,
    medium: vanGenuchten1980(drying),
    saturatedConductivity: centimetresPerHour(power(-2, 4)),
    ...(alphaRatio === 1 ? {} : { wetting: wettingCurveKoolParker1987({ ...drying, alphaRatio }) }),
  }
}

/** A container drawn at random: one to three layers, three bottoms, salt, wet and dry starts, by draining and by wetting. */
export function drawn(k: number, seed: number) {
  const draw = draws(k, seed)
  const { uniform, between, power, pick } = draw
  const count = pick(1, 1, 2, 3)
  const total = between(3, 30)
  const layers = Array.from({ length: count }, () => layer(draw, centimetres(total / count)))
  const limits = { ...usual, h1: pick(0, 5), h2: between(10, 25) } as FeddesLimits
  const flow = layeredFlowRichards1931({
    layers,
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
  const volume = layers.reduce((sum, { container }) => sum + container.volume, 0)
  const full = layers.reduce((sum, { container, medium }) => sum + container.volume * medium.saturated, 0) / volume
  const suction = power(-1, 4)
  const even = uniform() < 0.5
  const by = pick<'drained' | 'wetted'>('drained', 'wetted')
  const start = flow.startAt((z) => centimetresOfSuction(even ? suction : suction + z), by)
  const steps: RichardsStep[] = Array.from({ length: STEPS }, () => {
    const rest = uniform() < 0.4
    const duration = power(0, rest ? 4.8 : 3)
    const demand = volume * power(-4, -1) * Math.min(1, duration / 3600)
    return {
      duration: seconds(duration),
      applied: litres(rest ? 0 : volume * power(-3, -0.5)),
      demand: litres(demand),
      evaporation: litres(pick(0, 0.3) * demand),
      feedEC: decisiemensPerMetre<SolutionEC>(3),
    }
  })
  return { flow, volume, full, start, steps }
}

/** What came of a run: the worst miss of water and salt as a share of what was given, and what should not be. */
export interface RunOutcome {
  readonly steps: number
  readonly refused: boolean
  readonly water: number
  readonly salt: number
  readonly faults: readonly string[]
}

/** Follows a run through its steps. */
export function follow({ flow, volume, full, start, steps }: ReturnType<typeof drawn>): RunOutcome {
  let [water, salt, done] = [0, 0, 0]
  const faults: string[] = []
  let state = start
  for (const during of steps) {
    let reached: ReturnType<typeof flow.step>
    try {
      reached = flow.step(state, during)
    } catch (error) {
      // The only way out that is not a fault: to say that there is no convergence.
      const { code } = error as { code?: string }
      if (code !== 'no-convergence') faults.push(`${code ?? error}`)
      return { steps: done, refused: true, water, salt, faults }
    }
    done++
    const [next, after] = reached
    const scale = Math.max(during.applied, 1e-3 * volume)
    const { salt: salts } = after
    const passed = after.entered + after.bypassed - after.drained - after.taken - after.evaporated - after.ranOff
    water = Math.max(water, Math.abs(sum(next.water) - sum(state.water) - passed) / scale)
    const carried = salts === undefined ? Number.NaN : salts.given - salts.drained - salts.taken - salts.ranOff
    // The feed's EC of 3 dS/m makes this three times what is given.
    salt = Math.max(salt, Math.abs(sum(next.salt) - sum(state.salt) - carried) / (3 * scale))
    if (!(after.taken <= during.demand * (1 + 1e-9))) faults.push('takes more than the demand')
    for (const part of [after.taken, after.evaporated, after.ranOff]) if (!(part >= 0)) faults.push('less than nothing')
    if (!(flow.waterContent(next) < full + 1e-4)) faults.push('holds more than it can')
    for (const { waterContent } of flow.profile(next))
      if (!(waterContent > -1e-4)) faults.push('holds less than nothing')
    state = next
  }
  return { steps: done, refused: false, water, salt, faults }
}

function sum(list: readonly number[] = []): number {
  return list.reduce((total, part) => total + part, 0)
}
