export type { Reducer } from '../quantity/reducer.js'
export {
  type CheckedReadings,
  type CheckReadingsInput,
  checkReadings,
} from './check-readings.js'
export { type ClearShotRisesInput, clearShotRises } from './clear-shot-rises.js'
export { type ComparedProbe, type CompareProbesInput, compareProbes, type ProbeReadings } from './compare-probes.js'
export type { Direction } from './direction.js'
export type { KnownLine } from './dry-down.js'
export {
  type DryDownInput,
  type DryDownLine,
  fitDryDown,
  type TimeToRefill,
  type TimeToRefillInput,
  timeToRefill,
} from './dry-down.js'
export { estimateNoise, type Noise, type NoiseInput } from './estimate-noise.js'
export { type ExplainedRecord, explainRecordFinding } from './explain-record-finding.js'
export {
  type ExponentialCourse,
  type ExponentialDryDown,
  type ExponentialRefillInput,
  fitExponentialDryDown,
  timeToRefillExponential,
} from './exponential-dry-down.js'
export { type FindClimbsInput, findClimbs } from './find-climbs.js'
export { type DryStretch, type FindDryDownsInput, type FoundDryDown, findDryDowns } from './find-dry-downs.js'
export { findSettledLevels, type SettledLevel, type SettledLevelsInput } from './find-settled-levels.js'
export { type FindShotsInput, findShots } from './find-shots.js'
export { type FindStepsInput, type FoundStep, findSteps } from './find-steps.js'
export { combineFlags, countFlags, type FlagCounts, QUALITY } from './flags.js'
export { type FlatLineLimits, type FlatLineLimitsInput, flatLineLimits } from './flat-line-limits.js'
export { type FlatLineInput, flatLineTest } from './flat-line-test.js'
export type { ClockFalls } from './forecast/clock-rates.js'
export type { DailyUseState, UseForecastRecord } from './forecast/daily-use-state.js'
export {
  type FallAhead,
  type FallAheadInput,
  fallAhead,
  type WaterUseAhead,
  type WaterUseAheadInput,
  waterUseAhead,
} from './forecast/fall-ahead.js'
export {
  type DailyUseForecaster,
  type DayOfUse,
  type DayScored,
  forecastDailyUse,
  type WaterUseOfNextDay,
  type WaterUseOfNextDayInput,
  waterUseOfNextDay,
} from './forecast/forecast-daily-use.js'
export { forecastLevel } from './forecast/forecast-level.js'
export type { ForecastLevelSettings } from './forecast/level-search.js'
export type {
  DryDownSoFar,
  LearntLevel,
  LevelForecaster,
  LevelPhase,
  LevelState,
  ReplayPoint,
} from './forecast/level-state.js'
export type { UnknownForecast } from './forecast/present-level.js'
export type { RecentPoint } from './forecast/recent-level.js'
export type { ScoreRing } from './forecast/score-ring.js'
export {
  type TimeBand,
  type TimeUntilLevel,
  type TimeUntilLevelInput,
  timeUntilLevel,
} from './forecast/time-until-level.js'
export type { MemberLosses } from './forecast/use-members.js'
export { type GrossRangeInput, grossRangeTest } from './gross-range-test.js'
export type { LightPeriod } from './light-periods.js'
export { type LocalOffset, type LocalTimeInput, type UniversalTimes, utcFromLocal } from './local-time.js'
export { type MatchedShots, type MatchShotsInput, matchShots } from './match-shots.js'
export { type NewestReading, type NewestReadingInput, newestReading } from './newest-reading.js'
export { type OvernightDryDown, type OvernightInput, overnightDryDowns } from './overnight-dry-down.js'
export { type Plateau, type PlateauInput, plateauAfterDrain } from './plateau.js'
export { type ProbeAgainstScale, type ProbeAgainstScaleInput, probeAgainstScale } from './probe-against-scale.js'
export {
  type RateOfChangeInput,
  type RateOfChangeLimits,
  rateOfChangeTest,
  type StepDeviations,
} from './rate-of-change-test.js'
export type { KeptReading, QualityLimits, ReadingWatchState } from './reading-tests.js'
export type { RecentSpread, SpreadPart, SpreadSum } from './recent-spread.js'
export type { ClimbFinding, RecordFinding } from './record-finding.js'
export type { RecordReason } from './record-reason.js'
export { type RunInput, runReducer } from './reducer.js'
export type { Repeats } from './repeats.js'
export { type ResponseInput, type ResponseToShots, responseToShots, type ShotResponse } from './response-to-shots.js'
export { type SaltDrift, type SaltDriftInput, saltDrift } from './salt-drift.js'
export { changeOfSlope, type SlopeChange } from './slope-change.js'
export { type SpikeInput, spikeTest } from './spike-test.js'
export { type RecordSegment, type SplitRecordInput, splitRecord } from './split-record.js'
export type {
  ArrivalTimes,
  ExpectedStep,
  FollowedStep,
  ProbedVolume,
  Readings,
  ReadingTime,
  ReadingTimes,
  RefillPoint,
  ValveLog,
  WaterContentSeries,
} from './terms.js'
export { findTimeBreaks, type TimeBreak, type TimeBreaksInput } from './time-breaks.js'
export { type TimeGapInput, timeGapTest } from './time-gap-test.js'
export {
  type ReadingVerdict,
  type ReadingWatch,
  type TimedReading,
  watchReadings,
} from './watch-readings.js'
export type { DrainedShots, KnownShots } from './watch-shots.js'
export {
  type FoundShot,
  type ShotLimits,
  type ShotWatch,
  type ShotWatchState,
  type WaterContentReading,
  watchShots,
} from './watch-shots.js'
export { type WaterUse, type WaterUseInput, waterUseOfDryDown } from './water-use.js'
export { type WmoLimits, type WmoLimitsInput, type WmoQuantity, wmoLimits } from './wmo-limits.js'
export {
  type WmoStep,
  type WmoStepInput,
  type WmoStepSeries,
  wmoStepConsistency,
  wmoStepTest,
} from './wmo-step-test.js'
