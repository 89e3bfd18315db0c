import type {
  DrainEC,
  Length,
  PoreWaterEC,
  PressureHead,
  SolutionEC,
  SuctionHead,
  Volume,
  WaterContent,
} from '../quantity/generated/kinds.js'
import type { ContainerFlow, FlowOutcome, FlowStep } from './container-flow.js'
import type { RichardsState } from './richards-state.js'

/** What happens to a simulated container in a span of time. */
export interface RichardsStep extends FlowStep {
  /** Water that the air would take from the surface while it is wet; none by default. Unit: L. Range: [0, ∞). */
  readonly evaporation?: Volume
  /** EC of the water given; needed where salt is followed and water is given. Unit: dS/m. Range: [0, 200]. */
  readonly feedEC?: SolutionEC
}

/** Where the salt of a span of time went, as EC times volume. */
export interface SaltOutcome {
  /** Came with the water given. Unit: dS/m·L. */
  readonly given: number
  /** Left with the drain, less what came in from below. Unit: dS/m·L. */
  readonly drained: number
  /** Taken up by the roots. Unit: dS/m·L. */
  readonly taken: number
  /** Ran off over the rim. Unit: dS/m·L. */
  readonly ranOff: number
  /** EC of the drain, mixed; unknown when nothing drained. */
  readonly drainEC:
    | { readonly known: true; readonly ec: DrainEC }
    | { readonly known: false; readonly reason: 'no-drain' }
}

/** What came of a span of time, and how far the simulation can be trusted. */
export interface RichardsOutcome extends FlowOutcome {
  /** Water that came in at the surface, or left it if less than zero; what ran past the medium is not in it. Unit: L. */
  readonly entered: Volume
  /** Water that ran past the medium to the drain, which it is part of. Unit: L. */
  readonly bypassed: Volume
  /** Water that left the surface into the air. Unit: L. */
  readonly evaporated: Volume
  /** Water that ran off over the rim. Unit: L. */
  readonly ranOff: Volume
  /** Water that stands on the surface in the end. Unit: L. */
  readonly standing: Volume
  /** Water that the simulation lost or made: rounding. Unit: L. */
  readonly imbalance: Volume
  /** Steps that it took. Unit: 1. */
  readonly steps: number
  /** Where the salt went, where salt is followed. */
  readonly salt?: SaltOutcome
}

/** One height of a container. At a boundary between two media there are two, one for either. */
export interface ContainerLayer {
  /** Height above the bottom. Unit: cm. */
  readonly height: Length
  /** Position of its medium, from the bottom up. Unit: 1. */
  readonly layer: number
  /** Pressure head there: below zero where the medium sucks. Unit: cm. */
  readonly pressureHead: PressureHead
  /** Suction there; zero under water. Unit: cm. */
  readonly suction: SuctionHead
  /** Water content there. Unit: m³/m³. */
  readonly waterContent: WaterContent
  /** EC of the pore water there, where salt is followed. Unit: dS/m. */
  readonly poreWaterEC?: PoreWaterEC
}

/** A container whose water is simulated, with a look inside. */
export interface RichardsFlow extends ContainerFlow<RichardsState, RichardsStep, RichardsOutcome> {
  /** The state in which the suction is a given one at each height; less than zero under water. */
  readonly startAt: (
    suction: (height: Length) => SuctionHead | PressureHead,
    /** How it came there, which matters where media drain and wet on different curves: `drained` when left out. */
    by?: 'drained' | 'wetted',
  ) => RichardsState
  /** What there is at each height, from the bottom up. */
  readonly profile: (state: RichardsState) => ContainerLayer[]
  /** EC of all water of a state, mixed; the feed's where salt is not followed makes no sense, and is refused. Unit: dS/m. */
  readonly meanEC: (state: RichardsState) => PoreWaterEC
}
