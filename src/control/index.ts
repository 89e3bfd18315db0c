export {
  type AlarmInput,
  type AlarmPhase,
  type AlarmReport,
  type AlarmSettings,
  type AlarmState,
  alarmLifeCycle,
} from './alarm.js'
export { type AlarmCondition, type AlarmConditionsInput, alarmConditions } from './alarm-conditions.js'
export {
  type Announcement,
  type AnnounceSettings,
  type AnnounceState,
  announceAlarms,
  type NewAlarms,
} from './announce-alarms.js'
export type { CheckWateringInput, SafeLimits, WateringFacts, WateringRequest } from './check/input.js'
export type { RefusalCode, WateringCheck, WateringRefusal } from './check/refusal.js'
export { checkWatering } from './check-watering.js'
export { checkWateringSettings } from './check-watering-settings.js'
export { controlWatering } from './control-watering.js'
export { type DeadBandLimits, type DeadBandState, deadBand } from './dead-band.js'
export {
  type DiagnoseRecordInput,
  diagnoseRecord,
  type RecordDiagnosis,
  type WatchedRecord,
} from './diagnose-record.js'
export type {
  Cause,
  CauseCode,
  CheckCode,
  Diagnosis,
  Evidence,
  EvidenceCode,
  UnknownReason,
} from './diagnosis/cause/cause.js'
export type { WatchZoneSettings } from './diagnosis/state/settings.js'
export type { ZoneWatchState } from './diagnosis/state/zone-state.js'
export type { WatchedReading, WatchZoneInput } from './diagnosis/watch/input.js'
export type { DarkHours } from './diagnosis/watch/watched.js'
export { type ControlFinding, explainControlFinding } from './explain-control-finding.js'
export { planRecovery, type RecoveryFinding, type RecoveryInput, type RecoveryPlan } from './plan-recovery.js'
export { watchZone, type ZoneWatch } from './watch-zone.js'
export type { WateringDecision } from './watering/decision.js'
export type { WateringDoubt, WateringFinding, WateringReason } from './watering/findings/finding.js'
export type { LatchedCode } from './watering/findings/latched-codes.js'
export type { AllowedHours, InDoubt, ProbeSettings, WateringSettings } from './watering/settings/settings.js'
export type { SettingsDoubt, WateringSettingsFinding } from './watering/settings/settings-finding.js'
export type { WateringInput, WateringOverride, WateringReading } from './watering/state/input.js'
export type {
  WateringClock,
  WateringCounters,
  WateringOrder,
  WateringProbe,
  WateringState,
  WateringValve,
  WateringVolumes,
  WateringZone,
} from './watering/state/state.js'
export {
  type ZoneAlarm,
  type ZoneAlarmSettings,
  type ZoneAlarmsInput,
  type ZoneAlarmsState,
  zoneAlarms,
} from './zone-alarms.js'
