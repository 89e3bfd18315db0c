export type { DayDifference } from './day/day-differences.js'
export type {
  DayUnderWay,
  DrainedLevel,
  ProbeDay,
  ReadingGap,
  RootZoneTemperature,
  SeenShot,
  ZoneDay,
  ZoneLevel,
} from './day/zone-day.js'
export type { LevelLimits, MediumAtRest } from './day/zone-levels.js'
export type { SaltDay, ZoneMemory } from './day/zone-memory.js'
export { type DayDiagnosis, type DiagnoseDayInput, diagnoseDay } from './diagnose/diagnose-day.js'
export { type ExplainedZone, explainZoneFinding } from './explain-zone-finding.js'
export type { Known } from './findings/known.js'
export type { OffTargetBand, UnitDoubt, ZoneFinding, ZoneFindingCode } from './findings/zone-finding.js'
export type { OwnZoneReason, ZoneReason, ZoneRecordReason } from './findings/zone-reason.js'
export { entriesOfRecord } from './follow/entries-of-record.js'
export { followZone, type ZoneFollower } from './follow/follow-zone.js'
export type { ShotAnswers } from './probes/answers-to-shots.js'
export type { NightDryDown, ShotFree } from './probes/last-night.js'
export type { ExpectedUse } from './propose/expected-use.js'
export { type ProposeDayInput, type ProposedDay, proposeDay } from './propose/propose-day.js'
export type { KeptRows } from './record/kept-rows.js'
export type { KeepsLeftOut, LeftOut, LeftOutFor, ZoneTable } from './record/left-out.js'
export type { LocalDay } from './record/local-day.js'
export type { Missable, ZoneClimate, ZoneEntry, ZoneForecast, ZoneRecord, ZoneWatering } from './record/zone-record.js'
export { type ReportSection, type ReportZoneInput, reportZone } from './report/report-zone.js'
export type { HeldEntry, ZoneFollowState } from './restore/follow-state.js'
export {
  type ReviewDayInput,
  type ReviewZoneInput,
  reviewDay,
  reviewZone,
  type ZoneReview,
} from './review/review-zone.js'
export { type TrustedReadings, trustedReadings } from './review/trusted-readings.js'
export type { WaterBalance } from './water/water-balance.js'
export type { ClimateDemand } from './weather/climate-demand.js'
export type { DayLight } from './weather/light-of-day.js'
export type {
  DescribedProbe,
  Zone,
  ZoneContainer,
  ZoneEmitters,
  ZoneLamps,
  ZoneLimits,
  ZoneMedium,
  ZonePlace,
} from './zone.js'
