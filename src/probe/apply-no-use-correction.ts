import { InputError } from '../quantity/errors.js'
import type { BulkEC, Temperature, WaterContent } from '../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../quantity/guard.js'
import { BULK_EC, READ_CONTENT, READ_TEMPERATURE } from './domains.js'
import type { CorrectionSlope, NoUseCorrection } from './no-use-correction.js'
import type { ProbeFinding } from './probe-finding.js'

/** A water content to be corrected. */
export interface NoUseReading {
  /** How temperature and salt move the probe, made by `fitNoUseCorrection`. */
  readonly correction: NoUseCorrection
  /** What the calibration gave. Unit: m³/m³. Range: (-∞, ∞). */
  readonly waterContent: WaterContent
  /** Temperature of the medium. Unit: °C. Range: (-∞, ∞). */
  readonly temperature: Temperature
  /** Bulk EC at 25 °C; needed when the correction has a slope for it. Unit: dS/m. Range: [0, ∞). */
  readonly bulkEC?: BulkEC
}

/** A corrected water content. */
export interface CorrectedWaterContent {
  /** Water content at the reference temperature and EC. Unit: m³/m³. */
  readonly waterContent: WaterContent
  readonly findings: readonly ProbeFinding[]
}

/**
 * A water content brought to the temperature, and the bulk EC, of reference.
 *
 * @equation `\theta_r = \theta - b_T (T - T_r) - b_E (\sigma - \bar\sigma)`
 * @returns The corrected water content, with a warning outside the temperatures and ECs of the record.
 * @throws `DomainError` outside the ranges; `InputError` when the bulk EC is needed and missing.
 * @source definition
 * @example
 * const temperatures = Float64Array.from({ length: 48 }, (_, i) => 20 + 5 * Math.sin((i * Math.PI) / 12))
 * const waterContents = temperatures.map((t) => 0.55 + 0.002 * (t - 25))
 * const correction = fitNoUseCorrection({ waterContents, temperatures })
 * applyNoUseCorrection({
 *   correction,
 *   waterContent: waterContent(0.54),
 *   temperature: celsius(20),
 * }).waterContent // => 0.55
 */
export function applyNoUseCorrection(reading: NoUseReading): CorrectedWaterContent {
  requireObject(reading, 'reading')
  const { correction } = reading
  const waterContent = numberIn(reading.waterContent, READ_CONTENT, 'waterContent')
  const warm = numberIn(reading.temperature, READ_TEMPERATURE, 'temperature')
  const findings = outside('temperature', warm, correction.temperature, '°C')
  let corrected = waterContent - correction.temperature.slope * (warm - correction.temperature.reference)
  const salt = reading.bulkEC === undefined ? undefined : numberIn(reading.bulkEC, BULK_EC, 'bulkEC')
  if (correction.bulkEC !== undefined) {
    if (salt === undefined)
      throw new InputError('bulkEC', 'is missing', 'this correction has a slope for it: give it, or fit without it')
    corrected -= correction.bulkEC.slope * (salt - correction.bulkEC.reference)
    findings.push(...outside('bulkEC', salt, correction.bulkEC, 'dS/m'))
  }
  return { waterContent: corrected as WaterContent, findings }
}

function outside(about: string, value: number, { min, max }: CorrectionSlope, unit: string): ProbeFinding[] {
  if (value >= min && value <= max) return []
  return [{ code: 'outside-no-use-record', level: 'caution', about, value, min, max, unit }]
}
