export {
  type AlarmInput,
  type AlarmPhase,
  type AlarmReport,
  type AlarmSettings,
  type AlarmState,
  alarmLifeCycle,
} from './alarm.js'
export {
  type Announcement,
  type AnnounceSettings,
  type AnnounceState,
  announceAlarms,
  type NewAlarms,
} from './announce-alarms.js'
export {
  type CheckWateringInput,
  checkWatering,
  type SafeLimits,
  type WateringCheck,
  type WateringFacts,
  type WateringRequest,
} from './check-watering.js'
export {
  controlWatering,
  type WateringDecision,
  type WateringInput,
  type WateringReason,
  type WateringState,
} from './control-watering.js'
export { type DeadBandLimits, type DeadBandState, deadBand } from './dead-band.js'
export { diagnoseFlow, type FlowDiagnosisInput } from './diagnose-flow.js'
export { diagnoseZone, type ProbeAnswers, type ZoneDiagnosisInput } from './diagnose-zone.js'
export { planRecovery, type RecoveryInput, type RecoveryPlan } from './plan-recovery.js'
export type { WateringSettings, WhenMissing } from './watering-settings.js'
