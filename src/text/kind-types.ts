import type { AbsoluteHumidity } from '../quantity/absolute-humidity.js'
import type { AirDensity } from '../quantity/air-density.js'
import type { AmountConcentration } from '../quantity/amount-concentration.js'
import type { Area } from '../quantity/area.js'
import type { CellConstant } from '../quantity/cell-constant.js'
import type { ChargeConcentration } from '../quantity/charge-concentration.js'
import type { Conductance } from '../quantity/conductance.js'
import type { DailyNetRadiation, DailyRadiation, DailySoilHeat } from '../quantity/daily-radiation.js'
import type { BulkDensity, ParticleDensity, WaterDensity } from '../quantity/density.js'
import type { SoilWaterDiffusivity } from '../quantity/diffusivity.js'
import type { DissolvedSolids } from '../quantity/dissolved-solids.js'
import type { Duration } from '../quantity/duration.js'
import type {
  BulkEC,
  DrainEC,
  MeasuredEC,
  PoreWaterEC,
  SaturatedExtractEC,
  SolutionEC,
} from '../quantity/electrical-conductivity.js'
import type { Elevation } from '../quantity/elevation.js'
import type { CropET, PanEvaporation, ReferenceET } from '../quantity/evapotranspiration.js'
import type {
  ApplicationRate,
  HourlyCropET,
  HourlyReferenceET,
  WaterFlux,
} from '../quantity/evapotranspiration-hourly.js'
import type { Flow } from '../quantity/flow.js'
import type { Frequency } from '../quantity/frequency.js'
import type { HourlyNetRadiation, HourlyRadiation, HourlySoilHeat } from '../quantity/hourly-radiation.js'
import type { HumidityRatio } from '../quantity/humidity-ratio.js'
import type { HydraulicConductivity } from '../quantity/hydraulic-conductivity.js'
import type { Illuminance } from '../quantity/illuminance.js'
import type { InverseSuction } from '../quantity/inverse-suction.js'
import type { Irradiance } from '../quantity/irradiance.js'
import type { LatentHeat } from '../quantity/latent-heat.js'
import type { Length } from '../quantity/length.js'
import type { DailyLightIntegral } from '../quantity/light-integral.js'
import type { Mass } from '../quantity/mass.js'
import type { OxygenConcentration, OxygenSaturation } from '../quantity/oxygen.js'
import type { Permittivity } from '../quantity/permittivity.js'
import type { PhotonFluxDensity } from '../quantity/photon-flux.js'
import type { PhotonYield } from '../quantity/photon-yield.js'
import type { CropCoefficient, LeafAreaIndex, PlantDensity, PlantWaterUse } from '../quantity/plant.js'
import type { Latitude, Longitude } from '../quantity/position.js'
import type { Power } from '../quantity/power.js'
import type { Pressure, VapourPressure, VapourPressureDeficit } from '../quantity/pressure.js'
import type { VapourPressureSlope } from '../quantity/psychrometrics.js'
import type { RadiationSum } from '../quantity/radiation-sum.js'
import type { Resistance } from '../quantity/resistance.js'
import type { Salinity } from '../quantity/salinity.js'
import type {
  AirFilledPorosity,
  DegreeOfSaturation,
  DepletionFraction,
  DrainFraction,
  GroundFraction,
  MassFraction,
  Porosity,
  RelativeHumidity,
  Share,
} from '../quantity/share.js'
import type { SuctionHead } from '../quantity/suction.js'
import type { SurfaceTension } from '../quantity/surface-tension.js'
import type { Temperature, TemperatureChange } from '../quantity/temperature.js'
import type { Viscosity } from '../quantity/viscosity.js'
import type { Volume } from '../quantity/volume.js'
import type { GravimetricWaterContent, WaterContent, WaterContentChange } from '../quantity/water-content.js'
import type { WaterDepth } from '../quantity/water-depth.js'
import type { Wavelength } from '../quantity/wavelength.js'
import type { WindSpeed } from '../quantity/wind.js'

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
  readonly SoilWaterDiffusivity: SoilWaterDiffusivity
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
  readonly AbsoluteHumidity: AbsoluteHumidity
  readonly AirDensity: AirDensity
  readonly AmountConcentration: AmountConcentration
  readonly CellConstant: CellConstant
  readonly ChargeConcentration: ChargeConcentration
  readonly Conductance: Conductance
  readonly DissolvedSolids: DissolvedSolids
  readonly PanEvaporation: PanEvaporation
  readonly HumidityRatio: HumidityRatio
  readonly Illuminance: Illuminance
  readonly InverseSuction: InverseSuction
  readonly LatentHeat: LatentHeat
  readonly OxygenSaturation: OxygenSaturation
  readonly PhotonYield: PhotonYield
  readonly Latitude: Latitude
  readonly Longitude: Longitude
  readonly VapourPressureSlope: VapourPressureSlope
  readonly Resistance: Resistance
  readonly Salinity: Salinity
  readonly SurfaceTension: SurfaceTension
  readonly Viscosity: Viscosity
  readonly Wavelength: Wavelength
}

/** Name of a kind, as in the typings: `Volume`, `DrainFraction`, `SuctionHead`. */
export type KindName = keyof KindTypes
