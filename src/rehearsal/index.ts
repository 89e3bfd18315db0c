export { carefulPerson, type PersonState, type PersonView } from './controllers/careful-person.js'
export { type PlannerState, perfectPlanner } from './controllers/perfect-planner.js'
export type {
  Observation,
  ReceivedReading,
  RehearsalTruth,
  RehearsedController,
  ValveOrder,
} from './controllers/rehearsed-controller.js'
export {
  type DiagnosedInput,
  type DiagnosedOrder,
  type DiagnosedState,
  rehearsedDiagnosis,
} from './controllers/rehearsed-diagnosis.js'
export { rehearsedWatering } from './controllers/rehearsed-watering.js'
export { type ExplainedRehearsal, explainRehearsalFinding } from './explain-rehearsal-finding.js'
export { drawFaults, type FaultDraw } from './faults/draw-faults.js'
export type { RehearsalFault } from './faults/fault.js'
export type { FaultSign } from './faults/fault-signs.js'
export type { FaultName } from './faults/fault-table.js'
export { type FaultKind, rehearsalFaults } from './faults/rehearsal-faults.js'
export type { HeardAlarm } from './outcome/heard-alarms.js'
export type { RehearsalCourse } from './outcome/rehearsal-course.js'
export type { RehearsalFinding } from './outcome/rehearsal-finding.js'
export type { RehearsalOutcome } from './outcome/rehearsal-outcome.js'
export type { NamedShare, RehearsalReason, RestBetweenOpenings, TimeToAlarm } from './outcome/rehearsal-reason.js'
export type { RehearsalSummary, RunPlace } from './outcome/rehearsal-summary.js'
export type { Opening } from './outcome/tally.js'
export { rehearse } from './run/rehearse.js'
export { type ManyRehearsals, rehearseMany } from './run/rehearse-many.js'
export type { RehearsalLimits } from './scenario/rehearsal-limits.js'
export { type RehearsalMedium, richardsMedium, storedMedium } from './scenario/rehearsal-medium.js'
export { type RehearsalScenario, rehearsalScenario } from './scenario/rehearsal-scenario.js'
export type { ScenarioName } from './scenario/scenario-table.js'
export type { RehearsalZone, ZoneGauges } from './scenario/zone.js'
export type { Rehearsal } from './world/rehearsal.js'
