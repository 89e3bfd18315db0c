/**
 * Makes the invented scenario that `npm start` reads: a bench of sweet peppers in bags of coir and perlite, from noon of one
 * day to midnight of the next. Nothing here was measured. The same seed gives the same files: `npx tsx docs/examples/invented-bench/make.ts`.
 * It simulates with its own few lines, not with the package, so that the package is not checked against itself.
 */
import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

/** Where the files go: the folder that is named, or that of this script. */
const folder = process.argv[2] ?? fileURLToPath(new URL('.', import.meta.url))
const start = Date.UTC(2026, 4, 18, 10, 0) / 1000 // 12:00 local time, two hours ahead of universal time
const minutesInAll = 36 * 60
const hoursFromUtc = 2

/** A small linear congruential generator (Numerical Recipes constants), enough for invented noise. */
function randomFrom(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0
    return state / 2 ** 32
  }
}
const random = randomFrom(20260519)
const noise = (size: number) => size * (random() + random() + random() - 1.5)

const bag = { litres: 14, capacity: 0.62, plants: 2 }
/** Local minutes after midnight at which the valve opened, and for how many seconds. */
const events = [430, 500, 560, 610, 655, 700, 745, 795, 850, 915, 990].map((minute) => ({ minute, seconds: 400 }))
const emitterLitresPerSecond = (2 * 2) / 3600 // two emitters of 2 L/h to a bag

const radiationAt = (hour: number) =>
  hour < 5.6 || hour > 20.9 ? 0 : 560 * Math.sin((Math.PI * (hour - 5.6)) / 15.3) ** 1.4
const airAt = (hour: number) => 21 + 5 * Math.sin((Math.PI * (hour - 9.5)) / 12)
const humidityAt = (hour: number) => 72 - 16 * Math.sin((Math.PI * (hour - 9)) / 12)
/** Litres a bag and minute: a share of the light and a share of the dryness of the air. */
const uptakeAt = (hour: number) => {
  const air = airAt(hour)
  const dryness = 0.6108 * Math.exp((17.27 * air) / (air + 237.3)) * (1 - humidityAt(hour) / 100)
  return (0.0000088 * radiationAt(hour) + 0.00055 * dryness) * bag.plants * 0.55
}

let theta = 0.612
let held = 0
let drained = 0
let root = 20.5
const log: string[] = ['time,valve_s,feed_L,feed_EC_mS_cm,drain_L,drain_EC_mS_cm']
const rows: string[] = ['time,raw_a,raw_b,root_C,air_C,humidity_pct,radiation_W_m2,wind_m_s']
let current: { seconds: number; time: string } | undefined
const stamp = (second: number) => `${new Date((second + hoursFromUtc * 3600) * 1000).toISOString().slice(0, 16)}+02:00`

const closeEvent = () => {
  if (current === undefined) return
  const feed = current.seconds * emitterLitresPerSecond
  log.push(
    [
      current.time,
      current.seconds,
      feed.toFixed(3),
      (2.4 + noise(0.02)).toFixed(2),
      drained.toFixed(3),
      (3.15 + 0.06 * log.length + noise(0.05)).toFixed(2),
    ].join(','),
  )
  drained = 0
}

for (let minute = 0; minute <= minutesInAll; minute++) {
  const second = start + minute * 60
  const local = (12 * 60 + minute) % 1440
  const hour = local / 60
  if (minute % 5 === 0 && minute > 0) {
    const air = airAt(hour) + noise(0.15)
    root += (air - 0.8 - root) * 0.012
    const reading = (shift: number, gain: number) =>
      Math.round(402 + 905 * gain * (theta + shift) + 0.9 * (root - 20) + noise(1.6))
    let a: string | number = reading(0.004, 1)
    let b: string | number = reading(-0.011, 1.012)
    if (minute === 1250) a = 1240 // a spike
    if (minute > 1555 && minute < 1595) b = 905 // a frozen reading
    if (minute >= 1680 && minute < 1725) a = b = '' // the logger was off
    const row = [
      stamp(second),
      a,
      b,
      root.toFixed(1),
      air.toFixed(1),
      Math.min(99, humidityAt(hour) + noise(1)).toFixed(0),
      Math.max(0, radiationAt(hour) * (1 + noise(0.05))).toFixed(0),
      (0.25 + noise(0.03)).toFixed(2),
    ]
    rows.push(row.join(','))
  }
  const event = events.find((one) => local >= one.minute && local < one.minute + one.seconds / 60)
  if (event !== undefined && local === event.minute) {
    closeEvent()
    current = { seconds: event.seconds, time: stamp(second) }
  }
  const water =
    event === undefined ? 0 : emitterLitresPerSecond * Math.min(60, event.seconds - (local - event.minute) * 60)
  // A fifth of what is given finds its way past the medium; the rest fills it up to its capacity.
  held += water * 0.1
  theta += (water * 0.9 - uptakeAt(hour)) / bag.litres
  const over = Math.max(0, theta - bag.capacity) * bag.litres
  const leaves = over * 0.25 + held * 0.12
  theta -= (over * 0.25) / bag.litres
  held -= held * 0.12
  drained += leaves
}
closeEvent()
writeFileSync(join(folder, 'readings.csv'), `${rows.join('\n')}\n`)
writeFileSync(join(folder, 'feed-and-drain.csv'), `${log.join('\n')}\n`)
