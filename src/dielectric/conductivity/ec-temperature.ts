import { answerOf } from '../../quantity/answer.js'
import { domainWith } from '../../quantity/domain.js'
import { InputError } from '../../quantity/errors.js'
import type { AnyEC, MeasuredEC, Temperature, UnnamedEC } from '../../quantity/generated/kinds.js'
import { numberIn, optionsOf } from '../../quantity/guard.js'
import { LIQUID_WATER } from '../../water/domains.js'
import { CONDUCTIVITY, TEMPERATURE_FACTOR } from '../domains.js'
import type { TemperatureFactor } from '../terms.js'

/** A conductivity as measured and the factor of its temperature. */
export interface MeasuredConductivity extends TemperatureFactor {
  /** Conductivity at the temperature of the sample. Unit: dS/m. Range: [0, ∞). */
  readonly measured: MeasuredEC
}

/** A conductivity at 25 °C and the factor of another temperature. */
export interface ReferredConductivity extends TemperatureFactor {
  /** Conductivity at 25 °C. Unit: dS/m. Range: [0, ∞). */
  readonly at25: AnyEC | UnnamedEC
}

/** The same water at two temperatures. */
export interface TwoTemperatures {
  /** First conductivity as measured. Unit: dS/m. Range: [0, ∞). */
  readonly first: MeasuredEC
  /** Its temperature. Unit: °C. Range: [-20, 110]. */
  readonly firstTemperature: Temperature
  /** Second conductivity as measured. Unit: dS/m. Range: [0, ∞). */
  readonly second: MeasuredEC
  /** Its temperature. Unit: °C. Range: [-20, 110]. */
  readonly secondTemperature: Temperature
  /** Conductivity of the same water at 25 °C. Unit: dS/m. Range: (0, ∞). */
  readonly at25: AnyEC | UnnamedEC
}

/**
 * Electrical conductivity at 25 °C from the one that was measured; its kind is that of the place where it is used.
 *
 * Correct once: most meters and probes already show values at 25 °C.
 *
 * @equation `\sigma_{25} = f\,\sigma_t`
 * @returns Conductivity at 25 °C. Unit: dS/m.
 * @source iso-7888-1985 (form)
 * @example
 * ecAt25({ measured: decisiemensPerMetre(2), factor: ecTemperatureFactorIso7888(celsius(20)) }) // => 2.232
 */
export function ecAt25<Q extends AnyEC | UnnamedEC = UnnamedEC>(sample: MeasuredConductivity): Q {
  return answerOf(
    numberIn(optionsOf(sample).measured, CONDUCTIVITY, 'measured') *
      numberIn(sample.factor, TEMPERATURE_FACTOR, 'factor'),
    'measured',
  ) as Q
}

/**
 * Electrical conductivity that a cell without correction shows, from the one at 25 °C.
 *
 * @equation `\sigma_t = \frac{\sigma_{25}}{f}`
 * @returns Conductivity at the temperature of the factor. Unit: dS/m.
 * @source iso-7888-1985 (form)
 * @example
 * ecAsMeasured({ at25: decisiemensPerMetre(2.232), factor: ecTemperatureFactorIso7888(celsius(20)) }) // => 2
 */
export function ecAsMeasured(sample: ReferredConductivity): MeasuredEC {
  return answerOf(
    numberIn(optionsOf(sample).at25, CONDUCTIVITY, 'at25') / numberIn(sample.factor, TEMPERATURE_FACTOR, 'factor'),
    'factor',
  ) as MeasuredEC
}

/**
 * Temperature coefficient of the conductivity of a water, referred to 25 °C, from two readings.
 *
 * @equation `\alpha = \frac{\sigma_2 - \sigma_1}{(t_2 - t_1)\,\sigma_{25}}`
 * @returns Coefficient. Unit: 1/K.
 * @throws `DomainError` outside the ranges; `InputError` when both temperatures are the same.
 * @source hayashi-2004 (form)
 * @example
 * ecTemperatureCoefficient({
 *   first: decisiemensPerMetre(1.27303),
 *   firstTemperature: celsius(20),
 *   second: decisiemensPerMetre(1.40823),
 *   secondTemperature: celsius(25),
 *   at25: decisiemensPerMetre(1.40823),
 * }) // => 0.0192014
 */
export function ecTemperatureCoefficient(water: TwoTemperatures): number {
  const rise = numberIn(optionsOf(water).second, CONDUCTIVITY, 'second') - numberIn(water.first, CONDUCTIVITY, 'first')
  const warming =
    numberIn(water.secondTemperature, LIQUID_WATER, 'secondTemperature') -
    numberIn(water.firstTemperature, LIQUID_WATER, 'firstTemperature')
  const at25 = numberIn(water.at25, domainWith(CONDUCTIVITY, { ends: '()' }), 'at25')
  if (warming === 0)
    throw new InputError('firstTemperature, secondTemperature', 'they are the same', 'measure at two temperatures')
  return answerOf(rise / (warming * at25), 'at25')
}
