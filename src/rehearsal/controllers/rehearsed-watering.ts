import { controlWatering } from '../../control/control-watering.js'
import { acknowledgedCodes } from '../../control/watering/acknowledge.js'
import type { WateringDecision } from '../../control/watering/decision.js'
import type { WateringSettings } from '../../control/watering/settings/settings.js'
import type { WateringInput } from '../../control/watering/state/input.js'
import type { WateringState } from '../../control/watering/state/state.js'
import type { Duration, Volume } from '../../quantity/generated/kinds.js'
import { requireObject } from '../../quantity/guard.js'
import { checkedScene, type RehearsalScene } from '../scene/rehearsal-scene.js'
import type { Observation, RehearsedController } from './rehearsed-controller.js'
import { WATERING_SIGNS } from './watering-signs.js'

/**
 * The controller `controlWatering` in a scene, its settings taken from the scene's levels and limits, and joined to the simulated zone. An
 * example of how your own logic is joined, and the controller behind the table of the guide.
 *
 * @procedure Names the probes, hands on readings, counters, locks and orders of people as they are, and gives the decision to the valve.
 * @param scene - Zone, limits and levels, made by `rehearsalScene`.
 * @param change - Settings that differ from those.
 * @returns A controller for `rehearse`.
 * @throws `DomainError` outside the ranges, `InputError` for limits that contradict each other, as `controlWatering` does.
 * @source definition
 * @example
 * const scene = rehearsalScene('coir-dust')
 * const faults = [{ fault: 'probe-reads-zero' as const, from: hours(10) }]
 * const outcome = rehearse({ zone: scene.zone, limits: scene.limits, controller: rehearsedWatering(scene), days: 2, seed: 7, faults, keepCourse: false })
 * outcome.worstDay <= 6 // => true
 * outcome.outsideHours // => 0
 */
export function rehearsedWatering(
  scene: RehearsalScene,
  change: Partial<WateringSettings> = {},
): RehearsedController<WateringState, WateringInput, WateringDecision> {
  requireObject(scene, 'scene')
  const { zone, limits } = checkedScene(scene)
  const names = Array.from({ length: zone.probes }, (_, i) => `probe ${i + 1}`)
  const day = (hour: number) => (hour * 3600) as Duration
  return {
    reducer: controlWatering({
      lower: scene.lower,
      upper: scene.upper,
      minBelievable: limits.believedFrom ?? (0.05 as typeof scene.lower),
      maxBelievable: limits.believedTo ?? (0.98 as typeof scene.lower),
      substrateVolume: zone.medium.substrateVolume,
      flow: zone.flow,
      shot: scene.shot,
      maxRunTime: limits.maxRunTime,
      maxPerDay: limits.maxPerDay,
      usualPerDay: scene.usualPerDay,
      minRest: 600 as Duration,
      probeLag: 600 as Duration,
      maxReadingAge: 1200 as Duration,
      maxUnchanged: 14400 as Duration,
      maxShotsWithoutRise: 4,
      allowedHours: [{ from: day(limits.opensFrom ?? 0), to: day(limits.opensUntil ?? 24) }],
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
