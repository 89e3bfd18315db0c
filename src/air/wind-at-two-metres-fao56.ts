import type { Length, WindSpeed } from '../quantity/generated/kinds.js'
import { numberIn, optionsOf } from '../quantity/guard.js'
import { ANEMOMETER_HEIGHT, WIND_SPEED } from './domains.js'

/** A wind speed with the height at which it was measured over grass. */
export interface MeasuredWind {
  /** Wind speed. Unit: m/s. Range: [0, 120]. */
  readonly speed: WindSpeed
  /** Height of the anemometer above the ground. Unit: cm. Range: [50, 10000]. */
  readonly height: Length
}

/**
 * Wind speed two metres above grass, from a measurement at another height.
 *
 * @equation `u_2 = u_z \frac{4.87}{\ln(67.8\,z - 5.42)}`
 * @returns Wind speed at 2 m. Unit: m/s.
 * @validity Over short grass.
 * @source allen-1998, Eq. 47
 * @example
 * windSpeedAtTwoMetresFao56({ speed: metresPerSecond(3.2), height: metres(10) }) // => 2.4
 */
export function windSpeedAtTwoMetresFao56(wind: MeasuredWind): WindSpeed {
  const { speed, height } = optionsOf(wind)
  const metres = numberIn(height, ANEMOMETER_HEIGHT, 'height') / 100
  return ((numberIn(speed, WIND_SPEED, 'speed') * 4.87) / Math.log(67.8 * metres - 5.42)) as WindSpeed
}

/** A wind speed two metres above grass, and another height. */
export interface WindElsewhere {
  /** Wind speed two metres above the ground. Unit: m/s. Range: [0, 120]. */
  readonly speedAtTwoMetres: WindSpeed
  /** Height above the ground for which the wind is asked. Unit: cm. Range: [50, 10000]. */
  readonly height: Length
}

/**
 * Wind speed at a height above grass, from that at two metres: the inverse of `windSpeedAtTwoMetresFao56`.
 *
 * @equation `u_z = u_2 \frac{\ln(67.8\,z - 5.42)}{4.87}`
 * @returns Wind speed at the height. Unit: m/s.
 * @validity Over short grass.
 * @source allen-1998, Eq. 47 solved for the measured speed
 * @example
 * windSpeedAtHeightFao56({ speedAtTwoMetres: metresPerSecond(2.4), height: metres(10) }) // => 3.2
 */
export function windSpeedAtHeightFao56(wind: WindElsewhere): WindSpeed {
  const { speedAtTwoMetres, height } = optionsOf(wind)
  const metres = numberIn(height, ANEMOMETER_HEIGHT, 'height') / 100
  return ((numberIn(speedAtTwoMetres, WIND_SPEED, 'speedAtTwoMetres') * Math.log(67.8 * metres - 5.42)) /
    4.87) as WindSpeed
}
