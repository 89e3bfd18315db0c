/**
 * The main job on one record, through the public API: reads tables, reviews the days of the zone, proposes the next, prints a report and
 * draws the day. All that is worked out is worked out by `porewater/zone`; here is only reading and printing.
 *
 *     npm start                                          the invented bench
 *     npm start -- readings.csv                          with readings.json beside it
 *     npm start -- readings.csv --setup my.json --day 2026-05-19 --picture day.svg --columns "time=stamp,probe A=vwc_1"
 */
import { mkdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs'
import { dirname, join, resolve } from 'node:path'
import { fileURLToPath } from 'node:url'
import { parseArgs } from 'node:util'
import {
  diagnoseDay,
  InputError,
  proposeDay,
  type ReportSection,
  reportZone,
  reviewZone,
  trustedReadings,
  type WaterContent,
  type Zone,
  type ZoneDay,
  type ZoneRecord,
} from 'porewater'
import { chartDay } from 'porewater/chart'
import { type CsvSeries, type CsvSeriesOptions, readDocument, seriesFromCsv } from 'porewater/schema'

interface TableSetup extends Omit<CsvSeriesOptions, 'name' | 'clock'> {
  readonly file?: string
  readonly perSquareMetre?: boolean
}
interface Setup {
  readonly title: string
  readonly about: string
  readonly zone: unknown
  readonly readings: TableSetup
  readonly climate?: TableSetup
  readonly watering?: TableSetup
}

const USAGE =
  'Usage: npm start -- [readings.csv] [--setup setup.json] [--columns "time=NAME,probe=NAME"] [--day 2026-05-19] [--picture day.svg]'
const WATER = { kind: 'WaterContent' } as const

/** Draws the day that the arguments of the command ask for, and gives its report. */
export function oneDay(args: readonly string[]): string {
  const { values, positionals } = readArguments(args)
  const file = positionals[0] ?? fileURLToPath(new URL('./invented-bench/readings.csv', import.meta.url))
  const setup = readSetup(values.setup ?? file.replace(/\.csv$/i, '.json'), values.columns)
  const zone: Zone = readDocument('zone', setup.zone)
  const { record, told } = load(file, setup, zone)
  const day = dayOf(reviewZone({ zone, record, ...(values.day && { until: values.day }) }).days, values.day, file)
  const [proposal, diagnosis] = [proposeDay({ zone, day }), diagnoseDay({ zone, record, day })]
  const picture = resolve(values.picture ?? 'out/one-day.svg')
  const text = report(setup, reportZone({ zone, day, proposal, diagnosis }), day.date, told, picture)
  // Everything is worked out before anything is written, and the picture appears whole or not at all.
  writeWhole(picture, draw(setup, zone, record, day))
  return text
}

function readArguments(args: readonly string[]) {
  const one = { type: 'string' } as const
  try {
    const options = { setup: one, columns: one, day: one, picture: one }
    return parseArgs({ args: [...args], allowPositionals: true, options })
  } catch (error) {
    throw new InputError('npm start', (error as Error).message, USAGE)
  }
}

function bytesOf(file: string): Uint8Array {
  try {
    return readFileSync(file)
  } catch (error) {
    throw new InputError(
      file,
      `cannot be read (${(error as NodeJS.ErrnoException).code ?? 'unknown reason'})`,
      'see docs/examples/invented-bench for a table and its setup',
    )
  }
}

/** The setup, with columns that were named on the command line in the place of its own. */
function readSetup(file: string, columns: string | undefined): Setup {
  let setup: Setup
  try {
    setup = JSON.parse(new TextDecoder().decode(bytesOf(file)))
  } catch (error) {
    if (error instanceof InputError) throw error
    throw new InputError(file, `is not JSON (${(error as Error).message})`, 'check it with an editor')
  }
  for (const key of ['title', 'about', 'zone', 'readings'] as const)
    if (setup[key] === undefined)
      throw new InputError(file, `has no "${key}"`, 'see docs/examples/invented-bench/readings.json')
  const named = { ...setup.readings, columns: { ...setup.readings.columns } }
  for (const pair of columns?.split(',') ?? []) {
    const [role = '', column = '', ...rest] = pair.split('=').map((word) => word.trim())
    if (!role || !column || rest.length > 0)
      throw new InputError('--columns', `"${pair}" is not role=column`, 'write for example time=stamp,probe A=vwc_1')
    if (role === 'time') Object.assign(named, { time: column })
    else if (Object.hasOwn(named.columns, role)) named.columns[role] = { ...named.columns[role], column }
    else throw new InputError('--columns', `there is no role "${role}"`, `use ${Object.keys(named.columns).join(', ')}`)
  }
  return { ...setup, readings: named }
}

/** The record behind the tables, and what became of their rows. */
function load(file: string, setup: Setup, zone: Zone): { record: ZoneRecord; told: string[] } {
  const told: string[] = []
  // A probe without a calibration reports water content, of which per cent must not pass for fractions.
  const plain = new Set(zone.probes.filter(({ calibration }) => !calibration).map(({ name }) => name))
  const table = (options: TableSetup): CsvSeries => {
    const path = options.file === undefined ? file : join(dirname(file), options.file)
    const typed = Object.entries(options.columns ?? {}).map(([name, one]) => [
      name,
      plain.has(name) ? { ...WATER, ...one } : one,
    ])
    const columns = Object.fromEntries(typed)
    const read = seriesFromCsv(bytesOf(path), { ...options, name: path, clock: zone.place.clock, columns })
    const { refused, doubled, conflicting, order, problems } = read
    if (refused + doubled + conflicting > 0 || order !== 'rising')
      told.push(
        `${options.file ?? 'The readings'}: rows ${order === 'rising' ? 'in order' : `stood ${order} and were sorted`}; ${refused} refused, ${doubled} doubled, ${conflicting} with a time that another row has.`,
      )
    for (const one of problems.slice(0, 3)) told.push(`  ${one.path}: ${one.problem}; ${one.hint}.`)
    return read
  }
  const readings = table(setup.readings)
  const missing = zone.probes.find(({ name }) => readings.columns[name] === undefined)
  if (missing)
    throw new InputError('readings.columns', `has no column for "${missing.name}"`, 'name one for each probe')
  const climate = setup.climate ? table(setup.climate) : readings
  const log = setup.watering && table(setup.watering)
  const share = setup.watering?.perSquareMetre ? zone.container.plants / zone.plantDensity : 1
  const water = log && {
    ...log.columns,
    given: log.columns.given?.map((x) => x * share),
    drained: log.columns.drained?.map((x) => x * share),
  }
  const record = {
    time: readings.time,
    probes: readings.columns,
    ...(readings.columns.rootTemperature && { rootTemperature: readings.columns.rootTemperature }),
    climate: { time: climate.time, ...climate.columns },
    ...(water && { watering: { time: log.time, ...water } }),
  } as ZoneRecord
  return { record, told }
}

/** The wanted day, or the last one with most of its readings. */
function dayOf(days: readonly ZoneDay[], wanted: string | undefined, file: string): ZoneDay {
  const good = (day: ZoneDay) => Math.max(...day.probes.map(({ counts }) => counts.pass + counts.notEvaluated))
  const most = Math.max(...days.map(good))
  const day = days.filter((one) => (wanted === undefined ? good(one) >= 0.8 * most : one.date === wanted)).at(-1)
  if (day === undefined || good(day) === 0)
    throw new InputError(
      file,
      `there is no reading${wanted ? ` on ${wanted}` : ''} that can be trusted`,
      'choose another day with --day, or check limits and columns',
    )
  return day
}

function report(
  setup: Setup,
  sections: readonly ReportSection[],
  date: string,
  told: readonly string[],
  picture: string,
): string {
  const head = { title: `${setup.title}, ${date}`, lines: [setup.about, ...told] }
  const all: readonly ReportSection[] = [head, ...sections, { title: 'Picture', lines: [picture] }]
  const text = all.map(({ title, lines }) => [title, '-'.repeat(title.length), ...lines.map(folded)].join('\n'))
  return `${text.join('\n\n')}\n`
}

/** Folds a line at 100 characters and keeps its indent. */
function folded(line: string): string {
  const indent = /^\s*/.exec(line)?.[0] ?? ''
  const words = line.trim().split(/(?<=\S) (?=[^\s%])/)
  const lines = [words.shift() as string]
  for (const word of words) {
    if ((lines.at(-1) as string).length + word.length > 99) lines.push(`  ${word}`)
    else lines.push(`${lines.pop()} ${word}`)
  }
  return lines.map((one) => indent + one).join('\n')
}

function draw({ title }: Setup, zone: Zone, record: ZoneRecord, day: ZoneDay): string {
  const { time, probes, rootTemperature } = trustedReadings({ zone, record, date: day.date })
  const begin = time.findIndex((one) => one >= day.from - 21600)
  const pick = (column: readonly (number | null)[]) => column.slice(begin).map((x) => x ?? Number.NaN)
  const logged = day.openings.length > 0
  const given = new Map(Array.from(record.watering?.time ?? [], (one, i) => [one, record.watering?.given[i] ?? 0]))
  const seen = day.probes.find(({ used }) => used)?.shots ?? []
  const ahead = zone.place.clock.filter(({ from }, k) => k === 0 || day.from >= from).at(-1)?.ahead ?? 0
  const root = pick(rootTemperature)
  // Drawn are the limits of the zone, and each probe on its scale.
  const shift = (name: string) => {
    const own = day.probes.find((probe) => probe.name === name)?.limits
    return own?.known && day.level.known ? day.level.value.limits.fullPoint - own.value.fullPoint : 0
  }
  return chartDay({
    title: `${title}, ${day.date}${logged ? '' : ' (shots as a probe saw them)'}`,
    time: time.slice(begin),
    waterContent: Object.entries(probes).map(([name, content]) => {
      const by = shift(name)
      return {
        name: `${name}, shifted by ${(100 * by).toFixed(1).replace('-', '−')} points`,
        value: pick(content).map((x) => x + by),
      }
    }),
    shots: logged
      ? day.openings.map((one) => ({ time: one, millilitres: 1000 * (given.get(one) ?? 0) }))
      : seen.map(({ start, rise }) => ({ time: start, millilitres: 1000 * rise * zone.container.substrateVolume })),
    ...(day.level.known && {
      refillPoint: day.level.value.limits.refillPoint as WaterContent,
      fullPoint: day.level.value.limits.fullPoint as WaterContent,
    }),
    ...(root.some((x) => !Number.isNaN(x)) && { below: [{ axis: 'root zone, °C', name: 'root zone', value: root }] }),
    hoursFromUtc: ahead / 3600,
    maxStep: 2.2 * zone.readingStep,
  })
}

function writeWhole(path: string, text: string): void {
  try {
    mkdirSync(dirname(path), { recursive: true })
    writeFileSync(`${path}.part`, text)
    renameSync(`${path}.part`, path)
  } catch (error) {
    throw new InputError(
      path,
      `cannot be written (${(error as NodeJS.ErrnoException).code ?? 'unknown reason'})`,
      'choose another file with --picture',
    )
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  try {
    process.stdout.write(oneDay(process.argv.slice(2)))
  } catch (error) {
    if (!['bad-input', 'outside-domain'].includes((error as { code?: string }).code ?? '')) throw error
    process.stderr.write(`${(error as Error).message}\n`)
    process.exitCode = 1
  }
}
