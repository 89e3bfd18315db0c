import { digits } from '../../quantity/explained.js'
import { oneOf } from '../../quantity/one-of.js'
import { DOUBTED_COLUMNS, LIKE_UNITS, type UnitDoubt } from '../findings/zone-finding.js'

const COLUMNS: { readonly [Column in UnitDoubt['about']]: string } = {
  airTemperature: 'an air temperature',
  relativeHumidity: 'a relative humidity',
  irradiance: 'a radiation',
  windSpeed: 'a wind speed',
  rootTemperature: 'a root zone',
  feedEC: 'a feed EC',
  drainEC: 'a drain EC',
}
const LOOKS: { readonly [Like in UnitDoubt['like']]: string } = {
  fahrenheit: 'it looks like degrees Fahrenheit, which are (F − 32) / 1.8 in °C',
  kelvin: 'it looks like kelvin, which are 273.15 more than °C',
  'per-cent': 'it looks like per cent where a fraction is expected',
  fraction: 'it looks like a fraction that was taken for per cent',
  'kilometres-per-hour':
    'it looks like km/h, of which 3.6 make 1 m/s, or was measured high above the ground; in a storm it may be right',
  megajoules: 'it looks like MJ/m² in an hour or a day, or kW/m²; 1 MJ/m² in an hour are 278 W/m²',
  'light-for-growth':
    'it looks like µmol/(m² s) of light for growth, of which sunlight has about two for each W/m², or like lux',
  'millisiemens-per-metre': 'it looks like mS/m, of which 100 make 1 dS/m',
  'microsiemens-per-centimetre': 'it looks like µS/cm, of which 1000 make 1 dS/m',
}

/** The doubt with its number, the unit that it looks like, and what to do. */
export function unitDoubtInWords({ about, value, unit, like }: UnitDoubt): string {
  const column = COLUMNS[oneOf(about, DOUBTED_COLUMNS, 'finding.about')]
  const looks = LOOKS[oneOf(like, LIKE_UNITS, 'finding.like')]
  const number = `${digits(value)}${unit === '1' ? '' : ` ${unit}`}`
  return `${column} of ${number} is hard to believe: ${looks}; set the unit of its column, and where the unit is right look at the sensor`
}
