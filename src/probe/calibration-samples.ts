import type { Domain } from '../quantity/domain.js'
import { InputError } from '../quantity/errors.js'
import type { Porosity } from '../quantity/generated/share.js'
import { numberIn } from '../quantity/guard.js'
import type { CalibrationForm, CalibrationSample, ProbeReading } from './calibration.js'

const READING: Domain = {
  quantity: 'reading',
  unit: 'raw',
  min: -Infinity,
  max: Infinity,
  ends: '()',
  hint: 'give the number that the probe reports; leave a missing reading out',
}
const POSITIVE_READING: Domain = {
  quantity: 'reading',
  unit: 'raw',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'a square root or a power needs a reading of zero or more: use another form for readings that can be negative',
}
const CONTENT: Domain = {
  quantity: 'water content of a sample',
  unit: 'm³/m³',
  min: 0,
  max: 1,
  ends: '[]',
  hint: 'weigh the sample and give the volume of its water per volume of medium',
}
const PORES: Domain = {
  quantity: 'porosity',
  unit: '1',
  min: 0,
  max: 1,
  ends: '()',
  hint: 'give the share of pores, between 0 and 1',
}
const EXPONENT: Domain = {
  quantity: 'exponent',
  unit: '1',
  min: 0,
  max: 10,
  ends: '(]',
  hint: 'exponents from 1 to 4.6 have been published for different probes; 1 is the straight line',
}

/** A reading that the form can take. */
export function checkReading(reading: number, exponent: number): number {
  return numberIn(reading, exponent === 1 ? READING : POSITIVE_READING, 'reading')
}

/** A sample whose numbers have meaning and whose water fits into the pores. */
export function checkSample(
  name: string,
  { reading, waterContent }: CalibrationSample,
  exponent: number,
  porosity: Porosity | undefined,
): CalibrationSample {
  const r = checkReading(reading, exponent)
  const water = numberIn(waterContent, CONTENT, 'waterContent')
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
  return porosity === undefined ? undefined : (numberIn(porosity, PORES) as Porosity)
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
    return numberIn(exponent, EXPONENT, 'exponent')
  }
  if (exponent !== undefined && numberIn(exponent, EXPONENT, 'exponent') !== (form === 'square root' ? 0.5 : 1))
    throw new InputError('exponent', `${exponent} belongs to the power form, not to "${form}"`, 'leave it out')
  return form === 'square root' ? 0.5 : 1
}

/** The reading raised to the exponent, without the cost of a power where none is needed. */
export function powerOf(reading: number, exponent: number): number {
  if (exponent === 1) return reading
  return exponent === 0.5 ? Math.sqrt(reading) : reading ** exponent
}
