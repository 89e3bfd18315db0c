/** A year of hourly standardized evapotranspiration for many stations: the bare loop without guards or counts, and ours. */
import {
  type HourlySeriesAsce,
  hourlySeriesAsce2005,
  instant,
  latitude,
  longitude,
  metres,
  metresAboveSeaLevel,
} from 'porewater'
import { compare, report } from './timing.js'

const HOURS = 8760

export function run(quick: boolean): void {
  const stations = Array.from({ length: quick ? 10 : 100 }, (_, i) => station(i))
  report(
    `Hourly ASCE 2005, short and tall, ${stations.length} stations × ${HOURS} h = ${stations.length * HOURS} rows`,
    compare([
      { name: 'bare loop', run: () => total(stations, bare) },
      { name: 'porewater', run: () => total(stations, hourlySeriesAsce2005) },
    ]),
  )
  for (const series of stations) {
    bare(series)
    const plain = [Float64Array.from(series.short), Float64Array.from(series.tall)]
    hourlySeriesAsce2005(series)
    for (let i = 0; i < HOURS; i++) {
      const off = Math.abs(series.short[i]! - plain[0]![i]!)
      if (!(off + Math.abs(series.tall[i]! - plain[1]![i]!) < 1e-9))
        throw new Error(`the two loops differ in hour ${i}`)
    }
  }
}

function total(stations: readonly HourlySeriesAsce[], work: (series: HourlySeriesAsce) => unknown): number {
  let sum = 0
  for (const series of stations) {
    work(series)
    sum += series.short[HOURS - 1]! + series.tall[4000]!
  }
  return sum
}

/** Weather that nobody measured, but with the courses of a day and a year. */
function station(i: number): HourlySeriesAsce {
  const noise = (h: number) => Math.sin(h * 12.9898 + i * 78.233)
  const year = (h: number) => Math.sin(((h / 24 - 105) / 365) * 2 * Math.PI)
  const day = (h: number) => Math.sin((((h % 24) - 6) / 12) * Math.PI)
  const course = (f: (h: number) => number) => Float64Array.from({ length: HOURS }, (_, h) => f(h))
  return {
    site: {
      latitude: latitude(-50 + i),
      longitude: longitude(0),
      elevation: metresAboveSeaLevel(10 * i),
      windHeight: metres(10),
    },
    start: instant(Date.UTC(2025, 0, 1) / 1000),
    temperature: course((h) => 15 + 8 * year(h) + 6 * day(h - 2) + noise(h)),
    vapourPressure: course((h) => 1.2 + 0.4 * year(h) + 0.1 * noise(h)),
    solar: course((h) => Math.max(0, (1.8 + 0.9 * year(h)) * day(h) + 0.2 * noise(h))),
    wind: course((h) => 2.5 + 1.5 * noise(h / 3)),
    short: new Float64Array(HOURS),
    tall: new Float64Array(HOURS),
  }
}

/** The same equations written down once more, as somebody would who trusts the data. */
function bare({ site, start, temperature, vapourPressure, solar, wind, short, tall }: HourlySeriesAsce): void {
  const phi = (site.latitude * Math.PI) / 180
  const gamma = 0.665e-3 * 101.3 * ((293 - 0.0065 * site.elevation) / 293) ** 5.26
  const clear = 0.75 + 2e-5 * site.elevation
  const windFactor = 4.87 / Math.log(0.678 * site.windHeight - 5.42)
  const firstDay = Math.floor(start / 86400)
  let clouds = 1.35 * 0.7 - 0.35
  let sines = 0
  let cosines = 0
  let sunset = 0
  let scale = 0
  let correction = 0
  for (let i = 0; i < temperature.length; i++) {
    const seconds = start + site.longitude * 240 + 1800 + i * 3600
    const second = seconds % 86400
    if (i % 24 === 0) {
      const number = Math.floor(seconds / 86400) - firstDay + 1
      const declination = 0.409 * Math.sin((2 * Math.PI * number) / 365 - 1.39)
      const b = (2 * Math.PI * (number - 81)) / 364
      correction = 0.1645 * Math.sin(2 * b) - 0.1255 * Math.cos(b) - 0.025 * Math.sin(b)
      scale = ((12 * 4.92) / Math.PI) * (1 + 0.033 * Math.cos((2 * Math.PI * number) / 365))
      sines = Math.sin(phi) * Math.sin(declination)
      cosines = Math.cos(phi) * Math.cos(declination)
      sunset = Math.acos(Math.min(1, Math.max(-1, -Math.tan(phi) * Math.tan(declination))))
    }
    const omega = (Math.PI / 12) * (second / 3600 + correction - 12)
    const rs = solar[i]!
    if (sines + cosines * Math.cos(omega) >= Math.sin(0.3)) {
      const from = Math.max(-sunset, omega - Math.PI / 24)
      const to = Math.min(sunset, omega + Math.PI / 24)
      const ra = scale * ((to - from) * sines + cosines * (Math.sin(to) - Math.sin(from)))
      clouds = 1.35 * Math.min(1, Math.max(0.3, rs / (clear * ra))) - 0.35
    }
    const t = temperature[i]!
    const ea = vapourPressure[i]!
    const es = 0.6108 * Math.exp((17.27 * t) / (t + 237.3))
    const slope = ((2503 / 0.6108) * es) / ((t + 237.3) * (t + 237.3))
    const k2 = (t + 273.16) * (t + 273.16)
    const rn = 0.77 * rs - 2.042e-10 * k2 * k2 * (0.34 - 0.14 * Math.sqrt(ea)) * clouds
    const u2 = wind[i]! * windFactor
    const dry = (gamma * u2 * (es - ea)) / (t + 273)
    const day = rn > 0
    short[i] = (0.408 * slope * rn * (day ? 0.9 : 0.5) + 37 * dry) / (slope + gamma * (1 + (day ? 0.24 : 0.96) * u2))
    tall[i] = (0.408 * slope * rn * (day ? 0.96 : 0.8) + 66 * dry) / (slope + gamma * (1 + (day ? 0.25 : 1.7) * u2))
  }
}
