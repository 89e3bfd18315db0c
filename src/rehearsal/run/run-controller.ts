import type { RehearsedController, ValveOrder } from '../controllers/rehearsed-controller.js'
import type { CheckedFault } from '../faults/fault.js'
import type { Ears } from '../outcome/heard-alarms.js'
import type { Recorder } from '../outcome/rehearsal-course.js'
import { streamSeed } from '../stream-seed.js'
import type { CheckedRehearsal } from '../world/rehearsal.js'
import type { World } from '../world/world.js'
import { type StoredStates, storedStates } from './stored-state.js'

const CLOSED: ValveOrder = { open: false, closeAfter: 0 }
const NONE: readonly string[] = []

/** Calls the controller from the first to the last moment. Gives the number of calls in which it threw. */
export function runController<State, Input, Output>(
  controller: RehearsedController<State, Input, Output>,
  { end, poll, seed, faults }: CheckedRehearsal,
  world: World,
  ears: Ears,
  recorder: Recorder | undefined,
): number {
  const { reducer, input, order } = controller
  const states = storedStates(streamSeed(seed, 6))
  const sudden = suddenEvents(faults, end)
  const recordEvery = Math.max(60, poll)
  let state = reducer.start
  let refusals = 0
  let nextRecord = 0
  let wasOff = false
  let at = 0
  for (let time = 0; time < end; time += poll) {
    let restarted = false
    let acknowledged = false
    const restart = (how: Restart) => {
      state = restored(controller, states.read(how, time))
      restarted = true
    }
    for (; at < sudden.length && sudden[at]!.time <= time; at++) {
      const { what, size } = sudden[at]!
      if (what === 'hand') world.pourByHand(size)
      else if (what === 'acknowledge') acknowledged = true
      else restart(what)
    }
    const { power, called } = world.effects()
    if (power && wasOff) restart('restart-whole')
    wasOff = !power
    if (power && called) {
      try {
        const [next, output] = reducer.step(state, input(world.observe(restarted, acknowledged), world.truth))
        state = next
        const wanted = order(output)
        world.order(wanted)
        ears.hear(wanted.alarms ?? NONE, time)
      } catch {
        // An error is no order: the valve closes, and the state stays as it was.
        refusals++
        world.order(CLOSED)
      }
      states.keep(state, time)
    }
    if (recorder !== undefined && time >= nextRecord) {
      nextRecord += recordEvery
      recorder.record(time, world.mean(), world.waterContents, world.shown, world.water, world.wanted())
    }
    world.pass(Math.min(end, time + poll))
  }
  world.finish()
  return refusals
}

type Restart = Parameters<StoredStates['read']>[0]

interface Sudden {
  readonly time: number
  readonly what: 'hand' | 'acknowledge' | Restart
  readonly size: number
}

/** What happens at one moment only, in order; restarts come again after each `size` hours while the fault lasts. */
function suddenEvents(faults: readonly CheckedFault[], end: number): Sudden[] {
  return faults
    .flatMap(({ row, from, until, size }): Sudden[] => {
      const what = row.once
      if (what === undefined) return []
      if (what === 'hand' || what === 'acknowledge') return [{ time: from, what, size }]
      const every = Math.max(60, size * 3600)
      const times: Sudden[] = []
      for (let time = from; time < Math.min(end, until); time += every) times.push({ time, what, size })
      return times
    })
    .sort((a, b) => a.time - b.time)
}

function restored<State, Input, Output>(
  { reducer, restore }: RehearsedController<State, Input, Output>,
  stored: unknown,
): State {
  if (stored === undefined) return reducer.start
  if (restore === undefined) return stored as State
  try {
    return restore(stored)
  } catch {
    return reducer.start
  }
}
