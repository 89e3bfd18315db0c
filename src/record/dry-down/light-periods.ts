import { InputError } from '../../quantity/errors.js'
import { plain, requireRows } from '../../quantity/guard.js'

/** A time with light, from sunrise to sunset or from lamps on to lamps off. */
export interface LightPeriod {
  /** When it begins. Unit: s. Range: any. */
  readonly start: number
  /** When it ends. Unit: s. Range: any. */
  readonly end: number
}

/** Refuses periods that are not in order of time or overlap. */
export function checkedPeriods(light: readonly LightPeriod[]): readonly LightPeriod[] {
  requireRows(light, 'light')
  light.forEach(({ start, end }, k) => {
    if (!(plain(start) < plain(end)))
      throw new InputError('light', `period ${k} does not end after it begins`, 'give its end last')
    if (k > 0 && !(start >= light[k - 1]!.end))
      throw new InputError('light', `period ${k} begins before the one before it ends`, 'give them in order of time')
  })
  return light
}
