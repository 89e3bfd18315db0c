import type { SiteElevation } from '../air/terms.js'
import type {
  CropCoefficient,
  CropET,
  DailyNetRadiation,
  DailySoilHeat,
  GroundFraction,
  LeafAreaIndex,
  Length,
  Pressure,
  ReferenceET,
  SolutionEC,
  Temperature,
  VapourPressureDeficit,
  VapourPressureSlope,
  WaterContent,
  WaterDepth,
  WindSpeed,
} from '../quantity/generated/kinds.js'

/** Terms of demand that several inputs are composed of; their domains stand once, in `domains.ts`. */

/** Leaves over the ground. */
export interface Cover {
  /** Share of the ground under leaves. Unit: 1. Range: [0, 1]. */
  readonly cover: GroundFraction
}

/** The leaves of a crop. */
export interface LeafArea {
  /** Leaf area index. Unit: 1. Range: (0, 20]. */
  readonly leafArea: LeafAreaIndex
}

/** Leaves and the air around them. */
export interface CropInAir extends LeafArea {
  /** Air temperature. Unit: °C. Range: [0, 60]. */
  readonly temperature: Temperature
  /** Vapour pressure deficit of the air. Unit: kPa. Range: [0, 10]. */
  readonly deficit: VapourPressureDeficit
  /** Atmospheric pressure; 101.325 by default. Unit: kPa. Range: [30, 120]. */
  readonly pressure?: Pressure
}

/** The still air at a leaf. */
export interface LeafBoundary {
  /** Resistance of the air at the leaf; 275 by default. Unit: s/m. Range: [1, 100000]. */
  readonly airResistance?: number
}

/** What closes stomata. */
export interface CarbonDioxide {
  /** Carbon dioxide in the air; 200 by default, where it closes nothing. Unit: ppm. Range: [0, 5000]. */
  readonly carbonDioxide?: number
}

/** How leaves shade each other. */
export interface Extinction {
  /** Extinction coefficient; 0.7 by default. Unit: 1. Range: (0, 2]. */
  readonly extinction?: number
}

/** What a soil holds. */
export interface FieldCapacity {
  /** Water content at field capacity. Unit: m³/m³. Range: [0, 1]. */
  readonly fieldCapacity: WaterContent
}

/** Between which water contents a soil feeds plants. */
export interface SoilWater extends FieldCapacity {
  /** Water content at the wilting point, below field capacity. Unit: m³/m³. Range: [0, 1]. */
  readonly wiltingPoint: WaterContent
}

/** How deep roots go. */
export interface RootDepth {
  /** Depth of the roots. Unit: cm. Range: (0, 2000]. */
  readonly rootDepth: Length
}

/** What a root zone lacks. */
export interface WaterShortage {
  /** Total available water. Unit: mm. Range: (0, 10000]. */
  readonly totalAvailable: WaterDepth
  /** Water that is missing to field capacity. Unit: mm. Range: [0, 10000]. */
  readonly depletion: WaterDepth
}

/** What a layer lacks through a day. */
export interface DayDepletion {
  /** Depletion after rain and irrigation of the day. Unit: mm. */
  readonly depletionAtStart: WaterDepth
  /** Depletion at the end of the day. Unit: mm. */
  readonly depletionAtEnd: WaterDepth
}

/** What plants transpire. */
export interface BasalCoefficient {
  /** Basal crop coefficient. Unit: 1. Range: [0, 3]. */
  readonly basalCoefficient: CropCoefficient
}

/** What the air can take. */
export interface MaxCoefficient {
  /** Highest coefficient, from `maxCropCoefficientFao56()`. Unit: 1. Range: [0, 3]. */
  readonly maxCoefficient: CropCoefficient
}

/** Dry ground without plants. */
export interface BareSoil {
  /** Basal coefficient of dry bare soil, 0.15 to 0.20; 0.15 by default. Unit: 1. Range: [0, 3]. */
  readonly minCoefficient?: CropCoefficient
}

/** Where drippers wet the ground. */
export interface Drip {
  /** Whether drippers wet mainly the shaded ground; false by default. */
  readonly drip?: boolean
}

/** What the weather asks for. */
export interface ReferenceDay {
  /** Reference evapotranspiration. Unit: mm/d. Range: (0, 30]. */
  readonly referenceET: ReferenceET
}

/** One wetting of the ground. */
export interface Wetting {
  /** Water that a wetting brings into the soil. Unit: mm. Range: [0, 10000]. */
  readonly infiltration: WaterDepth
}

/** Salts of the water that is given. */
export interface FieldWaterEC {
  /** EC of the irrigation water. Unit: dS/m. Range: [0, 200]. */
  readonly irrigationEC: SolutionEC
}

/** What a crop evaporates. */
export interface CropUse {
  /** Crop evapotranspiration. Unit: mm/d. Range: [0, 90]. */
  readonly cropET: CropET
}

/** Terms of the combination equation that wind and air decide. */
export interface AerodynamicTerms {
  /** Slope of the saturation vapour pressure curve. Unit: kPa/K. Range: (0, 4]. */
  readonly slope: VapourPressureSlope
  /** Psychrometric constant. Unit: kPa/K. Range: (0, 1]. */
  readonly psychrometricConstant: VapourPressureSlope
  /** Wind speed at 2 m. Unit: m/s. Range: [0, 120]. */
  readonly windSpeed: WindSpeed
}

/** Energy for evaporation. */
export interface AvailableEnergy {
  /** Net radiation. Unit: MJ/m²/d. Range: [-30, 60]. */
  readonly netRadiation: DailyNetRadiation
  /** Soil heat flux; zero by default. Unit: MJ/m²/d. Range: [-30, 30]. */
  readonly soilHeat?: DailySoilHeat
}

/** Where weather was measured. */
export interface WeatherSite extends SiteElevation {
  /** Pressure of the air at the site; that of its elevation by default. Unit: kPa. Range: [30, 120]. */
  readonly pressure?: Pressure
}

/** How sure an interval is. */
export interface IntervalConfidence {
  /** Confidence of the intervals; 0.95 by default. Unit: 1. Range: [0.5, 0.9999]. */
  readonly confidence?: number
}

/** Water use day by day. */
export interface UseSeries {
  /** Water used each day, NaN where missing. Unit: mm. Range: any. */
  readonly use: Float64Array
}

/** Days without a forecast. */
export interface SkippedDays {
  /** Days without use or without a cause. Unit: 1. */
  readonly skippedDays: number
}
