export type { BenchBudgets, BenchUncertainty } from './bench/bench-readings.js'
export type { BudgetLine, ErrorBudget } from './bench/first-order-budget.js'
export {
  gravimetricFromWaterContent,
  type MassVolumeScale,
  type WaterByMass,
  type WaterByVolume,
  waterContentFromGravimetric,
} from './bench/gravimetric-water-content.js'
export { type MixPart, particleDensityEN13041, particleDensityOfMix } from './bench/particle-density.js'
export {
  airFilledPorosity,
  degreeOfSaturation,
  type PhaseShares,
  phaseShares,
  type SaturationOfPores,
  type WaterInPores,
  type WetMedium,
  waterContentAtSaturation,
} from './bench/phase-shares.js'
export { type PluggedPotReadings, pluggedPotTest } from './bench/plugged-pot-test.js'
export { type PorometerReadings, porometerTest } from './bench/porometer-test.js'
export { type MediumDensities, porosityFromDensities } from './bench/porosity.js'
export { porosityAfterSettling, type SettledMedium } from './bench/settled-porosity.js'
export {
  type BenchShares,
  type WeighedPotReadings,
  type WeighedShares,
  weighedPotTest,
} from './bench/weighed-pot-test.js'
export { bottomSuctionAtRest, type ContainerOfKnownWaterContent } from './container/bottom-suction.js'
export { type BoxMeasures, boxContainer } from './container/box-container.js'
export { type CapacityAtHeight, capacityByHeight, type HeightsOfMedium } from './container/capacity-by-height.js'
export type { Container } from './container/container.js'
export { airSpaceAtContainerCapacity, containerCapacity } from './container/container-capacity.js'
export type { ContainerAtRest } from './container/container-water.js'
export { type CylinderMeasures, cylinderContainer } from './container/cylinder-container.js'
export { type DrainageAfterShot, drainageAfterShot, type ShotOnContainer } from './container/drainage-after-shot.js'
export { type FrustumMeasures, frustumContainer } from './container/frustum-container.js'
export { type LayeredStack, layersAtRest, type MediumLayer } from './container/layers-at-rest.js'
export { type MeasuredSections, measuredContainer } from './container/measured-container.js'
export { type PerchedWaterRequest, type PerchedWaterTable, perchedWaterTable } from './container/perched-water-table.js'
export { type RewettedCapacity, type RewettedContainer, rewettedCapacity } from './container/rewetted-capacity.js'
export { type RoundedSquareMeasures, roundedSquareContainer } from './container/rounded-square-container.js'
export { type SharedVolume, sharePerPlant } from './container/share-per-plant.js'
export { stackedContainer } from './container/stacked-container.js'
export { type TaperedBoxMeasures, taperedBoxContainer } from './container/tapered-box-container.js'
export { type ContainerWithPorosity, type WaterAndAir, waterAndAirAtRest } from './container/water-and-air.js'
export { type ProfileRequest, type WaterProfile, waterProfile } from './container/water-profile.js'
export { type BrooksCoreyParameters, brooksCorey1964 } from './curves/brooks-corey-1964.js'
export { type CampbellParameters, campbell1974 } from './curves/campbell-1974.js'
export { type DurnerParameters, durner1994, type PoreFamily } from './curves/durner-1994.js'
export { effectiveSaturation, type WaterContentBetweenLimits } from './curves/effective-saturation.js'
export { type FredlundXingParameters, fredlundXing1994 } from './curves/fredlund-xing-1994.js'
export { type GardnerParameters, gardner1958 } from './curves/gardner-1958.js'
export { hasConductivity } from './curves/has-conductivity.js'
export { type HaverkampParameters, haverkamp1977 } from './curves/haverkamp-1977.js'
export { type DryingCurve, wettingCurveKoolParker1987 } from './curves/kool-parker-1987.js'
export { type KosugiParameters, kosugi1996 } from './curves/kosugi-1996.js'
export { type LogLogisticRetention, logLogisticRetention } from './curves/log-logistic-retention.js'
export { type FiveParameterRetention, milksFontenoLarson1989 } from './curves/milks-fonteno-larson-1989.js'
export type { ConductiveModel, RetentionModel } from './curves/retention-model.js'
export {
  type ScanningCurves,
  type ScanningTurn,
  scanningCurvesScott1983,
} from './curves/scanning-curves-scott-1983.js'
export { type VanGenuchtenParameters, vanGenuchten1980 } from './curves/van-genuchten-1980.js'
export { type VanGenuchtenBurdineParameters, vanGenuchtenBurdine1980 } from './curves/van-genuchten-burdine-1980.js'
export { explainMediumFinding } from './explain-medium-finding.js'
export { allRetentionForms } from './fit/all-retention-forms.js'
export {
  chooseRetentionModel,
  type RefusedModel,
  type RetentionChoice,
  type RetentionChoiceRequest,
} from './fit/choose-retention-model.js'
export type { RetentionFitRequest } from './fit/fit-problem.js'
export type { RetentionFit } from './fit/fit-result.js'
export { fitRetention } from './fit/fit-retention.js'
export type { FittedParameter } from './fit/fit-statistics.js'
export { formBrooksCorey1964 } from './fit/form-brooks-corey-1964.js'
export { formCampbell1974 } from './fit/form-campbell-1974.js'
export { formDurner1994 } from './fit/form-durner-1994.js'
export { formFredlundXing1994 } from './fit/form-fredlund-xing-1994.js'
export { formKosugi1996 } from './fit/form-kosugi-1996.js'
export { formLogLogistic } from './fit/form-log-logistic.js'
export { formMilksFontenoLarson1989 } from './fit/form-milks-fonteno-larson-1989.js'
export { formVanGenuchten1980 } from './fit/form-van-genuchten-1980.js'
export { formVanGenuchtenBurdine1980 } from './fit/form-van-genuchten-burdine-1980.js'
export type { RetentionForm, ShapeParameter } from './fit/retention-form.js'
export type { RetentionPoint } from './fit/retention-points.js'
export { outsideIdealSubstrate } from './limits/ideal-substrate.js'
export { irrigationLimits } from './limits/irrigation-limits.js'
export {
  type AllowedDepletion,
  type AllowedSuction,
  refillPointByDepletion,
  refillPointBySuction,
} from './limits/refill-point.js'
export { type ReleaseSample, type WaterClasses, waterClassesDeBoodt1972 } from './limits/water-classes.js'
export { type MediumOfPorosity, waterClassesOfMedium } from './limits/water-classes-of-medium.js'
export type { IrrigationLimits, LimitName, LimitsRequest, WaterLimit } from './limits/water-limits.js'
export {
  easilyAvailableWater,
  type SuctionInterval,
  waterBetweenSuctions,
  waterBufferingCapacity,
} from './limits/water-release.js'
export type { ExplainedMedium, FitRefusal, MediumCode, MediumFinding } from './medium-finding.js'
export { mediumNotes } from './tables/medium-notes.js'
export {
  type SoilFromTexture,
  type SoilTexture,
  soilFromTextureSaxtonRawls2006,
  validitySaxtonRawls2006,
} from './tables/saxton-rawls-2006.js'
export { type SourcedRow, type TextureClass, tableRow } from './tables/sourced-row.js'
export { type PublishedRange, substrateRanges } from './tables/substrate-ranges.js'
export { type DrainedMedium, drainedMediumRegression1991 } from './tables/substrate-regression-1991.js'
export {
  type PorometerMeasures,
  type PorometerSubstrate,
  substratesPorometer2012,
} from './tables/substrates-porometer-2012.js'
export { texturesCarselParrish1988, type VanGenuchtenSoil } from './tables/textures-carsel-parrish-1988.js'
export { type CampbellSoil, texturesClappHornberger1978 } from './tables/textures-clapp-hornberger-1978.js'
export { type BrooksCoreySoil, texturesRawls1982 } from './tables/textures-rawls-1982.js'
export { type GreenAmptSoil, texturesRawls1983 } from './tables/textures-rawls-1983.js'
export { type TopsoilUnit, topsoilsWosten2001 } from './tables/topsoils-wosten-2001.js'
