import { ConvergenceError, InputError } from '../quantity/errors.js'
import type { DrainFraction, Duration, Volume } from '../quantity/generated/kinds.js'
import { numberIn, requireList, requireObject } from '../quantity/guard.js'
import { containerFlowRichards1931 } from './container-flow-richards-1931.js'
import { SHARE_OF_DRAIN } from './domains.js'
import type { RichardsContainer } from './richards-column.js'
import type { RichardsState } from './richards-state.js'
import type { RichardsFlow } from './richards-terms.js'

/** A saturated container whose bottom is opened. */
export interface DrainingContainer extends Pick<RichardsContainer, 'container' | 'medium' | 'nodes' | 'tolerance'> {
  /** Conductivity of the saturated medium. Unit: cm/h. Range: (0, ∞). */
  readonly saturatedConductivity: RichardsContainer['saturatedConductivity']
  /** Shares of the water that drains in the end, in rising order. Unit: 1. Range: each in [0, 0.999]. */
  readonly shares: readonly DrainFraction[]
}

const NOTHING = 0 as Volume
const DAY = 86400

/**
 * Times after which given shares of its drainable water have left a container that stood under water: the first half leaves in
 * moments, the last percent takes its time, and both depend on the medium.
 *
 * @procedure Simulates the drainage by `containerFlowRichards1931` from saturation without standing water, in steps that double, and
 * halves the step in which a share is reached until a straight line in it will do.
 * @returns One time for each share, in the same order. Unit: s.
 * @throws `DomainError` outside the ranges, `InputError` when the shares do not rise, `ConvergenceError` when a share is not reached within 1000 days.
 * @validity As `containerFlowRichards1931`: a real container drains through holes, and by wide pores at once.
 * @source richards-1931
 * @example
 * const [half, most] = drainageTimes({
 *   container: boxContainer({ length: centimetres(20), width: centimetres(20), height: centimetres(24) }),
 *   medium: vanGenuchten1980({ residual: waterContent(0.12), saturated: waterContent(0.93), alpha: perCentimetre(0.1), n: 1.6 }),
 *   saturatedConductivity: centimetresPerMinute(1),
 *   shares: [percent(50), percent(90)],
 * })
 * half // => 523.8
 * most // => 3799.75
 */
export function drainageTimes(input: DrainingContainer): Duration[] {
  requireObject(input, 'input')
  requireList(input.shares, 'shares')
  const flow = containerFlowRichards1931({ nodes: 121, tolerance: 1e-4, ...input, base: 'seepage', surface: 'shots' })
  const from: Reached = { state: flow.startAt(() => 0 as never), time: 0, drained: 0 }
  const atRest = flow.waterContent(flow.startAt((height) => height as never))
  const drainable = (flow.waterContent(from.state) - atRest) * input.container.volume
  // A tenth of the time in which the pores that drain would empty at saturated conductivity.
  const step = Math.min(
    ((drainable / input.container.volume) * input.container.height * 360) / input.saturatedConductivity,
    DAY,
  )
  const drainage: Drainage = { flow, from, step }
  return input.shares.map((share, i) => {
    const wanted = numberIn(share, SHARE_OF_DRAIN, 'shares') * drainable
    if (share < (input.shares[i - 1] ?? 0))
      throw new InputError('shares', 'do not rise', 'give the smaller shares first: the simulation does not go back')
    return timeOf(drainage, wanted) as Duration
  })
}

/** A drainage up to where it was followed, and the length of the next step. Unit: s. */
interface Drainage {
  readonly flow: RichardsFlow
  from: Reached
  step: number
}

/** When so much has drained. Unit: s. */
function timeOf(drainage: Drainage, wanted: number): number {
  if (wanted <= drainage.from.drained) return drainage.from.time
  let beyond = after(drainage, drainage.step)
  for (; beyond.drained < wanted; beyond = after(drainage, drainage.step)) {
    if (beyond.time > 1000 * DAY)
      throw new ConvergenceError(
        'drainage',
        0,
        wanted - beyond.drained,
        'check the conductivity, or ask for a smaller share',
      )
    drainage.from = beyond
    drainage.step = Math.min(2 * drainage.step, DAY)
  }
  let width = drainage.step
  while (width > 0.001 * beyond.time) {
    width /= 2
    const middle = after(drainage, width)
    if (middle.drained < wanted) drainage.from = middle
    else beyond = middle
  }
  drainage.step = Math.max(drainage.step / 2, width)
  const { from } = drainage
  const part = (wanted - from.drained) / (beyond.drained - from.drained)
  return from.time + part * (beyond.time - from.time)
}

/** Where the drainage is after a time. */
function after({ flow, from }: Drainage, duration: number): Reached {
  const during = { duration: duration as Duration, applied: NOTHING, demand: NOTHING }
  const [state, { drained }] = flow.step(from.state, during)
  return { state, time: from.time + duration, drained: from.drained + drained }
}

interface Reached {
  readonly state: RichardsState
  readonly time: number
  readonly drained: number
}
