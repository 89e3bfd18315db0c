export {
  actualVapourPressureFao56,
  type DayHumidity,
  type DayTemperatures,
  meanSaturationVapourPressureFao56,
  type VapourPressures,
  vapourPressureDeficit,
} from './actual-vapour-pressure-fao56.js'
export { atmosphericPressureFao56 } from './atmospheric-pressure-fao56.js'
export {
  type ConstantLight,
  type DaySunlight,
  dailyLightIntegral,
  dailyLightIntegralOfSunlight,
  photonFluxForDailyLight,
  type WantedLight,
} from './daily-light-integral.js'
export { type CalendarDate, dayOfDate, dayOfInstant } from './day-of-date.js'
export { densityOfMoistAir, type MoistAir } from './density-of-moist-air.js'
export { dewPointSonntag1990, frostPointSonntag1990 } from './dew-point-sonntag-1990.js'
export { elevationOfPressureFao56 } from './elevation-fao56.js'
export {
  type AirHumidity,
  type AirVapour,
  type LeafInAir,
  relativeHumidityOfAir,
  vapourPressureDeficitOfAir,
  vapourPressureDeficitOfLeaf,
  vapourPressureOfHumidity,
} from './humidity-of-air.js'
export {
  type DailyEvaporationInput,
  type EvaporationCeilingInput,
  evaporationCeiling,
  evaporationOfDailyEnergy,
  latentHeatFao56,
} from './latent-heat.js'
export { type LightSource, type LightSourceName, lightSources } from './light-sources.js'
export {
  type DailyLightResult,
  dailyLightIntegralOfSeries,
  type IrradianceSeries,
  type LightCoverage,
  type PhotonFluxSeries,
  type RadiationSumResult,
  radiationSum,
} from './light-sums.js'
export {
  type ClearSkyInput,
  clearSkyRadiationFao56,
  type NetLongwaveInput,
  type NetShortwaveInput,
  netLongwaveRadiationFao56,
  netShortwaveRadiationFao56,
} from './net-radiation-fao56.js'
export {
  type ClearSkyHourInput,
  clearSkyRadiationHourFao56,
  type NetLongwaveHourInput,
  type NetShortwaveHourInput,
  netLongwaveRadiationHourFao56,
  netShortwaveRadiationHourFao56,
  type SoilHeatHourInput,
  soilHeatHourFao56,
} from './net-radiation-hour-fao56.js'
export {
  energyFromPhotonFlux,
  type IlluminanceInput,
  illuminanceFromPhotonFlux,
  type LampsInput,
  type ParEnergyInput,
  type PhotonEnergyInput,
  type PhotonFluxOfSource,
  photonFluxFromEnergy,
  photonFluxFromIlluminance,
  photonFluxOfLamps,
} from './photon-flux-conversions.js'
export { photonYieldOfGlobalRadiation, photonYieldOfWavelength, type SunlightMix } from './photon-yield.js'
export { psychrometricConstantFao56 } from './psychrometric-constant-fao56.js'
export { saturationVapourPressureBuck1981, validityBuck1981 } from './saturation-vapour-pressure-buck-1981.js'
export {
  dewPointFao56,
  saturationVapourPressureFao56,
  slopeOfSaturationVapourPressureFao56,
} from './saturation-vapour-pressure-fao56.js'
export {
  saturationVapourPressureOverIceSonntag1990,
  saturationVapourPressureSonntag1990,
} from './saturation-vapour-pressure-sonntag-1990.js'
export { saturationVapourPressureWagnerPruss2002 } from './saturation-vapour-pressure-wagner-pruss-2002.js'
export { saturationVapourPressureWmo2008 } from './saturation-vapour-pressure-wmo-2008.js'
export {
  type MonthsAround,
  type MonthsSoFar,
  type SoilWarming,
  soilHeatOfCurrentMonthFao56,
  soilHeatOfMonthFao56,
  soilHeatOfWarmingFao56,
} from './soil-heat-fao56.js'
export {
  dayLengthFao56,
  extraterrestrialRadiationFao56,
  type SolarDay,
  type SolarGeometry,
  solarGeometryFao56,
} from './solar-geometry-fao56.js'
export {
  extraterrestrialRadiationHourFao56,
  type SolarHour,
  type SolarHourGeometry,
  solarHourFao56,
} from './solar-hour-fao56.js'
export {
  type RadiationFromTemperatureInput,
  type RadiationOnIslandInput,
  type SiteExposure,
  type SunshineFromRadiationInput,
  solarRadiationFromTemperatureFao56,
  solarRadiationOnIslandFao56,
  sunshineFromSolarRadiationFao56,
} from './solar-radiation-estimates-fao56.js'
export { type SunshineInput, solarRadiationFromSunshineFao56 } from './solar-radiation-from-sunshine-fao56.js'
export type {
  ActualVapour,
  AirPressure,
  AirTemperature,
  Albedo,
  BridgedGap,
  CanopyPhotons,
  Extraterrestrial,
  HumidityRange,
  KnownSource,
  LitArea,
  MinTemperature,
  MonthBefore,
  PhotonsPerJoule,
  SiteElevation,
  SolarRadiation,
  Vaporisation,
} from './terms.js'
export { type VapourPressureDeficitBand, vapourPressureDeficitBand } from './vapour-pressure-deficit-band.js'
export {
  type DewAtNight,
  type MaxHumidity,
  type MeanHumidity,
  type PsychrometerReading,
  type PsychrometerVentilation,
  vapourPressureFromDewPointFao56,
  vapourPressureFromMaxHumidityFao56,
  vapourPressureFromMeanHumidityFao56,
  vapourPressureFromMinTemperatureFao56,
  vapourPressureFromPsychrometerFao56,
} from './vapour-pressure-from-fao56.js'
export {
  absoluteHumidity,
  humidityRatio,
  type RatioInAir,
  type VapourInAir,
  vapourPressureOfRatio,
} from './water-in-air.js'
export { type WetBulbInput, wetBulbTemperature } from './wet-bulb.js'
export {
  type MeasuredWind,
  type WindElsewhere,
  windSpeedAtHeightFao56,
  windSpeedAtTwoMetresFao56,
} from './wind-at-two-metres-fao56.js'
