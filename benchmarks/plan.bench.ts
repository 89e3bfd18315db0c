/** How long a plan for a day takes, and whether memory stays flat over many zones. */
import {
  demandCourse,
  fraction,
  instant,
  litres,
  litresPerHour,
  minutes,
  percent,
  planDay,
  seconds,
  waterContent,
} from 'porewater'
import { compare, report } from './timing.js'

const light = Array.from({ length: 144 }, (_, i) => Math.max(0, Math.sin((Math.PI * ((i + 0.5) / 6 - 6)) / 14)))
const planOf = (zone: number) =>
  planDay({
    start: instant(1779148800),
    step: minutes(10),
    demand: demandCourse({ total: litres(3 + (zone % 10) / 10), light, evenShare: fraction(0.15) }),
    container: {
      substrateVolume: litres(14),
      containerCapacity: waterContent(0.62),
      minWaterContent: waterContent(0.15),
      bypass: fraction(0.1),
      drainLag: minutes(10),
    },
    waterContent: waterContent(0.6),
    refillPoint: waterContent(0.59),
    fullPoint: waterContent(0.62),
    drainFraction: percent(25),
    firstShot: instant(1779148800 + 7 * 3600),
    lastShot: instant(1779148800 + 18 * 3600),
    emitters: 2,
    emitterFlow: litresPerHour(2),
    lineFill: seconds(8),
    minRunTime: minutes(2),
    maxRunTime: minutes(15),
    minRest: minutes(15),
    maxPerDay: litres(9),
    trigger: { by: 'level' },
  })

export function run(quick: boolean): void {
  const zones = quick ? 100 : 1000
  const [timing] = compare([{ name: `${zones} zones, 144 steps each`, run: () => total(zones) }], 7)
  report('Plan for a day', timing ? [timing] : [])
  process.stdout.write(`  one plan: ${((timing?.median ?? Number.NaN) / zones).toFixed(3)} ms\n`)
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
