import { readFileSync } from 'node:fs'
import * as z from 'zod'
import { Trouble } from './trouble.js'

const name = z.string().min(1)
const share = z.number().min(0).max(1)

/** What has to be known beside the readings. All numbers are in the units that their names say. */
export const setupSchema = z.strictObject({
  title: name,
  /** For the reader of the report: that the scenario is invented, or where the record comes from. */
  about: z.string(),
  columns: z.strictObject({
    time: name,
    /** Probes that report water content already, or raw readings with a calibration. */
    probes: z.array(z.strictObject({ name, column: name, calibrated: z.boolean() })).min(1),
    rootTemperature: name.optional(),
    airTemperature: name.optional(),
    humidityPercent: name.optional(),
    radiationWattsPerSquareMetre: name.optional(),
    windMetresPerSecond: name.optional(),
  }),
  /** How far the local clock was ahead of universal time, and since when; for files without offsets. */
  clock: z.array(z.strictObject({ from: name, hoursFromUtc: z.number().min(-12).max(14) })).default([]),
  hoursFromUtc: z.number().min(-12).max(14),
  minutesBetweenReadings: z.number().positive(),
  /** A climate file of its own, with the same clock. */
  climate: z
    .strictObject({
      file: name,
      time: name,
      airTemperature: name.optional(),
      humidityPercent: name.optional(),
      radiationWattsPerSquareMetre: name.optional(),
      windMetresPerSecond: name.optional(),
    })
    .optional(),
  /** The calibration samples of each probe, by its name. */
  samples: z
    .record(
      name,
      z.strictObject({
        dryReading: z.number(),
        dryWaterContent: share,
        saturatedReading: z.number(),
        saturatedWaterContent: share,
      }),
    )
    .default({}),
  place: z.strictObject({ latitude: z.number().min(-90).max(90), elevationMetres: z.number() }),
  container: z.strictObject({
    /** Substrate that one probe stands for. */
    substrateLitres: z.number().positive(),
    heightCentimetres: z.number().positive(),
    plants: z.number().positive(),
    plantsPerSquareMetre: z.number().positive(),
    emitters: z.number().int().positive(),
    emitterLitresPerHour: z.number().positive(),
    lineFillSeconds: z.number().min(0),
  }),
  medium: z
    .strictObject({
      name,
      dryBulkDensity: z.number().positive(),
      particleDensity: z.number().positive(),
      /** van Genuchten's parameters of the user's own retention test. */
      residual: share,
      saturated: share,
      alphaPerCentimetre: z.number().positive(),
      n: z.number().gt(1),
    })
    .optional(),
  crop: z.strictObject({ name, coefficient: z.number().positive() }),
  wanted: z.strictObject({
    depletion: share,
    drainFraction: share,
    firstShotHoursAfterLight: z.number(),
    lastShotHoursBeforeDark: z.number(),
    leastShotSeconds: z.number().positive(),
  }),
  feedAndDrain: z
    .strictObject({
      file: name,
      time: name,
      /** The volumes are litres on a square metre of growing area, not litres a container. */
      perSquareMetre: z.boolean().default(false),
      feedLitres: name,
      drainLitres: name,
      feedEC: name.optional(),
      drainEC: name.optional(),
    })
    .optional(),
  /** Reading and water content limits beyond which a value is refused or doubted. */
  limits: z.strictObject({ lowest: z.number(), highest: z.number(), minRise: z.number().positive() }),
})
export type Setup = z.infer<typeof setupSchema>

export function readSetup(file: string): Setup {
  let text: string
  try {
    text = readFileSync(file, 'utf8')
  } catch {
    throw new Trouble(
      `${file}: cannot be read; expected a JSON file that says which column is what (see docs/examples/invented-bench/readings.json)`,
    )
  }
  let data: unknown
  try {
    data = JSON.parse(text)
  } catch (error) {
    throw new Trouble(`${file}: is not JSON (${(error as Error).message})`)
  }
  const result = setupSchema.safeParse(data)
  if (result.success) return result.data
  const problems = result.error.issues.map((issue) => `  ${issue.path.join('.') || '(top)'}: ${issue.message}`)
  throw new Trouble(`${file}: does not describe a setup\n${problems.join('\n')}`)
}

/** A setup whose columns are named on the command line: `time=stamp,probe A=vwc_1,rootTemperature=t_root`. */
export function withColumns(setup: Setup, columns: string | undefined): Setup {
  if (columns === undefined) return setup
  const named = new Map(
    columns.split(',').map((pair) => {
      const [role, column, ...rest] = pair.split('=')
      if (!role || !column || rest.length > 0)
        throw new Trouble(`--columns: "${pair}" is not role=column; write for example time=stamp,probe A=vwc_1`)
      return [role.trim(), column.trim()] as const
    }),
  )
  const take = (role: string, was: string | undefined) => {
    const column = named.get(role) ?? was
    named.delete(role)
    return column
  }
  const was = setup.columns
  const found = {
    time: take('time', was.time) as string,
    probes: was.probes.map((probe) => ({ ...probe, column: take(probe.name, probe.column) as string })),
    rootTemperature: take('rootTemperature', was.rootTemperature),
    airTemperature: take('airTemperature', was.airTemperature),
    humidityPercent: take('humidityPercent', was.humidityPercent),
    radiationWattsPerSquareMetre: take('radiationWattsPerSquareMetre', was.radiationWattsPerSquareMetre),
    windMetresPerSecond: take('windMetresPerSecond', was.windMetresPerSecond),
  }
  const [unknown] = named.keys()
  if (unknown !== undefined)
    throw new Trouble(
      `--columns: there is no role "${unknown}"; the roles are time, ${was.probes.map((probe) => probe.name).join(', ')}, rootTemperature, airTemperature, humidityPercent, radiationWattsPerSquareMetre, windMetresPerSecond`,
    )
  return { ...setup, columns: found }
}
