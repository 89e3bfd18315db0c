import type { Diagnosis } from '../../control/diagnosis/cause/cause.js'
import type { WatchZoneSettings } from '../../control/diagnosis/state/settings.js'
import type { ZoneWatchState } from '../../control/diagnosis/state/zone-state.js'
import type { WatchZoneInput } from '../../control/diagnosis/watch/input.js'
import { watchZone } from '../../control/watch-zone.js'
import { optionsOf, requireObject } from '../../quantity/guard.js'
import { MAX_BELIEVABLE, MIN_BELIEVABLE } from '../scenario/rehearsal-limits.js'
import { checkedScenario, type RehearsalScenario } from '../scenario/rehearsal-scenario.js'
import { DIAGNOSIS_SIGNS } from './diagnosis-signs.js'
import type { Observation, RehearsalTruth, RehearsedController, ValveOrder } from './rehearsed-controller.js'

/** States of a controller and of the diagnosis that looks on. */
export interface DiagnosedState<State> {
  readonly controller: State
  readonly watch: ZoneWatchState
}

export interface DiagnosedInput<Input> {
  readonly controller: Input
  readonly observed: Observation
}

/** The order of the controller, with what the diagnosis said. */
export interface DiagnosedOrder extends ValveOrder {
  readonly diagnosis: Diagnosis
}

/**
 * A controller with the diagnosis `watchZone` looking on: it waters as it did, and its alarms are the causes that are suspected, the
 * likeliest first. What the diagnosis gets is what the controller got, and the order that it gave.
 *
 * @procedure Steps the controller, hands its order and what was observed to `watchZone`, and puts the causes in the place of its alarms.
 * @param scenario - Zone, limits and levels, made by `rehearsalScenario`.
 * @param change - Settings of the diagnosis that differ from those of the scenario.
 * @returns A controller for `rehearse`.
 * @throws `DomainError` and `InputError` for settings that make no sense.
 * @source definition
 * @example
 * const scenario = rehearsalScenario('coir-dust')
 * const controller = rehearsedDiagnosis(scenario, rehearsedWatering(scenario))
 * const faults = [{ fault: 'valve-stuck-closed' as const, from: hours(34) }]
 * const outcome = rehearse({ zone: scenario.zone, limits: scenario.limits, controller, days: 3, seed: 7, faults, keepCourse: false })
 * const told = outcome.timeToFirstAlarms[0]
 * told.known && told.time < 7200 // => true
 */
export function rehearsedDiagnosis<State, Input, Output>(
  scenario: RehearsalScenario,
  controller: RehearsedController<State, Input, Output>,
  change: Partial<WatchZoneSettings> = {},
): RehearsedController<DiagnosedState<State>, DiagnosedInput<Input>, DiagnosedOrder> {
  requireObject(scenario, 'scenario')
  requireObject(optionsOf(controller).reducer, 'controller.reducer')
  const { zone, limits } = checkedScenario(scenario)
  const names = Array.from({ length: zone.probes }, (_, i) => `probe ${i + 1}`)
  const watch = watchZone({
    probes: names,
    substrateVolume: zone.medium.substrateVolume,
    flow: zone.flow,
    minBelievable: limits.minBelievable ?? MIN_BELIEVABLE,
    maxBelievable: limits.maxBelievable ?? MAX_BELIEVABLE,
    fullPoint: limits.fullAbove,
    ...change,
  })
  const { reducer } = controller
  return {
    reducer: {
      start: { controller: reducer.start, watch: watch.start },
      step: (state, input) => {
        const [next, output] = reducer.step(state.controller, input.controller)
        const order = controller.order(output)
        const [watched, diagnosis] = watch.step(state.watch, watchedInput(input.observed, order, names))
        return [
          { controller: next, watch: watched },
          { ...order, alarms: alarmsOf(diagnosis), diagnosis },
        ]
      },
    },
    input: (observed: Observation, truth: RehearsalTruth) => ({
      controller: controller.input(observed, truth),
      observed,
    }),
    order: (order) => order,
    alarmsFor: DIAGNOSIS_SIGNS,
  }
}

function alarmsOf({ causes }: Diagnosis): string[] {
  return causes.map(({ code }) => code)
}

function watchedInput(observed: Observation, order: ValveOrder, names: readonly string[]): WatchZoneInput {
  const { now, readings, metered, drained, light, rootTemperature, feedEC, drainEC } = observed
  return {
    now,
    readings: readings.map(({ probe, value, time }) => ({
      probe: names[probe]!,
      waterContent: value as number,
      time,
    })),
    open: order.open,
    ...(order.closeAfter === undefined ? {} : { closeAfter: order.closeAfter }),
    ...(metered === null ? {} : { metered: metered as WatchZoneInput['metered'] & number }),
    ...(drained === null ? {} : { drained: drained as WatchZoneInput['drained'] & number }),
    light: light as WatchZoneInput['light'] & number,
    temperature: rootTemperature as WatchZoneInput['temperature'] & number,
    feedEC: feedEC as WatchZoneInput['feedEC'] & number,
    drainEC: drainEC as WatchZoneInput['drainEC'] & number,
  }
}
