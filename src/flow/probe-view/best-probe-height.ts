import { InputError } from '../../quantity/errors.js'
import type { Duration, Length, WaterContent } from '../../quantity/generated/kinds.js'
import { numberIn, requireList, requireMade, requireObject, requireRows } from '../../quantity/guard.js'
import type { FlowStep } from '../container-flow.js'
import { PROBE_HEIGHT } from '../domains.js'
import type { RichardsState } from '../richards-state.js'
import type { RichardsFlow, RichardsStep } from '../richards-terms.js'
import { type ProbeInContainer, probeReading } from './probe-reading.js'

/** A day of a simulated container, seen at several heights. */
export interface ProbeHeights extends Pick<ProbeInContainer, 'sensedHeight' | 'rods'> {
  /** The simulation. */
  readonly flow: RichardsFlow
  /** The state at the begin. */
  readonly start: RichardsState
  /** What happens, in order; the steps are the moments at which probes are read. */
  readonly steps: readonly (FlowStep | RichardsStep)[]
  /** Heights of the middle of the rods. Unit: cm. Range: each in [0, ∞). */
  readonly heights: readonly Length[]
}

/** What probes at some heights would tell. */
export interface BestProbeHeight {
  /** One view for each height, in the order given. */
  readonly views: readonly ProbeHeightView[]
  /** The height whose readings follow the mean of the container best once their bias is known. Unit: cm. */
  readonly best: Length
  /** The same, only at the end of dry intervals before a shot, as where the reading decides when to water. Unit: cm. */
  readonly bestBeforeShots: Length
  /** The same, only at the end of intervals with a shot. Unit: cm. */
  readonly bestAfterShots: Length
}

/** How well a probe at one height speaks for the container. */
export interface ProbeHeightView {
  /** Height of the middle of the rods. Unit: cm. */
  readonly height: Length
  /** Reading less the mean of the container, on average. Unit: m³/m³. */
  readonly bias: number
  /** Root of the mean square of what is left when the bias is taken off. Unit: m³/m³. */
  readonly spread: number
  /** Reading less the mean at the end of dry intervals, before the next shot, on average. Unit: m³/m³. */
  readonly biasBeforeShots: number
  /** The same at the end of intervals with a shot. Unit: m³/m³. */
  readonly biasAfterShots: number
  /** Root of the mean square of what is left before shots when the bias before shots is taken off. Unit: m³/m³. */
  readonly spreadBeforeShots: number
  /** The same after shots. Unit: m³/m³. */
  readonly spreadAfterShots: number
  /** Time from the end of an interval with a shot, when the mean is highest, to the highest reading before the next; on average. Unit: s. */
  readonly lag: Duration
}

/**
 * What probes at several heights would tell of the mean water content of a container, before and after shots, and which tells it best.
 *
 * @procedure Follows the simulation through the steps, reads `probeReading` at the end of each, and compares with the mean of the container.
 * @returns One view for each height, and the best of them.
 * @throws `DomainError` outside the ranges; `InputError` without heights or steps; what the simulation throws.
 * @validity As the simulation: it spreads shots over the whole surface, so that the place beside a dripper is not seen.
 * @source definition
 * @example
 * const flow = containerFlowRichards1931({
 *   container: boxContainer({ length: centimetres(20), width: centimetres(20), height: centimetres(10) }),
 *   medium: vanGenuchten1980({ residual: waterContent(0.1), saturated: waterContent(0.9), alpha: perCentimetre(0.1), n: 1.7 }),
 *   saturatedConductivity: centimetresPerHour(60),
 * })
 * const shot = { duration: minutes(5), applied: litres(0.2), demand: litres(0) }
 * const pause = { duration: minutes(30), applied: litres(0), demand: litres(0) }
 * const view = bestProbeHeight({
 *   flow, start: flow.startAt((height) => centimetresOfSuction(inCentimetres(height) + 10)), steps: [shot, pause, shot, pause],
 *   heights: [centimetres(2), centimetres(5), centimetres(8)], sensedHeight: centimetres(3),
 * })
 * view.best // => 5
 */
export function bestProbeHeight(request: ProbeHeights): BestProbeHeight {
  requireObject(request, 'request')
  requireList(request.heights, 'heights')
  requireRows(request.steps, 'steps')
  const { flow, steps, heights, sensedHeight, rods = 'upright' } = request
  requireMade(flow, 'step', 'flow')
  if (heights.length === 0 || steps.length === 0)
    throw new InputError('heights', 'or steps are missing', 'give at least one height and one step')
  for (const height of heights) numberIn(height, PROBE_HEIGHT, 'heights')
  let state = request.start
  const course = steps.map((during) => {
    state = flow.step(state, during as RichardsStep)[0]
    const profile = flow.profile(state)
    const mean = flow.waterContent(state)
    return {
      duration: during.duration,
      shot: during.applied > 0,
      mean,
      readings: heights.map((height) => probeReading(profile, { height, sensedHeight, rods })),
    }
  })
  const views = heights.map((height, i) => viewOf(height, i, course))
  const heightOfMin = (of: (view: ProbeHeightView) => number) => views.reduce((a, b) => (of(b) < of(a) ? b : a)).height
  return {
    views,
    best: heightOfMin((view) => view.spread),
    bestBeforeShots: heightOfMin((view) => view.spreadBeforeShots),
    bestAfterShots: heightOfMin((view) => view.spreadAfterShots),
  }
}

type Course = readonly { duration: Duration; shot: boolean; mean: WaterContent; readings: readonly WaterContent[] }[]

function viewOf(height: Length, i: number, course: Course): ProbeHeightView {
  const offs = course.map(({ readings, mean }) => readings[i]! - mean)
  const before = offs.filter((_, k) => !course[k]!.shot && (course[k + 1]?.shot ?? false))
  const after = offs.filter((_, k) => course[k]!.shot)
  // Where there is no such interval, what holds for all of them.
  const [all, dry, wet] = [offs, before, after].map((some) => biasAndSpread(some.length > 0 ? some : offs))
  return {
    height,
    bias: all!.bias,
    spread: all!.spread,
    biasBeforeShots: dry!.bias,
    biasAfterShots: wet!.bias,
    spreadBeforeShots: dry!.spread,
    spreadAfterShots: wet!.spread,
    lag: lagOf(i, course),
  }
}

function biasAndSpread(offs: readonly number[]): { readonly bias: number; readonly spread: number } {
  const bias = average(offs)
  return { bias, spread: Math.sqrt(average(offs.map((off) => (off - bias) ** 2))) }
}

/** Over all shots: how long after its end the reading is highest. */
function lagOf(i: number, course: Course): Duration {
  const lags: number[] = []
  let [max, time] = [-Infinity, 0]
  for (const step of course) {
    const reading = step.readings[i]!
    if (step.shot) {
      lags.push(0)
      max = reading
      time = 0
    } else time += step.duration
    if (lags.length > 0 && reading > max) {
      max = reading
      lags[lags.length - 1] = time
    }
  }
  return (lags.length > 0 ? average(lags) : 0) as Duration
}

function average(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length
}
