import { RAW_READING, WATER_CONTENT } from '../quantity/domains.js'
import { InputError } from '../quantity/errors.js'
import type { Porosity } from '../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../quantity/guard.js'
import { SENTINELS } from '../quantity/missing.js'
import type { CalibrationForm, CalibrationSample, ProbeReading } from './calibration.js'
import { CALIBRATION_EXPONENT, POROSITY, POSITIVE_READING } from './domains.js'

/** A reading that the form can take. */
export function checkReading(reading: number, exponent: number): number {
  return numberIn(reading, exponent === 1 ? RAW_READING : POSITIVE_READING, 'reading')
}

/** A sample whose numbers have meaning and whose water fits into the pores. */
export function checkSample(
  name: string,
  sample: CalibrationSample,
  exponent: number,
  porosity: Porosity | undefined,
): CalibrationSample {
  requireObject(sample, name)
  const { reading, waterContent } = sample
  const r = checkReading(reading, exponent)
  if (SENTINELS.includes(r))
    throw new InputError(
      `${name}.reading`,
      `${r} is what loggers write where there is no reading`,
      'look at the probe and read the sample again',
    )
  const water = numberIn(waterContent, WATER_CONTENT, 'waterContent')
  if (porosity !== undefined && water > porosity) {
    throw new InputError(
      `${name}.waterContent`,
      `${water} m³/m³ is more than the pores can hold, ${porosity}`,
      'check the volume of the sample and its dry mass',
    )
  }
  return { reading: r as ProbeReading, waterContent }
}

/** A porosity between 0 and 1, where one was given. */
export function checkPorosity(porosity: Porosity | undefined): Porosity | undefined {
  return porosity === undefined ? undefined : (numberIn(porosity, POROSITY, 'porosity') as Porosity)
}

/** The power to which a form raises the reading. */
export function exponentOf(form: CalibrationForm, exponent: number | undefined): number {
  if (form === 'power') {
    if (exponent === undefined)
      throw new InputError(
        'exponent',
        'the power form has none',
        'give the exponent of this kind of probe, or use a line',
      )
    return numberIn(exponent, CALIBRATION_EXPONENT, 'exponent')
  }
  if (
    exponent !== undefined &&
    numberIn(exponent, CALIBRATION_EXPONENT, 'exponent') !== (form === 'square-root' ? 0.5 : 1)
  )
    throw new InputError('exponent', `${exponent} belongs to the power form, not to "${form}"`, 'leave it out')
  return form === 'square-root' ? 0.5 : 1
}
