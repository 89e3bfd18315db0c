export {
  adjustedDepletionFraction,
  type DaysOfWaterInput,
  type DepletionAdjustmentInput,
  daysOfWater,
  type ReadilyAvailableInput,
  type RootZone,
  type RootZoneDepletionInput,
  readilyAvailableWater,
  rootZoneDepletion,
  type StressInput,
  totalAvailableWater,
  waterStressCoefficient,
} from './available-water.js'
export { type BailleInput, transpirationBaille1994, validityBaille1994 } from './baille-1994.js'
export { type BasalFromLeafAreaInput, basalCoefficientFromLeafArea } from './basal-from-leaf-area.js'
export { type CoefficientCurveInput, coefficientOfDay, type StageLengths } from './coefficient-curve.js'
export {
  adjustedCropCoefficientFao56,
  type ClimateAdjustmentInput,
  type CropClimate,
  type HighestCoefficientInput,
  highestCropCoefficientFao56,
  validityCropClimateFao56,
} from './crop-climate.js'
export { type CropETInput, cropET, type PlantUseInput, waterUsePerPlant } from './crop-et.js'
export { type TabledCrop, tabledCropFao56, tabledCropNames } from './crop-table-fao56.js'
export { type DailyReferenceETAsce, dailyReferenceETAsce2005 } from './daily-reference-et-asce-2005.js'
export { type DailyReferenceET, dailyReferenceETFao56 } from './daily-reference-et-fao56.js'
export { type DailyUse, type DailyUseInput, dailyUse } from './daily-use.js'
export type { DailyWeather } from './daily-weather.js'
export { type DailyUseFit, type DailyUseRecord, type FittedUse, fitDailyUse } from './fit-daily-use.js'
export { type FixtureLight, type FixtureLightInput, fixtureLight } from './fixture-light.js'
export {
  type FollowingLevel,
  type FollowingLevelInput,
  forecastByFollowingLevel,
  type LevelCoefficient,
} from './following-level.js'
export type { UseCause } from './forecast-record.js'
export type { ForecastScore } from './forecast-score.js'
export { type CropStage, tabledCoverFao56, tabledWettedShareFao56, type WettingMethod } from './ground-tables-fao56.js'
export { type HourlyReferenceETAsce, hourlyReferenceETAsce2005 } from './hourly-reference-et-asce-2005.js'
export { type HourlyReferenceETSteps, hourlyReferenceETFao56 } from './hourly-reference-et-fao56.js'
export {
  type HourlySeriesAsce,
  type HourlySeriesCounts,
  hourlySeriesAsce2005,
  type StationSite,
} from './hourly-series-asce-2005.js'
export type { HourlyWeather } from './hourly-weather.js'
export {
  coefficientBetweenWettings,
  type InitialCoefficient,
  type InitialCoefficientInput,
  initialCropCoefficientFao56,
  type RainEventsInput,
  rainEvents,
  type SoilTextureClass,
  type WettingDepthInput,
} from './initial-coefficient.js'
export { type LampInput, leafResistanceGraamans2017, transpirationUnderLamps } from './lamps.js'
export { type LayeredWater, layeredWater, type WaterLayer } from './layered-water.js'
export {
  type CaughtShareInput,
  caughtShare,
  type LeafAreaFromCoverInput,
  leafAreaFromCover,
} from './leaf-area-from-cover.js'
export { type MonthlyWeather, monthlyReferenceETFao56 } from './monthly-reference-et-fao56.js'
export { type NightInput, nightTranspiration } from './night-transpiration.js'
export {
  type PanInput,
  type PanSurroundings,
  panCoefficientInGrass,
  panCoefficientOnBareGround,
  referenceETFromPan,
  validityPanCoefficient,
} from './pan-evaporation.js'
export {
  type RadiationAndHeatingInput,
  type RadiationRuleInput,
  type RadiationRuleUse,
  useByRadiationAndHeating,
  useByRadiationSum,
} from './radiation-rule.js'
export {
  type RadiationMethodInput,
  referenceETHargreaves1985,
  referenceETPriestleyTaylor1972,
  type TemperatureMethodInput,
} from './reference-et-by-temperature-and-radiation.js'
export { type PenmanMonteithTerms, referenceETFao56 } from './reference-et-fao56.js'
export {
  type RootZoneBalanceInput,
  type RootZoneDay,
  type RootZoneDayResult,
  rootZoneBalance,
} from './root-zone-balance.js'
export {
  type ExtractFromLeachingInput,
  extractECFromLeaching,
  type FieldLeachingInput,
  fieldLeachingRequirement,
  type SaltAndWaterStressInput,
  type SaltInput,
  saltAndWaterStress,
  yieldUnderSalt,
} from './salt-stress.js'
export { forecastBySlidingFit, type SlidingFit, type SlidingFitInput } from './sliding-fit.js'
export {
  type CoverInput,
  coverFromCoefficient,
  type EvaporationCoefficientInput,
  type EvaporationLayer,
  type EvaporationReductionInput,
  type ExposedWettedInput,
  evaporationCoefficient,
  evaporationReduction,
  exposedWettedShare,
  totalEvaporableWater,
} from './soil-evaporation.js'
export { type TabledSoil, tabledSoilFao56 } from './soil-table-fao56.js'
export {
  type EffectiveCoverInput,
  effectiveCover,
  type SparseBasal,
  type SparseBasalInput,
  type StomatalControlInput,
  sparseBasalCoefficient,
  stomatalControlFactor,
  type ThinStandInput,
  thinStandCoefficient,
} from './sparse-cover.js'
export { type TabledStages, tabledStagesFao56 } from './stage-table-fao56.js'
export {
  type CanopyTranspiration,
  type LeafResistanceInput,
  leafResistanceStanghellini1987,
  type StanghelliniInput,
  transpirationStanghellini1987,
} from './stanghellini-1987.js'
export type { StepsOfDay } from './steps-of-day.js'
export type { StepsOfHour } from './steps-of-hour.js'
export { type SurfaceBalanceInput, type SurfaceDay, type SurfaceDayResult, surfaceBalance } from './surface-balance.js'
export { explainWeatherFinding, type WeatherFinding } from './weather-doubts.js'
