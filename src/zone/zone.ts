import type { ProbeCalibration } from '../probe/calibration.js'
import type {
  BulkDensity,
  CropCoefficient,
  DepletionFraction,
  DrainFraction,
  Duration,
  Elevation,
  Flow,
  InverseSuction,
  Irradiance,
  Latitude,
  Length,
  ParticleDensity,
  PlantDensity,
  Volume,
  WaterContent,
  WaterContentChange,
} from '../quantity/generated/kinds.js'
import type { LocalOffset } from '../record/local-time.js'

/** The container that one probe stands for. */
export interface ZoneContainer {
  /** Volume of medium in it. Unit: L. Range: (0, ∞). */
  readonly substrateVolume: Volume
  /** Height of the medium; the walls count as upright. Unit: cm. Range: (0, 1000]. */
  readonly height: Length
  /** Plants in it. Unit: 1. Range: (0, 10000]. */
  readonly plants: number
}

/** The bench test of the medium: densities and van Genuchten's retention curve. */
export interface ZoneMedium {
  /** What it is, for people. */
  readonly name: string
  /** Dry mass by volume. Unit: g/cm³. Range: any. */
  readonly bulkDensity: BulkDensity
  /** Density of the particles. Unit: g/cm³. Range: any. */
  readonly particleDensity: ParticleDensity
  /** Water content that no suction removes. Unit: m³/m³. Range: any. */
  readonly residual: WaterContent
  /** Water content at zero suction. Unit: m³/m³. Range: any. */
  readonly saturated: WaterContent
  /** Inverse of the suction at which the medium begins to drain. Unit: 1/cm. Range: any. */
  readonly alpha: InverseSuction
  /** Exponent of the curve. Unit: 1. Range: any. */
  readonly n: number
}

/** The emitters of one container. */
export interface ZoneEmitters {
  /** How many there are; a mean need not be whole. Unit: 1. Range: (0, 100000]. */
  readonly count: number
  /** Flow of one. Unit: L/h. Range: (0, ∞). */
  readonly flow: Flow
  /** Time until the line is full and all emitters run. Unit: s. Range: [0, 86400]. */
  readonly lineFill: Duration
}

/** One probe of a zone. */
export interface DescribedProbe {
  /** Its name, as in the record. */
  readonly name: string
  /** What its readings mean, made by `calibrateTwoPoint` or `fitCalibration`; without it they are water contents already. */
  readonly calibration?: ProbeCalibration
  /** What it stands for, beside the other probes of the zone; 1 by default. Unit: 1. Range: (0, ∞). */
  readonly weight?: number
}

/** Lamps that burn at the same hours of the local clock every day. */
export interface ZoneLamps {
  /** When they go on, after local midnight. Unit: s. Range: [0, 86400). */
  readonly on: Duration
  /** When they go off, after local midnight; before `on` where they burn over midnight. Unit: s. Range: [0, 86400). */
  readonly off: Duration
  /** Light that they give, on the scale of the measured radiation. Unit: W/m². Range: (0, 1000]. */
  readonly irradiance: Irradiance
}

/** Where a zone is, and what its clocks do. */
export interface ZonePlace {
  /** Latitude, north positive. Unit: °. Range: [-90, 90]. */
  readonly latitude: Latitude
  /** Height above sea level. Unit: m. Range: [-500, 9000]. */
  readonly elevation: Elevation
  /** How far local clocks are ahead of universal time, and since when; days are local days. */
  readonly clock: readonly LocalOffset[]
}

/** What is allowed and what is wanted in a zone. Volumes are for one container. */
export interface ZoneLimits {
  /** Most water in a day, from the set-up and not from any plan. Unit: L. Range: (0, ∞). */
  readonly maxPerDay: Volume
  /** Most water for one container in one shot; what comes faster than the medium takes it runs through. Unit: L. Range: (0, ∞). */
  readonly maxPerShot?: Volume
  /** Shortest time for which the valve may open. Unit: s. Range: [0, 86400]. */
  readonly minRunTime: Duration
  /** Longest time for which the valve may open. Unit: s. Range: (0, 7200]. */
  readonly maxRunTime: Duration
  /** Shortest time between two openings. Unit: s. Range: [0, 86400]. */
  readonly minRest: Duration
  /** Share of the day's water that should drain. Unit: 1. Range: [0, 1). */
  readonly drainFraction: DrainFraction
  /** How far below the full point the next shot is due; this or `depletion`. Unit: m³/m³. Range: (0, 1]. */
  readonly allowedFall?: WaterContentChange
  /** The same as a share of the available water; only with a bench test, for a share of what probes report moves with their offset. Unit: 1. Range: (0, 1). */
  readonly depletion?: DepletionFraction
  /** Water content at which plants get nothing any more. Unit: m³/m³. Range: [0, 1). */
  readonly lowerLimit: WaterContent
  /** Water contents below this are doubted. Unit: m³/m³. Range: [-0.1, 1). */
  readonly minBelievable: WaterContent
  /** Water contents above this are doubted. Unit: m³/m³. Range: [0, 1]. */
  readonly maxBelievable: WaterContent
  /** Smaller rises of the water content are noise, not shots. Unit: m³/m³. Range: (0, 1]. */
  readonly minRise: WaterContentChange
  /** The first shot comes so long after light begins. Unit: s. Range: [-86400, 86400]. */
  readonly firstShotAfterLight: Duration
  /** The last shot comes so long before light ends. Unit: s. Range: [-86400, 86400]. */
  readonly lastShotBeforeDark: Duration
}

/** A zone: plants in like containers on one valve, with the probes that stand for them. Plain data, described once. */
export interface Zone {
  /** Name for people. */
  readonly name: string
  /** The container that one probe stands for. */
  readonly container: ZoneContainer
  /** The bench test of the medium, where there is one. */
  readonly medium?: ZoneMedium
  /** Plants on a square metre of growing area. Unit: 1/m². Range: (0, ∞). */
  readonly plantDensity: PlantDensity
  /** Crop evapotranspiration by reference evapotranspiration. Unit: 1. Range: [0, 3]. */
  readonly cropCoefficient: CropCoefficient
  /** The emitters of one container. */
  readonly emitters: ZoneEmitters
  /** The probes, at least one. */
  readonly probes: readonly DescribedProbe[]
  /** Where it is, and what its clocks do. */
  readonly place: ZonePlace
  /** Its lamps, where light is not measured under them. */
  readonly lamps?: ZoneLamps
  /** Time between two readings. Unit: s. Range: [1, 86400]. */
  readonly readingStep: Duration
  /** Whether an entry of the watering log is one opening of the valve or the sum of a day; `openings` by default. */
  readonly wateringLog?: 'openings' | 'days'
  /** What is allowed and what is wanted. */
  readonly limits: ZoneLimits
}
