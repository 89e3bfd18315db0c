import type { Domain } from '../quantity/domain.js'
import type { Finding } from '../quantity/finding.js'
import type { Duration } from '../quantity/generated/duration.js'
import type { Flow } from '../quantity/generated/flow.js'
import { numberIn } from '../quantity/guard.js'
import { requireObject } from '../quantity/require-object.js'
import { TIME } from './domains.js'

const EXPECTED: Domain = {
  quantity: 'expected flow',
  unit: 'L/h',
  min: 0,
  max: Infinity,
  ends: '()',
  hint: 'give number of emitters times flow of one, or what was measured when all was well',
}
const METERED: Domain = {
  quantity: 'metered flow',
  unit: 'L/h',
  min: 0,
  max: Infinity,
  ends: '[)',
  hint: 'give zero or more',
}

/** What a valve should do and what the meter and the drain say. */
export interface FlowDiagnosisInput {
  /** Whether the valve should be open. */
  readonly commandedOpen: boolean
  /** For how long it has been so. Unit: s. Range: [0, ∞). */
  readonly sinceCommand: Duration
  /** Time in which flow settles after the valve moved. Unit: s. Range: [0, ∞). */
  readonly settle: Duration
  /** Flow of the zone when all is well. Unit: L/h. Range: (0, ∞). */
  readonly expectedFlow: Flow
  /** Flow of the zone by the meter, if there is one. Unit: L/h. Range: [0, ∞). */
  readonly meteredFlow?: Flow
  /** For how long drain has run since the last shot ended, if somebody measures it. Unit: s. Range: [0, ∞). */
  readonly drainRunning?: Duration
  /** Time after a shot in which drain stops when all is well. Unit: s. Range: [0, ∞). */
  readonly drainStops?: Duration
}

/**
 * Troubles that show in flow and drain: a valve that does not close or does not open, a leak or burst, clogging or low pressure.
 *
 * @procedure After the time to settle, compares the metered flow with the expected one: over 2 % though closed, under 10 %, 10 to 80 %, over
 * 125 %; drain that runs on with the valve closed points to a valve that passes water.
 * @param input - Command, times, flows and drain.
 * @returns What is wrong, with the check that proves it and the first act; empty when nothing shows.
 * @throws `DomainError` outside the ranges.
 * @validity Without a meter and without a drain gauge nothing can show here: an empty list is then no proof.
 * @source common practice, no source
 * @example
 * ```ts
 * const troubles = diagnoseFlow({
 *   commandedOpen: false, sinceCommand: minutes(20), settle: minutes(1), expectedFlow: litresPerHour(400), meteredFlow: litresPerHour(390),
 * })
 * troubles.map((trouble) => trouble.code) // => ['valve-does-not-close']
 * ```
 */
export function diagnoseFlow(input: FlowDiagnosisInput): Finding[] {
  requireObject(input, 'input')
  const expected = numberIn(input.expectedFlow, EXPECTED, 'expectedFlow')
  const settled = numberIn(input.sinceCommand, TIME, 'sinceCommand') >= numberIn(input.settle, TIME, 'settle')
  const metered = input.meteredFlow === undefined ? undefined : numberIn(input.meteredFlow, METERED, 'meteredFlow')
  const drains = input.drainRunning === undefined ? 0 : numberIn(input.drainRunning, TIME, 'drainRunning')
  const stops = input.drainStops === undefined ? Infinity : numberIn(input.drainStops, TIME, 'drainStops')
  const findings: Finding[] = []
  const find = (code: string, level: Finding['level'], message: string) =>
    findings.push({ code, level, message, source: 'common practice, no source' })
  if (metered !== undefined && settled) {
    const share = metered / expected
    const flow = `${Math.round(metered * 10) / 10} L/h flow where ${Math.round(expected * 10) / 10} L/h`
    if (!input.commandedOpen) {
      if (share > 0.02)
        find(
          'valve-does-not-close',
          'danger',
          `${Math.round(metered * 10) / 10} L/h flow though the valve is closed: close the main valve, then look at the valve and the line`,
        )
    } else if (share < 0.1)
      find('no-water', 'danger', `${flow} are expected: look at valve, filter and supply, and water by hand`)
    else if (share < 0.8)
      find('low-flow', 'caution', `${flow} are expected: filter, pressure or clogged emitters; do a catch test`)
    else if (share > 1.25)
      find('leak', 'danger', `${flow} are expected: a leak or a burst; close the zone and walk the line`)
  }
  if (!input.commandedOpen && drains > stops)
    find(
      'drain-does-not-stop',
      'danger',
      `drain has run for ${Math.round(drains / 60)} min after the last shot: the valve may pass water; close the main valve`,
    )
  return findings
}
