/**
 * Runs both engines and says what was measured: `npm run engines`, or `npm run engines -- --short` for a small form that ends within a
 * minute. NATS is Debian's package nats-server; DuckDB comes with the development dependencies.
 */
import { parseArgs } from 'node:util'
import { hasNatsServer } from './cluster.js'
import { inventedReadings } from './invented-readings.js'
import { runInOneProcess } from './one-process.js'
import { sumInBareLoop, sumInDatabase, withReadings } from './past.js'
import { differencesFromOneProcess } from './same.js'
import { runStream, type StreamOutcome } from './stream.js'

const { short } = parseArgs({ options: { short: { type: 'boolean', default: false } } }).values
const READINGS_A_DAY = 48

if (!hasNatsServer()) say('nats-server is not installed (apt-get install nats-server): the stream was not run')
else await streams(short ? 200 : 10_000)
await past(short ? 1_000_000 : 100_000_000)

async function streams(zones: number): Promise<void> {
  const readings = inventedReadings(zones, READINGS_A_DAY)
  const alone = runInOneProcess(readings)
  say(`${zones} zones, ${readings.length} readings, three servers and their workers on this machine`)
  for (const workers of short ? [4] : [1, 2, 4]) {
    const outcome = await runStream({ readings, workers, disturbed: workers === 4 })
    const rate = Math.round(readings.length / outcome.seconds)
    const how = workers === 4 ? ', one server and two workers killed and started again on the way' : ''
    say(`  ${workers} workers${how}: ${rate} readings a second, ${verdict(outcome, alone)}`)
  }
  const few = inventedReadings(Math.min(zones, 500), READINGS_A_DAY)
  const paced = await runStream({ readings: few, workers: 2, disturbed: false, pace: 500 })
  const { delays } = paced
  const at = (share: number): string =>
    `${(1000 * (delays[Math.floor(share * (delays.length - 1))] ?? 0)).toFixed(0)} ms`
  say(`  500 readings a second, 2 workers: from reading to decision ${at(0.5)} in the median, 95 % within ${at(0.95)}`)
}

function verdict(outcome: StreamOutcome, alone: ReturnType<typeof runInOneProcess>): string {
  const wrong = differencesFromOneProcess(outcome, alone)
  if (wrong.length > 0) process.exitCode = 1
  return wrong.length === 0 ? 'all rows and decisions as in one process' : `${wrong.length} wrong, first: ${wrong[0]}`
}

async function past(rows: number): Promise<void> {
  await withReadings(rows, async (connection, file) => {
    const database = await sumInDatabase(connection, file)
    const bare = await sumInBareLoop(connection, file)
    const ratio = (database.seconds / bare.seconds).toFixed(2)
    say(`${rows} readings out of Parquet, ${database.days.length} sums by zone and day`)
    say(
      `  with the library in the query ${database.seconds.toFixed(2)} s, a bare loop over the same file ${bare.seconds.toFixed(2)} s: ${ratio} times`,
    )
    for (const [reason, count] of database.counts) say(`  ${count} ${reason}`)
  })
}

function say(line: string): void {
  process.stdout.write(`${line}\n`)
}
