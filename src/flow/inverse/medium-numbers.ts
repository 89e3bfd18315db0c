import { InputError } from '../../quantity/errors.js'
import { numberIn, optionOr, plain } from '../../quantity/guard.js'
import { oneOf } from '../../quantity/one-of.js'
import { BYPASS, GUESSED_CONNECTION, PROBE_OFFSET, SATURATED_CONDUCTIVITY } from '../domains.js'
import type { MediumNumber, MediumRecord } from './medium-record.js'

const NAMES: readonly MediumNumber[] = [
  'residual',
  'saturated',
  'alpha',
  'n',
  'poreConnection',
  'saturatedConductivity',
  'bypass',
  'start',
  'probeOffset',
]

/** A number to be found, on the scale on which it is sought. */
export interface SoughtNumber {
  readonly name: MediumNumber
  readonly unit: string
  /** Whether it is sought by the logarithm of what it exceeds `above` by. */
  readonly logarithmic: boolean
  readonly above: number
  /** First guess and ends on the scale of the search. */
  readonly guess: number
  readonly low: number
  readonly high: number
  /** How far it is moved for differences: well above the rounding of a simulation, well below what bends its answer. */
  readonly move: number
}

/** The number itself. */
export function numberAt({ logarithmic, above }: SoughtNumber, place: number): number {
  return logarithmic ? above + Math.exp(place) : place
}

/** All numbers of a record by name, as they are guessed. */
export type MediumValues = Record<MediumNumber, number>

/** The guess by name, checked. The numbers of the curve are checked where the curve is made. */
export function guessedValues({ guess, start }: MediumRecord): MediumValues {
  return {
    residual: guess.residual,
    saturated: guess.saturated,
    alpha: guess.alpha,
    n: guess.n,
    poreConnection: numberIn(optionOr(guess.poreConnection, 0.5), GUESSED_CONNECTION, 'poreConnection'),
    saturatedConductivity: numberIn(guess.saturatedConductivity, SATURATED_CONDUCTIVITY, 'saturatedConductivity'),
    bypass: numberIn(optionOr(guess.bypass, 0), BYPASS, 'bypass'),
    start: start ?? 0,
    probeOffset: numberIn(optionOr(guess.probeOffset, 0), PROBE_OFFSET, 'probeOffset'),
  }
}

/** The numbers that are sought, in the order of the names. */
export function soughtNumbers(record: MediumRecord, values: MediumValues): SoughtNumber[] {
  const wanted = new Set(record.fit.map((name) => oneOf(name, NAMES, 'fit')))
  if (wanted.size === 0) throw new InputError('fit', 'names nothing', 'name at least one number to be found')
  if (wanted.has('start') && record.start === undefined)
    throw new InputError('fit', 'names `start`, of which nothing is known', 'give `start` and its uncertainty')
  if (wanted.has('probeOffset') && record.probe === undefined)
    throw new InputError('fit', 'names `probeOffset`, and there is no probe', 'give its readings')
  return NAMES.filter((name) => wanted.has(name)).map((name) => soughtNumber(name, values))
}

function soughtNumber(name: MediumNumber, values: MediumValues): SoughtNumber {
  const guess = values[name]
  // Saturated and residual keep apart whatever the search does.
  const between = (plain(values.saturated) + plain(values.residual)) / 2
  const linear = (unit: string, low: number, high: number, move: number): SoughtNumber => {
    return { name, unit, logarithmic: false, above: 0, guess: Math.min(Math.max(guess, low), high), low, high, move }
  }
  const logarithmic = (unit: string, above: number, low: number, high: number): SoughtNumber => {
    const place = Math.log(guess - above)
    const ends = [Math.min(Math.log(low), place), Math.max(Math.log(high), place)] as const
    return { name, unit, logarithmic: true, above, guess: place, low: ends[0], high: ends[1], move: 0.01 }
  }
  switch (name) {
    case 'residual':
      return linear('m³/m³', 0, between - 0.01, 1e-3)
    case 'saturated':
      return linear('m³/m³', between + 0.01, 1, 1e-3)
    case 'alpha':
      return logarithmic('1/cm', 0, guess / 100, guess * 100)
    case 'n':
      return logarithmic('1', 1, 0.05, 11)
    case 'poreConnection':
      return linear('1', -1.99, 10, 0.02)
    case 'saturatedConductivity':
      return logarithmic('cm/h', 0, guess / 1000, guess * 1000)
    case 'bypass':
      return linear('1', 0, 1, 2e-3)
    case 'start':
      return linear('m³/m³', Math.max(0, guess - 0.2), Math.min(1, guess + 0.2), 1e-3)
    case 'probeOffset':
      return linear('m³/m³', -0.3, 0.3, 1e-3)
  }
}
