import { digits } from '../../quantity/explained.js'
import { oneOf } from '../../quantity/one-of.js'
import { DOUBTED_COLUMNS, LIKE_UNITS, type UnitDoubt } from '../findings/zone-finding.js'

const COLUMNS: { readonly [Column in UnitDoubt['about']]: string } = {
  airTemperature: 'an air temperature',
  relativeHumidity: 'a relative humidity',
  irradiance: 'a radiation',
  windSpeed: 'a wind speed',
  rootTemperature: 'a root-zone temperature',
  feedEC: 'a feed EC',
  drainEC: 'a drain EC',
}
const LOOKS: { readonly [Like in UnitDoubt['like']]: string } = {
  fahrenheit: 'it looks like degrees Fahrenheit; (F − 32) / 1.8 gives °C',
  kelvin: 'it looks like kelvin; take off 273.15 for °C',
  'per-cent': 'it looks like per cent where a fraction is expected',
  fraction: 'it looks like a fraction that was taken for per cent',
  'kilometres-per-hour':
    'it looks like km/h (3.6 km/h is 1 m/s), or was measured high above the ground; in a storm it may be right',
  megajoules: 'it looks like MJ/m² in an hour or a day, or kW/m²; 1 MJ/m² in an hour is 278 W/m²',
  'light-for-growth': 'it looks like µmol/(m² s) of light for growth (about 2 for each W/m² of sunlight), or like lux',
  'millisiemens-per-metre': 'it looks like mS/m (100 mS/m is 1 dS/m)',
  'microsiemens-per-centimetre': 'it looks like µS/cm (1000 µS/cm is 1 dS/m)',
}

/** The doubt with its number, the unit that it looks like, and what to do. */
export function unitDoubtInWords({ about, value, unit, like }: UnitDoubt): string {
  const column = COLUMNS[oneOf(about, DOUBTED_COLUMNS, 'finding.about')]
  const looks = LOOKS[oneOf(like, LIKE_UNITS, 'finding.like')]
  const number = `${digits(value)}${unit === '1' ? '' : ` ${unit}`}`
  return `${column} of ${number} is hard to believe: ${looks}; set the unit of its column, or look at the sensor if the unit is right`
}
