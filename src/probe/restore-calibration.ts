import { isWithin } from '../quantity/domain.js'
import { WATER_CONTENT } from '../quantity/domains.js'
import { InputError } from '../quantity/errors.js'
import { isList, isObject } from '../quantity/guard.js'
import { CALIBRATION_FORMS, type CalibrationForm, type ProbeCalibration } from './calibration.js'
import { CALIBRATION_EXPONENT, POROSITY } from './domains.js'
import { missOfOwnSamples } from './own-samples.js'

const PARAMETERS: Readonly<Record<CalibrationForm, number>> = {
  line: 2,
  'square-root': 2,
  power: 2,
  quadratic: 3,
  cubic: 4,
  'monotone-cubic': 0,
}

/**
 * A calibration from its JSON text or from the object that was made of it, with every part looked at before it is trusted.
 *
 * @param stored - What `JSON.stringify` made of a calibration, as text or parsed again.
 * @procedure Refuses text that is not JSON, a version that this release does not know, and a part that is missing, of the wrong type or not finite, and a curve that passes none of its samples; names the part.
 * @returns The calibration.
 * @throws `InputError` that names the part which does not fit.
 * @source definition
 * @example
 * const calibration = calibrateTwoPoint({
 *   dry: { reading: rawReading(300), waterContent: waterContent(0.02) },
 *   saturated: { reading: rawReading(1100), waterContent: waterContent(0.78) },
 * })
 * const stored = JSON.stringify(calibration)
 * applyCalibration(restoreCalibration(stored), rawReading(700)).waterContent // => 0.40
 * restoreCalibration('{"version":2}') // => throws InputError
 */
export function restoreCalibration(stored: unknown): ProbeCalibration {
  const whole = object(typeof stored === 'string' ? parsed(stored) : stored, 'calibration')
  if (whole.version !== 1)
    throw new InputError(
      'version',
      `is ${JSON.stringify(whole.version)}, and this release reads 1`,
      'update the package, or make the calibration again from its samples',
    )
  if (!(CALIBRATION_FORMS as readonly unknown[]).includes(whole.form)) bad('form', 'is not a known form')
  const form = whole.form as CalibrationForm
  if (typeof whole.method !== 'string') bad('method', 'is not text')
  const exponent = number(whole.exponent, 'exponent')
  const ownExponent = form === 'square-root' ? 0.5 : 1
  if (!isWithin(exponent, CALIBRATION_EXPONENT) || (form !== 'power' && exponent !== ownExponent))
    bad('exponent', `is ${exponent}, which does not belong to the form "${form}"`)
  const coefficients = list(whole.coefficients, 'coefficients').map((c, i) => number(c, `coefficients[${i}]`))
  if (coefficients.length !== PARAMETERS[form]) bad('coefficients', `are ${coefficients.length} in number`)
  const knots = risingKnots(whole.knots)
  if (form === 'monotone-cubic' ? knots.length < 3 : knots.length > 0) bad('knots', `are ${knots.length} in number`)
  const span = numbers(whole.span, 'span', ['min', 'max', 'driest', 'wettest'])
  if (!(span.min! < span.max!)) bad('span', 'has no extent')
  if (exponent !== 1 && span.min! < 0) bad('span.min', `is ${span.min}, which has no such power`)
  if (whole.porosity !== undefined) {
    const porosity = number(whole.porosity, 'porosity')
    if (!isWithin(porosity, POROSITY)) bad('porosity', `is ${porosity}`)
  }
  list(whole.samples, 'samples').forEach((sample, i) => {
    const { waterContent } = numbers(sample, `samples[${i}]`, ['reading', 'waterContent'])
    if (!isWithin(waterContent!, WATER_CONTENT)) bad(`samples[${i}].waterContent`, `is ${waterContent}`)
  })
  if (whole.statistics !== undefined) checkStatistics(whole.statistics, coefficients.length)
  list(whole.findings, 'findings').forEach((finding, i) => {
    if (typeof object(finding, `findings[${i}]`).code !== 'string') bad(`findings[${i}].code`, 'is not text')
  })
  const calibration = whole as unknown as ProbeCalibration
  const beside = missOfOwnSamples(calibration)
  if (beside !== undefined)
    bad('samples', `lie ${beside.toPrecision(3)} m³/m³ and more beside the curve, which was made of others`)
  return calibration
}

function risingKnots(value: unknown): readonly unknown[] {
  let previous = -Infinity
  const knots = list(value, 'knots')
  knots.forEach((knot, i) => {
    const { reading } = numbers(knot, `knots[${i}]`, ['reading', 'waterContent', 'slope'])
    if (!(reading! > previous)) bad(`knots[${i}].reading`, 'does not rise')
    previous = reading!
  })
  return knots
}

function checkStatistics(statistics: unknown, parameters: number): void {
  const names = [
    'samples',
    'parameters',
    'rmse',
    'residualStandardDeviation',
    'bias',
    'rSquared',
    'centre',
    'halfWidth',
  ]
  const found = numbers(statistics, 'statistics', names)
  for (const name of ['samples', 'parameters'])
    if (!Number.isInteger(found[name]) || found[name]! < 0 || found[name]! > 1e6)
      bad(`statistics.${name}`, 'is no count')
  const { standardErrors, covariance, leaveOneOutRmse } = statistics as Record<string, unknown>
  if (leaveOneOutRmse !== undefined) number(leaveOneOutRmse, 'statistics.leaveOneOutRmse')
  const rows = [list(standardErrors, 'statistics.standardErrors'), ...list(covariance, 'statistics.covariance')]
  if (rows.length !== parameters + 1) bad('statistics.covariance', `has ${rows.length - 1} rows`)
  rows.forEach((row, i) => {
    const name = i === 0 ? 'statistics.standardErrors' : `statistics.covariance[${i - 1}]`
    const values = list(row, name)
    if (values.length !== parameters) bad(name, `has ${values.length} values`)
    values.forEach((value, k) => {
      number(value, `${name}[${k}]`)
    })
  })
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text)
  } catch {
    return bad('calibration', 'is not JSON')
  }
}

function object(value: unknown, name: string): Record<string, unknown> {
  if (!isObject(value) || isList(value)) bad(name, 'is not an object')
  return value as Record<string, unknown>
}

function list(value: unknown, name: string): readonly unknown[] {
  return isList(value) ? value : bad(name, 'is not a list')
}

function number(value: unknown, name: string): number {
  return typeof value === 'number' && value - value === 0 ? value : bad(name, 'is not a finite number')
}

function numbers(value: unknown, name: string, keys: readonly string[]): Record<string, number> {
  const all = object(value, name)
  return Object.fromEntries(keys.map((key) => [key, number(all[key], `${name}.${key}`)]))
}

function bad(name: string, problem: string): never {
  throw new InputError(name, problem, 'restore what JSON.stringify made of a calibration, unchanged')
}
