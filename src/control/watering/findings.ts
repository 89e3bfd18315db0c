import { isBehind } from './delivery/fall-behind.js'
import { isOutrun } from './delivery/tally.js'
import type { WateringDoubt, WateringFinding } from './findings/finding.js'
import type { ProbeView } from './probes/probes.js'
import { foundTooHigh } from './refill/known-error.js'
import type { WateringState } from './state/state.js'

/** What an input brought that is worth telling. */
export interface Seen {
  readonly views: readonly ProbeView[]
  readonly zone: { readonly disputed: boolean; readonly stray: readonly number[] }
  /** Whether a reading named a probe that the settings do not know. */
  readonly unknown: boolean
  readonly byHandRefused: boolean
  readonly overrideRefused: boolean
  readonly acknowledgeRefused: boolean
}

const DANGERS: readonly WateringDoubt[] = ['flow-while-closed', 'flow-too-large', 'no-flow', 'valve-does-not-close']

/** Everything about a decision that somebody should look at, the most urgent not first: sort by level. */
export function findingsOf(
  state: WateringState,
  seen: Seen,
  names: readonly { readonly name: string }[],
): WateringFinding[] {
  const findings: WateringFinding[] = []
  const find = (code: WateringDoubt, more?: Partial<WateringFinding>) =>
    findings.push({ code, level: DANGERS.includes(code) ? 'danger' : 'caution', ...more })
  for (const code of state.counters.latched) find(code)
  for (let i = 0; i < seen.views.length; i++) {
    const { doubt, measured } = seen.views[i]!
    const about = names[i]?.name
    const high = foundTooHigh(state.fill, i, state.clock.elapsed)
    if (high !== null) find('reads-too-high', { ...(about && { about }), value: high, unit: 'm³/m³' })
    if (doubt === null) continue
    const age = doubt === 'reading-old' ? { value: state.clock.elapsed - measured, unit: 's' } : undefined
    find(doubt, about === '' || about === undefined ? age : { about, ...age })
  }
  if (seen.zone.disputed) find('probes-disagree')
  for (const i of seen.zone.stray) find('probes-disagree', { about: names[i]!.name })
  if (state.zone.verdict !== 'plausible') find(state.zone.verdict)
  if (isBehind(state)) find('shots-fall-behind', { value: state.zone.behind, unit: 's' })
  const { clock, tally } = state
  if (clock.bad >= 10 || clock.doubt > 0 || isOutrun(tally, clock))
    find('clock-doubtful', { value: clock.doubt, unit: 's' })
  if (seen.unknown) find('unknown-probe')
  if (seen.byHandRefused) find('by-hand-refused')
  if (seen.overrideRefused) find('override-refused')
  if (seen.acknowledgeRefused) find('acknowledge-refused')
  return findings
}
