/** The kinds that text can stand for: their canonical unit, the units that are accepted, and the constructor that guards them. */
import { gramsPerCubicMetre } from '../quantity/absolute-humidity.js'
import { kilogramsOfAirPerCubicMetre } from '../quantity/air-density.js'
import { millimolesPerLitre } from '../quantity/amount-concentration.js'
import { squareMetres } from '../quantity/area.js'
import { cellConstantPerMetre } from '../quantity/cell-constant.js'
import { millimolesOfChargePerLitre } from '../quantity/charge-concentration.js'
import { siemens } from '../quantity/conductance.js'
import { megajoulesPerSquareMetreDay } from '../quantity/daily-radiation.js'
import { gramsPerCubicCentimetre } from '../quantity/density.js'
import { squareCentimetresPerHour } from '../quantity/diffusivity.js'
import { milligramsPerLitreOfSolids } from '../quantity/dissolved-solids.js'
import { seconds } from '../quantity/duration.js'
import { decisiemensPerMetre } from '../quantity/electrical-conductivity.js'
import { metresAboveSeaLevel } from '../quantity/elevation.js'
import { millimetresPerDay } from '../quantity/evapotranspiration.js'
import { millimetresPerHour } from '../quantity/evapotranspiration-hourly.js'
import { litresPerHour } from '../quantity/flow.js'
import { hertz } from '../quantity/frequency.js'
import { megajoulesPerSquareMetreHour } from '../quantity/hourly-radiation.js'
import { kilogramsPerKilogram } from '../quantity/humidity-ratio.js'
import { centimetresPerHour } from '../quantity/hydraulic-conductivity.js'
import { lux } from '../quantity/illuminance.js'
import { perCentimetre } from '../quantity/inverse-suction.js'
import { wattsPerSquareMetre } from '../quantity/irradiance.js'
import { megajoulesPerKilogram } from '../quantity/latent-heat.js'
import { centimetres } from '../quantity/length.js'
import { molesPerSquareMetreDay } from '../quantity/light-integral.js'
import { grams } from '../quantity/mass.js'
import { milligramsPerLitreOfOxygen, percentOfOxygenSaturation } from '../quantity/oxygen.js'
import { permittivity } from '../quantity/permittivity.js'
import { micromolesPerSquareMetreSecond } from '../quantity/photon-flux.js'
import { micromolesPerJoule } from '../quantity/photon-yield.js'
import { cropCoefficient, leafAreaIndex, litresPerPlantDay, plantsPerSquareMetre } from '../quantity/plant.js'
import { latitude, longitude } from '../quantity/position.js'
import { watts } from '../quantity/power.js'
import { kilopascals } from '../quantity/pressure.js'
import { kilopascalsPerKelvin } from '../quantity/psychrometrics.js'
import { joulesPerSquareCentimetre } from '../quantity/radiation-sum.js'
import { ohms } from '../quantity/resistance.js'
import { salinity } from '../quantity/salinity.js'
import { fraction } from '../quantity/share.js'
import { kilopascalsOfSuction } from '../quantity/suction.js'
import { newtonsPerMetre } from '../quantity/surface-tension.js'
import { celsius, kelvinsOfChange } from '../quantity/temperature.js'
import { pascalSeconds } from '../quantity/viscosity.js'
import { litres } from '../quantity/volume.js'
import { gravimetricWaterContent, waterContent, waterContentChange } from '../quantity/water-content.js'
import { millimetresOfDepth } from '../quantity/water-depth.js'
import { nanometres } from '../quantity/wavelength.js'
import { metresPerSecond } from '../quantity/wind.js'
import type { KindName } from './kind-types.js'
import {
  CONDUCTIVITY,
  DAILY_DEPTH,
  DAILY_RADIATION,
  DEGREES,
  DENSITY,
  HOURLY_DEPTH,
  HOURLY_RADIATION,
  PLAIN_RATIO,
  SHARE,
  type UnitList,
  VAPOUR_PRESSURE,
} from './unit-lists.js'

/** A kind of quantity as text sees it. The first unit is the one in which numbers are kept. */
export interface TextKind {
  readonly make: (value: number) => number
  readonly units: UnitList
}

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
  VapourPressure: { make: kilopascals, units: VAPOUR_PRESSURE },
  VapourPressureDeficit: { make: kilopascals, units: VAPOUR_PRESSURE },
  BulkEC: { make: decisiemensPerMetre, units: CONDUCTIVITY },
  PoreWaterEC: { make: decisiemensPerMetre, units: CONDUCTIVITY },
  SolutionEC: { make: decisiemensPerMetre, units: CONDUCTIVITY },
  DrainEC: { make: decisiemensPerMetre, units: CONDUCTIVITY },
  SaturatedExtractEC: { make: decisiemensPerMetre, units: CONDUCTIVITY },
  MeasuredEC: { make: decisiemensPerMetre, units: CONDUCTIVITY },
  BulkDensity: { make: gramsPerCubicCentimetre, units: DENSITY },
  ParticleDensity: { make: gramsPerCubicCentimetre, units: DENSITY },
  WaterDensity: { make: gramsPerCubicCentimetre, units: DENSITY },
  ReferenceET: { make: millimetresPerDay, units: DAILY_DEPTH },
  CropET: { make: millimetresPerDay, units: DAILY_DEPTH },
  HourlyReferenceET: { make: millimetresPerHour, units: HOURLY_DEPTH },
  HourlyCropET: { make: millimetresPerHour, units: HOURLY_DEPTH },
  ApplicationRate: { make: millimetresPerHour, units: HOURLY_DEPTH },
  WaterFlux: { make: millimetresPerHour, units: HOURLY_DEPTH },
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
  SoilWaterDiffusivity: {
    make: squareCentimetresPerHour,
    units: [{ shown: 'cm²/h', ucum: 'cm2/h', parsed: 'cm^2/h' }],
  },
  DailyRadiation: { make: megajoulesPerSquareMetreDay, units: DAILY_RADIATION },
  DailyNetRadiation: { make: megajoulesPerSquareMetreDay, units: DAILY_RADIATION },
  DailySoilHeat: { make: megajoulesPerSquareMetreDay, units: DAILY_RADIATION },
  HourlyRadiation: { make: megajoulesPerSquareMetreHour, units: HOURLY_RADIATION },
  HourlyNetRadiation: { make: megajoulesPerSquareMetreHour, units: HOURLY_RADIATION },
  HourlySoilHeat: { make: megajoulesPerSquareMetreHour, units: HOURLY_RADIATION },
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
  Porosity: { make: fraction, units: SHARE },
  AirFilledPorosity: { make: fraction, units: SHARE },
  DegreeOfSaturation: { make: fraction, units: SHARE },
  DrainFraction: { make: fraction, units: SHARE },
  DepletionFraction: { make: fraction, units: SHARE },
  RelativeHumidity: { make: fraction, units: SHARE },
  MassFraction: { make: fraction, units: SHARE },
  GroundFraction: { make: fraction, units: SHARE },
  Share: { make: fraction, units: SHARE },
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
  AbsoluteHumidity: {
    make: gramsPerCubicMetre,
    units: [
      { shown: 'g/m³', ucum: 'g/m3', parsed: 'g/m^3' },
      { shown: 'kg/m³', ucum: 'kg/m3', parsed: 'kg/m^3' },
    ],
  },
  AirDensity: { make: kilogramsOfAirPerCubicMetre, units: [{ shown: 'kg/m³', ucum: 'kg/m3', parsed: 'kg/m^3' }] },
  AmountConcentration: {
    make: millimolesPerLitre,
    units: [
      { shown: 'mmol/L', ucum: 'mmol/L', parsed: 'mmol/L' },
      { shown: 'mol/L', ucum: 'mol/L', parsed: 'mol/L' },
    ],
  },
  CellConstant: {
    make: cellConstantPerMetre,
    units: [
      { shown: '1/m', ucum: '/m', parsed: 'm^-1' },
      { shown: '1/cm', ucum: '/cm', parsed: 'cm^-1' },
    ],
  },
  ChargeConcentration: {
    make: millimolesOfChargePerLitre,
    units: [{ shown: 'mmol(+)/L', ucum: 'meq/L', parsed: 'meq/L' }],
  },
  Conductance: {
    make: siemens,
    units: [
      { shown: 'S', ucum: 'S', parsed: 'S' },
      { shown: 'mS', ucum: 'mS', parsed: 'mS' },
      { shown: 'µS', ucum: 'uS', parsed: 'uS' },
    ],
  },
  DissolvedSolids: {
    make: milligramsPerLitreOfSolids,
    units: [
      { shown: 'mg/L', ucum: 'mg/L', parsed: 'mg/L' },
      { shown: 'g/L', ucum: 'g/L', parsed: 'g/L' },
    ],
  },
  PanEvaporation: { make: millimetresPerDay, units: DAILY_DEPTH },
  HumidityRatio: {
    make: kilogramsPerKilogram,
    units: [
      { shown: 'kg/kg', ucum: 'kg/kg', parsed: 'kgperkg' },
      { shown: 'g/kg', ucum: 'g/kg', parsed: 'gperkg' },
    ],
  },
  Illuminance: {
    make: lux,
    units: [
      { shown: 'lx', ucum: 'lx', parsed: 'lx' },
      { shown: 'klx', ucum: 'klx', parsed: 'klx' },
      { shown: 'fc', ucum: 'lm/[sft_i]', parsed: 'footcandle' },
    ],
  },
  InverseSuction: {
    make: perCentimetre,
    units: [
      { shown: '1/cm', ucum: '/cm[H2O]', parsed: 'cmwater^-1' },
      { shown: '1/m', ucum: '/m[H2O]', parsed: 'mwater^-1' },
      { shown: '1/kPa', ucum: '/kPa', parsed: 'kPa^-1' },
    ],
  },
  LatentHeat: {
    make: megajoulesPerKilogram,
    units: [
      { shown: 'MJ/kg', ucum: 'MJ/kg', parsed: 'MJ/kg' },
      { shown: 'kJ/kg', ucum: 'kJ/kg', parsed: 'kJ/kg' },
    ],
  },
  OxygenSaturation: { make: shareOfOxygenSaturation, units: SHARE },
  PhotonYield: { make: micromolesPerJoule, units: [{ shown: 'µmol/J', ucum: 'umol/J', parsed: 'umol/J' }] },
  Latitude: { make: latitude, units: DEGREES },
  Longitude: { make: longitude, units: DEGREES },
  VapourPressureSlope: { make: kilopascalsPerKelvin, units: [{ shown: 'kPa/K', ucum: 'kPa/K', parsed: 'kPa/K' }] },
  Resistance: {
    make: ohms,
    units: [
      { shown: 'Ω', ucum: 'Ohm', parsed: 'ohm' },
      { shown: 'kΩ', ucum: 'kOhm', parsed: 'kohm' },
    ],
  },
  Salinity: { make: salinity, units: PLAIN_RATIO },
  SurfaceTension: {
    make: newtonsPerMetre,
    units: [
      { shown: 'N/m', ucum: 'N/m', parsed: 'N/m' },
      { shown: 'mN/m', ucum: 'mN/m', parsed: 'mN/m' },
    ],
  },
  Viscosity: {
    make: pascalSeconds,
    units: [
      { shown: 'Pa·s', ucum: 'Pa.s', parsed: 'Pa s' },
      { shown: 'mPa·s', ucum: 'mPa.s', parsed: 'mPa s' },
    ],
  },
  Wavelength: { make: nanometres, units: [{ shown: 'nm', ucum: 'nm', parsed: 'nm' }] },
}

function shareOfOxygenSaturation(share: number): number {
  return percentOfOxygenSaturation(share * 100)
}
