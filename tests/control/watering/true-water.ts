import { controlWatering, type WateringInput, type WateringSettings, type WateringState } from 'porewater'
import { MIDNIGHT, moment, settings } from './zone.js'

/** A run by the true clock; what the controller is told and which state it goes on from may differ from it. */
export interface TrueRun {
  readonly days: number
  /** Time from one decision to the next. Unit: s. */
  readonly poll: number
  readonly changed?: Partial<WateringSettings>
  /** What the controller's clock says. Unit: s. */
  readonly clock?: (time: number, at: number) => unknown
  readonly more?: (time: number, at: number) => Partial<WateringInput>
  /** Whether a decision is asked for; each is by default. */
  readonly comes?: (time: number) => boolean
  /** The state that a decision begins with. */
  readonly stored?: (state: WateringState, time: number, at: number) => unknown
}

/** Orders water at every decision, as far as the limits let it. */
export const wanted = (time: number): Partial<WateringInput> => ({ override: { action: 'water', until: time + 600 } })

/**
 * Waters a zone that always says "dry" through a valve that closes by itself, and counts by the true clock: the water of the worst 24 h as a share
 * of the limit, openings outside the allowed hours, and the longest opening.
 */
export function trueWater({
  days,
  poll,
  changed = {},
  clock = (time) => time,
  more = () => ({}),
  stored,
  comes = () => true,
}: TrueRun) {
  const rules = { ...settings, ...changed }
  const reducer = controlWatering(rules)
  const litresPerSecond = rules.flow / 3600
  const recent: { readonly time: number; readonly litres: number }[] = []
  let state: unknown = reducer.start
  let [until, from, sum, worst, given, outside, longest, since, openings] = [0, 0, 0, 0, 0, 0, 0, 0, 0]
  let wasOpen = false
  const reasons = new Map<string, number>()
  for (let at = 0, time = MIDNIGHT; time < MIDNIGHT + days * 86400; at++, time += poll) {
    const litres = Math.max(0, Math.min(until, time) - from) * litresPerSecond
    recent.push({ time, litres })
    sum += litres
    given += litres
    while (recent[0]!.time <= time - 86400) sum -= recent.shift()!.litres
    worst = Math.max(worst, sum)
    from = time
    if (!comes(time)) continue
    if (stored !== undefined) state = stored(state as WateringState, time, at)
    const now = clock(time, at) as number
    const [next, decision] = reducer.step(state as WateringState, {
      ...moment(now, 0.45 + 0.002 * (at % 2)),
      ...more(time, at),
    })
    state = next
    reasons.set(decision.reason, (reasons.get(decision.reason) ?? 0) + 1)
    if (decision.open) {
      if (!(wasOpen && until >= time)) {
        since = time
        openings++
      }
      longest = Math.max(longest, time + decision.closeAfter - since)
      const local = (time - MIDNIGHT) % 86400
      const isInside = rules.allowedHours.some(
        ({ from: begin, to }) => local >= begin && local + decision.closeAfter <= to + 1,
      )
      if (!isInside) outside++
    }
    wasOpen = decision.open
    until = decision.open ? time + decision.closeAfter : time
  }
  return { worst: worst / rules.maxPerDay, outside, longest, given, openings, reasons, state: state as WateringState }
}
