export type { Advice } from '../quantity/advice.js'
export {
  type CatchTest,
  type CatchTestInput,
  catchTest,
  type DriestQuarterInput,
  runTimeForDriestQuarter,
} from './emitter/catch-test.js'
export { type DischargeLoad, type DischargeLoadInput, dischargeLoad } from './emitter/discharge-load.js'
export {
  checkEmitterPressure,
  type EmitterCurve,
  type EmitterCurveInput,
  type EmitterPressureSpan,
  emitterCoefficient,
  emitterCurve,
  emitterFlowAt,
  emitterPressureFor,
} from './emitter/emitter-curve.js'
export type { EmitterFinding } from './emitter/emitter-finding.js'
export { type EmitterFlowRatioInput, emitterFlowRatio } from './emitter/emitter-flow-ratio.js'
export type { EmitterPressureUnit } from './emitter/emitter-pressure-unit.js'
export { type EmitterPoint, type FitEmitterCurveInput, fitEmitterCurve } from './emitter/fit-emitter-curve.js'
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
} from './emitter/pump-starts.js'
export type { StaggerFinding } from './emitter/stagger-findings.js'
export {
  type SharedPump,
  type StaggeredShot,
  type StaggeredShots,
  staggerZones,
  type ZoneShot,
} from './emitter/stagger-zones.js'
export {
  christiansenUniformity,
  flowVariation,
  flowVariationCoefficient,
  lowQuarterUniformity,
  statisticalUniformity,
} from './emitter/uniformity.js'
export {
  type DesignEmissionUniformityInput,
  designEmissionUniformity,
  type EmitterGrade,
  emitterGrade,
  type UniformityGrade,
  uniformityGrade,
} from './emitter/uniformity-grades.js'
export {
  type ApplicationRateInput,
  applicationRate,
  type EmittersNeededInput,
  emittersNeeded,
  zoneFlow,
} from './emitter/zone-flow.js'
export { explainIrrigationFinding, type IrrigationFinding } from './explain-irrigation-finding.js'
export type { DayPlan, PlannedShot, ShotReason } from './plan/day-plan.js'
export type { DaySoFar, GivenShot } from './plan/day-so-far.js'
export { type DemandCourseInput, demandCourse } from './plan/demand-course.js'
export { planDay } from './plan/plan-day.js'
export type { MissedWish, PlanCause, PlanFinding, PlanFindingCause, PlanFindingCode } from './plan/plan-finding.js'
export type { DayPlanRequest, ShotTrigger } from './plan/plan-request.js'
export type { PlannedShotReason } from './plan/planned-shot-words.js'
export { replanDay } from './plan/replan-day.js'
export { airSpaceBand } from './root-zone/air-space-band.js'
export { type MixedTemperatureInput, mixedTemperature } from './root-zone/mixed-temperature.js'
export { type RootOxygenBand, type RootOxygenInput, rootOxygenBand } from './root-zone/root-oxygen-band.js'
export {
  type RootTemperatureInput,
  type RootZoneOrganism,
  rootTemperatureBand,
} from './root-zone/root-temperature-band.js'
export type {
  BandFinding,
  RootTemperatureBandName,
  RootZoneBand,
  RootZoneBandName,
} from './root-zone/root-zone-bands.js'
export {
  type DrainFractionInput,
  drainFraction,
  type FeedECInput,
  feedECForDrain,
  type SteadyDrainECInput,
  type SteadyDrainFractionInput,
  steadyDrainEC,
  steadyDrainFraction,
} from './salt/drain-fraction.js'
export type { EcDoubt } from './salt/ec-doubt.js'
export { type FlushedECInput, type FlushVolumeInput, flushedEC, flushVolume } from './salt/flush.js'
export {
  followReservoir,
  type ReservoirEvent,
  type ReservoirOutcome,
  type ReservoirRun,
  type ReservoirState,
  reservoirRun,
} from './salt/follow-reservoir.js'
export {
  type AppliedForLeachingInput,
  appliedForLeaching,
  type FrequentLeachingInput,
  type LeachingOfInfiltrationInput,
  leachingOfInfiltration,
  leachingRequirementFrequent,
} from './salt/leaching-requirement.js'
export { type MediaSaltBand, type MediaSaltInput, type MediaTestMethod, mediaSaltBand } from './salt/media-salt-band.js'
export {
  type ReservoirCourse,
  type ReservoirInput,
  reservoirCourse,
  type TimeToECInput,
  timeToEC,
} from './salt/reservoir-constant.js'
export {
  checkSaltBalance,
  type MeanDrainECInput,
  meanDrainEC,
  type SaltBalance,
  type SaltBalanceInput,
} from './salt/salt-balance.js'
export type { SaltFinding, SaltsNotSteady } from './salt/salt-finding.js'
export {
  type SaltTolerance,
  saltTolerance,
  zeroYieldEC,
} from './salt/salt-tolerance.js'
export { type BucketShot, type BucketShotInput, bucketShot } from './shot/bucket-shot.js'
export { type GrossIrrigationInput, grossIrrigation } from './shot/gross-irrigation.js'
export {
  countLight,
  type LightCount,
  type LightCounter,
  type LightShot,
  type LightShotInput,
  lightShot,
} from './shot/light-shots.js'
export { type RunTimeInput, runTime } from './shot/run-time.js'
export { type ShotFromUseInput, shotFromUse } from './shot/shot-from-use.js'
export { type ShotSeries, type ShotSeriesInput, shotSeries } from './shot/shot-series.js'
export { type ShotFromShareInput, type ShotShareInput, shotFromShare, shotShare } from './shot/shot-share.js'
export { shotVolume } from './shot/shot-volume.js'
export { type ShotsPerDayInput, shotsPerDay } from './shot/shots-per-day.js'
export { type ShotFinding, type SizedShot, type SizeShotInput, sizeShot } from './shot/size-shot.js'
export {
  type InfiltrationCyclesInput,
  type SoakCycles,
  type SoakCyclesInput,
  soakCycles,
  soakCyclesForInfiltration,
} from './shot/soak-cycles.js'
export {
  type TimeToLevelInput,
  timeToLevel,
  type WaterContentAfterUseInput,
  waterContentAfterUse,
} from './shot/time-to-level.js'
export {
  type WaterUseDepthFromWeighingInput,
  type WaterUseFromWeighingInput,
  waterUseDepthFromWeighing,
  waterUseFromWeighing,
} from './shot/water-use-from-weighing.js'
export type {
  ContainerNow,
  DischargeExponent,
  DrainWish,
  EmitterFlow,
  EmitterLine,
  Emitters,
  FeedSalts,
  GivenWater,
  HowSerious,
  LightThreshold,
  OpenTime,
  PlantsAtWork,
  SaltFlows,
  ShotWish,
  StartEC,
  Substrate,
  UptakeSalts,
  ValveLimits,
  ValveRest,
  WaterPerEmitter,
} from './terms.js'
