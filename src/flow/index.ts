export {
  capillaryFlux,
  capillaryRise,
  type LiftToHeight,
  maxCapillaryRise,
  type RisingToSuction,
  type RisingWater,
} from './capillary-rise.js'
export type { ContainerFlow, FlowOutcome, FlowStep } from './container-flow.js'
export { containerFlowRichards1931 } from './container-flow-richards-1931.js'
export { type DrainingContainer, drainageTimes } from './drainage-times.js'
export { explainFlowFinding, type FlowFinding } from './explain-flow-finding.js'
export {
  type CropDryLimits,
  type CropUptakeLimits,
  dryLimitsTaylorAshcroft1972,
  uptakeLimitsFeddes,
} from './feddes-crops.js'
export type { FeddesLimits } from './feddes-factor.js'
export type { FlowReason } from './flow-reason.js'
export {
  infiltrationGreenAmpt1911,
  infiltrationTimeGreenAmpt1911,
  type WettingFrontAtTime,
  type WettingFrontOfDepth,
} from './green-ampt-1911.js'
export { type FittedMediumNumber, fitMediumToRecord, type MediumFit } from './inverse/fit-medium-to-record.js'
export type { MediumFitFinding } from './inverse/medium-findings.js'
export type { DrainRecord, MediumGuess, MediumNumber, MediumRecord, ProbeRecord } from './inverse/medium-record.js'
export type { MediumNumberTold } from './inverse/told-by-search.js'
export { layeredFlowRichards1931 } from './layered-flow-richards-1931.js'
export {
  type ExponentialOverWaterTable,
  maxEvaporationGardner1958,
  maxEvaporationPowerGardner1958,
  type PowerOverWaterTable,
} from './max-evaporation-gardner-1958.js'
export {
  type InfiltrationUnderRate,
  infiltrationMeinLarson1973,
  type Ponding,
  pondingMeinLarson1973,
  type WettingFrontUnderRate,
  type WettingFrontUnderRateAtTime,
} from './mein-larson-1973.js'
export { type AbsorbingSurface, infiltrationPhilip1957 } from './philip-1957.js'
export {
  type BestProbeHeight,
  bestProbeHeight,
  type ProbeHeights,
  type ProbeHeightView,
} from './probe-view/best-probe-height.js'
export { type ProbeInContainer, probeReading } from './probe-view/probe-reading.js'
export type { ConductingLayer, RichardsContainer, RichardsLayers, RichardsSurroundings } from './richards-column.js'
export type { RootsInContainer } from './richards-roots.js'
export type { RichardsState } from './richards-state.js'
export type { ContainerLayer, RichardsFlow, RichardsOutcome, RichardsStep, SaltOutcome } from './richards-terms.js'
export { soluteFrontOgataBanks1961 } from './salt/ogata-banks-1961.js'
export type { SaltInContainer } from './salt/salt-setting.js'
export type { SoluteFront } from './salt/solute-front.js'
export { soluteFrontVanGenuchtenAlves1982 } from './salt/van-genuchten-alves-1982.js'
export { type ConductingMedium, soilWaterDiffusivity } from './soil-water-diffusivity.js'
export {
  sorptivityConstantDiffusivity,
  sorptivityParlange1975,
  sorptivityPhilip1957,
  type WettedMedium,
  type WettedWithDiffusivity,
} from './sorptivity.js'
export {
  type InfiltrationToWaterTable,
  infiltrationSrivastavaYeh1991,
  type WaterAtHeight,
} from './srivastava-yeh-1991.js'
export { type SteadyFluxOverWaterTable, steadySuctionGardner1958 } from './steady-suction-gardner-1958.js'
export {
  fitWaterStore,
  fitWaterStoreToFlow,
  type StoreAndFlow,
  type StoreFit,
} from './store/fit-water-store.js'
export type { StoreRecord, StoreToFit } from './store/store-record.js'
export type { ToldBy } from './store/told-by-record.js'
export { type RootsAtSuction, type RootUptake, uptakeFeddes1978 } from './uptake-feddes-1978.js'
export { type StoreState, type WaterStore, waterStore } from './water-store.js'
export type { Infiltration, PondedFront, WettingFront } from './wetting-front.js'
