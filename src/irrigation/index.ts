export { type BucketShot, type BucketShotInput, bucketShot } from './bucket-shot.js'
export { type DemandCourseInput, demandCourse } from './demand-course.js'
export { type GrossIrrigationInput, grossIrrigation } from './gross-irrigation.js'
export { planDay } from './plan-day.js'
export type { DayPlan, DayPlanRequest, PlannedShot, ShotTrigger } from './plan-request.js'
export { type DaySoFar, replanDay } from './replan-day.js'
export { type RunTimeInput, runTime } from './run-time.js'
export { type ShotFromUseInput, shotFromUse } from './shot-from-use.js'
export { type ShotSeries, type ShotSeriesInput, shotSeries } from './shot-series.js'
export { type ShotFromShareInput, type ShotShareInput, shotFromShare, shotShare } from './shot-share.js'
export { type ShotVolumeInput, shotVolume } from './shot-volume.js'
export { type ShotsPerDayInput, shotsPerDay } from './shots-per-day.js'
export { type SizedShot, type SizeShotInput, sizeShot } from './size-shot.js'
export {
  type InfiltrationCyclesInput,
  type SoakCycles,
  type SoakCyclesInput,
  soakCycles,
  soakCyclesForInfiltration,
} from './soak-cycles.js'
export { type SharedPump, type StaggeredShot, staggerZones, type ZoneShot } from './stagger-zones.js'
export {
  type ApplicationRateInput,
  applicationRate,
  type EmittersNeededInput,
  emittersNeeded,
  type ZoneFlowInput,
  zoneFlow,
} from './zone-flow.js'
