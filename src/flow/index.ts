export type { FeddesLimits } from './feddes-factor.js'
export {
  type InfiltrationToWaterTable,
  infiltrationSrivastavaYeh1991,
  type WaterAtHeight,
} from './srivastava-yeh-1991.js'
export { type RootsAtSuction, type RootUptake, uptakeFeddes1978 } from './uptake-feddes-1978.js'
export {
  type ContainerFlow,
  type FlowOutcome,
  type FlowStep,
  type StoreState,
  type WaterStore,
  waterStore,
} from './water-store.js'
