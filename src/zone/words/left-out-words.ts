import { oneOf } from '../../quantity/one-of.js'
import { LEFT_OUT_FOR, type LeftOutCount, type LeftOutFor, TABLES, type ZoneTable } from '../record/left-out.js'

const NAMES: { readonly [Table in ZoneTable]: string } = {
  climate: 'the climate',
  watering: 'the watering log',
  forecast: 'the forecasts of radiation',
}
const REASONS: { readonly [Why in LeftOutFor]: string } = {
  'without-time': 'left out for lack of a time, and in no sum: check the time column',
  doubled: 'left out for having the same time as an earlier one, which counts',
  'too-late': 'left out as too late: the day had already been reviewed, and its sums do not include late entries',
  impossible:
    'with a number that is impossible, or far from those before and after it; it counts as missing, so look at the sensor',
}

/** How many entries of a table were left out, and why. */
export function leftOutInWords({ table, because, count }: LeftOutCount): string {
  const of = NAMES[oneOf(table, TABLES, 'finding.table')]
  return `${count} ${count === 1 ? 'entry' : 'entries'} of ${of} ${REASONS[oneOf(because, LEFT_OUT_FOR, 'finding.because')]}`
}
