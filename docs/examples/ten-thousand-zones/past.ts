/**
 * The past of ten thousand zones in DuckDB: readings of permittivity out of a Parquet file, converted, checked and summed by day. The
 * library runs inside the query as a scalar function over chunks; what it refuses is counted by reason and lost nowhere.
 */
import { existsSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { DOUBLE, type DuckDBConnection, DuckDBInstance, DuckDBScalarFunction } from '@duckdb/node-api'
import { convertInto, grossRangeTest, type Permittivity, waterContentTopp1980 } from 'porewater'

/** What is believed of a water content; the rest is kept out of the sums and counted. */
const BELIEVED = { sensorMin: 0, sensorMax: 1, expectedMin: 0.05, expectedMax: 0.9 }
const PASS = 1
const MISSING = 9

/** Rows by what became of them: `used`, `missing`, `unbelievable`, or the reason of a refusal. */
export type RowCounts = Map<string, number>

export interface DayOfZone {
  readonly zone: number
  readonly day: number
  readonly rows: number
  readonly used: number
  /** Sum of the water contents that were used. Unit: m³/m³. */
  readonly sum: number
}

export interface Past {
  readonly days: readonly DayOfZone[]
  readonly counts: RowCounts
  readonly seconds: number
}

/** One conversion with its check over a column of readings; NaN in, NaN out. Counts are added to `counts`. */
export function convertColumn(readings: Float64Array, output: Float64Array, counts: RowCounts): void {
  const { refusals, refused } = convertInto<Permittivity>({ readings, output, convert: waterContentTopp1980 })
  for (const { about, count } of refusals) add(counts, about, count)
  const flags = grossRangeTest({ value: output, ...BELIEVED })
  let used = 0
  let missing = 0
  for (let i = 0; i < flags.length; i++) {
    if (flags[i] === PASS) used++
    else if (flags[i] === MISSING) missing++
    else output[i] = Number.NaN
  }
  add(counts, 'used', used)
  add(counts, 'missing', missing - refused)
  add(counts, 'unbelievable', flags.length - used - missing)
}

function add(counts: RowCounts, name: string, count: number): void {
  if (count > 0) counts.set(name, (counts.get(name) ?? 0) + count)
}

/** Runs `ask` on a database in memory, with an invented file of readings, and takes both away again. */
export async function withReadings<T>(
  rows: number,
  ask: (connection: DuckDBConnection, file: string) => Promise<T>,
): Promise<T> {
  const folder = mkdtempSync(join(tmpdir(), 'porewater-past-'))
  const file = join(folder, 'readings.parquet')
  const instance = await DuckDBInstance.create(':memory:')
  const connection = await instance.connect()
  try {
    await connection.run(inventedFile(rows, file))
    if (!existsSync(file)) throw new Error('the file of readings was not written')
    return await ask(connection, file)
  } finally {
    connection.closeSync()
    instance.closeSync()
    rmSync(folder, { recursive: true, force: true })
  }
}

/** An invented past: 288 readings a day of as many zones as it takes; of 1,000 readings one is missing and some are senseless. */
const inventedFile = (rows: number, file: string): string => `copy (
  select (i // 28800)::integer as zone, ((i % 28800) // 288)::integer as day,
    case when i % 1000 = 17 then null
      when i % 10000 = 23 then -999.0
      when i % 10000 = 4023 then 65535.0
      when i % 10000 = 7023 then 3.0
      else 20 + 14 * sin(i * 0.37) + (i % 97) * 0.01 end::double as permittivity
  from range(${rows}) r(i)
) to '${file}' (format parquet)`

/** Sums by zone and day, with the library inside the query. */
export async function sumInDatabase(connection: DuckDBConnection, file: string): Promise<Past> {
  const counts: RowCounts = new Map()
  connection.registerScalarFunction(
    DuckDBScalarFunction.create({
      name: 'water_content',
      parameterTypes: [DOUBLE],
      returnType: DOUBLE,
      mainFunction: (_info, input, output) => {
        const readings = (input.getColumnVector(0) as unknown as { items: Float64Array }).items
        convertColumn(readings, (output as unknown as { items: Float64Array }).items, counts)
        output.flush()
      },
    }),
  )
  const start = performance.now()
  const result = await connection.runAndReadAll(`
    select zone, day, count(*), count(*) filter (not isnan(w)), sum(w) filter (not isnan(w))
    from (select zone, day, water_content(coalesce(permittivity, 'nan'::double)) as w from '${file}')
    group by zone, day order by zone, day`)
  const seconds = (performance.now() - start) / 1000
  const days = result.getRows().map(([zone, day, rows, used, sum]) => ({
    zone: Number(zone),
    day: Number(day),
    rows: Number(rows),
    used: Number(used),
    sum: Number(sum ?? 0),
  }))
  return { days, counts, seconds }
}

/** The same out of the same file by a loop with the polynomial written out, for comparison: nothing is refused with a reason. */
export async function sumInBareLoop(connection: DuckDBConnection, file: string): Promise<Omit<Past, 'counts'>> {
  const start = performance.now()
  const result = await connection.stream(`select zone, day, coalesce(permittivity, 'nan'::double) from '${file}'`)
  const days = new Map<number, { zone: number; day: number; rows: number; used: number; sum: number }>()
  for (;;) {
    const chunk = await result.fetchChunk()
    if (chunk === null || chunk.rowCount === 0) break
    const [zones, dayNumbers, readings] = [0, 1, 2].map(
      (column) => (chunk.getColumnVector(column) as unknown as { items: ArrayLike<number> }).items,
    ) as [ArrayLike<number>, ArrayLike<number>, ArrayLike<number>]
    for (let i = 0; i < chunk.rowCount; i++) {
      const e = readings[i]!
      const w = -5.3e-2 + e * (2.92e-2 + e * (-5.5e-4 + e * 4.3e-6))
      const key = zones[i]! * 100 + dayNumbers[i]!
      let own = days.get(key)
      if (own === undefined) {
        own = { zone: zones[i]!, day: dayNumbers[i]!, rows: 0, used: 0, sum: 0 }
        days.set(key, own)
      }
      own.rows++
      if (w >= BELIEVED.expectedMin && w <= BELIEVED.expectedMax) {
        own.used++
        own.sum += w
      }
    }
  }
  return {
    days: [...days.values()].sort((a, b) => a.zone - b.zone || a.day - b.day),
    seconds: (performance.now() - start) / 1000,
  }
}
