/** A year of minute readings of two probes through the whole job, beside other benchmarks and in a process of its own. */

import { seriesFromCsv } from 'porewater/schema'
import { runAlone } from './run-alone.js'
import { compare, report } from './timing.js'
import { tableOf, wholeYear, yearRecord } from './year-job.js'

export function run(quick: boolean): void {
  const days = quick ? 30 : 365
  const year = yearRecord(days)
  const table = tableOf(year)
  const columns = { A: { column: 'a' }, B: { column: 'b' } }
  const timings = compare(
    [
      { name: `${days} days, two probes, a reading a minute`, run: () => wholeYear(year) },
      {
        name: `reading its table of ${(table.length / 1e6).toFixed(0)} MB before`,
        run: () => seriesFromCsv(table, { time: 'time', columns }).time.length,
      },
    ],
    3,
  )
  report('The whole job on a record of minute readings', timings)
  const { rss, heapUsed } = process.memoryUsage()
  const alone = runAlone(days)
  const megabytes = (bytes: number) => `${(bytes / 1e6).toFixed(0).padStart(4)} MB`
  process.stdout.write(
    `  memory beside all other benchmarks       ${megabytes(rss)}, of which ${megabytes(heapUsed).trim()} heap
  peak of a process of its own             ${megabytes(1024 * alone.peak)}, of which ${megabytes(1024 * alone.before).trim()} before the job: engine, code and making the record
  its first and only run                   ${alone.wall.toFixed(0).padStart(4)} ms, ${alone.cpu.toFixed(0)} ms of processor time on all threads\n\n`,
  )
}
