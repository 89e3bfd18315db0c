import { WATER_GIVEN, WATER_USE } from '../quantity/domains.js'
import { InputError } from '../quantity/errors.js'
import type { SolutionEC, Volume } from '../quantity/generated/kinds.js'
import { numberIn, optionOr } from '../quantity/guard.js'
import type { columnSimulation } from './column/simulation.js'
import type { Passed } from './column/step/passed.js'
import { EVAPORATION, STEP } from './domains.js'
import type { RichardsColumn } from './richards-column.js'
import { type Moment, type RichardsState, stateOf, sumOf } from './richards-state.js'
import type { RichardsFlow, RichardsStep } from './richards-terms.js'
import { companionOf, saltOutcome } from './salt/salt-account.js'
import { checkFeedEC } from './salt/salt-setting.js'

/** What happens in a span of time, as the simulation counts. Units: s, cm³, dS/m. */
interface Span {
  readonly duration: number
  readonly given: number
  readonly demand: number
  readonly evaporation: number
  readonly feed: number
}

/** How a simulated column goes on through a span of time. */
export function richardsStep(
  column: RichardsColumn,
  { equations, advance }: ReturnType<typeof columnSimulation>,
  unpack: (state: RichardsState) => Moment,
): RichardsFlow['step'] {
  const { bypass, salt, sink } = column
  return (state, during) => {
    const { duration, given, demand, evaporation, feed } = checkSpan(during, column)
    const moment = unpack(state)
    const before = sumOf(moment.held)
    const carried = salt === undefined ? undefined : companionOf(moment.salt as Float64Array, salt, feed)
    const past = given * bypass
    const conditions = {
      applied: (given - past) / duration,
      evaporation: evaporation / duration,
      sink: sink(demand / duration),
    }
    const passed = advance(moment, duration, conditions, carried?.onStep)
    return [
      stateOf(moment, equations),
      {
        drained: litres(passed.drained + past),
        taken: litres(passed.taken),
        entered: litres(passed.entered),
        bypassed: litres(past),
        evaporated: litres(passed.evaporated),
        ranOff: litres(passed.runOff),
        standing: litres(equations.standing(moment.suctions)),
        imbalance: litres(sumOf(moment.held) - before - stayedOf(passed)),
        steps: passed.steps,
        ...(carried === undefined ? {} : { salt: saltOutcome(carried.passed, past, feed, passed.drained) }),
      },
    ]
  }
}

/** Refuses what cannot happen to the column. */
function checkSpan(during: RichardsStep, { ends, salt }: RichardsColumn): Span {
  const duration = numberIn(during.duration, STEP, 'duration')
  const given = numberIn(during.applied, WATER_GIVEN, 'applied') * 1000
  const demand = numberIn(during.demand, WATER_USE, 'demand') * 1000
  const evaporation = numberIn(optionOr(during.evaporation, 0), EVAPORATION, 'evaporation') * 1000
  if (ends.surface !== 'shots' && given + evaporation > 0)
    throw new InputError('applied', 'cannot be given to a surface that keeps a suction', 'leave `surface` out')
  if (salt !== undefined && given > 0 && during.feedEC === undefined)
    throw new InputError('feedEC', 'is left out, and salt is followed', 'give the EC of the water given')
  return { duration, given, demand, evaporation, feed: checkFeedEC(during.feedEC ?? (0 as SolutionEC)) }
}

/** Water that came and did not leave. */
function stayedOf({ entered, drained, taken, runOff, evaporated }: Passed): number {
  return entered - drained - taken - runOff - evaporated
}

function litres(cubicCentimetres: number): Volume {
  return (cubicCentimetres / 1000) as Volume
}
