import { InputError } from '../../quantity/errors.js'
import type { Finding } from '../../quantity/finding.js'
import { requireObject } from '../../quantity/guard.js'
import type { WeatherAssumption } from './weather-assumption.js'
import type { WeatherFinding } from './weather-doubts.js'

const DOUBTS: Readonly<Record<WeatherFinding['code'], (value: string, limit: string) => string>> = {
  'no-sun': () => 'the sun does not rise: a clear-sky share of 0.7 is assumed for the longwave loss',
  'light-without-sun': (value) =>
    `the solar radiation is ${value} while the sun is below the horizon: check clock, zone, longitude and sensor`,
  'brighter-than-clear-sky': (value, limit) =>
    `the solar radiation of ${value} is above that of a clear sky, ${limit}: check clock, sensor and unit`,
  'darker-than-overcast': (value, limit) =>
    `the solar radiation of ${value} is below ${limit}, less than the darkest clouds let through: check clock and sensor`,
  'air-above-saturation': (value) =>
    `the vapour pressure is above saturation (a deficit of ${value}): check humidity and temperatures`,
  'zone-far-from-site': (value) =>
    `the middle of the time zone is ${value} from the site: check the signs of both longitudes; west is negative`,
}

/**
 * Puts a doubt about the weather of a day or an hour, or what was assumed of it, into words: what, by how much, and what to look at.
 *
 * @procedure Looks up the sentence of the code and writes value and limit, rounded to three digits, and their unit into it.
 * @param finding - One of the findings or assumptions of a daily, monthly or hourly reference evapotranspiration.
 * @returns A finding with the sentence for people.
 * @throws `InputError` for a code that these procedures do not give.
 * @source common practice, no source
 * @example
 * const day = dailyReferenceETFao56({
 *   latitude: latitude(50.8), elevation: metresAboveSeaLevel(100), day: dayOfYear(187),
 *   maxTemperature: celsius(21.5), minTemperature: celsius(12.3), solar: megajoulesPerSquareMetreDay(0),
 * })
 * const [dark] = day.findings.map(explainWeatherFinding)
 * dark?.message // => 'the solar radiation of 0 MJ/m²/d is below 1.23 MJ/m²/d, less than the darkest clouds let through: check clock and sensor'
 */
export function explainWeatherFinding(finding: WeatherFinding | WeatherAssumption): Finding {
  requireObject(finding, 'finding')
  const { code, level, about, value, unit } = finding
  const shown = (number: number) => `${Number(number.toPrecision(3))}${unit === '°' ? '°' : ` ${unit}`}`
  if (isDoubt(finding)) {
    const message = DOUBTS[finding.code](shown(value), shown(finding.limit))
    return { code, level, message, about, value, unit, source: 'common practice, no source' }
  }
  const [message, source] = assumed(finding)
  return { code, level, message, about, value, unit, source }
}

function isDoubt(finding: WeatherFinding | WeatherAssumption): finding is WeatherFinding {
  return Object.hasOwn(DOUBTS, finding.code)
}

/** What was assumed, in words, and the place that says so. */
function assumed(finding: WeatherAssumption): readonly [string, string] {
  const { value } = finding
  switch (finding.code) {
    case 'assumed-humidity':
      return [
        `no humidity is given: the dew point is taken ${finding.aridity} K below the lowest temperature, which makes ${value.toFixed(2)} kPa`,
        'allen-1998, Eq. 48',
      ]
    case 'assumed-radiation':
      return [
        `neither radiation nor sunshine is given: ${value.toFixed(1)} MJ/m²/d is estimated for a site that is called ${finding.exposure}; for single days it may be wrong by a third`,
        finding.exposure === 'island' ? 'allen-1998, Eq. 51' : 'allen-1998, Eq. 50',
      ]
    case 'assumed-wind':
      return [`no wind is given: ${value} m/s at 2 m is taken`, 'allen-1998, chapter 3']
    case 'assumed-cloudiness':
      return [
        `the sun is ${finding.sunHeight < 0 ? 'down' : 'low'} and no ratio before sunset is given: ${value} of the clear-sky radiation is assumed for the longwave loss`,
        'allen-1998, chapter 4: 0.4 to 0.6 at humid, 0.7 to 0.8 at arid sites',
      ]
    case 'assumed-soil-heat':
      return ['the month before is not given: the soil heat flux is taken as zero', 'allen-1998, chapter 3']
    default:
      throw new InputError(
        'finding',
        `"${(finding as Finding).code}" is no code of the weather`,
        `give one of ${Object.keys(DOUBTS).join(', ')}, or an assumption`,
      )
  }
}
