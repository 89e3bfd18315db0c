export type { Advice } from './advice.js'
export { airSpaceBand } from './air-space-band.js'
export { type BucketShot, type BucketShotInput, bucketShot } from './bucket-shot.js'
export {
  type CatchTest,
  type CatchTestInput,
  catchTest,
  type DriestQuarterInput,
  runTimeForDriestQuarter,
} from './catch-test.js'
export type { DayPlan, PlannedShot, ShotReason } from './day-plan.js'
export { type DemandCourseInput, demandCourse } from './demand-course.js'
export { type DischargeLoad, type DischargeLoadInput, dischargeLoad } from './discharge-load.js'
export {
  type DrainFractionInput,
  drainFraction,
  type FeedECInput,
  feedECForDrain,
  type SteadyDrainECInput,
  type SteadyDrainFractionInput,
  steadyDrainEC,
  steadyDrainFraction,
} from './drain-fraction.js'
export {
  checkEmitterPressure,
  type EmitterCurve,
  type EmitterCurveInput,
  type EmitterFlowRatioInput,
  type EmitterPoint,
  type EmitterPressureSpan,
  type EmitterPressureUnit,
  emitterCoefficient,
  emitterCurve,
  emitterFlowAt,
  emitterFlowRatio,
  emitterPressureFor,
  type FitEmitterCurveInput,
  fitEmitterCurve,
} from './emitter-curve.js'
export { explainPlanFinding } from './explain-plan-finding.js'
export { explainPlannedShot } from './explain-planned-shot.js'
export { explainShotFinding } from './explain-shot-finding.js'
export { type FlushedECInput, type FlushVolumeInput, flushedEC, flushVolume } from './flush.js'
export { type GrossIrrigationInput, grossIrrigation } from './gross-irrigation.js'
export {
  type AppliedForLeachingInput,
  appliedForLeaching,
  type FrequentLeachingInput,
  type LeachingOfInfiltrationInput,
  leachingOfInfiltration,
  leachingRequirementFrequent,
} from './leaching-requirement.js'
export {
  countLight,
  type LightCount,
  type LightCounter,
  type LightShot,
  type LightShotInput,
  lightShot,
} from './light-shots.js'
export { type MediaSaltBand, type MediaSaltInput, type MediaTestMethod, mediaSaltBand } from './media-salt-band.js'
export { type MixedTemperatureInput, mixedTemperature } from './mixed-temperature.js'
export { planDay } from './plan-day.js'
export type { PlanCause, PlanFinding, PlanFindingCode } from './plan-finding.js'
export type { DaySoFar, GivenShot } from './plan-past.js'
export type { DayPlanRequest, ShotTrigger } from './plan-request.js'
export {
  type MotorOfTable,
  type MotorStartLimits,
  motorStartLimitsNema,
  type PumpSchedule,
  type PumpScheduleInput,
  type PumpStarts,
  type PumpStartsInput,
  pumpSchedule,
  pumpStarts,
} from './pump-starts.js'
export { replanDay } from './replan-day.js'
export {
  type ReservoirCourse,
  type ReservoirInput,
  reservoirCourse,
  type TimeToECInput,
  timeToEC,
} from './reservoir-constant.js'
export {
  type ReservoirEvent,
  type ReservoirOutcome,
  type ReservoirRun,
  type ReservoirState,
  reservoirRun,
  reservoirStep,
} from './reservoir-step.js'
export { type RootOxygenBand, type RootOxygenInput, rootOxygenBand } from './root-oxygen-band.js'
export { type RootTemperatureInput, type RootZoneOrganism, rootTemperatureBand } from './root-temperature-band.js'
export type { RootZoneBand } from './root-zone-bands.js'
export { type RunTimeInput, runTime } from './run-time.js'
export {
  checkSaltBalance,
  type MeanDrainECInput,
  meanDrainEC,
  type SaltBalance,
  type SaltBalanceInput,
} from './salt-balance.js'
export {
  type SaltTolerance,
  saltTolerance,
  zeroYieldEC,
} from './salt-tolerance.js'
export { type ShotFromUseInput, shotFromUse } from './shot-from-use.js'
export { type ShotSeries, type ShotSeriesInput, shotSeries } from './shot-series.js'
export { type ShotFromShareInput, type ShotShareInput, shotFromShare, shotShare } from './shot-share.js'
export { shotVolume } from './shot-volume.js'
export { type ShotsPerDayInput, shotsPerDay } from './shots-per-day.js'
export { type ShotFinding, type SizedShot, type SizeShotInput, sizeShot } from './size-shot.js'
export {
  type InfiltrationCyclesInput,
  type SoakCycles,
  type SoakCyclesInput,
  soakCycles,
  soakCyclesForInfiltration,
} from './soak-cycles.js'
export { explainStaggerFinding, type StaggerFinding } from './stagger-findings.js'
export {
  type SharedPump,
  type StaggeredShot,
  type StaggeredShots,
  staggerZones,
  type ZoneShot,
} from './stagger-zones.js'
export type {
  DrainWish,
  EmitterLine,
  Emitters,
  ShotWish,
  Substrate,
  ValveLimits,
  ValveRest,
} from './terms.js'
export { type ContentAfterUseInput, contentAfterUse, type TimeToLevelInput, timeToLevel } from './time-to-level.js'
export {
  christiansenUniformity,
  flowVariation,
  flowVariationCoefficient,
  lowQuarterUniformity,
  statisticalUniformity,
} from './uniformity.js'
export {
  type DesignEmissionUniformityInput,
  designEmissionUniformity,
  type EmitterGrade,
  emitterGrade,
  type UniformityGrade,
  uniformityGrade,
} from './uniformity-grades.js'
export {
  type UseByWeighingInput,
  type UseDepthByWeighingInput,
  useByWeighing,
  useDepthByWeighing,
} from './use-by-weighing.js'
export {
  type ApplicationRateInput,
  applicationRate,
  type EmittersNeededInput,
  emittersNeeded,
  zoneFlow,
} from './zone-flow.js'
