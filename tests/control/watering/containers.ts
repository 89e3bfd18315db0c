import { controlWatering, type WateringDecision, type WateringSettings, type WateringState } from 'porewater'
import { MIDNIGHT, settings } from './zone.js'

/** An invented zone of `settings`, in which each container drips and drinks a little differently. */
export interface Containers {
  readonly days: number
  /** Share of the mean that each container gets of a shot, and that its plant drinks. */
  readonly drips: readonly number[]
  readonly drinks: readonly number[]
  /** Which containers have a probe. */
  readonly probed: readonly number[]
  readonly capacity?: number
  /** What plants drink in a day. Unit: L. */
  readonly use?: number
  /** Share of a shot that runs past the medium. */
  readonly past?: number
  readonly changed?: Partial<WateringSettings>
  /** What the gauge shows of all that drained, and the meter of all that came. Unit: L. */
  readonly counts?: (drained: number, day: number) => number | undefined
  readonly meters?: (came: number) => number
  /** What the clock of the controller says. Unit: s. */
  readonly clock?: (now: number, day: number) => unknown
  /** What a program has kept of a state when it asks for the next decision. */
  readonly kept?: (state: WateringState, time: number, start: WateringState) => unknown
  /** Time from one decision to the next. Unit: s. */
  readonly poll?: number
}

/**
 * Waters it for some days: water above the capacity runs off within minutes and is counted, plants drink as the sun stands, and probes are right. Gives the
 * driest that each container was after the first three days, and what was given, drained and decided.
 */
export function season(zone: Containers) {
  const { days, drips, drinks, probed, capacity = 0.62, use = 1.6, past = 0.05, changed = {}, poll = 120 } = zone
  const { counts = (all: number) => all, meters = (all: number) => all, clock = (now: number) => now } = zone
  const { kept = (state: WateringState) => state } = zone
  const names = probed.map((at) => `probe ${at}`)
  const rules = { ...settings, probes: names.map((name) => ({ name })), ...changed }
  const reducer = controlWatering(rules)
  const levels = drips.map(() => 0.56)
  const driest = drips.map(() => 1)
  const told: WateringDecision[] = []
  let [state, until, metered, drained] = [reducer.start, 0, 0, 0]
  const byDay = Array.from({ length: days }, () => ({ given: 0, drained: 0 }))
  for (let now = MIDNIGHT; now < MIDNIGHT + days * 86400; now += poll) {
    const readings = probed.map((at, i) => ({
      probe: names[i]!,
      // The last digit of a good probe trembles.
      waterContent: (levels[at]! + 0.0005 * ((now / poll + i) % 2)) as never,
      time: now,
    }))
    const counted = counts(drained, (now - MIDNIGHT) / 86400)
    const moment = clock(now, (now - MIDNIGHT) / 86400) as number
    const input = { now: moment, readings, locked: false, metered: meters(metered) as never, drained: counted as never }
    const [next, decision] = reducer.step(kept(state, now - MIDNIGHT, reducer.start) as WateringState, input)
    state = next
    told.push(decision)
    until = decision.open ? now + decision.closeAfter : now
    const came = (Math.min(poll, until - now) * rules.flow) / 3600
    const hour = ((now - MIDNIGHT) % 86400) / 3600
    const sun = Math.max(0, Math.sin((Math.PI * (hour - 6)) / 14))
    const day = byDay[Math.floor((now - MIDNIGHT) / 86400)]!
    const before = drained
    for (let i = 0; i < levels.length; i++) {
      const drunk = (use * drinks[i]! * sun * Math.PI * poll) / (2 * 14 * 3600)
      let level = levels[i]! + (came * drips[i]! * (1 - past) - drunk) / rules.substrateVolume
      const over = Math.max(0, level - capacity) * (1 - Math.exp(-poll / 400))
      level -= over
      drained += (over * rules.substrateVolume + came * drips[i]! * past) / levels.length
      levels[i] = level
      if (now > MIDNIGHT + 3 * 86400) driest[i] = Math.min(driest[i]!, level)
    }
    metered += came
    day.given += came
    day.drained += drained - before
  }
  return { driest, told, byDay, state }
}
