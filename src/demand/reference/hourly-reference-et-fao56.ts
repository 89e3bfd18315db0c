import { netLongwaveRadiationHourFao56, soilHeatHourFao56 } from '../../air/net-radiation-hour-fao56.js'
import { slopeOfSaturationVapourPressureFao56 } from '../../air/saturation-vapour-pressure-fao56.js'
import type { HourlyReferenceET, HourlySoilHeat } from '../../quantity/generated/kinds.js'
import { optionOr, optionsOf, requireObject } from '../../quantity/guard.js'
import { oneOf } from '../../quantity/one-of.js'
import type { HourlyWeather } from './hourly-weather.js'
import { penmanMonteith } from './reference-et-hour.js'
import { type StepsOfHour, stepsOfHour } from './steps-of-hour.js'

const SURFACES = ['70', '50-and-200'] as const
/** Denominator constants for resistances of 50 s/m by day and 200 s/m at night: 50/208 and 200/208, rounded as 70/208 is to 0.34. */
const DAY_AND_NIGHT = { day: 0.24, night: 0.96 } as const

/** An hour of weather, and the resistance of the grass in it. */
export interface HourlyWeatherFao56 extends HourlyWeather {
  /**
   * Resistance of the grass in s/m: `70` at all hours, as the paper of 1998 prints it (default), or `50-and-200` by day and at night, as its
   * authors have recommended for hours since 2006; the hour counts as day where the net radiation is above zero.
   */
  readonly surfaceResistance?: (typeof SURFACES)[number]
}

/** Reference evapotranspiration of an hour, with every step that leads to it. */
export interface HourlyReferenceETSteps extends StepsOfHour {
  /** Reference evapotranspiration; negative values are dew. Unit: mm/h. */
  readonly referenceET: HourlyReferenceET
  /** The part of it that radiation drives. Unit: mm/h. */
  readonly radiationPart: HourlyReferenceET
  /** The part of it that wind and dry air drive. Unit: mm/h. */
  readonly aerodynamicPart: HourlyReferenceET
  /** Soil heat flux. Unit: MJ/m²/h. */
  readonly soilHeat: HourlySoilHeat
}

/**
 * Reference evapotranspiration of grass for an hour from its weather, with all steps of the hourly FAO Penman-Monteith method.
 *
 * Cloudiness is measured while the sun stands 0.3 rad or higher; below that the ratio before sunset is taken, or 0.7 is assumed and named.
 * For the soil heat an hour counts as day while any sun shines above the atmosphere. With resistances of 50 and 200 s/m the constant 0.34
 * becomes 0.24 by day and 0.96 at night.
 *
 * @equation `ET_o = \frac{0.408\,\Delta (R_n - G) + \gamma \frac{37}{T + 273} u_2 (e^\circ(T) - e_a)}{\Delta + \gamma (1 + 0.34\,u_2)}`
 * @returns Reference evapotranspiration, the steps to it, what was assumed and what is doubtful.
 * @throws `DomainError` outside the ranges, `InputError` without any humidity.
 * @validity A large field of green, well-watered grass; under cover it is at best an index.
 * @source allen-1998, Eq. 53 with the steps of chapters 3 and 4
 * @source allen-2006 (resistances of 50 and 200 s/m by the hour)
 * @example
 * const hour = hourlyReferenceETFao56({
 *   latitude: latitude(16.216667), longitude: longitude(-16.25), zoneLongitude: longitude(-15), elevation: metresAboveSeaLevel(8),
 *   day: dayOfYear(274), middle: hours(14.5), temperature: celsius(38), relativeHumidity: percent(52),
 *   solar: megajoulesPerSquareMetreHour(2.45), wind: { speed: metresPerSecond(3.3), height: metres(2) },
 * })
 * hour.referenceET // => 0.63
 */
export function hourlyReferenceETFao56(weather: HourlyWeatherFao56): HourlyReferenceETSteps {
  const surface = oneOf(optionOr(optionsOf(weather).surfaceResistance, '70'), SURFACES, 'surfaceResistance')
  requireObject(weather, 'weather')
  const steps = stepsOfHour(weather, {
    slope: slopeOfSaturationVapourPressureFao56,
    netLongwave: netLongwaveRadiationHourFao56,
  })
  const { netRadiation } = steps
  const soilHeat = soilHeatHourFao56({ netRadiation, daylight: steps.extraterrestrial > 0 })
  const denominator = surface === '70' ? 0.34 : netRadiation > 0 ? DAY_AND_NIGHT.day : DAY_AND_NIGHT.night
  const et = (dryness: number) =>
    penmanMonteith(
      steps.slope,
      steps.psychrometricConstant,
      netRadiation - soilHeat,
      weather.temperature,
      steps.windSpeed,
      dryness,
      37,
      denominator,
    ) as HourlyReferenceET
  const referenceET = et(steps.deficit)
  const radiationPart = et(0)
  const aerodynamicPart = (referenceET - radiationPart) as HourlyReferenceET
  return { referenceET, radiationPart, aerodynamicPart, soilHeat, ...steps }
}
