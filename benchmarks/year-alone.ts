/** The job on a year of minute readings, once, in a process that does nothing else: `node --expose-gc` this, bundled, with the days. */
import { existsSync, readFileSync } from 'node:fs'
import { wholeYear, yearRecord } from './year-job.js'

const made = yearRecord(Number(process.argv[2]))
const typed = (column: ArrayLike<number | null>) => Float64Array.from(column, (x) => x ?? Number.NaN)
const record = {
  ...made,
  time: typed(made.time),
  probes: Object.fromEntries(Object.entries(made.probes).map(([name, column]) => [name, typed(column)])),
}

/** Largest resident size of this program. What the system counts for the process begins with that of the one that started it. Unit: KiB. */
function peakSize(): number {
  const status = '/proc/self/status'
  const told = existsSync(status) ? /^VmHWM:\s+(\d+) kB/m.exec(readFileSync(status, 'utf8')) : null
  return told === null ? process.resourceUsage().maxRSS : Number(told[1])
}

globalThis.gc?.()
const before = peakSize()
const cpu = process.cpuUsage()
const start = performance.now()
const checked = wholeYear(record)
const wall = performance.now() - start
const { user, system } = process.cpuUsage(cpu)
process.stdout.write(JSON.stringify({ checked, wall, cpu: (user + system) / 1000, before, peak: peakSize() }))
