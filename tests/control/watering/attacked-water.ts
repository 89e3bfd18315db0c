import { controlWatering, type WateringInput, type WateringSettings, type WateringState } from 'porewater'
import { MIDNIGHT, moment, settings } from './zone.js'

/** What truly happens in a zone whose valve closes by itself, by a clock that nobody can touch. */
export interface TrueRun {
  /** Time between decisions. Unit: s. */
  readonly poll: number
  readonly days: number
  /** What the clock of the controller says at a true time. */
  readonly now?: (time: number, i: number) => unknown
  /** What the probe sends; dry, and moving a little, by default. */
  readonly level?: (time: number, i: number) => unknown
  /** What else comes in; `given` is all that was truly given. Unit: L. */
  readonly more?: (time: number, i: number, given: number) => object
  readonly changed?: Partial<WateringSettings>
  /** What becomes of the stored state before a decision. */
  readonly stored?: (state: WateringState, time: number, i: number) => unknown
}

/** An order of a person for water, so that nothing but limits, hours and pace holds the valve back. */
export const askForWater = (time: number) => ({ override: { action: 'water' as const, until: time + 600 } })

/** Runs the controller and keeps an account of its own. Unit: share of the limit of a day, s, openings. */
export function trueWater({ poll, days, now, level, more, changed, stored }: TrueRun) {
  const rules = { ...settings, ...changed }
  const reducer = controlWatering(rules)
  let state: unknown = reducer.start
  let [from, until, opened, given, sum, worst, longest, outside, openings] = [0, 0, 0, 0, 0, 0, 0, 0, 0]
  const passed: { readonly time: number; readonly litres: number }[] = []
  for (let i = 0, time = MIDNIGHT; time < MIDNIGHT + days * 86400; i++, time += poll) {
    const ran = Math.max(0, Math.min(until, time) - from)
    if (ran > 0) {
      const litres = (ran * rules.flow) / 3600
      passed.push({ time, litres })
      sum += litres
      given += litres
      longest = Math.max(longest, from + ran - opened)
      if (!isAllowed(from) || !isAllowed(from + ran - 1e-6)) outside++
    }
    while (passed[0] !== undefined && passed[0].time <= time - 86400) sum -= passed.shift()!.litres
    worst = Math.max(worst, sum)
    const wasOpen = until > time
    if (stored !== undefined) state = stored(state as WateringState, time, i)
    const said = now === undefined ? time : now(time, i)
    const sent = moment(said as number, level === undefined ? 0.45 + 0.002 * (i % 2) : level(time, i))
    const [next, decision] = reducer.step(
      state as WateringState,
      {
        ...sent,
        ...more?.(time, i, given),
      } as WateringInput,
    )
    state = next
    if (decision.open && !wasOpen) {
      opened = time
      openings++
    }
    from = time
    until = decision.open ? time + decision.closeAfter : time
  }
  return { worst: worst / rules.maxPerDay, longest, outside, openings, given }
}

/** Water from 7 to 18 o'clock, by the true clock. */
function isAllowed(time: number): boolean {
  const hour = ((time - MIDNIGHT) % 86400) / 3600
  return hour >= 7 && hour <= 18
}
