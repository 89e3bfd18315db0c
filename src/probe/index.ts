export { applyCalibration } from './apply-calibration.js'
export { applyNoUseCorrection, type CorrectedWaterContent, type NoUseReading } from './apply-no-use-correction.js'
export { applyCalibrationToSeries, type ReadingSeries, type SeriesCounts } from './apply-to-series.js'
export { type CalibratedUncertainty, calibratedUncertainty, type UncertainReading } from './calibrated-uncertainty.js'
export type {
  CalibratedReading,
  CalibrationForm,
  CalibrationKnot,
  CalibrationSample,
  CalibrationStatistics,
  ProbeCalibration,
  ProbeReading,
} from './calibration.js'
export {
  checkPlacement,
  type PlacedObject,
  type PlacedProbe,
  type PlacementCheck,
  type PlacementConflict,
  type PlacementInput,
} from './check-placement.js'
export { constantMass, type MassChange, type SuccessiveMasses } from './constant-mass.js'
export {
  evaluateWaterContents,
  type WaterContentAgreement,
  type WaterContentPairs,
} from './evaluate-water-contents.js'
export { type ExplainedProbe, explainProbeFinding } from './explain-probe-finding.js'
export { type CalibrationFitInput, fitCalibration, type WeightedSample } from './fit-calibration.js'
export {
  type CorrectionSlope,
  fitNoUseCorrection,
  type NoUseCorrection,
  type NoUsePeriod,
} from './no-use-correction.js'
export {
  type MeanWithConfidence,
  meanWithConfidence,
  numberOfProbes,
  type ProbeCount,
  type ProbeCountInput,
  type ZoneReadings,
} from './number-of-probes.js'
export type { PlaceInMedium, PlacementContainer, StraightBody } from './placement-shapes.js'
export { correctDrift, type DriftInput, type ProbeDrift, probeDrift, type ReferenceReadings } from './probe-drift.js'
export type { ProbeCode, ProbeFinding } from './probe-finding.js'
export { restoreCalibration } from './restore-calibration.js'
export { type SampledRods, sampledVolume } from './sampled-volume.js'
export { calibrateTwoPoint, type TwoPointInput } from './two-point.js'
export { type ContainerWater, type WeighedContainer, weighedContainerWater } from './weighed-container.js'
export {
  type SampleWater,
  type WeighedSample,
  waterOfSample,
} from './weighed-sample.js'
export { type ZoneInput, type ZoneMean, type ZoneProbe, zoneMean } from './zone-mean.js'
