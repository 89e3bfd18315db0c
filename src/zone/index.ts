export type { ShotAnswers } from './answers-to-shots.js'
export type { ClimateDemand } from './climate-demand.js'
export type { DayDifference } from './day-differences.js'
export { type DayDiagnosis, type DiagnoseDayInput, diagnoseDay } from './diagnose-day.js'
export type { ExpectedUse } from './expected-use.js'
export { type ExplainedZone, explainZoneFinding } from './explain-zone-finding.js'
export type { HeldEntry, ZoneFollowState } from './follow-state.js'
export { entriesOfRecord, followZone, type ZoneFollower } from './follow-zone.js'
export type { KeptRows } from './kept-rows.js'
export type { Known } from './known.js'
export type { NightDryDown, ShotFree } from './last-night.js'
export type { DayLight } from './light-of-day.js'
export type { LocalDay } from './local-day.js'
export { type ProposeDayInput, type ProposedDay, proposeDay } from './propose-day.js'
export { type ReportSection, type ReportZoneInput, reportZone } from './report-zone.js'
export { type ReviewDayInput, type ReviewZoneInput, reviewDay, reviewZone, type ZoneReview } from './review-zone.js'
export { type TrustedReadings, trustedReadings } from './trusted-readings.js'
export type { WaterBalance } from './water-balance.js'
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
export type {
  DayUnderWay,
  DrainedLevel,
  ProbeDay,
  ReadingGap,
  RootZoneTemperature,
  SeenShot,
  ZoneDay,
  ZoneLevel,
} from './zone-day.js'
export type { OffTargetBand, UnitDoubt, ZoneFinding, ZoneFindingCode } from './zone-finding.js'
export type { LevelLimits, MediumAtRest } from './zone-levels.js'
export type { SaltDay, ZoneMemory } from './zone-memory.js'
export type { OwnZoneReason, ZoneReason, ZoneRecordReason } from './zone-reason.js'
export type { Missable, ZoneClimate, ZoneEntry, ZoneForecast, ZoneRecord, ZoneWatering } from './zone-record.js'
