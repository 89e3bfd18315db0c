import type { Temperature } from '../../quantity/generated/kinds.js'
import { numberIn } from '../../quantity/guard.js'
import { TEMPERATURE_ISO_7888 } from '../domains.js'

/** Factors for whole degrees from 0 to 35 °C, and for 35.9 °C. */
const WHOLE_DEGREES: readonly number[] = [
  1.918, 1.857, 1.8, 1.745, 1.693, 1.643, 1.596, 1.551, 1.508, 1.467, 1.428, 1.39, 1.354, 1.32, 1.287, 1.256, 1.225,
  1.196, 1.168, 1.141, 1.116, 1.091, 1.067, 1.044, 1.021, 1, 0.979, 0.959, 0.94, 0.921, 0.903, 0.886, 0.869, 0.853,
  0.837, 0.822,
]
/** Fall over the last printed row, 35.0 to 35.3 °C: 0.822 to 0.817. */
const LAST_FALL = { factor: -0.005, degrees: 0.3 }

/**
 * Factor that takes a conductivity to 25 °C by the table of ISO 7888 (EN 27888) for natural water.
 *
 * The table is printed for tenths of a degree; the line between whole degrees is within 0.0015 of it. From 35.0 to 35.9 °C the slope
 * of the printed start of that row is kept.
 *
 * @equation `f = f_i + (t - i)(f_{i+1} - f_i), \quad i = \lfloor t \rfloor`
 * @param temperature - Temperature of the sample. Unit: °C. Range: [0, 35.9].
 * @returns Factor. Unit: 1.
 * @throws `DomainError` outside the range: the standard gives no factor there.
 * @validity Natural waters of 0.06 to 1 dS/m; for nutrient solutions it is common practice, no source.
 * @source iso-7888-1985, Table of f25 (whole degrees read in a reprint)
 * @example
 * ecTemperatureFactorIso7888(celsius(20)) // => 1.116
 */
export function ecTemperatureFactorIso7888(temperature: Temperature): number {
  const t = numberIn(temperature, TEMPERATURE_ISO_7888)
  const whole = Math.floor(t)
  const factor = WHOLE_DEGREES[whole]!
  const slope = whole === 35 ? LAST_FALL.factor / LAST_FALL.degrees : WHOLE_DEGREES[whole + 1]! - factor
  return factor + (t - whole) * slope
}
