import { randomNumbers } from '../../numerics/random.js'
import type { RehearsalZone } from '../scenario/zone.js'

/** Light, warmth and use over the days of a rehearsal. */
export interface Weather {
  /** Share of the brightest light of a normal day. Unit: 1. */
  readonly light: (time: number) => number
  /** Use of a container. Unit: L/s. */
  readonly use: (time: number) => number
  /** Temperature of the medium. Unit: °C. */
  readonly temperature: (time: number) => number
}

const MINUTES = 1440

/** A half sine of light between sunrise and sunset, the same each day but for a factor that the seed draws. */
export function weatherOf(zone: RehearsalZone, days: number, seed: number): Weather {
  const random = randomNumbers(seed)
  const factors = Array.from({ length: days + 1 }, () =>
    Math.min(1.6, Math.max(0.4, 1 + zone.weatherSpread * random.normal())),
  )
  const long = zone.sunset - zone.sunrise
  const course = Float64Array.from({ length: MINUTES }, (_, minute) => {
    const hour = (minute + 0.5) / 60
    return hour > zone.sunrise && hour < zone.sunset ? Math.sin((Math.PI * (hour - zone.sunrise)) / long) : 0
  })
  const mean = course.reduce((sum, light) => sum + light, 0) / MINUTES
  const perSecond = zone.dailyUse / 86400
  const light = (time: number) => {
    const day = Math.floor(time / 86400)
    return course[Math.floor((time - day * 86400) / 60)]! * factors[day]!
  }
  return {
    light,
    use: (time) => perSecond * (zone.evenShare + ((1 - zone.evenShare) * light(time)) / mean),
    // The medium follows the light three hours late.
    temperature: (time) => 20 + 5 * (light(Math.max(0, time - 10800)) - 0.4),
  }
}
