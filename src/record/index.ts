export type { Reducer } from '../quantity/reducer.js'
export {
  type ComparedProbe,
  type CompareProbesInput,
  compareProbes,
  type ProbeReadings,
} from './compare/compare-probes.js'
export {
  type ProbeAgainstScale,
  type ProbeAgainstScaleInput,
  probeAgainstScale,
} from './compare/probe-against-scale.js'
export { type SaltDrift, type SaltDriftInput, saltDrift } from './compare/salt-drift.js'
export type { KnownLine } from './dry-down/dry-down.js'
export {
  type DryDownInput,
  type DryDownLine,
  fitDryDown,
  type TimeToRefill,
  type TimeToRefillInput,
  timeToRefill,
} from './dry-down/dry-down.js'
export {
  type ExponentialCourse,
  type ExponentialDryDown,
  type ExponentialRefillInput,
  fitExponentialDryDown,
  timeToRefillExponential,
} from './dry-down/exponential-dry-down.js'
export { type FindClimbsInput, findClimbs } from './dry-down/find-climbs.js'
export { type DryStretch, type FindDryDownsInput, type FoundDryDown, findDryDowns } from './dry-down/find-dry-downs.js'
export type { LightPeriod } from './dry-down/light-periods.js'
export { type OvernightDryDown, type OvernightInput, overnightDryDowns } from './dry-down/overnight-dry-down.js'
export { changeOfSlope, type SlopeChange } from './dry-down/slope-change.js'
export { type WaterUse, type WaterUseInput, waterUseOfDryDown } from './dry-down/water-use.js'
export { type ExplainedRecord, explainRecordFinding } from './explain-record-finding.js'
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
export {
  type ForecastTimeToLevel,
  type ForecastTimeToLevelInput,
  forecastTimeToLevel,
  type TimeBand,
} from './forecast/forecast-time-to-level.js'
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
export type { MemberLosses } from './forecast/use-members.js'
export { type LocalOffset, type LocalTimeInput, type UniversalTimes, utcFromLocal } from './local-time.js'
export {
  type CheckedReadings,
  type CheckReadingsInput,
  checkReadings,
} from './quality/check-readings.js'
export type { Direction } from './quality/direction.js'
export { estimateNoise, type Noise, type NoiseInput } from './quality/estimate-noise.js'
export { combineFlags, countFlags, type FlagCounts, QUALITY } from './quality/flags.js'
export { type FlatLineLimits, type FlatLineLimitsInput, flatLineLimits } from './quality/flat-line-limits.js'
export { type FlatLineInput, flatLineTest } from './quality/flat-line-test.js'
export { type GrossRangeInput, grossRangeTest } from './quality/gross-range-test.js'
export { type NewestReading, type NewestReadingInput, newestReading } from './quality/newest-reading.js'
export {
  type RateOfChangeInput,
  type RateOfChangeLimits,
  rateOfChangeTest,
  type StepDeviations,
} from './quality/rate-of-change-test.js'
export type { KeptReading, ReadingWatchState } from './quality/reading-state.js'
export type { QualityLimits } from './quality/reading-tests.js'
export type { RecentSpread, SpreadPart, SpreadSum } from './quality/recent-spread.js'
export type { Repeats } from './quality/repeats.js'
export { type SpikeInput, spikeTest } from './quality/spike-test.js'
export { findTimeBreaks, type TimeBreak, type TimeBreaksInput } from './quality/time-breaks.js'
export { type TimeGapInput, timeGapTest } from './quality/time-gap-test.js'
export {
  type ReadingVerdict,
  type ReadingWatch,
  type TimedReading,
  watchReadings,
} from './quality/watch-readings.js'
export { type WmoLimits, type WmoLimitsInput, type WmoQuantity, wmoLimits } from './quality/wmo-limits.js'
export {
  type WmoStep,
  type WmoStepInput,
  type WmoStepSeries,
  wmoStepConsistency,
  wmoStepTest,
} from './quality/wmo-step-test.js'
export type { ClimbFinding, RecordFinding } from './record-finding.js'
export type { RecordReason } from './record-reason.js'
export { type RunInput, runReducer } from './reducer.js'
export { type ClearShotRisesInput, clearShotRises } from './shots/clear-shot-rises.js'
export { findSettledLevels, type SettledLevel, type SettledLevelsInput } from './shots/find-settled-levels.js'
export { type FindShotsInput, findShots } from './shots/find-shots.js'
export { type FindStepsInput, type FoundStep, findSteps } from './shots/find-steps.js'
export { type MatchedShots, type MatchShotsInput, matchShots } from './shots/match-shots.js'
export { type Plateau, type PlateauInput, plateauAfterDrain } from './shots/plateau.js'
export {
  type ResponseInput,
  type ResponseToShots,
  responseToShots,
  type ShotResponse,
} from './shots/response-to-shots.js'
export { type RecordSegment, type SplitRecordInput, splitRecord } from './shots/split-record.js'
export type { DrainedShots, KnownShots } from './shots/watch-shots.js'
export {
  type FoundShot,
  type ShotLimits,
  type ShotWatch,
  type ShotWatchState,
  type WaterContentReading,
  watchShots,
} from './shots/watch-shots.js'
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
