/**
 * Random wet days of a container against a much finer simulation: `npm run wet-days -- 100 1` takes a hundred of coarse and medium media and
 * a hundred of fine ones with the seed 1, and prints how exact their drain is and what CPU they take. Some minutes of an idle processor.
 * The media are drawn, not measured.
 */
import {
  boxContainer,
  centimetres,
  centimetresPerHour,
  containerCapacity,
  containerFlowRichards1931,
  litres,
  perCentimetre,
  type RichardsFlow,
  seconds,
  vanGenuchten1980,
  waterContent,
} from 'porewater'
import { randomNumbers } from '../src/numerics/random.js'
import { limits } from '../tests/support/uptake-limits.js'
import { median } from './timing.js'

const SHOTS = 20
/** Length of a shot, and of the rest behind it. Unit: s. */
const SHOT = 240
const REST = 1900
/** Difference that counts as the same, and share of the mean drain below which a shot is not compared. */
const SAME = 0.003
const SMALL = 0.05

/** A medium of its kind in a bag of 100 by 20 cm, and a day that begins just below its container capacity. */
function drawn(k: number, seed: number, fine: boolean) {
  const { uniform } = randomNumbers(seed * (fine ? 9000 : 5000) + k)
  const between = (low: number, high: number) => low + (high - low) * uniform()
  const medium = vanGenuchten1980({
    residual: waterContent(between(0.02, 0.2)),
    saturated: waterContent(between(0.75, 0.95)),
    alpha: perCentimetre(10 ** (fine ? between(-2, -1) : between(-1.3, -0.4))),
    n: fine ? between(1.1, 1.4) : between(1.4, 3.5),
  })
  const container = boxContainer({
    length: centimetres(100),
    width: centimetres(20),
    height: centimetres(between(7, 18)),
  })
  const saturatedConductivity = centimetresPerHour(10 ** (fine ? between(0.7, 2) : between(1.5, 3)))
  const shot = between(0.02, 0.05) * container.volume
  const use = between(0.4, 0.75) * shot
  const start = waterContent(containerCapacity({ container, medium }) - 0.02)
  const flow = (nodes?: number, tolerance?: number) =>
    containerFlowRichards1931({
      container,
      medium,
      saturatedConductivity,
      roots: { limits },
      ...(nodes === undefined ? {} : { nodes, tolerance: tolerance! }),
    })
  const day = (flow: RichardsFlow) => {
    let state = flow.startFrom(start)
    const drains = Array.from({ length: SHOTS }, () => {
      let drained = 0
      for (const [duration, applied] of [
        [SHOT, shot],
        [REST, 0],
      ] as const) {
        const demand = litres((use * duration) / (SHOT + REST))
        const [next, after] = flow.step(state, { duration: seconds(duration), applied: litres(applied), demand })
        state = next
        drained += after.drained
      }
      return drained
    })
    return { drains, total: drains.reduce((sum, drain) => sum + drain, 0), end: flow.waterContent(state) as number }
  }
  return { flow, day }
}

type Day = ReturnType<ReturnType<typeof drawn>['day']>

/** Differences of a day from the exact one: of the worst shot, of the whole drain, of the water content at the end. */
function off(day: Day, exact: Day) {
  const small = (SMALL * exact.total) / SHOTS
  const shots = exact.drains.map((drain, i) => (drain > small ? Math.abs(day.drains[i]! / drain - 1) : 0))
  return {
    shot: Math.max(...shots),
    total: exact.total > 0 ? Math.abs(day.total / exact.total - 1) : 0,
    end: Math.abs(day.end / exact.end - 1),
  }
}

/** CPU of a day once the process has run it. Unit: ms. */
function warm(day: () => unknown): number {
  const times = [0, 1, 2].map(() => {
    const begun = process.cpuUsage()
    day()
    return process.cpuUsage(begun).user / 1000
  })
  return Math.min(...times)
}

const [count = 100, seed = 1] = process.argv.slice(2).map(Number)
for (const fine of [false, true]) {
  const times: number[] = []
  const errors: ReturnType<typeof off>[] = []
  let refused = 0
  for (let k = 0; k < count; k++) {
    const { flow, day } = drawn(k, seed, fine)
    const usual = flow()
    const told = day(usual)
    times.push(warm(() => day(usual)))
    try {
      errors.push(off(told, day(flow(251, 3e-6))))
    } catch (error) {
      if ((error as { code?: string }).code !== 'no-convergence') throw error
      refused++
    }
  }
  times.sort((a, b) => a - b)
  const within = (of: (error: ReturnType<typeof off>) => number) => errors.filter((it) => of(it) <= SAME).length
  const at = (share: number) => times[Math.floor(share * (times.length - 1))]!.toFixed(1)
  process.stdout.write(
    `${fine ? 'fine media' : 'coarse and medium media'}, ${count} days, seed ${seed}: CPU ${median(times).toFixed(1)} ms in the median, ` +
      `${at(0.95)} ms of 95 %, ${at(1)} ms at most; of ${errors.length} that a simulation with 251 nodes could follow (${refused} not), ` +
      `within 0.3 %: every shot ${within((it) => it.shot)}, the drain of the day ${within((it) => it.total)}, ` +
      `the water content ${within((it) => it.end)}; worst shot of a day ${(100 * median(errors.map((it) => it.shot))).toFixed(2)} % in the median\n`,
  )
}
