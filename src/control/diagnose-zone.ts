import type { Domain } from '../quantity/domain.js'
import type { Finding } from '../quantity/finding.js'
import { wholeNumberIn } from '../quantity/guard.js'
import { requireObject } from '../quantity/require-object.js'

const COUNT: Domain = {
  quantity: 'number of shots',
  unit: '1',
  min: 0,
  max: 100000,
  ends: '[]',
  hint: 'give a whole number',
}

/** How the probes of one zone answered to the same logged shots. */
export interface ZoneDiagnosisInput {
  /** Shots in the log that could be judged: readings ran on around them. Unit: 1. Range: integers [0, 100000]. */
  readonly shots: number
  /** The probes with the number of shots that they saw. */
  readonly probes: readonly ProbeAnswers[]
  /** Whether any of the shots made drain; left out where nobody measures drain. */
  readonly drained?: boolean
  /** Rises that no entry of the log explains, at most over the probes. Unit: 1. Range: integers [0, 100000]. */
  readonly risesWithoutShot?: number
}

/** How one probe answered. */
export interface ProbeAnswers {
  /** Name of the probe. */
  readonly name: string
  /** Shots that it saw as a rise. Unit: 1. Range: integers [0, 100000]. */
  readonly seen: number
}

/**
 * Troubles that show when the probes of a zone are compared over the same shots: no water at all, one place without water, a probe that
 * does not touch the medium, water that nobody ordered.
 *
 * @procedure All probes missed at least two shots in a row of judged shots: no water, or bypass where drain ran. One probe saw under half
 * of the shots that its neighbours saw: clogged emitter or lifted probe. Rises without a shot: a valve that passes water, or a log with holes.
 * @param input - Shots, answers and drain.
 * @returns What is wrong, with the check that proves it; empty when nothing shows.
 * @throws `DomainError` outside the ranges.
 * @validity A single probe cannot tell its own fault from that of its emitter; the catch test does.
 * @source common practice, no source
 * @example
 * ```ts
 * const probes = [{ name: 'A', seen: 9 }, { name: 'B', seen: 10 }, { name: 'C', seen: 1 }]
 * diagnoseZone({ shots: 10, probes, drained: true }).map((trouble) => [trouble.code, trouble.about]) // => [['one-place-dry', 'C']]
 * ```
 */
export function diagnoseZone(input: ZoneDiagnosisInput): Finding[] {
  requireObject(input, 'input')
  const shots = wholeNumberIn(input.shots, COUNT, 'shots')
  const findings: Finding[] = []
  const find = (code: string, level: Finding['level'], message: string, about?: string) =>
    findings.push({
      code,
      level,
      message,
      source: 'common practice, no source',
      ...(about === undefined ? {} : { about }),
    })
  const seen = input.probes.map((probe) => wholeNumberIn(probe.seen, COUNT, 'seen'))
  const most = seen.reduce((a, b) => Math.max(a, b), 0)
  if (shots >= 2 && seen.length > 0 && most === 0) {
    if (input.drained === true)
      find(
        'bypass',
        'caution',
        `${shots} shots drained and no probe rose: water runs past the medium, or the probes do not touch it; try smaller shots and weigh a container`,
      )
    else
      find(
        'no-water',
        'danger',
        `${shots} shots in the log, no probe rose${input.drained === false ? ' and nothing drained' : ''}: look at valve, filter and supply, and water by hand`,
      )
  } else if (shots >= 3) {
    input.probes.forEach((probe, i) => {
      if (seen[i]! * 2 < most)
        find(
          'one-place-dry',
          'caution',
          `probe ${probe.name} saw ${seen[i]} of ${shots} shots, another one ${most}: a clogged emitter or a probe with air at its pins; do a catch test, then re-seat the probe`,
          probe.name,
        )
    })
  }
  const extra = wholeNumberIn(input.risesWithoutShot ?? 0, COUNT, 'risesWithoutShot')
  if (extra > 0)
    find(
      'rise-without-shot',
      'caution',
      `${extra} rises that no entry of the log explains: a valve that passes water, watering by hand, or a log with holes; read the meter`,
    )
  return findings
}
