export { applyCalibration } from './apply-calibration.js'
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
  evaluateWaterContents,
  type WaterContentAgreement,
  type WaterContentPairs,
} from './evaluate-water-contents.js'
export { type CalibrationFitInput, fitCalibration, type WeightedSample } from './fit-calibration.js'
export { restoreCalibration } from './restore-calibration.js'
export { calibrateTwoPoint, type TwoPointInput } from './two-point.js'
