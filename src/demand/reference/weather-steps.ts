import type {
  Pressure,
  VapourPressure,
  VapourPressureDeficit,
  VapourPressureSlope,
  WindSpeed,
} from '../../quantity/generated/kinds.js'
import type { WeatherAssumption } from './weather-assumption.js'
import type { WeatherFinding } from './weather-doubts.js'

/** Steps on the way from weather to evapotranspiration. */
export interface WeatherSteps {
  /** Atmospheric pressure. Unit: kPa. */
  readonly pressure: Pressure
  /** Psychrometric constant. Unit: kPa/K. */
  readonly psychrometricConstant: VapourPressureSlope
  /** Slope of the saturation vapour pressure curve. Unit: kPa/K. */
  readonly slope: VapourPressureSlope
  /** Actual vapour pressure. Unit: kPa. */
  readonly actual: VapourPressure
  /** Deficit of vapour pressure. Unit: kPa. */
  readonly deficit: VapourPressureDeficit
  /** Wind speed at 2 m. Unit: m/s. */
  readonly windSpeed: WindSpeed
  /** What was not given and had to be estimated; `explainDemandFinding` puts it into words. */
  readonly assumedInputs: readonly WeatherAssumption[]
  /** What is doubtful; `explainDemandFinding` puts it into words. */
  readonly findings: readonly WeatherFinding[]
}
