import {
  controlWatering,
  type WateringDecision,
  type WateringInput,
  type WateringSettings,
  type WateringState,
} from 'porewater'
import { MIDNIGHT, moment, settings } from './zone.js'

/** A moment of the true clock, and the decision made at it by whatever clock there is. */
export interface TrueMoment {
  readonly time: number
  readonly decision: WateringDecision
}

export interface TrueWorld {
  /** Time between decisions. Unit: s. */
  readonly poll: number
  readonly days: number
  /** What the controller is told of the time. */
  readonly now?: (time: number, at: number) => number
  /** What else it is told. */
  readonly more?: (now: number, time: number, at: number) => Partial<WateringInput>
  /** What becomes of its state before a decision. */
  readonly kept?: (state: WateringState, time: number, at: number) => WateringState
  readonly changed?: Partial<WateringSettings>
}

/**
 * Water by true time of a zone whose reading is always dry, so that nothing but limits and hours holds back, and whose valve closes by itself. Gives
 * the worst 24 h as a share of the limit, the openings outside the hours of `settings`, and all decisions.
 */
export function waterByTrueTime({ poll, days, now = (time) => time, more, kept, changed }: TrueWorld) {
  const rules = { ...settings, ...changed }
  const reducer = controlWatering(rules)
  const recent: { readonly at: number; readonly volume: number }[] = []
  const told: TrueMoment[] = []
  let state = reducer.start
  let [from, until, sum, worst, total, last] = [0, 0, 0, 0, 0, 0]
  const outside: number[] = []
  for (let at = 0, time = MIDNIGHT; time < MIDNIGHT + days * 86400; at++, time += poll) {
    const volume = (Math.max(0, Math.min(until, time) - from) * rules.flow) / 3600
    recent.push({ at: time, volume })
    sum += volume
    total += volume
    while (recent[0]!.at <= time - 86400) sum -= recent.shift()!.volume
    worst = Math.max(worst, sum)
    if (kept) state = kept(state, time, at)
    const read = now(time, at)
    const [next, decision] = reducer.step(state, moment(read, 0.45 + 0.002 * (at % 2), more?.(read, time, at)))
    state = next
    from = time
    until = decision.open ? time + decision.closeAfter : time
    const hour = ((time - MIDNIGHT) % 86400) / 3600
    if (decision.open && decision.opening !== last && (hour < 7 || hour >= 18)) outside.push(hour)
    if (decision.open) last = decision.opening
    told.push({ time, decision })
  }
  return { worst: worst / rules.maxPerDay, perDay: total / days / rules.maxPerDay, outside, told, state }
}
