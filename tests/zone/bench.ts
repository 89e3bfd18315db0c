import * as pw from 'porewater'
import { hours, type Zone, type ZoneRecord } from 'porewater'

/** A zone of an invented bench: two probes in bags of 14 L with two emitters of 2 L/h. */
export function benchZone(change: Partial<Zone> = {}): Zone {
  return {
    name: 'bench',
    container: { substrateVolume: pw.litres(14), height: pw.centimetres(12), plants: 2 },
    medium: {
      name: 'invented coir and perlite',
      bulkDensity: pw.gramsPerCubicCentimetre(0.09),
      particleDensity: pw.gramsPerCubicCentimetre(0.78),
      residual: pw.waterContent(0.12),
      saturated: pw.waterContent(0.86),
      alpha: pw.perCentimetre(0.26),
      n: 1.55,
    },
    plantDensity: pw.plantsPerSquareMetre(2.5),
    cropCoefficient: pw.cropCoefficient(1),
    emitters: { count: 2, flow: pw.litresPerHour(2), lineFill: pw.seconds(8) },
    probes: [{ name: 'A' }, { name: 'B' }],
    place: {
      latitude: pw.latitude(47.5),
      elevation: pw.metresAboveSeaLevel(420),
      clock: [{ from: 0, ahead: 7200 }],
    },
    readingStep: pw.minutes(5),
    limits: {
      maxPerDay: pw.litres(9),
      minRunTime: pw.minutes(2),
      maxRunTime: pw.minutes(20),
      minRest: pw.minutes(20),
      drainFraction: pw.fraction(0.25),
      depletion: pw.fraction(0.05),
      lowerLimit: pw.waterContent(0.12),
      minBelievable: pw.waterContent(0.05),
      maxBelievable: pw.waterContent(0.9),
      minRise: pw.waterContentChange(0.006),
      firstShotAfterLight: hours(1.5),
      lastShotBeforeDark: hours(4),
    },
    ...change,
  }
}

/** Local midnight of 2026-05-18 on a clock two hours ahead. */
export const MIDNIGHT = Date.UTC(2026, 4, 17, 22) / 1000

/** What an invented record is made of. */
export interface BenchOptions {
  readonly days?: number
  /** Local hours at which the valve opens, every day. */
  readonly hours?: readonly number[]
  /** Litres of each shot. */
  readonly shot?: number
  /** Litres a container uses in an hour of light, and in one without. */
  readonly use?: { readonly light: number; readonly dark: number }
  /** Constant offsets of the two probes. */
  readonly offsets?: readonly [number, number]
  readonly substrate?: number
  /** Everything that is a volume is so many times as large. */
  readonly scale?: number
  readonly seed?: number
}

const SHOTS = [8, 9, 10, 11, 12, 13, 14, 15, 16, 17]

/**
 * An invented record by a bucket of its own: not the package, so that the package is not checked against itself. Light from 6 to 20
 * o'clock; a tenth of each shot runs past, and what is above 0.62 drains within minutes.
 */
export function benchRecord(options: BenchOptions = {}): ZoneRecord {
  const { days = 3, shot = 0.4, use = { light: 0.21, dark: 0.03 }, offsets = [0.004, -0.011], scale = 1 } = options
  const open = options.hours ?? SHOTS
  const litres = (options.substrate ?? 14) * scale
  let noise = (options.seed ?? 5) >>> 0
  const random = () => {
    noise = (Math.imul(noise, 1664525) + 1013904223) >>> 0
    return noise / 2 ** 32 - 0.5
  }
  const time: number[] = []
  const columns: { A: number[]; B: number[]; root: number[] } = { A: [], B: [], root: [] }
  const climate = {
    time: [] as number[],
    airTemperature: [] as number[],
    relativeHumidity: [] as number[],
    irradiance: [] as number[],
    windSpeed: [] as number[],
  }
  const watering = {
    time: [] as number[],
    given: [] as number[],
    drained: [] as number[],
    feedEC: [] as number[],
    drainEC: [] as number[],
  }
  let content = 0.612
  for (let minute = 0; minute < days * 1440; minute++) {
    const local = minute % 1440
    const hour = local / 60
    const now = MIDNIGHT + minute * 60
    const lit = hour >= 6 && hour < 20
    if (minute % 5 === 0) {
      time.push(now)
      columns.A.push(round(content + offsets[0] + 0.0008 * random()))
      columns.B.push(round(content + offsets[1] + 0.0008 * random()))
      columns.root.push(Math.round(10 * (20 + 2 * Math.sin((Math.PI * (hour - 9)) / 12))) / 10)
      climate.time.push(now)
      climate.airTemperature.push(21 + 4 * Math.sin((Math.PI * (hour - 9)) / 12))
      climate.relativeHumidity.push(0.7)
      climate.irradiance.push(lit ? 420 * Math.sin((Math.PI * (hour - 6)) / 14) : 0)
      climate.windSpeed.push(0.3)
    }
    content -= ((lit ? use.light : use.dark) * scale) / 60 / litres
    if (open.some((one) => Math.round(one * 60) === local)) {
      const given = shot * scale
      const before = content
      const kept = Math.min(0.9 * given, (0.62 - before) * litres)
      content = before + kept / litres
      watering.time.push(now)
      watering.given.push(given)
      watering.drained.push(given - kept)
      watering.feedEC.push(2.4)
      watering.drainEC.push(3.3)
    }
  }
  return { time, probes: { A: columns.A, B: columns.B }, rootTemperature: columns.root, climate, watering }
}

function round(x: number): number {
  return Math.round(x * 1e5) / 1e5
}
