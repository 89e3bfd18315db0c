export {
  type BulkOfArchie,
  bulkConductivityArchie1942,
  type MediumOfArchie,
  type PoreWaterOfArchie,
  poreWaterConductivityArchie1942,
} from './conductivity/ec-archie-1942.js'
export {
  cationsOfConductivitySonneveld1999,
  conductivityOfCationsSonneveld1999,
  validitySonneveld1999,
} from './conductivity/ec-cations.js'
export {
  type CellInSample,
  type CellInStandard,
  type CellInWater,
  cellConstant,
  conductanceOfCell,
  conductivityOfSample,
} from './conductivity/ec-cell-constant.js'
export { poreWaterOfCoirExtract, saturatedExtractOfCoir } from './conductivity/ec-coir-extract.js'
export {
  type ConductivityOnScale,
  conductivityOfDissolvedSolids,
  DISSOLVED_SOLIDS_SCALES,
  dissolvedSolids,
  dissolvedSolidsOnScale,
  type SolidsBetweenScales,
  type SolidsOnScale,
} from './conductivity/ec-dissolved-solids.js'
export {
  type BulkOfHilhorst,
  bulkConductivityHilhorst2000,
  type MediumOfHilhorst,
  type PoreWaterOfHilhorst,
  poreWaterConductivityHilhorst2000,
  waterPermittivityHilhorst2000,
} from './conductivity/ec-hilhorst-2000.js'
export { fitOffsetHilhorst2000, type HilhorstOffset, type OffsetReadings } from './conductivity/ec-hilhorst-offset.js'
export {
  type DemalStandard,
  demalPotassiumChloride,
  type MolalStandard,
  molalPotassiumChloride,
} from './conductivity/ec-kcl-standards.js'
export {
  type BulkOfMualemFriedman,
  bulkConductivityMualemFriedman1991,
  type MediumOfMualemFriedman,
  type PoreWaterOfMualemFriedman,
  poreWaterConductivityMualemFriedman1991,
} from './conductivity/ec-mualem-friedman-1991.js'
export {
  conductivityOnsager1927,
  type DiluteSalt,
  type DiluteSaltConductivity,
  validityOnsager1927,
} from './conductivity/ec-onsager-1927.js'
export {
  conductivityFromReflection,
  type LongTimeReflection,
  type ProbeInConductor,
  type ProbeOnCable,
  reflectionFromConductivity,
} from './conductivity/ec-reflection.js'
export {
  type BulkOfRhoades,
  bulkConductivityRhoades1976,
  type MediumOfRhoades,
  type PoreWaterOfRhoades,
  poreWaterConductivityRhoades1976,
  type RhoadesBulk,
} from './conductivity/ec-rhoades-1976.js'
export { conductivityOfSalt, type SaltSolution } from './conductivity/ec-salts.js'
export {
  ecAsMeasured,
  ecAt25,
  ecTemperatureCoefficient,
  type MeasuredConductivity,
  type ReferredConductivity,
  type TwoTemperatures,
} from './conductivity/ec-temperature.js'
export {
  ecTemperatureFactorLinear,
  ecTemperatureFactorSheetsHendrickx1995,
  ecTemperatureFactorViscosity,
  type LinearTemperature,
  type ViscousTemperature,
  validityEcTemperatureLinear,
  validityEcTemperatureSheetsHendrickx1995,
} from './conductivity/ec-temperature-factors.js'
export { ecTemperatureFactorIso7888 } from './conductivity/ec-temperature-iso-7888.js'
export { explainDielectricFinding } from './explain-dielectric-finding.js'
export type { ComplexPermittivity } from './mixing/complex-permittivity.js'
export {
  type FourPhaseMedium,
  type FourPhaseReading,
  type FourPhases,
  permittivityFourPhase,
  waterContentFourPhase,
} from './mixing/four-phase-mixture.js'
export {
  validityDebyeKaatze1989,
  type WaterInField,
  type WaterRelaxation,
  waterDebyeKaatze1989,
} from './mixing/kaatze-1989.js'
export {
  validityDebyeKleinSwift1977,
  type WarmWaterInField,
  waterDebyeKleinSwift1977,
} from './mixing/klein-swift-1977.js'
export {
  validityDebyeLiebe1991,
  type WaterDoubleRelaxation,
  type WaterInMicrowaves,
  waterDebyeLiebe1991,
} from './mixing/liebe-1991.js'
export { apparentPermittivityLossy, type LossyMedium, type LossyReading } from './mixing/lossy-permittivity.js'
export { type Mixture, type Phase, permittivityOfMixture } from './mixing/mixture.js'
export {
  type IndexAndExtinction,
  permittivityOfRefractiveIndex,
  type RealAndLoss,
  type RefractiveIndex,
  refractiveIndex,
} from './mixing/refractive-index.js'
export {
  permittivityTwoPhase,
  porosityTwoPhase,
  type TwoPhaseMedium,
  type TwoPhaseReading,
  type TwoPhases,
} from './mixing/two-phase-mixture.js'
export {
  type DobsonResult,
  type PermittivityFinding,
  permittivityDobson1985,
  type SoilOfDobson,
  validityDobson1985,
} from './relations/dobson-1985.js'
export {
  permittivityHerkelrath1991,
  type SquareRootLine,
  type SquareRootReading,
  type SquareRootWaterContent,
  waterContentHerkelrath1991,
} from './relations/herkelrath-1991.js'
export {
  permittivityJacobsenSchjonning1993,
  validityJacobsenSchjonning1993,
  waterContentJacobsenSchjonning1993,
} from './relations/jacobsen-schjonning-1993.js'
export {
  type PermittivityInSoil,
  permittivityJacobsenSchjonningSoil1993,
  type SoilOfJacobsenSchjonning,
  validityJacobsenSchjonningSoil1993,
  type WaterContentInSoil,
  waterContentJacobsenSchjonningSoil1993,
} from './relations/jacobsen-schjonning-soil-1993.js'
export {
  permittivityKellnerLundin2001,
  validityKellnerLundin2001,
  waterContentKellnerLundin2001,
} from './relations/kellner-lundin-2001.js'
export { permittivityLedieu1986, validityLedieu1986, waterContentLedieu1986 } from './relations/ledieu-1986.js'
export {
  type PermittivityAndDensity,
  permittivityMalickiDensity1996,
  validityMalickiDensity1996,
  type WaterContentAndDensity,
  waterContentMalickiDensity1996,
} from './relations/malicki-density-1996.js'
export {
  type PermittivityAndPorosity,
  permittivityMalickiPorosity1996,
  validityMalickiPorosity1996,
  type WaterContentAndPorosity,
  waterContentMalickiPorosity1996,
} from './relations/malicki-porosity-1996.js'
export {
  permittivityMyllysSimojoki1996,
  validityMyllysSimojoki1996,
  waterContentMyllysSimojoki1996,
} from './relations/myllys-simojoki-1996.js'
export { permittivityNagare2011, validityNagare2011, waterContentNagare2011 } from './relations/nagare-2011.js'
export { permittivityPepin1992, validityPepin1992, waterContentPepin1992 } from './relations/pepin-1992.js'
export {
  permittivityRoth1990,
  type ThreePhaseMedium,
  type ThreePhaseReading,
  type ThreePhases,
  waterContentRoth1990,
} from './relations/roth-1990.js'
export {
  permittivityRothMineral1992,
  validityRothMineral1992,
  waterContentRothMineral1992,
} from './relations/roth-mineral-1992.js'
export {
  permittivityRothOrganic1992,
  validityRothOrganic1992,
  waterContentRothOrganic1992,
} from './relations/roth-organic-1992.js'
export {
  type AirMediumWater,
  type ScaledFrequencyLaw,
  type ScaledFrequencyReading,
  type ScaledFrequencyWaterContent,
  scaledFrequency,
  scaledFrequencyPaltineanuStarr1997,
  waterContentPaltineanuStarr1997,
} from './relations/scaled-frequency.js'
export {
  type FittedScaledFrequencyLaw,
  fitScaledFrequency,
  type ScaledFrequencySamples,
} from './relations/scaled-frequency-fit.js'
export {
  permittivitySchaap1997,
  type SquareRootPower,
  type SquareRootPowerReading,
  type SquareRootPowerWaterContent,
  waterContentSchaap1997,
} from './relations/schaap-1997.js'
export {
  type TemperatureError,
  temperatureErrorPepin1995,
  temperatureErrorRoth1990,
  type WarmedMedium,
} from './relations/temperature-error.js'
export { permittivityTopp1980, validityTopp1980, waterContentTopp1980 } from './relations/topp-1980.js'
export { permittivityToppReverse1980, waterContentSlopeTopp1980 } from './relations/topp-reverse-1980.js'
export {
  type ApparentLengthReading,
  permittivityFromApparentLength,
  permittivityFromTravelTime,
  type RodsInMedium,
  type TravelTimeReading,
  travelTimeFromPermittivity,
} from './relations/travel-time.js'
export {
  permittivityWangSchmugge1980,
  type ReadSoilOfWangSchmugge,
  type SoilOfWangSchmugge,
  validityWangSchmugge1980,
  type WangSchmuggeResult,
  type WetSoilOfWangSchmugge,
  waterContentWangSchmugge1980,
} from './relations/wang-schmugge-1980.js'
