/** How long a plan for a day takes, over the storage model and over a simulation, and whether memory stays flat over many zones. */
import {
  boxContainer,
  centimetres,
  centimetresPerHour,
  containerFlowRichards1931,
  type DayPlanRequest,
  demandCourse,
  fraction,
  litres,
  perCentimetre,
  planDay,
  uptakeLimitsFeddes,
  vanGenuchten1980,
  waterContent,
} from 'porewater'
import { bagDay, light } from '../docs/tools/bag-day.js'
import { compare, median, report } from './timing.js'

const requestOf = (zone: number): DayPlanRequest => ({
  ...bagDay,
  demand: demandCourse({ total: litres(3 + (zone % 10) / 10), light, evenShare: fraction(0.15) }),
})
const planOf = (zone: number) => planDay(requestOf(zone))

/** Residual and saturated water content, alpha in 1/cm, n, and the saturated conductivity in cm/h; invented. */
const MEDIA = {
  'stone-wool': [0.02, 0.95, 0.08, 3.5, 360],
  coir: [0.15, 0.9, 0.12, 1.7, 60],
  peat: [0.1, 0.92, 0.05, 1.5, 20],
} as const

/** CPU time of plans over a simulation of the same 14 L, with the nodes that it has unless told otherwise. */
function bySimulation(plans: number): void {
  process.stdout.write('Plan for a day over a simulation\n')
  for (const [name, [residual, saturated, alpha, n, conductivity]] of Object.entries(MEDIA)) {
    const flow = containerFlowRichards1931({
      container: boxContainer({ length: centimetres(100), width: centimetres(20), height: centimetres(7) }),
      medium: vanGenuchten1980({
        residual: waterContent(residual),
        saturated: waterContent(saturated),
        alpha: perCentimetre(alpha),
        n,
      }),
      saturatedConductivity: centimetresPerHour(conductivity),
      roots: { limits: uptakeLimitsFeddes.tomato },
    })
    const capacity = flow.waterContent(flow.startAt((height) => height as never))
    const times = Array.from({ length: plans }, (_, zone) => {
      const begun = process.cpuUsage()
      planDay(
        {
          ...requestOf(zone),
          container: { ...requestOf(zone).container, containerCapacity: capacity },
          waterContent: waterContent(capacity - 0.02),
          refillPoint: waterContent(capacity - 0.03),
          fullPoint: capacity,
        },
        flow,
      )
      const { user, system } = process.cpuUsage(begun)
      return (user + system) / 1000
    })
    const worst = times.reduce((a, b) => Math.max(a, b), 0)
    process.stdout.write(
      `  ${name.padEnd(10)} ${median(times).toFixed(0)} ms of CPU, ${worst.toFixed(0)} ms at worst\n`,
    )
  }
  process.stdout.write('\n')
}

export function run(quick: boolean): void {
  const zones = quick ? 100 : 1000
  const [timing] = compare([{ name: `${zones} zones, 144 steps each`, run: () => total(zones) }], 7)
  report('Plan for a day', timing ? [timing] : [])
  process.stdout.write(`  one plan: ${((timing?.median ?? Number.NaN) / zones).toFixed(3)} ms\n`)
  bySimulation(quick ? 2 : 10)
  if (quick) return
  const before = process.memoryUsage().heapUsed
  const start = performance.now()
  total(10_000)
  const seconds = (performance.now() - start) / 1000
  const grown = (process.memoryUsage().heapUsed - before) / 1e6
  process.stdout.write(
    `  10,000 zones in one run: ${seconds.toFixed(2)} s, heap ${grown.toFixed(0)} MB larger than before\n\n`,
  )
}

function total(zones: number): number {
  let sum = 0
  for (let zone = 0; zone < zones; zone++) sum += planOf(zone).applied
  return sum
}
