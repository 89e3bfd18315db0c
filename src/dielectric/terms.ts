import type {
  BulkDensity,
  BulkEC,
  CellConstant,
  Conductance,
  DissolvedSolids,
  Frequency,
  Length,
  MassFraction,
  Permittivity,
  PoreWaterEC,
  Porosity,
  WaterContent,
} from '../quantity/generated/kinds.js'
/** What a sensor shows. */
export interface ApparentPermittivity {
  /** Apparent relative permittivity. Unit: 1. Range: [1, 90]. */
  readonly apparent: Permittivity
}

/** Water in the medium. */
export interface WaterHeld {
  /** Water content. Unit: m³/m³. Range: [0, 1]. */
  readonly waterContent: WaterContent
}

/** Pores of the medium. */
export interface PoreSpace {
  /** Volume of pores per volume of medium. Unit: 1. Range: [0, 1]. */
  readonly porosity: Porosity
}

/** How the phases of a mixture add up. */
export interface MixingExponent {
  /** Exponent of the mixing law; 0.5 where nothing is known. Unit: 1. Range: [0.001, 1]. */
  readonly exponent: number
}

/** How dense the medium lies. */
export interface DryDensity {
  /** Dry mass per volume. Unit: g/cm³. Range: (0, 2.65]. */
  readonly bulkDensity: BulkDensity
}

/** Conductivity of the water in the pores. */
export interface PoreSolution {
  /** Conductivity of the pore water. Unit: dS/m. Range: [0, ∞). */
  readonly poreWater: PoreWaterEC
}

/** Conductivity of medium, water and air together. */
export interface BulkConductivity {
  /** Conductivity of the whole. Unit: dS/m. Range: [0, ∞). */
  readonly bulk: BulkEC
}

/** The field of a sensor. */
export interface FieldFrequency {
  /** Frequency of the field. Unit: Hz. Range: (0, ∞). */
  readonly frequency: Frequency
}

/** The solids of a mixture. */
export interface SolidPhase {
  /** Permittivity of the solids. Unit: 1. Range: [1, 20]. */
  readonly solids: Permittivity
}

/** The air of a mixture. */
export interface AirPhase {
  /** Permittivity of the air, 1. Unit: 1. Range: [1, 1.1]. */
  readonly air: Permittivity
}

/** Sand of a mineral soil. */
export interface SandInSoil {
  /** Sand in the dry mass. Unit: 1. Range: [0, 1]. */
  readonly sand: MassFraction
}

/** Clay of a mineral soil. */
export interface ClayInSoil {
  /** Clay in the dry mass. Unit: 1. Range: [0, 1]. */
  readonly clay: MassFraction
}

/** Rods of a sensor. */
export interface RodLength {
  /** Length of the rods in the medium. Unit: cm. Range: (0, 500]. */
  readonly rodLength: Length
}

/** What a conductivity cell shows. */
export interface CellConductance {
  /** Conductance that the cell shows. Unit: S. Range: (0, ∞). */
  readonly conductance: Conductance
}

/** A conductivity cell. */
export interface CellConstantTerm {
  /** Cell constant. Unit: 1/m. Range: (0, ∞). */
  readonly cellConstant: CellConstant
}

/** The scale of a meter of dissolved solids. */
export interface SolidsScale {
  /** Factor of the scale, one of `DISSOLVED_SOLIDS_SCALES`. Unit: mg/L per dS/m. Range: [300, 1200]. */
  readonly factor: number
}

/** What a meter of dissolved solids shows. */
export interface SolidsShown {
  /** Dissolved solids as shown. Unit: mg/L. Range: [0, ∞). */
  readonly solids: DissolvedSolids
}

/** The water in the pores. */
export interface PoreWaterPermittivity {
  /** Permittivity of the pore water. Unit: 1. Range: [30, 100]. */
  readonly water: Permittivity
}

/** What temperature does to conductivity. */
export interface TemperatureFactor {
  /** Temperature factor. Unit: 1. Range: (0, 10]. */
  readonly factor: number
}

/** Water in a slow field. */
export interface StaticPermittivity {
  /** Permittivity at low frequency. Unit: 1. */
  readonly staticPermittivity: Permittivity
}

/** A medium that holds water. */
export interface WetMedium {
  /** Water content. Unit: m³/m³. Range: (0, 1]. */
  readonly waterContent: WaterContent
}
