import { isMissing } from '../../quantity/missing.js'
import type { KeptReading } from './reading-state.js'

/** A reading with what is missing as null, so that JSON can hold it. */
export function keptReading(time: number | undefined, value: number | undefined): KeptReading {
  return {
    time: isMissing(time as number, 'time') ? null : (time as number),
    value: isMissing(value as number, 'value') ? null : (value as number),
  }
}
