export { type AbsoluteHumidity, gramsPerCubicMetre, inGramsPerCubicMetre } from './absolute-humidity.js'
export { type AirDensity, inKilogramsOfAirPerCubicMetre, kilogramsOfAirPerCubicMetre } from './air-density.js'
export {
  type AmountConcentration,
  inMillimolesPerLitre,
  inMolesPerLitre,
  millimolesPerLitre,
  molesPerLitre,
} from './amount-concentration.js'
export {
  type Area,
  hectares,
  inHectares,
  inSquareCentimetres,
  inSquareFeet,
  inSquareMetres,
  squareCentimetres,
  squareFeet,
  squareMetres,
} from './area.js'
export { add, ratio, scale, subtract, sum } from './arithmetic.js'
export { type Attempt, attempt, isPorewaterError } from './attempt.js'
export { type BatchCounts, type BatchWork, convertInto, type RefusalCount } from './batch.js'
export { type DayOfYear, dayOfYear, type Instant, instant } from './calendar.js'
export {
  type CellConstant,
  cellConstantPerCentimetre,
  cellConstantPerMetre,
  inCellConstantPerCentimetre,
  inCellConstantPerMetre,
} from './cell-constant.js'
export {
  type ChargeConcentration,
  inMillimolesOfChargePerLitre,
  millimolesOfChargePerLitre,
} from './charge-concentration.js'
export {
  type Conductance,
  inMicrosiemens,
  inMillisiemens,
  inSiemens,
  microsiemens,
  millisiemens,
  siemens,
} from './conductance.js'
export {
  type AnyDailyRadiation,
  type DailyNetRadiation,
  type DailyRadiation,
  type DailySoilHeat,
  inJoulesPerSquareCentimetreDay,
  inMegajoulesPerSquareMetreDay,
  inWattsPerSquareMetreDayMean,
  joulesPerSquareCentimetreDay,
  megajoulesPerSquareMetreDay,
  wattsPerSquareMetreDayMean,
} from './daily-radiation.js'
export {
  type AnySolidDensity,
  type BulkDensity,
  gramsPerCubicCentimetre,
  inGramsPerCubicCentimetre,
  inKilogramsPerCubicMetre,
  kilogramsPerCubicMetre,
  type ParticleDensity,
  type UnnamedDensity,
  type WaterDensity,
} from './density.js'
export { inSquareCentimetresPerHour, type SoilWaterDiffusivity, squareCentimetresPerHour } from './diffusivity.js'
export {
  type DissolvedSolids,
  gramsPerLitreOfSolids,
  inGramsPerLitreOfSolids,
  inMilligramsPerLitreOfSolids,
  milligramsPerLitreOfSolids,
} from './dissolved-solids.js'
export {
  type Duration,
  days,
  hours,
  inDays,
  inHours,
  inMinutes,
  inNanoseconds,
  inSeconds,
  minutes,
  nanoseconds,
  seconds,
} from './duration.js'
export {
  type AnyEC,
  type BulkEC,
  type DrainEC,
  decisiemensPerMetre,
  inDecisiemensPerMetre,
  inMicrosiemensPerCentimetre,
  inMillisiemensPerCentimetre,
  inSiemensPerMetre,
  type MeasuredEC,
  microsiemensPerCentimetre,
  millisiemensPerCentimetre,
  type PoreWaterEC,
  type SaturatedExtractEC,
  type SolutionEC,
  siemensPerMetre,
  type UnnamedEC,
} from './electrical-conductivity.js'
export {
  type Elevation,
  feetAboveSeaLevel,
  inFeetAboveSeaLevel,
  inMetresAboveSeaLevel,
  metresAboveSeaLevel,
} from './elevation.js'
export { ConvergenceError, DomainError, InputError, type PorewaterError } from './errors.js'
export {
  type AnyDailyDepth,
  type CropET,
  inchesPerDay,
  inInchesPerDay,
  inMillimetresPerDay,
  millimetresPerDay,
  type PanEvaporation,
  type ReferenceET,
  type UnnamedET,
} from './evapotranspiration.js'
export {
  type AnyHourlyDepth,
  type ApplicationRate,
  type HourlyCropET,
  type HourlyReferenceET,
  inchesPerHour,
  inInchesPerHour,
  inMillimetresPerHour,
  millimetresPerHour,
  type UnnamedHourlyDepth,
  type WaterFlux,
} from './evapotranspiration-hourly.js'
export type { Finding } from './finding.js'
export {
  cubicMetresPerHour,
  type Flow,
  inCubicMetresPerHour,
  inLitresPerHour,
  inLitresPerMinute,
  inMillilitresPerMinute,
  inUsGallonsPerHour,
  inUsGallonsPerMinute,
  litresPerHour,
  litresPerMinute,
  millilitresPerMinute,
  usGallonsPerHour,
  usGallonsPerMinute,
} from './flow.js'
export { type Frequency, gigahertz, hertz, inGigahertz, inHertz, inMegahertz, megahertz } from './frequency.js'
export {
  type AnyHourlyRadiation,
  type HourlyNetRadiation,
  type HourlyRadiation,
  type HourlySoilHeat,
  inMegajoulesPerSquareMetreHour,
  inWattsPerSquareMetreHourMean,
  megajoulesPerSquareMetreHour,
  wattsPerSquareMetreHourMean,
} from './hourly-radiation.js'
export {
  gramsPerKilogram,
  type HumidityRatio,
  inGramsPerKilogram,
  inKilogramsPerKilogram,
  kilogramsPerKilogram,
} from './humidity-ratio.js'
export {
  centimetresPerDay,
  centimetresPerHour,
  centimetresPerMinute,
  type HydraulicConductivity,
  inCentimetresPerDay,
  inCentimetresPerHour,
  inCentimetresPerMinute,
  inMillimetresPerHourOfConductivity,
  millimetresPerHourOfConductivity,
} from './hydraulic-conductivity.js'
export { footCandles, type Illuminance, inFootCandles, inLux, lux } from './illuminance.js'
export {
  type InverseSuction,
  inPerCentimetre,
  inPerKilopascal,
  inPerMetre,
  perCentimetre,
  perKilopascal,
  perMetre,
  type WaterCapacity,
} from './inverse-suction.js'
export { type Irradiance, inWattsPerSquareMetre, wattsPerSquareMetre } from './irradiance.js'
export type { Additive, Kind, OneKind, Quantity } from './kind.js'
export { inMegajoulesPerKilogram, type LatentHeat, megajoulesPerKilogram } from './latent-heat.js'
export {
  centimetres,
  feet,
  inCentimetres,
  inches,
  inFeet,
  inInches,
  inMetres,
  inMillimetres,
  type Length,
  metres,
  millimetres,
} from './length.js'
export { type DailyLightIntegral, inMolesPerSquareMetreDay, molesPerSquareMetreDay } from './light-integral.js'
export {
  grams,
  inGrams,
  inKilograms,
  inMilligrams,
  inOunces,
  inPounds,
  kilograms,
  type Mass,
  milligrams,
  ounces,
  pounds,
} from './mass.js'
export {
  inMilligramsPerLitreOfOxygen,
  inMillimolesPerLitreOfOxygen,
  inPercentOfOxygenSaturation,
  milligramsPerLitreOfOxygen,
  millimolesPerLitreOfOxygen,
  type OxygenConcentration,
  type OxygenSaturation,
  percentOfOxygenSaturation,
} from './oxygen.js'
export { type Permittivity, permittivity } from './permittivity.js'
export {
  inMicromolesPerSquareMetreSecond,
  micromolesPerSquareMetreSecond,
  type PhotonFluxDensity,
} from './photon-flux.js'
export { inMicromolesPerJoule, micromolesPerJoule, type PhotonYield } from './photon-yield.js'
export {
  type CropCoefficient,
  cropCoefficient,
  type LeafAreaIndex,
  leafAreaIndex,
  litresPerPlantDay,
  type PlantDensity,
  type PlantWaterUse,
  plantsPerSquareMetre,
} from './plant.js'
export { type Latitude, type Longitude, latitude, longitude } from './position.js'
export { inKilowatts, inWatts, kilowatts, type Power, watts } from './power.js'
export {
  type AnyPressure,
  bars,
  hectopascals,
  inBars,
  inHectopascals,
  inKilopascals,
  inMetresOfWater,
  inMillibars,
  inPoundsPerSquareInch,
  kilopascals,
  metresOfWater,
  millibars,
  type Pressure,
  poundsPerSquareInch,
  type VapourPressure,
  type VapourPressureDeficit,
} from './pressure.js'
export { kilopascalsPerKelvin, type VapourPressureSlope } from './psychrometrics.js'
export {
  inJoulesPerSquareCentimetre,
  inMegajoulesPerSquareMetre,
  inWattHoursPerSquareMetre,
  joulesPerSquareCentimetre,
  megajoulesPerSquareMetre,
  type RadiationSum,
  wattHoursPerSquareMetre,
} from './radiation-sum.js'
export { type RawReading, rawReading } from './raw-reading.js'
export { inOhms, ohms, type Resistance } from './resistance.js'
export { type Salinity, salinity } from './salinity.js'
export {
  type AirFilledPorosity,
  type AnyShare,
  type DegreeOfSaturation,
  type DepletionFraction,
  type DrainFraction,
  fraction,
  type GroundFraction,
  inFraction,
  inPercent,
  type MassFraction,
  type Porosity,
  percent,
  type RelativeHumidity,
  type Share,
  type UnnamedShare,
} from './share.js'
export {
  centimetresPerRootDay,
  centimetresPerRootHour,
  inCentimetresPerRootDay,
  inCentimetresPerRootHour,
  type Sorptivity,
} from './sorptivity.js'
export {
  centimetresOfSuction,
  hectopascalsOfSuction,
  inCentimetresOfSuction,
  inHectopascalsOfSuction,
  inKilopascalsOfSuction,
  inPF,
  kilopascalsOfSuction,
  pF,
  type SuctionHead,
} from './suction.js'
export {
  inMillinewtonsPerMetre,
  inNewtonsPerMetre,
  millinewtonsPerMetre,
  newtonsPerMetre,
  type SurfaceTension,
} from './surface-tension.js'
export {
  celsius,
  fahrenheit,
  fahrenheitOfChange,
  inCelsius,
  inFahrenheit,
  inFahrenheitOfChange,
  inKelvin,
  inKelvinsOfChange,
  kelvin,
  kelvinsOfChange,
  shiftTemperature,
  type Temperature,
  type TemperatureChange,
  temperatureDifference,
} from './temperature.js'
export { type Validity, validityOf } from './validity.js'
export {
  inMillipascalSeconds,
  inPascalSeconds,
  millipascalSeconds,
  pascalSeconds,
  type Viscosity,
} from './viscosity.js'
export {
  cubicMetres,
  inCubicMetres,
  inLitres,
  inMillilitres,
  inUsFluidOunces,
  inUsGallons,
  litres,
  millilitres,
  usFluidOunces,
  usGallons,
  type Volume,
} from './volume.js'
export {
  type GravimetricWaterContent,
  gravimetricWaterContent,
  inGravimetricWaterContent,
  inPercentagePoints,
  inPercentWaterContent,
  inWaterContent,
  inWaterContentChange,
  percentagePoints,
  percentWaterContent,
  shiftWaterContent,
  type WaterContent,
  type WaterContentChange,
  waterContent,
  waterContentChange,
  waterContentDifference,
} from './water-content.js'
export {
  inchesOfDepth,
  inInchesOfDepth,
  inLitresPerSquareMetre,
  inMillimetresOfDepth,
  litresPerSquareMetre,
  millimetresOfDepth,
  type WaterDepth,
} from './water-depth.js'
export { inNanometres, nanometres, type Wavelength } from './wavelength.js'
export {
  inKilometresPerHour,
  inKnots,
  inMetresPerSecond,
  inMilesPerHour,
  kilometresPerHour,
  knots,
  metresPerSecond,
  milesPerHour,
  type WindSpeed,
} from './wind.js'
