import type { LeastSquares } from '../../numerics/levenberg-marquardt.js'
import { attempt } from '../../quantity/attempt.js'
import type { Domain } from '../../quantity/domain.js'
import { DRAINED, WATER_CONTENT } from '../../quantity/domains.js'
import { InputError } from '../../quantity/errors.js'
import { numberIn, optionOr, requireList, requireOption } from '../../quantity/guard.js'
import { DRAIN_UNCERTAINTY, READING_UNCERTAINTY, START_UNCERTAINTY } from '../domains.js'
import { placeOf } from '../probe-view/probe-reading.js'
import { guessedValues, type MediumValues, numberAt, type SoughtNumber, soughtNumbers } from './medium-numbers.js'
import type { MediumRecord } from './medium-record.js'
import { type SimulatedRecord, simulatedRecord } from './simulated-record.js'

/** A measured series: which steps it knows, what was measured there, and how well. */
interface Measured {
  readonly steps: readonly number[]
  readonly values: readonly number[]
  readonly uncertainty: number
}

/** Differences between simulation and record as a least-squares problem. */
export interface MediumProblem extends Omit<LeastSquares, 'start'> {
  readonly sought: readonly SoughtNumber[]
  readonly drain: Measured
  readonly readings: Measured
  /** The numbers of the medium at a place of the search, by name. */
  readonly valuesAt: (place: readonly number[]) => MediumValues
}

/** Checks a record and turns it into residuals: drains, then readings, then what is known of the start. */
export function mediumProblem(record: MediumRecord): MediumProblem {
  const guessed = guessedValues(record)
  const sought = soughtNumbers(record, guessed)
  const { drain, readings, start } = measurementsOf(record)
  const known = drain.steps.length + readings.steps.length
  requireEnough(known, sought.length)
  const valuesAt = (place: readonly number[]): MediumValues => {
    const values = { ...guessed }
    sought.forEach((number, k) => {
      values[number.name] = numberAt(number, place[k]!)
    })
    return values
  }
  return {
    sought,
    drain,
    readings,
    valuesAt,
    lower: sought.map(({ low }) => low),
    upper: sought.map(({ high }) => high),
    moves: sought.map(({ move }) => move),
    settled: 1e-6,
    count: known + (start === undefined ? 0 : 2),
    residuals: (place, out) => {
      const values = valuesAt(place)
      const run = attempt(() => simulatedRecord(record, values, readings.steps.length > 0))
      // A medium that cannot be simulated is none to go to; all else is wrong with the record.
      if (!run.ok && run.error.code !== 'no-convergence') throw run.error
      if (!run.ok) out.fill(Number.NaN)
      else {
        differences(run.value, drain, readings, values.probeOffset, out)
        if (start === undefined) return
        out[known] = (values.start - start.value) / start.uncertainty
        out[known + 1] = (values.start - run.value.start) / start.uncertainty
      }
    },
  }
}

function requireEnough(known: number, unknown: number): void {
  if (known > unknown + 1) return
  throw new InputError(
    'drain',
    `and readings are ${known} numbers for ${unknown} unknown ones`,
    'measure more often, or fit fewer numbers',
  )
}

/** What was measured, checked; no start where none is told. */
function measurementsOf(record: MediumRecord) {
  requireOption(record.drain, 'drain')
  requireOption(record.probe, 'probe')
  const drainError = numberIn(optionOr(record.drain?.uncertainty, 0.005), DRAIN_UNCERTAINTY, 'drain.uncertainty')
  // Also where all its readings are missing.
  if (record.probe !== undefined) placeOf(record.probe)
  const readingError = numberIn(optionOr(record.probe?.uncertainty, 0.005), READING_UNCERTAINTY, 'probe.uncertainty')
  const drain = measured(record.drain?.volumes, record, DRAINED, 'drain.volumes', drainError)
  const readings = measured(record.probe?.waterContents, record, WATER_CONTENT, 'probe.waterContents', readingError)
  const uncertainty = numberIn(optionOr(record.startUncertainty, 0.01), START_UNCERTAINTY, 'startUncertainty')
  const start =
    record.start === undefined ? undefined : { value: numberIn(record.start, WATER_CONTENT, 'start'), uncertainty }
  return { drain, readings, start }
}

/** Simulated less measured, in uncertainties: drains, then readings. */
function differences(
  { drained, read }: SimulatedRecord,
  drain: Measured,
  readings: Measured,
  offset: number,
  out: Float64Array,
): void {
  drain.steps.forEach((k, i) => {
    out[i] = (drained[k]! - drain.values[i]!) / drain.uncertainty
  })
  readings.steps.forEach((k, i) => {
    out[drain.steps.length + i] = (read[k]! + offset - readings.values[i]!) / readings.uncertainty
  })
}

function measured(
  values: readonly (number | undefined)[] | undefined,
  { steps }: MediumRecord,
  domain: Domain,
  name: string,
  uncertainty: number,
): Measured {
  if (values === undefined) return { steps: [], values: [], uncertainty }
  requireList(values, name)
  requireList(steps, 'steps')
  if (values.length !== steps.length)
    throw new InputError(
      name,
      `has ${values.length} entries for ${steps.length} steps`,
      'give one for each step, and undefined where nothing was measured',
    )
  const known = [...values.keys()].filter((k) => values[k] !== undefined && !Number.isNaN(values[k]))
  return { steps: known, values: known.map((k) => numberIn(values[k]!, domain, name)), uncertainty }
}
