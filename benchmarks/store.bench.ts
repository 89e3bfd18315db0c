/** How far a storage model that was fitted to one day of a simulation is from it on fifty other days, and how long the fit takes. */
import {
  boxContainer,
  centimetres,
  centimetresPerHour,
  containerFlowRichards1931,
  type FlowStep,
  fitWaterStoreToFlow,
  litres,
  minutes,
  perCentimetre,
  vanGenuchten1980,
  waterContent,
  waterStore,
  wettingCurveKoolParker1987,
} from 'porewater'
import { randomNumbers } from '../src/numerics/random.js'
import { limits } from '../tests/support/uptake-limits.js'
import { median } from './timing.js'

const container = boxContainer({ length: centimetres(100), width: centimetres(20), height: centimetres(7.5) })
/** Residual and saturated water content, alpha in 1/cm, n, and the saturated conductivity in cm/h; invented. */
const MEDIA = {
  'stone-wool': [0.02, 0.95, 0.08, 3.5, 360],
  coir: [0.15, 0.9, 0.12, 1.7, 60],
  peat: [0.1, 0.92, 0.05, 1.5, 20],
} as const

/** A day of 8 to 15 shots that fill the container and then drain a tenth to two thirds of a shot. */
function day(seed: number): FlowStep[] {
  const { uniform } = randomNumbers(seed)
  const use = container.volume * (0.1 + 0.1 * uniform())
  const shots = 8 + Math.floor(8 * uniform())
  return Array.from({ length: shots }, (_, k) => {
    const size = (use / shots) * (k < 2 ? 0.6 : 1.1 + 0.6 * uniform())
    return [4, 6, 20, 30].map((time, part) => ({
      duration: minutes(time),
      applied: litres(part === 0 ? size : 0),
      demand: litres((use * time) / (shots * 60)),
    }))
  }).flat()
}

export function run(quick: boolean): void {
  process.stdout.write('A storage model fitted to one simulated day, on other days\n')
  for (const name of Object.keys(MEDIA) as (keyof typeof MEDIA)[]) {
    fitted(name, 1, quick ? 2 : 50)
    // A store knows one capacity: how far that stands for a medium that drains and rewets on different curves.
    fitted(name, 2, quick ? 2 : 50)
  }
  process.stdout.write('\n')
}

function fitted(name: keyof typeof MEDIA, curves: 1 | 2, days: number): void {
  const [residual, saturated, alpha, n, conductivity] = MEDIA[name]
  const drying = {
    residual: waterContent(residual),
    saturated: waterContent(saturated),
    alpha: perCentimetre(alpha),
    n,
  }
  const flow = containerFlowRichards1931({
    ...(curves === 2 ? { wetting: wettingCurveKoolParker1987(drying) } : {}),
    container,
    medium: vanGenuchten1980(drying),
    saturatedConductivity: centimetresPerHour(conductivity),
    // Roots that take what they are asked for but under water, as the storage model has them.
    roots: { limits },
  })
  // Two hundredths below what it holds when it has drained.
  const start = waterContent(flow.waterContent(flow.startAt((height) => height as never)) - 0.02)
  const pot = { substrateVolume: container.volume, minWaterContent: waterContent(residual + 0.01), start }
  const begun = performance.now()
  const { store } = fitWaterStoreToFlow({ ...pot, flow, steps: day(1) })
  const ms = performance.now() - begun
  const misses = Array.from({ length: days }, (_, k) => {
    const steps = day(100 + k)
    const [exact, stored] = [drainOf(flow, start, steps), drainOf(waterStore(store), start, steps)]
    return Math.abs(stored / exact - 1)
  })
  process.stdout.write(
    `  ${name.padEnd(10)} ${curves === 1 ? 'one curve ' : 'two curves'} capacity ${store.containerCapacity.toFixed(4)}, bypass ${store.bypass.toFixed(3)}, lag ${store.drainLag.toFixed(0)} s; drain of a day missed by ${(100 * median(misses)).toFixed(1)} % in the median, ${(100 * misses.reduce((a, b) => Math.max(a, b), 0)).toFixed(0)} % at worst; fitted in ${ms.toFixed(0)} ms\n`,
  )
}

type Followed = Pick<ReturnType<typeof waterStore>, 'startFrom' | 'step'>

function drainOf(
  flow: Followed | ReturnType<typeof containerFlowRichards1931>,
  start: ReturnType<typeof waterContent>,
  steps: readonly FlowStep[],
): number {
  const model = flow as Followed
  let [state, drained] = [model.startFrom(start), 0]
  for (const during of steps) {
    const [next, after] = model.step(state, during)
    state = next
    drained += after.drained
  }
  return drained
}
