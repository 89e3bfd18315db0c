import { oneOf } from '../../quantity/one-of.js'
import { LEFT_OUT_FOR, type LeftOutCount, type LeftOutFor, TABLES, type ZoneTable } from '../record/left-out.js'

const NAMES: { readonly [Table in ZoneTable]: string } = {
  climate: 'the climate',
  watering: 'the watering log',
  forecast: 'the forecasts of radiation',
}
const REASONS: { readonly [Why in LeftOutFor]: string } = {
  'without-time': 'left out: they have no time, so look at that column; water that they tell of is in no sum',
  doubled: 'left out: each has the time of another one, of which the first counts',
  'too-late': 'left out: they came when the day that they belong to had been reviewed, and are in none of its sums',
  impossible:
    'with a number that cannot be, or that stands alone far from those before and after it; it counts as missing, so look at the sensor',
}

/** How many entries of a table were left out, and why. */
export function leftOutInWords({ table, because, count }: LeftOutCount): string {
  const of = NAMES[oneOf(table, TABLES, 'finding.table')]
  return `${count} ${count === 1 ? 'entry' : 'entries'} of ${of} ${REASONS[oneOf(because, LEFT_OUT_FOR, 'finding.because')]}`
}
