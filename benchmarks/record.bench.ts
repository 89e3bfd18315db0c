/** How long a record takes a reading, batch and one by one, and whether that stays so as it grows. */
import {
  checkReadings,
  estimateNoise,
  findDryDowns,
  findShots,
  findTimeBreaks,
  hours,
  minutes,
  plateauAfterDrain,
  runReducer,
  watchReadings,
  watchShots,
  waterContentChange,
} from 'porewater'
import { compare, report } from './timing.js'

const limits = { minRise: waterContentChange(0.01), maxRiseTime: minutes(30), maxStep: minutes(5) }
const tests = {
  expectedStep: minutes(1),
  grossRange: { sensorMin: 0, sensorMax: 1, expectedMin: 0.2, expectedMax: 0.9 },
  spike: { suspect: 0.02, fail: 0.05, direction: 'fall' },
  rateOfChange: { max: 0.001, direction: 'fall' },
  flatLine: { tolerance: 0.00005, suspectAfter: 6, failAfter: 12 },
} as const

/** An invented record of minute readings: ten shots a day, drain, dry-down, noise, and an hour without readings each week. */
function record(readings: number): { time: Float64Array; value: Float64Array } {
  const time = new Float64Array(readings)
  const value = new Float64Array(readings)
  let seed = 1
  let level = 0.6
  for (let i = 0; i < readings; i++) {
    seed = (Math.imul(seed, 1664525) + 1013904223) >>> 0
    const minute = i % 1440
    const place = (minute - 480) % 60
    level -= minute > 360 && minute < 1200 ? 0.0001 : 0.00004
    if (minute >= 480 && minute < 1080 && place < 14) level += place < 6 ? 0.002 : -0.0007
    level += (0.6 - level) * 0.0005
    time[i] = 60 * i
    value[i] = i % 10080 < 60 ? Number.NaN : level + 0.0004 * (seed / 2 ** 32 - 0.5)
  }
  return { time, value }
}

function whole({ time, value }: { time: Float64Array; value: Float64Array }): number {
  const { flags, counts } = checkReadings({ time, value, ...tests })
  const content = value.slice()
  for (let i = 0; i < content.length; i++) if (flags[i] === 4) content[i] = Number.NaN
  const breaks = findTimeBreaks({ time, value: content, expectedStep: minutes(1) })
  const shots = findShots({ time, waterContent: content, ...limits })
  const downs = findDryDowns({
    time,
    waterContent: content,
    shots,
    drainTime: minutes(20),
    maxStep: minutes(5),
    minDuration: hours(1),
  })
  const plateau = plateauAfterDrain({ time, waterContent: content, shots, drainTime: minutes(20) })
  return counts.pass + breaks.length + shots.length + downs.length + (plateau.known ? plateau.level : 0)
}

export function run(quick: boolean): void {
  const year = record(quick ? 52_560 : 525_600)
  const tenth = { time: year.time.slice(0, year.time.length / 10), value: year.value.slice(0, year.value.length / 10) }
  const perReading = (ms: number | undefined, readings: number) => (((ms ?? Number.NaN) * 1000) / readings).toFixed(3)
  const rounds = quick ? 3 : 9
  const timings = compare(
    [
      { name: `all of it, ${year.time.length} readings`, run: () => whole(year) },
      { name: `all of it, ${tenth.time.length} readings`, run: () => whole(tenth) },
      {
        name: 'quality tests',
        run: () => checkReadings({ time: year.time, value: year.value, ...tests }).counts.pass,
      },
      { name: 'shots', run: () => findShots({ time: year.time, waterContent: year.value, ...limits }).length },
      {
        name: 'noise',
        run: () => {
          const noise = estimateNoise({ value: year.value })
          return noise.known ? noise.standardDeviation : 0
        },
      },
    ],
    rounds,
  )
  report('A record of minute readings: quality, breaks, shots, dry-downs, plateau', timings)
  const [all, small] = timings
  process.stdout.write(
    `  ${perReading(all?.median, year.time.length)} µs a reading; ten times shorter: ${perReading(small?.median, tenth.time.length)} µs a reading\n`,
  )
  const shots = watchShots(limits)
  const flags = watchReadings(tests)
  const scattered = { ...tests, rateOfChange: { ...tests.rateOfChange, deviations: { count: 3, over: hours(25) } } }
  const spread = watchReadings(scattered)
  const some = Array.from({ length: quick ? 5_256 : 52_560 }, (_, i) => ({
    time: year.time[i]!,
    waterContent: year.value[i]!,
    value: year.value[i]!,
  }))
  const streamed = compare(
    [
      { name: 'shots one by one', run: () => runReducer({ reducer: shots, inputs: some }).state.count },
      { name: 'quality one by one', run: () => runReducer({ reducer: flags, inputs: some }).state.count },
      {
        name: 'quality with the rate by deviations',
        run: () => runReducer({ reducer: spread, inputs: some }).state.count,
      },
    ],
    rounds,
  )
  report(`${some.length} readings one by one`, streamed)
  const told =
    runReducer({ reducer: spread, inputs: some.slice(0, 9) })
      .outputs.flat()
      .at(-1)?.tests ?? {}
  const tested = Object.keys(told).length
  for (const { name, median } of streamed) {
    const each = name.startsWith('quality') ? `, ${perReading(median, some.length * tested)} a reading and test` : ''
    process.stdout.write(`  ${name}: ${perReading(median, some.length)} µs a reading${each}\n`)
  }
  const bytes = (reducer: typeof shots | typeof flags) => {
    let state: unknown = reducer.start
    let largest = 0
    for (const [i, input] of some.entries()) {
      state = (reducer.step as (state: unknown, input: unknown) => readonly [unknown, unknown])(state, input)[0]
      if (i % 7 === 0) largest = Math.max(largest, JSON.stringify(state).length)
    }
    return largest
  }
  process.stdout.write(
    `  largest state as JSON: shots ${bytes(shots)} bytes, quality ${bytes(flags)} bytes, with deviations ${bytes(spread)} bytes\n\n`,
  )
}
