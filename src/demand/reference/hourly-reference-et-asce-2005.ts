import type { NetLongwaveHourInput } from '../../air/net-radiation-hour-fao56.js'
import type { HourlyNetRadiation, HourlyReferenceET } from '../../quantity/generated/kinds.js'
import { requireObject } from '../../quantity/guard.js'
import { cloudinessAsce, SHORT_HOUR, SIGMA_HOUR, slopeAsce, TALL_HOUR } from './asce-2005.js'
import type { HourlyWeather } from './hourly-weather.js'
import { penmanMonteith } from './reference-et-hour.js'
import { type StepsOfHour, stepsOfHour } from './steps-of-hour.js'

/** Standardized reference evapotranspiration of an hour for both surfaces, with every step that leads to it. */
export interface HourlyReferenceETAsce extends StepsOfHour {
  /** Of the short surface, clipped grass of 12 cm (ETos); negative values are dew. Unit: mm/h. */
  readonly short: HourlyReferenceET
  /** Of the tall surface, full-cover alfalfa of 50 cm (ETrs); negative values are dew. Unit: mm/h. */
  readonly tall: HourlyReferenceET
  /** Net radiation; the hour counts as day where it is above zero. Unit: MJ/m²/h. */
  readonly netRadiation: HourlyNetRadiation
}

/**
 * Standardized reference evapotranspiration of an hour for short and tall surfaces from its weather.
 *
 * Numerator constants are 37 (short) and 66 (tall); denominator constants 0.24 by day and 0.96 by night (short), 0.25 and 1.7 (tall); the
 * soil takes 0.1 and 0.5 (short), 0.04 and 0.2 (tall) of the net radiation. An hour counts as day where the net radiation is positive.
 *
 * @equation `ET_{sz} = \frac{0.408\,\Delta (R_n - G) + \gamma \frac{C_n}{T + 273} u_2 (e_s - e_a)}{\Delta + \gamma (1 + C_d\,u_2)}`
 * @returns Reference evapotranspiration of both surfaces, the steps, what was assumed and what is doubtful.
 * @throws `DomainError` outside the ranges, `InputError` without any humidity.
 * @validity Large fields of the two surfaces without stress; under cover it is at best an index.
 * @source asce-2005, Eq. 1 with Table 1 and the hourly steps
 * @example
 * const hour = hourlyReferenceETAsce2005({
 *   latitude: latitude(40.41), longitude: longitude(-104.78), zoneLongitude: longitude(-105), elevation: metresAboveSeaLevel(1462.4),
 *   day: dayOfYear(183), middle: hours(16.5), temperature: celsius(30.9), vapourPressure: kilopascals(1.09),
 *   solar: megajoulesPerSquareMetreHour(2.24), wind: { speed: metresPerSecond(4.07), height: metres(3) },
 * })
 * hour.short // => 0.599
 * hour.tall // => 0.807
 */
export function hourlyReferenceETAsce2005(weather: HourlyWeather): HourlyReferenceETAsce {
  requireObject(weather, 'weather')
  const steps = stepsOfHour(weather, { slope: slopeAsce, netLongwave })
  const byDay = steps.netRadiation > 0
  const et = (surface: typeof SHORT_HOUR | typeof TALL_HOUR) =>
    penmanMonteith(
      steps.slope,
      steps.psychrometricConstant,
      steps.netRadiation * (1 - (byDay ? surface.soilDay : surface.soilNight)),
      weather.temperature,
      steps.windSpeed,
      steps.deficit,
      surface.numerator,
      byDay ? surface.day : surface.night,
    ) as HourlyReferenceET
  return { short: et(SHORT_HOUR), tall: et(TALL_HOUR), ...steps }
}

/** Net outgoing longwave radiation of an hour (Eq. 44). */
function netLongwave({
  temperature,
  actualVapourPressure,
  relativeShortwave,
}: NetLongwaveHourInput): HourlyNetRadiation {
  const black = SIGMA_HOUR * (temperature + 273.16) ** 4
  const humidity = 0.34 - 0.14 * Math.sqrt(actualVapourPressure)
  return (black * humidity * cloudinessAsce(relativeShortwave)) as HourlyNetRadiation
}
