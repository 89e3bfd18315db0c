export {
  type ContainerFlow,
  type FlowOutcome,
  type FlowStep,
  type StoreState,
  type WaterStore,
  waterStore,
} from './water-store.js'
