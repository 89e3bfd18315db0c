export { type BailleInput, transpirationBaille1994, validityBaille1994 } from './cover/baille-1994.js'
export { type FixtureLight, type FixtureLightInput, fixtureLight } from './cover/fixture-light.js'
export { type LampInput, leafResistanceGraamans2017, transpirationUnderLamps } from './cover/lamps.js'
export {
  type InterceptedFractionInput,
  interceptedFraction,
  type LeafAreaFromCoverInput,
  leafAreaFromCover,
} from './cover/leaf-area-from-cover.js'
export { type NightInput, nightTranspiration } from './cover/night-transpiration.js'
export {
  type RadiationAndHeatingInput,
  type RadiationRuleInput,
  type RadiationRuleUse,
  waterUseFromRadiationAndHeating,
  waterUseFromRadiationSum,
} from './cover/radiation-rule.js'
export {
  type CanopyTranspiration,
  type LeafResistanceInput,
  leafResistanceStanghellini1987,
  type StanghelliniInput,
  transpirationStanghellini1987,
} from './cover/stanghellini-1987.js'
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
} from './crop/available-water.js'
export { type BasalFromLeafAreaInput, basalCoefficientFromLeafArea } from './crop/basal-from-leaf-area.js'
export {
  type CoefficientCurveInput,
  cropCoefficientOfDay,
  type StageLengths,
} from './crop/coefficient-curve.js'
export {
  adjustedCropCoefficientFao56,
  type ClimateAdjustmentInput,
  type CropClimate,
  type MaxCoefficientInput,
  maxCropCoefficientFao56,
  validityCropClimateFao56,
} from './crop/crop-climate.js'
export { type CropETInput, cropET, type PlantUseInput, waterUsePerPlant } from './crop/crop-et.js'
export { type TabledCrop, tabledCropFao56, tabledCropNames } from './crop/crop-table-fao56.js'
export {
  type CropStage,
  tabledCoverFao56,
  tabledWettedShareFao56,
  type WettingMethod,
} from './crop/ground-tables-fao56.js'
export {
  type InitialCoefficient,
  type InitialCoefficientInput,
  initialCoefficientBetweenWettings,
  initialCropCoefficientFao56,
  type RainEventsInput,
  rainEvents,
  type SoilTextureClass,
  type WettingDepthInput,
} from './crop/initial-coefficient.js'
export { type LayeredWater, layeredWater, type WaterLayer } from './crop/layered-water.js'
export {
  type RootZoneBalanceInput,
  type RootZoneDay,
  type RootZoneDayResult,
  rootZoneBalance,
} from './crop/root-zone-balance.js'
export {
  type ExtractFromLeachingInput,
  extractECFromLeaching,
  type FieldLeachingInput,
  fieldLeachingRequirement,
  type SaltAndWaterStressInput,
  type SaltInput,
  saltAndWaterStress,
  yieldUnderSalt,
} from './crop/salt-stress.js'
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
} from './crop/soil-evaporation.js'
export { type TabledSoil, tabledSoilFao56 } from './crop/soil-table-fao56.js'
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
} from './crop/sparse-cover.js'
export { type TabledStages, tabledStagesFao56 } from './crop/stage-table-fao56.js'
export {
  type SurfaceBalanceInput,
  type SurfaceDay,
  type SurfaceDayResult,
  surfaceBalance,
} from './crop/surface-balance.js'
export { type DemandFinding, explainDemandFinding } from './explain-demand-finding.js'
export { type DailyUse, type DailyUseInput, dailyUse } from './record/daily-use.js'
export { type DailyUseFit, type DailyUseRecord, type FittedUse, fitDailyUse } from './record/fit-daily-use.js'
export {
  type FollowingLevel,
  type FollowingLevelInput,
  forecastByFollowingLevel,
  type LevelCoefficient,
} from './record/following-level.js'
export type { UseCause } from './record/forecast-record.js'
export type { ForecastScore } from './record/forecast-score.js'
export { forecastBySlidingFit, type SlidingFit, type SlidingFitInput } from './record/sliding-fit.js'
export { type DailyReferenceETAsce, dailyReferenceETAsce2005 } from './reference/daily-reference-et-asce-2005.js'
export { type DailyReferenceET, dailyReferenceETFao56 } from './reference/daily-reference-et-fao56.js'
export type { DailyWeather } from './reference/daily-weather.js'
export { type HourlyReferenceETAsce, hourlyReferenceETAsce2005 } from './reference/hourly-reference-et-asce-2005.js'
export {
  type HourlyReferenceETSteps,
  type HourlyWeatherFao56,
  hourlyReferenceETFao56,
} from './reference/hourly-reference-et-fao56.js'
export {
  type HourlySeriesAsce,
  type HourlySeriesCounts,
  hourlySeriesAsce2005,
  type StationSite,
} from './reference/hourly-series-asce-2005.js'
export type { HourlyWeather } from './reference/hourly-weather.js'
export { type MonthlyWeather, monthlyReferenceETFao56 } from './reference/monthly-reference-et-fao56.js'
export {
  type PanInput,
  type PanSurroundings,
  panCoefficientInGrass,
  panCoefficientOnBareGround,
  referenceETFromPan,
  validityPanCoefficient,
} from './reference/pan-evaporation.js'
export {
  type RadiationMethodInput,
  referenceETHargreaves1985,
  referenceETPriestleyTaylor1972,
  type TemperatureMethodInput,
} from './reference/reference-et-by-temperature-and-radiation.js'
export { type PenmanMonteithTerms, referenceETFao56 } from './reference/reference-et-fao56.js'
export type { StepsOfDay } from './reference/steps-of-day.js'
export type { StepsOfHour } from './reference/steps-of-hour.js'
export type { AssumedInput, WeatherAssumption } from './reference/weather-assumption.js'
export type { WeatherFinding } from './reference/weather-doubts.js'
export type {
  AerodynamicTerms,
  AvailableEnergy,
  BareSoil,
  BasalCoefficient,
  CarbonDioxide,
  Cover,
  CropInAir,
  CropUse,
  DayDepletion,
  Drip,
  Extinction,
  FieldCapacity,
  FieldWaterEC,
  IntervalConfidence,
  LeafArea,
  LeafBoundary,
  MaxCoefficient,
  ReferenceDay,
  RootDepth,
  SkippedDays,
  SoilWater,
  UseSeries,
  WaterShortage,
  WeatherSite,
  Wetting,
} from './terms.js'
export type { DoubtedFit, UseFinding } from './use-finding.js'
