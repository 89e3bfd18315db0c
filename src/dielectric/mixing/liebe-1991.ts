import { answersOf } from '../../quantity/answer.js'
import type { Frequency, Permittivity, Temperature } from '../../quantity/generated/kinds.js'
import { numberIn, optionsOf } from '../../quantity/guard.js'
import type { Validity } from '../../quantity/validity.js'
import { FREQUENCY, TEMPERATURE_LIEBE } from '../domains.js'
import type { FieldFrequency, StaticPermittivity } from '../terms.js'
import { type ComplexPermittivity, debye } from './complex-permittivity.js'

/** Water in a microwave field. */
export interface WaterInMicrowaves extends FieldFrequency {
  /** Water temperature. Unit: °C. Range: [-20, 60]. */
  readonly temperature: Temperature
}

/** Complex permittivity of water and the constants of its two relaxations. */
export interface WaterDoubleRelaxation extends ComplexPermittivity, StaticPermittivity {
  /** Frequency of the first relaxation. Unit: Hz. */
  readonly relaxationFrequency: Frequency
}

/** Where the model of Liebe and others (1991) was fitted. */
export const validityDebyeLiebe1991: Validity = {
  of: 'waterDebyeLiebe1991',
  note: 'pure water below 1 THz',
  inputs: { temperature: { min: -3, max: 37, unit: '°C' }, frequency: { min: 0, max: 1e12, unit: 'Hz' } },
}

/**
 * Complex permittivity of pure water with two relaxations after Liebe, Hufford and Manabe (1991).
 *
 * @equation `\varepsilon = \varepsilon_2 + \frac{\varepsilon_0 - \varepsilon_1}{1 + if/f_1} + \frac{\varepsilon_1 - \varepsilon_2}{1 + if/f_2}, \quad x = 1 - \frac{300}{T}`
 * @equation `\varepsilon_0 = 77.66 - 103.3x, \quad \varepsilon_1 = 0.0671\varepsilon_0, \quad \varepsilon_2 = 3.52 + 7.52x, \quad f_1 = (20.2 + 146.4x + 316x^2)\,\mathrm{GHz}, \quad f_2 = 39.8f_1`
 * @returns Real part, loss, static permittivity and the first relaxation frequency.
 * @validity Pure water, -3 to 37 °C, below 1 THz.
 * @source liebe-1991
 * @example
 * waterDebyeLiebe1991({ temperature: celsius(20), frequency: gigahertz(1) }) // => { real: 79.814738, loss: 4.394431 }
 */
export function waterDebyeLiebe1991(water: WaterInMicrowaves): WaterDoubleRelaxation {
  const x = 1 - 300 / (numberIn(optionsOf(water).temperature, TEMPERATURE_LIEBE, 'temperature') + 273.15)
  const frequency = numberIn(water.frequency, FREQUENCY, 'frequency')
  const e0 = 77.66 - 103.3 * x
  const e1 = 0.0671 * e0
  const e2 = 3.52 + 7.52 * x
  const f1 = (20.2 + (146.4 + 316 * x) * x) * 1e9
  const first = debye(e0 - e1, 1 / (2 * Math.PI * f1), frequency)
  const second = debye(e1 - e2, 1 / (2 * Math.PI * 39.8 * f1), frequency)
  return answersOf(
    {
      real: e2 + first.real + second.real,
      loss: first.loss + second.loss,
      staticPermittivity: e0 as Permittivity,
      relaxationFrequency: f1 as Frequency,
    },
    'frequency',
  )
}
