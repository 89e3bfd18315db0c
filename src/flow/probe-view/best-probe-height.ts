import { InputError } from '../../quantity/errors.js'
import type { Duration } from '../../quantity/generated/duration.js'
import type { Length } from '../../quantity/generated/length.js'
import type { WaterContent } from '../../quantity/generated/water-content.js'
import { numberIn } from '../../quantity/guard.js'
import { requireList } from '../../quantity/require-list.js'
import { requireObject } from '../../quantity/require-object.js'
import type { FlowStep } from '../container-flow.js'
import { PROBE_HEIGHT, SENSED_HEIGHT } from '../domains.js'
import type { ContainerLayer, RichardsFlow, RichardsStep } from '../richards-flow.js'
import type { RichardsState } from '../richards-state.js'

/** Where a probe sits in a container: the span of heights that it senses. */
export interface ProbeInContainer {
  /** Height of the middle of its rods above the bottom. Unit: cm. Range: [0, ∞). */
  readonly height: Length
  /** Height of the volume that it senses; the length of rods that stand upright, and some centimetres for rods that lie. Unit: cm. Range: (0, ∞). */
  readonly sensedHeight: Length
}

/**
 * Water content that a probe would read in a profile: the mean over the heights it senses, each of which counts alike.
 *
 * ```math
 * \theta_p = \frac{1}{d} \int_{z - d/2}^{z + d/2} \theta(\zeta)\,d\zeta
 * ```
 *
 * What reaches beyond bottom or surface is cut off.
 *
 * @param profile - The profile, from the bottom up, as `profile` of a simulation gives it.
 * @param probe - Where the probe sits.
 * @returns Water content. Unit: m³/m³.
 * @throws `DomainError` outside the ranges; `InputError` for a probe outside the profile or a profile of one height.
 * @validity A probe weighs what is near its rods more, and the wall and air gaps change its reading; see its maker's drawing of the
 * sensed volume.
 * @source definition
 * @example
 * ```ts
 * const flow = containerFlowRichards1931({
 *   container: boxContainer({ length: centimetres(20), width: centimetres(20), height: centimetres(10) }),
 *   medium: vanGenuchten1980({ residual: waterContent(0.1), saturated: waterContent(0.9), alpha: perCentimetre(0.1), n: 1.7 }),
 *   saturatedConductivity: centimetresPerHour(60),
 * })
 * const rest = flow.profile(flow.startAt((height) => centimetresOfSuction(inCentimetres(height))))
 * probeReading(rest, { height: centimetres(3), sensedHeight: centimetres(4) }) // => 0.859
 * ```
 */
export function probeReading(profile: readonly ContainerLayer[], probe: ProbeInContainer): WaterContent {
  requireList(profile, 'profile')
  requireObject(probe, 'probe')
  const height = numberIn(probe.height, PROBE_HEIGHT, 'height')
  const half = numberIn(probe.sensedHeight, SENSED_HEIGHT, 'sensedHeight') / 2
  const [bottom, top] = [profile[0]?.height ?? 0, profile.at(-1)?.height ?? 0]
  const [from, to] = [Math.max(height - half, bottom), Math.min(height + half, top)]
  if (!(to > from)) throw new InputError('height', 'lies outside the profile', `place the probe below ${top} cm`)
  let sum = 0
  for (let i = 1; i < profile.length; i++) {
    const [a, b] = [profile[i - 1]!, profile[i]!]
    const [low, high] = [Math.max(a.height, from), Math.min(b.height, to)]
    if (!(high > low)) continue
    const at = (z: number) =>
      a.waterContent + ((b.waterContent - a.waterContent) * (z - a.height)) / (b.height - a.height)
    sum += ((at(low) + at(high)) / 2) * (high - low)
  }
  return (sum / (to - from)) as WaterContent
}

/** A day of a simulated container, seen at several heights. */
export interface ProbeHeights {
  /** The simulation. */
  readonly flow: RichardsFlow
  /** The state at the begin. */
  readonly start: RichardsState
  /** What happens, in order; the steps are the moments at which probes are read. */
  readonly steps: readonly (FlowStep | RichardsStep)[]
  /** Heights of the middle of the rods. Unit: cm. Range: each in [0, ∞). */
  readonly heights: readonly Length[]
  /** Height of the volume that each senses. Unit: cm. Range: (0, ∞). */
  readonly sensedHeight: Length
}

/** What probes at some heights would tell. */
export interface BestProbeHeight {
  /** One view for each height, in the order given. */
  readonly views: readonly ProbeHeightView[]
  /** The height whose readings follow the mean of the container best once their bias is known. Unit: cm. */
  readonly best: Length
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
  /** Time from the end of the first shot to the highest reading before the next. Unit: s. */
  readonly lag: Duration
}

/**
 * What probes at several heights would tell of the mean water content of a container, before and after shots, and which tells it best.
 *
 * @procedure Follows the simulation through the steps, reads `probeReading` at the end of each, and compares with the mean of the container.
 * @param request - Simulation, steps and heights.
 * @returns One view for each height, and the best of them.
 * @throws `DomainError` outside the ranges; `InputError` without heights or steps; what the simulation throws.
 * @validity As the simulation: it spreads shots over the whole surface, so that the place beside a dripper is not seen.
 * @source definition
 * @example
 * ```ts
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
 * ```
 */
export function bestProbeHeight(request: ProbeHeights): BestProbeHeight {
  requireObject(request, 'request')
  requireList(request.heights, 'heights')
  const { flow, steps, heights, sensedHeight } = request
  if (heights.length === 0 || steps.length === 0)
    throw new InputError('heights', 'or steps are missing', 'give at least one height and one step')
  let state = request.start
  const course = steps.map((during) => {
    state = flow.step(state, during as RichardsStep).state
    const profile = flow.profile(state)
    const mean = flow.waterContent(state)
    return {
      duration: during.duration,
      shot: during.applied > 0,
      mean,
      readings: heights.map((height) => probeReading(profile, { height, sensedHeight })),
    }
  })
  const views = heights.map((height, i) => viewOf(height, i, course))
  const best = views.reduce((a, b) => (b.spread < a.spread ? b : a)).height
  return { views, best }
}

type Course = readonly { duration: Duration; shot: boolean; mean: WaterContent; readings: readonly WaterContent[] }[]

function viewOf(height: Length, i: number, course: Course): ProbeHeightView {
  const offs = course.map(({ readings, mean }) => readings[i]! - mean)
  const bias = average(offs)
  const before = offs.filter((_, k) => !course[k]?.shot && (course[k + 1]?.shot ?? false))
  const after = offs.filter((_, k) => course[k]?.shot)
  return {
    height,
    bias,
    spread: Math.sqrt(average(offs.map((off) => (off - bias) ** 2))),
    biasBeforeShots: before.length > 0 ? average(before) : bias,
    biasAfterShots: after.length > 0 ? average(after) : bias,
    lag: lagOf(i, course),
  }
}

function lagOf(i: number, course: Course): Duration {
  const shot = course.findIndex((step) => step.shot)
  let [highest, lag, time] = [-Infinity, 0, 0]
  for (let k = Math.max(shot, 0); k < course.length; k++) {
    const step = course[k]!
    if (k > shot && step.shot) break
    if (k > shot) time += step.duration
    if (step.readings[i]! > highest) {
      highest = step.readings[i]!
      lag = time
    }
  }
  return lag as Duration
}

function average(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length
}
