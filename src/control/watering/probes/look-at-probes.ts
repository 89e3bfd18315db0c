import type { Limits } from '../settings/checked-settings.js'
import type { WateringInput } from '../state/input.js'
import type { WateringProbe, WateringState } from '../state/state.js'
import { type Moment, type ProbeView, takeReading, viewProbe } from './probes.js'
import { judgeRise, shownBy, watchFall, watchPeak } from './rises.js'

/** Takes readings into what is known of the probes, and judges which of them saw the last shot. */
export function lookAtProbes(
  limits: Limits,
  { probes, valve, counters }: WateringState,
  readings: unknown,
  moment: Moment,
) {
  const list: readonly WateringInput['readings'][number][] = Array.isArray(readings) ? readings : []
  const next: WateringProbe[] = []
  const views: ProbeView[] = []
  let shown: number | null = null
  const { delivery, meteredSince, leaked, ordered } = counters
  const meter = {
    isBacked: delivery.agreed >= 4,
    sawNone: meteredSince + leaked < 0.2 * ordered,
    isPart: ordered < 0.6 * limits.shot,
  }
  for (let i = 0; i < limits.probes.length; i++) {
    const { name, offset } = limits.probes[i]!
    let probe = probes[i]!
    for (const reading of list)
      if ((reading?.probe ?? '') === name) probe = takeReading(probe, reading, offset, moment, limits)
    const view = viewProbe(probe, offset, moment, limits)
    if (valve.opened === null) {
      const rose = shownBy(probe, view, valve.closed, limits)
      if (rose !== null) shown = Math.max(rose, shown ?? rose)
      probe = watchPeak(probe, offset, valve.closed)
      probe = watchFall(judgeRise(probe, view, valve.closed, meter, limits), view, limits)
    }
    next.push(probe)
    views.push(viewProbe(probe, offset, moment, limits))
  }
  const isKnown = (reading: unknown) =>
    limits.probes.some(({ name }) => name === ((reading as { probe?: unknown } | null)?.probe ?? ''))
  return { probes: next, views, unknown: !list.every(isKnown), shown }
}
