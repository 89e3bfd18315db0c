export { carefulPerson, type PersonState, type PersonView } from './careful-person.js'
export { drawFaults, type FaultDraw } from './draw-faults.js'
export { explainRehearsalFinding } from './explain-rehearsal-finding.js'
export type { RehearsalFault } from './fault.js'
export type { FaultSign } from './fault-signs.js'
export type { FaultName } from './fault-table.js'
export type { HeardAlarm } from './heard-alarms.js'
export { type PlannerState, perfectPlanner } from './perfect-planner.js'
export type { Rehearsal } from './rehearsal.js'
export type { RehearsalCourse } from './rehearsal-course.js'
export { type FaultKind, rehearsalFaults } from './rehearsal-faults.js'
export type { RehearsalFinding } from './rehearsal-finding.js'
export type { RehearsalLimits } from './rehearsal-limits.js'
export { type RehearsalMedium, richardsMedium, storedMedium } from './rehearsal-medium.js'
export type { RehearsalOutcome } from './rehearsal-outcome.js'
export { type RehearsalScene, rehearsalScene } from './rehearsal-scene.js'
export type { RehearsalSummary, RunPlace } from './rehearsal-summary.js'
export { rehearse } from './rehearse.js'
export { type ManyRehearsals, rehearseMany } from './rehearse-many.js'
export type {
  Observation,
  ReceivedReading,
  RehearsalTruth,
  RehearsedController,
  ValveOrder,
} from './rehearsed-controller.js'
export {
  type DiagnosedInput,
  type DiagnosedOrder,
  type DiagnosedState,
  rehearsedDiagnosis,
} from './rehearsed-diagnosis.js'
export { rehearsedWatering } from './rehearsed-watering.js'
export type { SceneName } from './scene-table.js'
export type { Opening } from './tally.js'
export type { RehearsalZone, ZoneGauges } from './zone.js'
