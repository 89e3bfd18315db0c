export {
  type CheckedReadings,
  type CheckReadingsInput,
  checkReadings,
  type QualityLimits,
} from './check-readings.js'
export {
  type DryDownInput,
  type DryDownLine,
  fitDryDown,
  type TimeToRefill,
  type TimeToRefillInput,
  timeToRefill,
} from './dry-down.js'
export {
  type ExponentialCourse,
  type ExponentialDryDown,
  type ExponentialRefillInput,
  fitExponentialDryDown,
  timeToRefillExponential,
} from './exponential-dry-down.js'
export { type FindShotsInput, type FoundShot, findShots, type ShotLimits } from './find-shots.js'
export { combineFlags, countFlags, type FlagCounts, QUALITY } from './flags.js'
export { type FlatLineInput, flatLineTest } from './flat-line-test.js'
export { type GrossRangeInput, grossRangeTest } from './gross-range-test.js'
export { type LocalOffset, type LocalTimeInput, type UniversalTimes, utcFromLocal } from './local-time.js'
export { type Noise, type NoiseInput, noiseOf } from './noise.js'
export { type Plateau, type PlateauInput, plateauAfterDrain } from './plateau.js'
export { type RateOfChangeInput, rateOfChangeTest } from './rate-of-change-test.js'
export { type Reducer, type RunInput, runReducer } from './reducer.js'
export { findSeams, type Seam, type SeamsInput } from './seams.js'
export { type RecordSegment, type SegmentsInput, segmentsOf } from './segments.js'
export { type SpikeInput, spikeTest } from './spike-test.js'
export { type TimeGapInput, timeGapTest } from './time-gap-test.js'
export {
  type ReadingVerdict,
  type ReadingWatch,
  type ReadingWatchState,
  type TimedReading,
  watchReadings,
} from './watch-readings.js'
export { type ContentReading, type ShotWatch, type ShotWatchState, watchShots } from './watch-shots.js'
export { type WmoLimits, type WmoLimitsInput, type WmoQuantity, wmoLimits } from './wmo-limits.js'
export {
  type WmoStep,
  type WmoStepInput,
  type WmoStepSeries,
  wmoStepConsistency,
  wmoStepTest,
} from './wmo-step-test.js'
