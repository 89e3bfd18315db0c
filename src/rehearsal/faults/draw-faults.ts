import { randomNumbers } from '../../numerics/random.js'
import { SEED } from '../../quantity/domains.js'
import { InputError } from '../../quantity/errors.js'
import type { Duration } from '../../quantity/generated/kinds.js'
import { requireList, requireObject, wholeNumberIn } from '../../quantity/guard.js'
import { asName } from '../../quantity/one-of.js'
import { DAYS, PROBES } from '../domains.js'
import { streamSeed } from '../stream-seed.js'
import type { RehearsalFault } from './fault.js'
import { type FaultName, faultNames, faultRow } from './fault-table.js'

/** Which faults to draw a time for. */
export interface FaultDraw {
  /** Names of faults that happen in one rehearsal. */
  readonly faults: readonly FaultName[]
  /** Seed of that rehearsal. Unit: 1. Range: integers [0, 4294967295]. */
  readonly seed: number
  /** Days of the rehearsal; a fault begins after the first one and before two thirds of the time. Unit: d. Range: integers [1, 60]. */
  readonly days: number
  /** Probes of the zone. Unit: 1. Range: integers [1, 8]. */
  readonly probes: number
}

/** Streams of random numbers from here on belong to faults. */
const STREAM = 100

/**
 * When faults begin and end and at which probe, drawn by lot from a seed: what `rehearseMany` does, so that one of its histories can be
 * seen again by `rehearse`.
 *
 * @procedure For each fault draws a whole minute between the end of the first day and two thirds of the time (any minute of a single day),
 * and a probe; it lasts as long as `rehearsalFaults()` says.
 * @returns Faults for `rehearse`.
 * @throws `DomainError` outside the ranges, `InputError` for an unknown fault.
 * @source definition
 * @example
 * const [fault] = drawFaults({ faults: ['no-water'], seed: 3, days: 7, probes: 2 })
 * fault.until - fault.from // => 21600
 */
export function drawFaults(draw: FaultDraw): RehearsalFault[] {
  requireObject(draw, 'draw')
  const { faults, seed, days, probes } = draw
  const end = wholeNumberIn(days, DAYS, 'days') * 1440
  const first = end > 1440 ? 1440 : 0
  const last = Math.max(first + 1, Math.floor((end * 2) / 3))
  wholeNumberIn(seed, SEED, 'seed')
  wholeNumberIn(probes, PROBES, 'probes')
  requireList(faults, 'faults')
  return faults.map((fault, i) => {
    const row = faultRow(fault)
    if (row === undefined)
      throw new InputError('faults', `there is no "${asName(fault)}"`, `take some of: ${faultNames().join(', ')}`)
    const random = randomNumbers(streamSeed(seed, STREAM + i))
    const from = (first + Math.floor(random.uniform() * (last - first))) * 60
    const place = Math.floor(random.uniform() * probes)
    const until = row.duration > 0 ? { until: (from + row.duration * 3600) as Duration } : {}
    return { fault, from: from as Duration, ...until, place }
  })
}
