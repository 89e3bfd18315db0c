import type { CauseCode } from '../../control/diagnosis/cause/cause.js'
import type { FaultSign } from '../faults/fault-signs.js'

/** Which cause of `watchZone` names which fault, each in the narrowest sense. */
export const DIAGNOSIS_SIGNS: Readonly<Partial<Record<FaultSign, readonly CauseCode[]>>> = {
  'probe-dead': ['probe-dead'],
  'not-a-number': ['probe-dead'],
  'no-readings': ['no-readings'],
  'messages-late': ['no-readings'],
  'probe-frozen': ['probe-frozen'],
  'probe-lifted': ['probe-lifted'],
  'probe-reinserted': ['probe-reinserted'],
  'probe-drifting': ['probe-drifting'],
  'probe-noisy': ['probe-noisy'],
  'probes-swapped': ['probes-swapped'],
  'unit-slip': ['unit-slip'],
  'salt-driven': ['salt-driven'],
  'temperature-driven': ['temperature-driven'],
  'orders-lost': ['no-water', 'partial-water'],
  'clogged-emitter': ['clogged-dripper'],
  'partial-water': ['partial-water'],
  'no-water': ['no-water'],
  'valve-stuck-open': ['valve-stuck-open'],
  leak: ['leak-between-shots', 'line-leak'],
  power: ['power-cut', 'clock-wrong'],
  clock: ['clock-wrong'],
  'drain-gauge': ['drain-gauge-wrong'],
  'flow-meter': ['flow-meter-wrong'],
  channelling: ['channelling'],
  'feed-tank': ['feed-tank-wrong'],
  'water-by-hand': ['watered-by-hand'],
}
