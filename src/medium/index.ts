export { allRetentionForms } from './all-retention-forms.js'
export type { BenchBudgets, BenchUncertainty } from './bench-readings.js'
export { bottomSuctionAtRest, type ContainerOfKnownContent } from './bottom-suction.js'
export { type BoxMeasures, boxContainer } from './box-container.js'
export { type BrooksCoreyParameters, brooksCorey1964 } from './brooks-corey-1964.js'
export { type CampbellParameters, campbell1974 } from './campbell-1974.js'
export { type CapacityAtHeight, capacityByHeight, type HeightsOfMedium } from './capacity-by-height.js'
export { chooseRetentionModel, type RetentionChoice, type RetentionChoiceRequest } from './choose-retention-model.js'
export type { Container } from './container.js'
export { airSpaceAtContainerCapacity, containerCapacity } from './container-capacity.js'
export type { ContainerAtRest } from './container-water.js'
export { type CylinderMeasures, cylinderContainer } from './cylinder-container.js'
export { type DrainageAfterShot, drainageAfterShot, type ShotOnContainer } from './drainage-after-shot.js'
export { type DurnerParameters, durner1994, type PoreFamily } from './durner-1994.js'
export { type ContentBetweenLimits, effectiveSaturation } from './effective-saturation.js'
export type { BudgetLine, ErrorBudget } from './first-order-budget.js'
export type { RetentionFitRequest } from './fit-problem.js'
export type { RetentionFit } from './fit-result.js'
export { fitRetention } from './fit-retention.js'
export type { FittedParameter } from './fit-statistics.js'
export { formBrooksCorey1964 } from './form-brooks-corey-1964.js'
export { formCampbell1974 } from './form-campbell-1974.js'
export { formDurner1994 } from './form-durner-1994.js'
export { formFredlundXing1994 } from './form-fredlund-xing-1994.js'
export { formKosugi1996 } from './form-kosugi-1996.js'
export { formLogLogistic } from './form-log-logistic.js'
export { formMilksFontenoLarson1989 } from './form-milks-fonteno-larson-1989.js'
export { formVanGenuchten1980 } from './form-van-genuchten-1980.js'
export { formVanGenuchtenBurdine1980 } from './form-van-genuchten-burdine-1980.js'
export { type FredlundXingParameters, fredlundXing1994 } from './fredlund-xing-1994.js'
export { type FrustumMeasures, frustumContainer } from './frustum-container.js'
export { type GardnerParameters, gardner1958 } from './gardner-1958.js'
export {
  gravimetricFromWaterContent,
  type MassVolumeScale,
  type WaterByMass,
  type WaterByVolume,
  waterContentFromGravimetric,
} from './gravimetric-water-content.js'
export { hasConductivity } from './has-conductivity.js'
export { type HaverkampParameters, haverkamp1977 } from './haverkamp-1977.js'
export { outsideIdealSubstrate } from './ideal-substrate.js'
export { irrigationLimits } from './irrigation-limits.js'
export { type DryingCurve, wettingCurveKoolParker1987 } from './kool-parker-1987.js'
export { type KosugiParameters, kosugi1996 } from './kosugi-1996.js'
export { type LayeredStack, layersAtRest, type MediumLayer } from './layers-at-rest.js'
export { type LogLogisticRetention, logLogisticRetention } from './log-logistic-retention.js'
export { type MeasuredSections, measuredContainer } from './measured-container.js'
export { mediumNotes } from './medium-notes.js'
export { type FiveParameterRetention, milksFontenoLarson1989 } from './milks-fonteno-larson-1989.js'
export { type MixPart, particleDensityEN13041, particleDensityOfMix } from './particle-density.js'
export { type PerchedWaterRequest, type PerchedWaterTable, perchedWaterTable } from './perched-water-table.js'
export {
  airFilledPorosity,
  degreeOfSaturation,
  type PhaseShares,
  phaseShares,
  type SaturationOfPores,
  type WaterInPores,
  type WetMedium,
  waterContentAtSaturation,
} from './phase-shares.js'
export { type PluggedPotReadings, pluggedPotTest } from './plugged-pot-test.js'
export { type PorometerReadings, porometerTest } from './porometer-test.js'
export { type MediumDensities, porosityFromDensities } from './porosity.js'
export {
  type AllowedDepletion,
  type AllowedSuction,
  refillPointByDepletion,
  refillPointBySuction,
} from './refill-point.js'
export type { RetentionForm, ShapeParameter } from './retention-form.js'
export type { ConductiveModel, RetentionModel } from './retention-model.js'
export type { RetentionPoint } from './retention-points.js'
export { type RoundedSquareMeasures, roundedSquareContainer } from './rounded-square-container.js'
export {
  type SoilFromTexture,
  type SoilTexture,
  soilFromTextureSaxtonRawls2006,
  validitySaxtonRawls2006,
} from './saxton-rawls-2006.js'
export { porosityAfterSettling, type SettledMedium } from './settled-porosity.js'
export { type SharedVolume, sharePerPlant } from './share-per-plant.js'
export { type SourcedRow, type TextureClass, tableRow } from './sourced-row.js'
export { stackedContainer } from './stacked-container.js'
export { type PublishedRange, substrateRanges } from './substrate-ranges.js'
export { type DrainedMedium, drainedMediumRegression1991 } from './substrate-regression-1991.js'
export {
  type PorometerMeasures,
  type PorometerSubstrate,
  substratesPorometer2012,
} from './substrates-porometer-2012.js'
export { type TaperedBoxMeasures, taperedBoxContainer } from './tapered-box-container.js'
export { texturesCarselParrish1988, type VanGenuchtenSoil } from './textures-carsel-parrish-1988.js'
export { type CampbellSoil, texturesClappHornberger1978 } from './textures-clapp-hornberger-1978.js'
export { type BrooksCoreySoil, texturesRawls1982 } from './textures-rawls-1982.js'
export { type GreenAmptSoil, texturesRawls1983 } from './textures-rawls-1983.js'
export { type TopsoilUnit, topsoilsWosten2001 } from './topsoils-wosten-2001.js'
export { type VanGenuchtenParameters, vanGenuchten1980 } from './van-genuchten-1980.js'
export { type VanGenuchtenBurdineParameters, vanGenuchtenBurdine1980 } from './van-genuchten-burdine-1980.js'
export { type ContainerWithPorosity, type WaterAndAir, waterAndAirAtRest } from './water-and-air.js'
export { type ReleaseSample, type WaterClasses, waterClassesDeBoodt1972 } from './water-classes.js'
export { type MediumOfPorosity, waterClassesOfMedium } from './water-classes-of-medium.js'
export type { IrrigationLimits, LimitName, LimitsRequest, WaterLimit } from './water-limits.js'
export { type ProfileRequest, type WaterProfile, waterProfile } from './water-profile.js'
export {
  easilyAvailableWater,
  type SuctionInterval,
  waterBetweenSuctions,
  waterBufferingCapacity,
} from './water-release.js'
export { type BenchShares, type WeighedPotReadings, type WeighedShares, weighedPotTest } from './weighed-pot-test.js'
