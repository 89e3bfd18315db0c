import { InputError } from '../../quantity/errors.js'
import type { Duration } from '../../quantity/generated/kinds.js'
import { numberIn, optionOr, wholeNumberIn } from '../../quantity/guard.js'
import { type NamesOf, onlyNames } from '../../quantity/one-of.js'
import { FAULT_END, FAULT_PROBE, FAULT_SIZE, FAULT_START } from '../domains.js'
import type { FaultRow } from './fault-row.js'
import { type FaultName, faultNames, faultRow } from './fault-table.js'

/** A fault, or a deed of people, with its start and end. */
export interface RehearsalFault {
  /** Which one; `rehearsalFaults()` lists them. */
  readonly fault: FaultName
  /** When it begins, from the start of the rehearsal. Unit: s. Range: [0, ∞). */
  readonly from: Duration
  /** When it ends; left out, at the end of the rehearsal. Unit: s. Range: [0, ∞). */
  readonly until?: Duration
  /** How large it is, in the unit that `rehearsalFaults()` gives; left out, as large as it says there. Unit: any. Range: (-∞, ∞). */
  readonly size?: number
  /** The probe at whose place it is; the first by default. Unit: 1. Range: integers [0, 7]. */
  readonly place?: number
}

const NAMES: NamesOf<RehearsalFault> = { fault: 1, from: 1, until: 1, size: 1, place: 1 }

/** A fault that was found to make sense. */
export interface CheckedFault {
  readonly name: FaultName
  readonly row: FaultRow
  readonly from: number
  readonly until: number
  readonly size: number
  readonly place: number
}

export function checkedFault(fault: RehearsalFault, probes: number): CheckedFault {
  onlyNames(fault, NAMES, 'fault')
  const row = faultRow(fault.fault)
  if (row === undefined)
    throw new InputError('fault', `there is no "${fault.fault}"`, `take one of: ${faultNames().join(', ')}`)
  const from = numberIn(fault.from, FAULT_START, 'from')
  const until = fault.until === undefined ? Number.POSITIVE_INFINITY : numberIn(fault.until, FAULT_END, 'until')
  if (!(until > from))
    throw new InputError('until', `${until} s is not after the start at ${from} s`, 'let a fault end after it begins')
  const place = wholeNumberIn(optionOr(fault.place, 0), FAULT_PROBE, 'place')
  if (place >= probes)
    throw new InputError('place', `there are ${probes} probes, none with the number ${place}`, 'count them from zero')
  const size = fault.size === undefined ? row.size : numberIn(fault.size, FAULT_SIZE, 'size')
  return { name: fault.fault, row, from, until, size, place }
}
