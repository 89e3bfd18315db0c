/** The kinds that text can stand for: their canonical unit, the units that are accepted, and the constructor that guards them. */
import { type Area, squareMetres } from '../quantity/area.js'
import {
  type DailyNetRadiation,
  type DailyRadiation,
  type DailySoilHeat,
  megajoulesPerSquareMetreDay,
} from '../quantity/daily-radiation.js'
import {
  type BulkDensity,
  gramsPerCubicCentimetre,
  type ParticleDensity,
  type WaterDensity,
} from '../quantity/density.js'
import { type Duration, seconds } from '../quantity/duration.js'
import {
  type BulkEC,
  type DrainEC,
  decisiemensPerMetre,
  type MeasuredEC,
  type PoreWaterEC,
  type SaturatedExtractEC,
  type SolutionEC,
} from '../quantity/electrical-conductivity.js'
import { type Elevation, metresAboveSeaLevel } from '../quantity/elevation.js'
import { type CropET, millimetresPerDay, type ReferenceET } from '../quantity/evapotranspiration.js'
import {
  type ApplicationRate,
  type HourlyCropET,
  type HourlyReferenceET,
  millimetresPerHour,
  type WaterFlux,
} from '../quantity/evapotranspiration-hourly.js'
import { type Flow, litresPerHour } from '../quantity/flow.js'
import { type Frequency, hertz } from '../quantity/frequency.js'
import {
  type HourlyNetRadiation,
  type HourlyRadiation,
  type HourlySoilHeat,
  megajoulesPerSquareMetreHour,
} from '../quantity/hourly-radiation.js'
import { centimetresPerHour, type HydraulicConductivity } from '../quantity/hydraulic-conductivity.js'
import { type Irradiance, wattsPerSquareMetre } from '../quantity/irradiance.js'
import { centimetres, type Length } from '../quantity/length.js'
import { type DailyLightIntegral, molesPerSquareMetreDay } from '../quantity/light-integral.js'
import { grams, type Mass } from '../quantity/mass.js'
import { milligramsPerLitreOfOxygen, type OxygenConcentration } from '../quantity/oxygen.js'
import { type Permittivity, permittivity } from '../quantity/permittivity.js'
import { micromolesPerSquareMetreSecond, type PhotonFluxDensity } from '../quantity/photon-flux.js'
import {
  type CropCoefficient,
  cropCoefficient,
  type LeafAreaIndex,
  leafAreaIndex,
  litresPerPlantDay,
  type PlantDensity,
  type PlantWaterUse,
  plantsPerSquareMetre,
} from '../quantity/plant.js'
import { type Power, watts } from '../quantity/power.js'
import { kilopascals, type Pressure, type VapourPressure, type VapourPressureDeficit } from '../quantity/pressure.js'
import { joulesPerSquareCentimetre, type RadiationSum } from '../quantity/radiation-sum.js'
import {
  type AirFilledPorosity,
  type DegreeOfSaturation,
  type DepletionFraction,
  type DrainFraction,
  fraction,
  type GroundFraction,
  type MassFraction,
  type Porosity,
  type RelativeHumidity,
  type Share,
} from '../quantity/share.js'
import { kilopascalsOfSuction, type SuctionHead } from '../quantity/suction.js'
import { celsius, kelvinsOfChange, type Temperature, type TemperatureChange } from '../quantity/temperature.js'
import { litres, type Volume } from '../quantity/volume.js'
import {
  type GravimetricWaterContent,
  gravimetricWaterContent,
  type WaterContent,
  type WaterContentChange,
  waterContent,
  waterContentChange,
} from '../quantity/water-content.js'
import { millimetresOfDepth, type WaterDepth } from '../quantity/water-depth.js'
import { metresPerSecond, type WindSpeed } from '../quantity/wind.js'

/** One way of writing a unit: as it is shown, as its UCUM code, and as the parser reads it. */
export interface UnitSpelling {
  readonly shown: string
  readonly ucum: string
  readonly parsed: string
}

/** A kind of quantity as text sees it. The first unit is the one in which numbers are kept. */
export interface TextKind {
  readonly make: (value: number) => number
  readonly units: readonly [UnitSpelling, ...UnitSpelling[]]
}

/** The type behind each name of a kind. */
export interface KindTypes {
  readonly Volume: Volume
  readonly Length: Length
  readonly Area: Area
  readonly Mass: Mass
  readonly Duration: Duration
  readonly Flow: Flow
  readonly Pressure: Pressure
  readonly VapourPressure: VapourPressure
  readonly VapourPressureDeficit: VapourPressureDeficit
  readonly BulkEC: BulkEC
  readonly PoreWaterEC: PoreWaterEC
  readonly SolutionEC: SolutionEC
  readonly DrainEC: DrainEC
  readonly SaturatedExtractEC: SaturatedExtractEC
  readonly MeasuredEC: MeasuredEC
  readonly BulkDensity: BulkDensity
  readonly ParticleDensity: ParticleDensity
  readonly WaterDensity: WaterDensity
  readonly ReferenceET: ReferenceET
  readonly CropET: CropET
  readonly HourlyReferenceET: HourlyReferenceET
  readonly HourlyCropET: HourlyCropET
  readonly ApplicationRate: ApplicationRate
  readonly WaterFlux: WaterFlux
  readonly WaterDepth: WaterDepth
  readonly SuctionHead: SuctionHead
  readonly HydraulicConductivity: HydraulicConductivity
  readonly DailyRadiation: DailyRadiation
  readonly DailyNetRadiation: DailyNetRadiation
  readonly DailySoilHeat: DailySoilHeat
  readonly HourlyRadiation: HourlyRadiation
  readonly HourlyNetRadiation: HourlyNetRadiation
  readonly HourlySoilHeat: HourlySoilHeat
  readonly Irradiance: Irradiance
  readonly RadiationSum: RadiationSum
  readonly PhotonFluxDensity: PhotonFluxDensity
  readonly DailyLightIntegral: DailyLightIntegral
  readonly WindSpeed: WindSpeed
  readonly Frequency: Frequency
  readonly Power: Power
  readonly OxygenConcentration: OxygenConcentration
  readonly Elevation: Elevation
  readonly PlantDensity: PlantDensity
  readonly PlantWaterUse: PlantWaterUse
  readonly Porosity: Porosity
  readonly AirFilledPorosity: AirFilledPorosity
  readonly DegreeOfSaturation: DegreeOfSaturation
  readonly DrainFraction: DrainFraction
  readonly DepletionFraction: DepletionFraction
  readonly RelativeHumidity: RelativeHumidity
  readonly MassFraction: MassFraction
  readonly GroundFraction: GroundFraction
  readonly Share: Share
  readonly WaterContent: WaterContent
  readonly WaterContentChange: WaterContentChange
  readonly GravimetricWaterContent: GravimetricWaterContent
  readonly Permittivity: Permittivity
  readonly LeafAreaIndex: LeafAreaIndex
  readonly CropCoefficient: CropCoefficient
  readonly Temperature: Temperature
  readonly TemperatureChange: TemperatureChange
}

/** Name of a kind, as in the typings: `Volume`, `DrainFraction`, `SuctionHead`. */
export type KindName = keyof KindTypes

/** Units that several kinds share. */
type Units = TextKind['units']

const VAPOUR_PRESSURE: Units = [
  { shown: 'kPa', ucum: 'kPa', parsed: 'kPa' },
  { shown: 'hPa', ucum: 'hPa', parsed: 'hPa' },
  { shown: 'mbar', ucum: 'mbar', parsed: 'mbar' },
  { shown: 'bar', ucum: 'bar', parsed: 'bar' },
]
const CONDUCTIVITY: Units = [
  { shown: 'dS/m', ucum: 'dS/m', parsed: 'dS/m' },
  { shown: 'mS/cm', ucum: 'mS/cm', parsed: 'mS/cm' },
  { shown: 'µS/cm', ucum: 'uS/cm', parsed: 'uS/cm' },
  { shown: 'S/m', ucum: 'S/m', parsed: 'S/m' },
]
const DENSITY: Units = [
  { shown: 'g/cm³', ucum: 'g/cm3', parsed: 'g/cm^3' },
  { shown: 'kg/m³', ucum: 'kg/m3', parsed: 'kg/m^3' },
]
const DAILY_DEPTH: Units = [
  { shown: 'mm/d', ucum: 'mm/d', parsed: 'mm/d' },
  { shown: 'in/d', ucum: '[in_i]/d', parsed: 'in/d' },
]
const HOURLY_DEPTH: Units = [
  { shown: 'mm/h', ucum: 'mm/h', parsed: 'mm/h' },
  { shown: 'in/h', ucum: '[in_i]/h', parsed: 'in/h' },
]
const DAILY_RADIATION: Units = [
  { shown: 'MJ/m²/d', ucum: 'MJ/(m2.d)', parsed: 'MJ/(m^2 d)' },
  { shown: 'J/cm²/d', ucum: 'J/(cm2.d)', parsed: 'J/(cm^2 d)' },
  { shown: 'W/m²', ucum: 'W/m2', parsed: 'W/m^2' },
]
const HOURLY_RADIATION: Units = [
  { shown: 'MJ/m²/h', ucum: 'MJ/(m2.h)', parsed: 'MJ/(m^2 h)' },
  { shown: 'W/m²', ucum: 'W/m2', parsed: 'W/m^2' },
]
const SHARE: Units = [
  { shown: '1', ucum: '1', parsed: '' },
  { shown: '%', ucum: '%', parsed: '%' },
]
const PLAIN_RATIO: Units = [{ shown: '1', ucum: '1', parsed: '' }]

/** Every kind that can be read from text. */
export const KINDS: Readonly<Record<KindName, TextKind>> = {
  Volume: {
    make: litres,
    units: [
      { shown: 'L', ucum: 'L', parsed: 'L' },
      { shown: 'mL', ucum: 'mL', parsed: 'mL' },
      { shown: 'm³', ucum: 'm3', parsed: 'm^3' },
      { shown: 'US gal', ucum: '[gal_us]', parsed: 'usgal' },
      { shown: 'US fl oz', ucum: '[foz_us]', parsed: 'usfloz' },
    ],
  },
  Length: {
    make: centimetres,
    units: [
      { shown: 'cm', ucum: 'cm', parsed: 'cm' },
      { shown: 'mm', ucum: 'mm', parsed: 'mm' },
      { shown: 'm', ucum: 'm', parsed: 'm' },
      { shown: 'in', ucum: '[in_i]', parsed: 'in' },
      { shown: 'ft', ucum: '[ft_i]', parsed: 'ft' },
    ],
  },
  Area: {
    make: squareMetres,
    units: [
      { shown: 'm²', ucum: 'm2', parsed: 'm^2' },
      { shown: 'cm²', ucum: 'cm2', parsed: 'cm^2' },
      { shown: 'ha', ucum: 'har', parsed: 'hectare' },
      { shown: 'ft²', ucum: '[sft_i]', parsed: 'ft^2' },
    ],
  },
  Mass: {
    make: grams,
    units: [
      { shown: 'g', ucum: 'g', parsed: 'g' },
      { shown: 'kg', ucum: 'kg', parsed: 'kg' },
      { shown: 'mg', ucum: 'mg', parsed: 'mg' },
      { shown: 'lb', ucum: '[lb_av]', parsed: 'exactlb' },
      { shown: 'oz', ucum: '[oz_av]', parsed: 'exactoz' },
    ],
  },
  Duration: {
    make: seconds,
    units: [
      { shown: 's', ucum: 's', parsed: 's' },
      { shown: 'min', ucum: 'min', parsed: 'minute' },
      { shown: 'h', ucum: 'h', parsed: 'h' },
      { shown: 'd', ucum: 'd', parsed: 'd' },
    ],
  },
  Flow: {
    make: litresPerHour,
    units: [
      { shown: 'L/h', ucum: 'L/h', parsed: 'L/h' },
      { shown: 'L/min', ucum: 'L/min', parsed: 'L/minute' },
      { shown: 'mL/min', ucum: 'mL/min', parsed: 'mL/minute' },
      { shown: 'm³/h', ucum: 'm3/h', parsed: 'm^3/h' },
      { shown: 'US gal/h', ucum: '[gal_us]/h', parsed: 'usgal/h' },
      { shown: 'US gal/min', ucum: '[gal_us]/min', parsed: 'usgal/minute' },
    ],
  },
  Pressure: {
    make: kilopascals,
    units: [
      { shown: 'kPa', ucum: 'kPa', parsed: 'kPa' },
      { shown: 'hPa', ucum: 'hPa', parsed: 'hPa' },
      { shown: 'mbar', ucum: 'mbar', parsed: 'mbar' },
      { shown: 'bar', ucum: 'bar', parsed: 'bar' },
      { shown: 'psi', ucum: '[psi]', parsed: 'exactpsi' },
      { shown: 'm of water', ucum: 'm[H2O]', parsed: 'mwater' },
    ],
  },
  VapourPressure: {
    make: kilopascals,
    units: VAPOUR_PRESSURE,
  },
  VapourPressureDeficit: {
    make: kilopascals,
    units: VAPOUR_PRESSURE,
  },
  BulkEC: {
    make: decisiemensPerMetre,
    units: CONDUCTIVITY,
  },
  PoreWaterEC: {
    make: decisiemensPerMetre,
    units: CONDUCTIVITY,
  },
  SolutionEC: {
    make: decisiemensPerMetre,
    units: CONDUCTIVITY,
  },
  DrainEC: {
    make: decisiemensPerMetre,
    units: CONDUCTIVITY,
  },
  SaturatedExtractEC: {
    make: decisiemensPerMetre,
    units: CONDUCTIVITY,
  },
  MeasuredEC: {
    make: decisiemensPerMetre,
    units: CONDUCTIVITY,
  },
  BulkDensity: {
    make: gramsPerCubicCentimetre,
    units: DENSITY,
  },
  ParticleDensity: {
    make: gramsPerCubicCentimetre,
    units: DENSITY,
  },
  WaterDensity: {
    make: gramsPerCubicCentimetre,
    units: DENSITY,
  },
  ReferenceET: {
    make: millimetresPerDay,
    units: DAILY_DEPTH,
  },
  CropET: {
    make: millimetresPerDay,
    units: DAILY_DEPTH,
  },
  HourlyReferenceET: {
    make: millimetresPerHour,
    units: HOURLY_DEPTH,
  },
  HourlyCropET: {
    make: millimetresPerHour,
    units: HOURLY_DEPTH,
  },
  ApplicationRate: {
    make: millimetresPerHour,
    units: HOURLY_DEPTH,
  },
  WaterFlux: {
    make: millimetresPerHour,
    units: HOURLY_DEPTH,
  },
  WaterDepth: {
    make: millimetresOfDepth,
    units: [
      { shown: 'mm', ucum: 'mm', parsed: 'mm' },
      { shown: 'L/m²', ucum: 'L/m2', parsed: 'L/m^2' },
      { shown: 'in', ucum: '[in_i]', parsed: 'in' },
    ],
  },
  SuctionHead: {
    make: kilopascalsOfSuction,
    units: [
      { shown: 'kPa', ucum: 'kPa', parsed: 'kPa' },
      { shown: 'hPa', ucum: 'hPa', parsed: 'hPa' },
      { shown: 'mbar', ucum: 'mbar', parsed: 'mbar' },
      { shown: 'cm of water', ucum: 'cm[H2O]', parsed: 'cmwater' },
    ],
  },
  HydraulicConductivity: {
    make: centimetresPerHour,
    units: [
      { shown: 'cm/h', ucum: 'cm/h', parsed: 'cm/h' },
      { shown: 'cm/d', ucum: 'cm/d', parsed: 'cm/d' },
      { shown: 'cm/min', ucum: 'cm/min', parsed: 'cm/minute' },
      { shown: 'mm/h', ucum: 'mm/h', parsed: 'mm/h' },
    ],
  },
  DailyRadiation: {
    make: megajoulesPerSquareMetreDay,
    units: DAILY_RADIATION,
  },
  DailyNetRadiation: {
    make: megajoulesPerSquareMetreDay,
    units: DAILY_RADIATION,
  },
  DailySoilHeat: {
    make: megajoulesPerSquareMetreDay,
    units: DAILY_RADIATION,
  },
  HourlyRadiation: {
    make: megajoulesPerSquareMetreHour,
    units: HOURLY_RADIATION,
  },
  HourlyNetRadiation: {
    make: megajoulesPerSquareMetreHour,
    units: HOURLY_RADIATION,
  },
  HourlySoilHeat: {
    make: megajoulesPerSquareMetreHour,
    units: HOURLY_RADIATION,
  },
  Irradiance: { make: wattsPerSquareMetre, units: [{ shown: 'W/m²', ucum: 'W/m2', parsed: 'W/m^2' }] },
  RadiationSum: {
    make: joulesPerSquareCentimetre,
    units: [
      { shown: 'J/cm²', ucum: 'J/cm2', parsed: 'J/cm^2' },
      { shown: 'MJ/m²', ucum: 'MJ/m2', parsed: 'MJ/m^2' },
      { shown: 'Wh/m²', ucum: 'W.h/m2', parsed: 'Wh/m^2' },
    ],
  },
  PhotonFluxDensity: {
    make: micromolesPerSquareMetreSecond,
    units: [{ shown: 'µmol/m²/s', ucum: 'umol/(m2.s)', parsed: 'umol/(m^2 s)' }],
  },
  DailyLightIntegral: {
    make: molesPerSquareMetreDay,
    units: [{ shown: 'mol/m²/d', ucum: 'mol/(m2.d)', parsed: 'mol/(m^2 d)' }],
  },
  WindSpeed: {
    make: metresPerSecond,
    units: [
      { shown: 'm/s', ucum: 'm/s', parsed: 'm/s' },
      { shown: 'km/h', ucum: 'km/h', parsed: 'km/h' },
      { shown: 'mi/h', ucum: '[mi_i]/h', parsed: 'mile/h' },
      { shown: 'kn', ucum: '[kn_i]', parsed: 'knot' },
    ],
  },
  Frequency: {
    make: hertz,
    units: [
      { shown: 'Hz', ucum: 'Hz', parsed: 'Hz' },
      { shown: 'MHz', ucum: 'MHz', parsed: 'MHz' },
      { shown: 'GHz', ucum: 'GHz', parsed: 'GHz' },
    ],
  },
  Power: {
    make: watts,
    units: [
      { shown: 'W', ucum: 'W', parsed: 'W' },
      { shown: 'kW', ucum: 'kW', parsed: 'kW' },
    ],
  },
  OxygenConcentration: { make: milligramsPerLitreOfOxygen, units: [{ shown: 'mg/L', ucum: 'mg/L', parsed: 'mg/L' }] },
  Elevation: {
    make: metresAboveSeaLevel,
    units: [
      { shown: 'm', ucum: 'm', parsed: 'm' },
      { shown: 'ft', ucum: '[ft_i]', parsed: 'ft' },
    ],
  },
  PlantDensity: { make: plantsPerSquareMetre, units: [{ shown: '1/m²', ucum: '/m2', parsed: 'm^-2' }] },
  PlantWaterUse: {
    make: litresPerPlantDay,
    units: [
      { shown: 'L/d', ucum: 'L/d', parsed: 'L/d' },
      { shown: 'mL/d', ucum: 'mL/d', parsed: 'mL/d' },
    ],
  },
  Porosity: {
    make: fraction,
    units: SHARE,
  },
  AirFilledPorosity: {
    make: fraction,
    units: SHARE,
  },
  DegreeOfSaturation: {
    make: fraction,
    units: SHARE,
  },
  DrainFraction: {
    make: fraction,
    units: SHARE,
  },
  DepletionFraction: {
    make: fraction,
    units: SHARE,
  },
  RelativeHumidity: {
    make: fraction,
    units: SHARE,
  },
  MassFraction: {
    make: fraction,
    units: SHARE,
  },
  GroundFraction: {
    make: fraction,
    units: SHARE,
  },
  Share: {
    make: fraction,
    units: SHARE,
  },
  WaterContent: {
    make: waterContent,
    units: [
      { shown: 'm³/m³', ucum: 'm3/m3', parsed: '' },
      { shown: '%', ucum: '%', parsed: '%' },
    ],
  },
  WaterContentChange: {
    make: waterContentChange,
    units: [
      { shown: 'm³/m³', ucum: 'm3/m3', parsed: '' },
      { shown: 'points', ucum: '%', parsed: '%' },
    ],
  },
  GravimetricWaterContent: { make: gravimetricWaterContent, units: [{ shown: 'g/g', ucum: 'g/g', parsed: '' }] },
  Permittivity: { make: permittivity, units: PLAIN_RATIO },
  LeafAreaIndex: { make: leafAreaIndex, units: [{ shown: 'm²/m²', ucum: 'm2/m2', parsed: '' }] },
  CropCoefficient: { make: cropCoefficient, units: PLAIN_RATIO },
  Temperature: {
    make: celsius,
    units: [
      { shown: '°C', ucum: 'Cel', parsed: 'degC' },
      { shown: '°F', ucum: '[degF]', parsed: 'degF' },
      { shown: 'K', ucum: 'K', parsed: 'K' },
    ],
  },
  TemperatureChange: {
    make: kelvinsOfChange,
    units: [
      { shown: 'K', ucum: 'K', parsed: 'K' },
      { shown: '°C', ucum: 'Cel', parsed: 'degC' },
      { shown: '°F', ucum: '[degF]', parsed: 'degF' },
    ],
  },
}
