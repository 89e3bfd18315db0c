import type { NetLongwaveInput } from '../../air/net-radiation-fao56.js'
import type { DailyNetRadiation, ReferenceET } from '../../quantity/generated/kinds.js'
import { requireObject } from '../../quantity/guard.js'
import { cloudinessAsce, SHORT_DAY, SIGMA_DAY, slopeAsce, TALL_DAY } from './asce-2005.js'
import type { DailyWeather } from './daily-weather.js'
import { penmanMonteith } from './reference-et-hour.js'
import { type StepsOfDay, stepsOfDay } from './steps-of-day.js'

/** Standardized reference evapotranspiration of a day for both surfaces, with every step that leads to it. */
export interface DailyReferenceETAsce extends StepsOfDay {
  /** Of the short surface, clipped grass of 12 cm (ETos). Unit: mm/d. */
  readonly short: ReferenceET
  /** Of the tall surface, full-cover alfalfa of 50 cm (ETrs). Unit: mm/d. */
  readonly tall: ReferenceET
}

/**
 * Standardized reference evapotranspiration of a day for short and tall surfaces from its weather.
 *
 * The constants are 900 and 0.34 for the short, 1600 and 0.38 for the tall surface. Measured over clear-sky radiation is held between 0.3
 * and 1. What is missing is estimated as in FAO-56 and named in `assumedInputs`.
 *
 * @equation `ET_{sz} = \frac{0.408\,\Delta (R_n - G) + \gamma \frac{C_n}{T + 273} u_2 (e_s - e_a)}{\Delta + \gamma (1 + C_d\,u_2)}`
 * @param weather - Temperatures and place; humidity, solar radiation and wind where they are known.
 * @returns Reference evapotranspiration of both surfaces, the steps, what was assumed and what is doubtful.
 * @throws `DomainError` outside the ranges, `InputError` when a pair is swapped.
 * @validity Large fields of the two surfaces without stress; under cover it is at best an index.
 * @source asce-2005, Eq. 1 with Table 1 and the daily steps
 * @example
 * const day = dailyReferenceETAsce2005({
 *   latitude: latitude(40.41), elevation: metresAboveSeaLevel(1462.4), day: dayOfYear(183),
 *   maxTemperature: celsius(32.4), minTemperature: celsius(10.9), vapourPressure: kilopascals(1.27),
 *   solar: megajoulesPerSquareMetreDay(22.4), wind: { speed: metresPerSecond(1.94), height: metres(3) },
 * })
 * day.short // => 5.69
 * day.tall // => 7.32
 */
export function dailyReferenceETAsce2005(weather: DailyWeather): DailyReferenceETAsce {
  requireObject(weather, 'weather')
  const steps = stepsOfDay(weather, { slope: slopeAsce, netLongwave })
  const et = ({ numerator, denominator }: typeof SHORT_DAY | typeof TALL_DAY) =>
    penmanMonteith(
      steps.slope,
      steps.psychrometricConstant,
      steps.netRadiation,
      steps.meanTemperature,
      steps.windSpeed,
      steps.deficit,
      numerator,
      denominator,
    ) as ReferenceET
  return { short: et(SHORT_DAY), tall: et(TALL_DAY), ...steps }
}

/** Net outgoing longwave radiation of a day (Eq. 17). */
function netLongwave({
  maxTemperature: max,
  minTemperature: min,
  actualVapourPressure,
  relativeShortwave,
}: NetLongwaveInput): DailyNetRadiation {
  const black = (SIGMA_DAY * ((max + 273.16) ** 4 + (min + 273.16) ** 4)) / 2
  const humidity = 0.34 - 0.14 * Math.sqrt(actualVapourPressure)
  return (black * humidity * cloudinessAsce(relativeShortwave)) as DailyNetRadiation
}
