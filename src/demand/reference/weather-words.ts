import { digits, type WordsOf } from '../../quantity/explained.js'
import type { WeatherAssumption } from './weather-assumption.js'
import type { WeatherFinding } from './weather-doubts.js'

const PRACTICE = 'common practice, no source'
const shown = (number: number, { unit }: WeatherFinding) => `${digits(number)}${unit === '°' ? '°' : ` ${unit}`}`

/** What is doubtful in the weather, by how much, and what to look at. */
export const DOUBT_WORDS: WordsOf<WeatherFinding> = {
  'no-sun': ['the sun does not rise: a clear-sky share of 0.7 is assumed for the longwave loss', PRACTICE],
  'light-without-sun': [
    (found) =>
      `the solar radiation is ${shown(found.value, found)} while the sun is below the horizon: check clock, zone, longitude and sensor`,
    PRACTICE,
  ],
  'brighter-than-clear-sky': [
    (found) =>
      `the solar radiation of ${shown(found.value, found)} is above that of a clear sky, ${shown(found.limit, found)}: check clock, sensor and unit`,
    PRACTICE,
  ],
  'darker-than-overcast': [
    (found) =>
      `the solar radiation of ${shown(found.value, found)} is below ${shown(found.limit, found)}, less than the darkest clouds let through: check clock and sensor`,
    PRACTICE,
  ],
  'air-above-saturation': [
    (found) =>
      `the vapour pressure is above saturation (a deficit of ${shown(found.value, found)}): check humidity and temperatures`,
    PRACTICE,
  ],
  'zone-far-from-site': [
    (found) =>
      `the middle of the time zone is ${shown(found.value, found)} from the site: check the signs of both longitudes; west is negative`,
    PRACTICE,
  ],
}

/** What was assumed of the weather, and the place that says so. */
export const ASSUMPTION_WORDS: WordsOf<WeatherAssumption> = {
  'assumed-humidity': [
    ({ aridity, value }) =>
      `no humidity is given: the dew point is taken ${aridity} K below the lowest temperature, which makes ${value.toFixed(2)} kPa`,
    'allen-1998, Eq. 48',
  ],
  'assumed-radiation': [
    ({ value, exposure }) =>
      `neither radiation nor sunshine is given: ${value.toFixed(1)} MJ/m²/d is estimated for a site that is called ${exposure}; for single days it may be wrong by a third`,
    'allen-1998, Eq. 50 and, for an island, 51',
  ],
  'assumed-wind': [({ value }) => `no wind is given: ${value} m/s at 2 m is assumed`, 'allen-1998, chapter 3'],
  'assumed-cloudiness': [
    ({ sunElevation, value }) =>
      `the sun is ${sunElevation < 0 ? 'down' : 'low'} and no ratio before sunset is given: ${value} of the clear-sky radiation is assumed for the longwave loss`,
    'allen-1998, chapter 4: 0.4 to 0.6 at humid, 0.7 to 0.8 at arid sites',
  ],
  'assumed-soil-heat': ['the month before is not given: the soil heat flux is taken as zero', 'allen-1998, chapter 3'],
}
