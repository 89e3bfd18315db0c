import { cubicAt } from '../../numerics/cubic.js'
import { answersOf } from '../../quantity/answer.js'
import type { Duration, Permittivity, Temperature } from '../../quantity/generated/kinds.js'
import { numberIn, optionsOf } from '../../quantity/guard.js'
import type { Validity } from '../../quantity/validity.js'
import { FREQUENCY, TEMPERATURE_KLEIN_SWIFT } from '../domains.js'
import type { FieldFrequency } from '../terms.js'
import { debye } from './complex-permittivity.js'
import type { WaterRelaxation } from './kaatze-1989.js'

const HIGH_FREQUENCY = 4.9

/** Water in an alternating field, not hotter than 60 °C. */
export interface WarmWaterInField extends FieldFrequency {
  /** Water temperature. Unit: °C. Range: [0, 60]. */
  readonly temperature: Temperature
}

/** Where the relaxation of Klein and Swift (1977) holds. */
export const validityDebyeKleinSwift1977: Validity = {
  of: 'waterDebyeKleinSwift1977',
  note: 'pure water; the static value is 1.0 too high at 60 °C',
  inputs: { temperature: { min: 0, max: 40, unit: '°C' } },
}

/**
 * Complex permittivity of pure water in an alternating field after Klein and Swift (1977).
 *
 * @equation `\varepsilon = 4.9 + \frac{\varepsilon_s - 4.9}{1 + i\,2\pi f\tau}, \quad \varepsilon_s = 88.045 - 0.4147 t + 6.295\times10^{-4}t^2 + 1.075\times10^{-5}t^3`
 * @equation `2\pi\tau = 1.1109\times10^{-10} - 3.824\times10^{-12}t + 6.938\times10^{-14}t^2 - 5.096\times10^{-16}t^3`
 * @returns Real part, loss, static and high-frequency permittivity, relaxation time.
 * @validity Pure water, 0 to 40 °C.
 * @source klein-1977, as restated in ulaby-2014
 * @example
 * waterDebyeKleinSwift1977({ temperature: celsius(0), frequency: gigahertz(1) }) // => { real: 87.031417, loss: 9.123979 }
 */
export function waterDebyeKleinSwift1977(water: WarmWaterInField): WaterRelaxation {
  const t = numberIn(optionsOf(water).temperature, TEMPERATURE_KLEIN_SWIFT, 'temperature')
  const staticPermittivity = cubicAt([88.045, -0.4147, 6.295e-4, 1.075e-5], t)
  const relaxationTime = cubicAt([1.1109e-10, -3.824e-12, 6.938e-14, -5.096e-16], t) / (2 * Math.PI)
  const { real, loss } = debye(
    staticPermittivity - HIGH_FREQUENCY,
    relaxationTime,
    numberIn(water.frequency, FREQUENCY, 'frequency'),
  )
  return answersOf(
    {
      real: HIGH_FREQUENCY + real,
      loss,
      staticPermittivity: staticPermittivity as Permittivity,
      highFrequency: HIGH_FREQUENCY as Permittivity,
      relaxationTime: relaxationTime as Duration,
    },
    'frequency',
  )
}
