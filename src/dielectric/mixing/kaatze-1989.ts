import { answersOf } from '../../quantity/answer.js'
import type { Duration, Permittivity, Temperature } from '../../quantity/generated/kinds.js'
import { numberIn, optionsOf } from '../../quantity/guard.js'
import type { Validity } from '../../quantity/validity.js'
import { LIQUID_WATER } from '../../water/domains.js'
import { waterPermittivityKaatze1989 } from '../../water/permittivity-kaatze-1989.js'
import { FREQUENCY } from '../domains.js'
import type { FieldFrequency, StaticPermittivity } from '../terms.js'
import { type ComplexPermittivity, debye } from './complex-permittivity.js'

/** Water in an alternating field. */
export interface WaterInField extends FieldFrequency {
  /** Water temperature. Unit: °C. Range: [-20, 110]. */
  readonly temperature: Temperature
}

/** Complex permittivity of water and the constants of its relaxation. */
export interface WaterRelaxation extends ComplexPermittivity, StaticPermittivity {
  /** Permittivity far above the relaxation. Unit: 1. */
  readonly highFrequency: Permittivity
  /** Relaxation time. Unit: s. */
  readonly relaxationTime: Duration
}

/** Where the relaxation of Kaatze (1989) was measured. */
export const validityDebyeKaatze1989: Validity = {
  of: 'waterDebyeKaatze1989',
  note: 'pure water; the relaxation time is a fit, up to 1.4 % off the table',
  inputs: {
    temperature: { min: -4, max: 60, unit: '°C' },
    frequency: { min: 0, max: 57e9, unit: 'Hz' },
  },
}

/**
 * Complex permittivity of pure water in an alternating field after Kaatze (1989).
 *
 * The static value is that of `waterPermittivityKaatze1989`.
 *
 * @equation `\varepsilon = \varepsilon_\infty + \frac{\varepsilon_s - \varepsilon_\infty}{1 + i\,2\pi f\tau}, \quad \varepsilon_\infty = 5.77 - 0.0274\,t, \quad \tau = 3.745\times10^{-15}\left[1 + 7\times10^{-5}(t - 27.5)^2\right]e^{2295.7/T}`
 * @returns Real part, loss, static and high-frequency permittivity, relaxation time.
 * @validity Pure water, -4 to 60 °C, up to 57 GHz.
 * @source kaatze-1989
 * @example
 * waterDebyeKaatze1989({ temperature: celsius(0), frequency: gigahertz(1) }) // => { real: 86.916254, loss: 8.981481 }
 */
export function waterDebyeKaatze1989(water: WaterInField): WaterRelaxation {
  const t = numberIn(optionsOf(water).temperature, LIQUID_WATER, 'temperature')
  const staticPermittivity = waterPermittivityKaatze1989(water.temperature)
  const highFrequency = 5.77 - 0.0274 * t
  const relaxationTime = 3.745e-15 * (1 + 7e-5 * (t - 27.5) ** 2) * Math.exp(2295.7 / (t + 273.15))
  const { real, loss } = debye(
    staticPermittivity - highFrequency,
    relaxationTime,
    numberIn(water.frequency, FREQUENCY, 'frequency'),
  )
  return answersOf(
    {
      real: highFrequency + real,
      loss,
      staticPermittivity,
      highFrequency: highFrequency as Permittivity,
      relaxationTime: relaxationTime as Duration,
    },
    'frequency',
  )
}
