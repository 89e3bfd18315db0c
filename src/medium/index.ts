export { type BoxMeasures, boxContainer } from './box-container.js'
export { type BrooksCoreyParameters, brooksCorey1964 } from './brooks-corey-1964.js'
export { type CampbellParameters, campbell1974 } from './campbell-1974.js'
export type { Container } from './container.js'
export { airSpaceAtContainerCapacity, containerCapacity } from './container-capacity.js'
export type { ContainerAtRest } from './container-water.js'
export { type CylinderMeasures, cylinderContainer } from './cylinder-container.js'
export { type DurnerParameters, durner1994, type PoreFamily } from './durner-1994.js'
export { type ContentBetweenLimits, effectiveSaturation } from './effective-saturation.js'
export { type FredlundXingParameters, fredlundXing1994 } from './fredlund-xing-1994.js'
export {
  gravimetricFromWaterContent,
  type MassVolumeScale,
  type WaterByMass,
  type WaterByVolume,
  waterContentFromGravimetric,
} from './gravimetric-water-content.js'
export { type KosugiParameters, kosugi1996 } from './kosugi-1996.js'
export { type LogLogisticRetention, logLogisticRetention } from './log-logistic-retention.js'
export { type FiveParameterRetention, milksFontenoLarson1989 } from './milks-fonteno-larson-1989.js'
export { type MixPart, particleDensityEN13041, particleDensityOfMix } from './particle-density.js'
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
export { type MediumDensities, porosityFromDensities } from './porosity.js'
export type { ConductiveModel, RetentionModel } from './retention-model.js'
export { type VanGenuchtenParameters, vanGenuchten1980 } from './van-genuchten-1980.js'
export { type VanGenuchtenBurdineParameters, vanGenuchtenBurdine1980 } from './van-genuchten-burdine-1980.js'
