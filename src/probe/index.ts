export { applyCalibration } from './apply-calibration.js'
export type { CalibratedReading, ProbeCalibration } from './calibration.js'
export { type CalibrationSample, calibrateTwoPoint, type TwoPointInput } from './two-point.js'
