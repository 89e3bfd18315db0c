/**
 * The whole job on one record, through the public API: reads a CSV file, tests the readings, calibrates, finds shots, dry-down and
 * the level after drain, estimates demand, plans tomorrow, prints a report and draws the day.
 *
 *     npm start                                          the invented bench
 *     npm start -- readings.csv                          with readings.json beside it
 *     npm start -- readings.csv --setup my.json --day 2026-05-19 --picture day.svg
 *     npm start -- readings.csv --setup my.json --columns time=stamp,probeA=vwc_1
 */
import { mkdirSync, renameSync, writeFileSync } from 'node:fs'
import { dirname, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import { parseArgs } from 'node:util'
import { chartDay } from 'porewater/chart'
import { analyse, type DayAnalysis } from './one-day/analyse.js'
import { type Checked, check } from './one-day/check.js'
import { hoursAheadAt, type Loaded, load } from './one-day/load.js'
import { report } from './one-day/report.js'
import { readSetup, type Setup, withColumns } from './one-day/setup.js'
import { Trouble } from './one-day/trouble.js'

const INVENTED = fileURLToPath(new URL('./invented-bench/readings.csv', import.meta.url))

function main(): void {
  const { values, positionals } = readArguments()
  const file = positionals[0] ?? INVENTED
  const setup = withColumns(readSetup(values.setup ?? file.replace(/\.csv$/i, '.json')), values.columns)
  const loaded = load(file, setup)
  const checked = check(loaded, setup)
  const day = analyse(loaded, checked, setup, values.day)
  const picture = resolve(values.picture ?? 'out/one-day.svg')
  const text = report(loaded, checked, day, setup, picture)
  // Everything is worked out before anything is written, and the picture appears whole or not at all.
  writeWhole(picture, draw(loaded, checked, day, setup))
  process.stdout.write(text)
}

function readArguments() {
  try {
    return parseArgs({
      allowPositionals: true,
      options: {
        setup: { type: 'string' },
        columns: { type: 'string' },
        day: { type: 'string' },
        picture: { type: 'string' },
      },
    })
  } catch (error) {
    throw new Trouble(
      `${(error as Error).message}. Usage: npm start -- [readings.csv] [--setup setup.json] [--columns time=NAME,probe=NAME] [--day 2026-05-19] [--picture day.svg]`,
    )
  }
}

function draw(loaded: Loaded, checked: Checked, day: DayAnalysis, setup: Setup): string {
  const at = Array.from(loaded.time.keys()).filter(
    (i) => (loaded.time[i] as number) >= day.from - 6 * 3600 && (loaded.time[i] as number) < day.to,
  )
  const pick = (column: ArrayLike<number>) => at.map((i) => column[i] as number)
  const log = loaded.feedAndDrain
  const logged =
    log === undefined
      ? []
      : Array.from(log.time.keys()).filter(
          (i) => (log.time[i] as number) >= day.from - 6 * 3600 && (log.time[i] as number) < day.to,
        )
  const byEvent = log !== undefined && logged.length > 1
  const seen = day.probes[0]?.shots ?? []
  const shots = byEvent
    ? logged.map((i) => ({ time: log.time[i] as number, millilitres: (log.feed[i] as number) * 1000 }))
    : seen.map((shot) => ({ time: shot.start, millilitres: shot.rise * setup.container.substrateLitres * 1000 }))
  return chartDay({
    title: `${setup.title}, ${day.date}${byEvent ? '' : ' (shots as the first probe saw them)'}`,
    time: pick(loaded.time),
    waterContent: checked.probes.map(({ name, content }) => ({ name, value: pick(content) })),
    shots,
    ...(day.limits.known ? { refillPoint: day.limits.value.refillPoint, fullPoint: day.limits.value.fullPoint } : {}),
    ...(loaded.rootTemperature
      ? { below: [{ axis: 'root zone, °C', name: 'root zone', value: pick(loaded.rootTemperature) }] }
      : {}),
    hoursFromUtc: hoursAheadAt(day.from + 43200, setup),
    maxStep: setup.minutesBetweenReadings * 60 * 2.2,
  })
}

function writeWhole(path: string, text: string): void {
  try {
    mkdirSync(dirname(path), { recursive: true })
    writeFileSync(`${path}.part`, text)
    renameSync(`${path}.part`, path)
  } catch (error) {
    throw new Trouble(`${path}: cannot be written (${(error as NodeJS.ErrnoException).code ?? 'unknown reason'})`)
  }
}

try {
  main()
} catch (error) {
  const expected =
    error instanceof Trouble ||
    (error as { code?: string }).code === 'bad-input' ||
    (error as { code?: string }).code === 'outside-domain'
  if (!expected) throw error
  process.stderr.write(`${(error as Error).message}\n`)
  process.exitCode = 1
}
