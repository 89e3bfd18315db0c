import { InputError } from '../quantity/errors.js'
import type { ProbeFinding } from './probe-finding.js'

/** Readings that count in whole numbers must not jump by more than this from one to the next, in m³/m³. Common practice, no source. */
const MAX_STEP = 0.1
/** Readings nearer to each other than this share of the larger cannot be told from scatter. Common practice, no source. */
const MIN_SHARE = 0.01

/** Refuses a dry and a wet reading that are too near to each other to tell water by them. */
export function checkSpread(dry: number, wet: number, rise: number): void {
  const apart = Math.abs(wet - dry)
  const whole = Number.isInteger(dry) && Number.isInteger(wet)
  const coarse = whole && Math.max(Math.abs(dry), Math.abs(wet)) >= 10 && rise / apart > MAX_STEP
  if (!coarse && apart >= MIN_SHARE * Math.max(Math.abs(dry), Math.abs(wet))) return
  throw new InputError(
    'saturated.reading',
    `${wet} is only ${Number(apart.toPrecision(3))} away from the ${dry} of the dry sample, so that scatter would pass for water`,
    'read both samples again: a probe that hardly tells dry from wet is broken, not inserted, or its readings are swapped',
  )
}

/** A reading that falls with water is right for some probes, and for others a sign of swapped samples. */
export function fallingReadings(dry: number, wet: number): ProbeFinding[] {
  if (wet > dry) return []
  const about = 'saturated.reading'
  return [{ code: 'reading-falls-with-water', level: 'caution', about, value: wet - dry, unit: 'raw' }]
}
