import type { WateringDoubt } from '../control/watering/finding.js'
import type { FaultSign } from './fault-signs.js'

/** Which findings of `controlWatering` name which fault. It tells doubts, not diagnoses: a clogged emitter is a probe that sees no shot. */
export const WATERING_SIGNS: Readonly<Partial<Record<FaultSign, readonly WateringDoubt[]>>> = {
  'probe-dead': ['reading-unbelievable', 'reading-old', 'reading-missing', 'reading-frozen', 'reading-fell-too-fast'],
  'not-a-number': ['reading-unbelievable', 'reading-old', 'reading-missing'],
  'no-readings': ['reading-old', 'reading-missing'],
  'messages-late': ['reading-old', 'reading-missing'],
  'probe-frozen': ['reading-frozen', 'shots-without-rise', 'use-too-small', 'use-too-large'],
  'probe-lifted': [
    'reading-unbelievable',
    'reading-fell-too-fast',
    'shots-without-rise',
    'probes-disagree',
    'drain-while-dry',
  ],
  'probe-reinserted': ['probes-disagree', 'reading-fell-too-fast', 'drain-while-dry', 'use-too-small', 'use-too-large'],
  'probe-drifting': ['probes-disagree', 'drain-while-dry', 'use-too-small', 'use-too-large', 'shots-without-rise'],
  'probe-noisy': ['reading-fell-too-fast', 'probes-disagree', 'reading-unbelievable'],
  'probes-swapped': ['probes-disagree', 'shots-without-rise', 'unknown-probe'],
  'unit-slip': ['reading-unbelievable'],
  'salt-driven': ['probes-disagree', 'use-too-small'],
  'temperature-driven': ['probes-disagree'],
  'orders-lost': ['flow-too-small', 'no-flow', 'shots-without-rise', 'flow-while-closed'],
  'clogged-emitter': ['shots-without-rise', 'probes-disagree', 'drain-while-dry', 'reading-unbelievable'],
  'partial-water': ['flow-too-small', 'no-flow', 'shots-without-rise', 'use-too-small'],
  'no-water': ['no-flow', 'shots-without-rise'],
  'valve-stuck-open': ['flow-while-closed', 'valve-does-not-close', 'flow-too-large'],
  'valve-does-not-close': ['valve-does-not-close', 'flow-while-closed', 'flow-too-large'],
  leak: ['flow-while-closed', 'flow-too-large'],
  power: ['clock-doubtful', 'reading-old'],
  clock: ['clock-doubtful', 'reading-old', 'reading-from-the-future'],
  'flow-meter': ['flow-too-small', 'no-flow', 'flow-too-large'],
  channelling: ['drain-while-dry', 'shots-without-rise'],
  'capacity-low': ['drain-while-dry', 'shots-without-rise'],
  'use-falls': ['use-too-small'],
  'demand-high': ['use-too-large'],
}
