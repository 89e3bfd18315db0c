import { controlWatering } from '../../control/control-watering.js'
import { acknowledgedCodes } from '../../control/watering/acknowledge.js'
import type { WateringDecision } from '../../control/watering/decision.js'
import type { WateringSettings } from '../../control/watering/settings/settings.js'
import type { WateringInput } from '../../control/watering/state/input.js'
import type { WateringState } from '../../control/watering/state/state.js'
import type { Duration, Volume } from '../../quantity/generated/kinds.js'
import { requireObject } from '../../quantity/guard.js'
import { MAX_BELIEVABLE, MIN_BELIEVABLE, WHOLE_DAY } from '../scenario/rehearsal-limits.js'
import { checkedScenario, type RehearsalScenario } from '../scenario/rehearsal-scenario.js'
import type { Observation, RehearsedController } from './rehearsed-controller.js'
import { WATERING_SIGNS } from './watering-signs.js'

/**
 * The controller `controlWatering` in a scenario, its settings taken from the scenario's levels and limits, and joined to the simulated zone. An
 * example of how your own logic is joined, and the controller behind the table of the guide.
 *
 * @procedure Names the probes, hands on readings, counters, locks and orders of people as they are, and gives the decision to the valve.
 * @param scenario - Zone, limits and levels, made by `rehearsalScenario`.
 * @param change - Settings that differ from those.
 * @returns A controller for `rehearse`.
 * @throws `DomainError` outside the ranges, `InputError` for limits that contradict each other, as `controlWatering` does.
 * @source definition
 * @example
 * const scenario = rehearsalScenario('coir-dust')
 * const faults = [{ fault: 'probe-reads-zero' as const, from: hours(10) }]
 * const outcome = rehearse({ zone: scenario.zone, limits: scenario.limits, controller: rehearsedWatering(scenario), days: 2, seed: 7, faults, keepCourse: false })
 * outcome.worstDay <= 6 // => true
 * outcome.outsideHours // => 0
 */
export function rehearsedWatering(
  scenario: RehearsalScenario,
  change: Partial<WateringSettings> = {},
): RehearsedController<WateringState, WateringInput, WateringDecision> {
  requireObject(scenario, 'scenario')
  const { zone, limits } = checkedScenario(scenario)
  const names = Array.from({ length: zone.probes }, (_, i) => `probe ${i + 1}`)
  return {
    reducer: controlWatering({
      lower: scenario.lower,
      upper: scenario.upper,
      minBelievable: limits.minBelievable ?? MIN_BELIEVABLE,
      maxBelievable: limits.maxBelievable ?? MAX_BELIEVABLE,
      substrateVolume: zone.medium.substrateVolume,
      flow: zone.flow,
      shot: scenario.shot,
      maxRunTime: limits.maxRunTime,
      maxPerDay: limits.maxPerDay,
      usualPerDay: scenario.usualPerDay,
      minRest: 600 as Duration,
      probeLag: 600 as Duration,
      maxReadingAge: 1200 as Duration,
      maxUnchanged: 14400 as Duration,
      maxShotsWithoutRise: 4,
      allowedHours: limits.allowedHours ?? WHOLE_DAY,
      valveClosesByItself: true,
      inDoubt: 'timed-shots',
      probes: names.map((name) => ({ name })),
      ...change,
    }),
    input: (observed) => inputOf(observed, names),
    order: ({ open, closeAfter, findings }) => ({
      open,
      closeAfter,
      alarms: findings.filter(({ level }) => level !== 'note').map(({ code }) => code),
    }),
    alarmsFor: WATERING_SIGNS,
  }
}

/** How long an order of a person holds after it was told last. Unit: s. */
const HELD = 600

function inputOf(observed: Observation, names: readonly string[]): WateringInput {
  const { now, readings, locked, metered, drained, valveOpen, override, acknowledged } = observed
  return {
    now,
    // Whatever was sent goes on as it came: doubting it is the controller's work.
    readings: readings.map(({ probe, value, time }) => ({ probe: names[probe]!, waterContent: value as number, time })),
    locked,
    ...(metered === null ? {} : { metered: metered as Volume }),
    ...(drained === null ? {} : { drained: drained as Volume }),
    ...(valveOpen === null ? {} : { valve: valveOpen ? 'open' : 'closed' }),
    ...(override === null ? {} : { override: { action: override === 'open' ? 'water' : 'close', until: now + HELD } }),
    // A person who comes has looked at all of it.
    ...(acknowledged ? { acknowledge: acknowledgedCodes() } : {}),
  }
}
