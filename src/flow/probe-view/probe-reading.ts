import { InputError } from '../../quantity/errors.js'
import type { Length, WaterContent } from '../../quantity/generated/kinds.js'
import { numberIn, optionOr, requireObject, requireRows } from '../../quantity/guard.js'
import { oneOf } from '../../quantity/one-of.js'
import { PROBE_HEIGHT, SENSED_HEIGHT } from '../domains.js'
import type { ContainerLayer } from '../richards-terms.js'

/** Where a probe sits in a container: the span of heights that it senses. */
export interface ProbeInContainer {
  /** Height of the middle of its rods above the bottom. Unit: cm. Range: [0, ∞). */
  readonly height: Length
  /** Height of the volume that it senses; the length of rods that stand upright, and some centimetres for rods that lie. Unit: cm. Range: (0, ∞). */
  readonly sensedHeight: Length
  /** How its rods stand: upright, so that each height counts alike (the default), or lying, so that the middle of a round section counts most. */
  readonly rods?: 'upright' | 'lying'
}

/**
 * Water content that a probe would read in a profile: the mean over the volume it senses.
 *
 * What reaches beyond bottom or surface is cut off.
 *
 * @equation `\theta_p = \frac{\int w\,\theta\,d\zeta}{\int w\,d\zeta}, \quad
 * w = 1 \text{ (upright)}, \quad w = \sqrt{(d/2)^2 - (\zeta - z)^2} \text{ (lying)}, \quad |\zeta - z| \le d/2`
 * @param profile - The profile, from the bottom up, as `profile` of a simulation gives it.
 * @returns Water content. Unit: m³/m³.
 * @throws `DomainError` outside the ranges; `InputError` for a probe outside the profile or a profile of one height.
 * @validity A probe weighs what is near its rods more, and the wall and air gaps change its reading; see its maker's drawing of the
 * sensed volume.
 * @source definition
 * @example
 * const flow = containerFlowRichards1931({
 *   container: boxContainer({ length: centimetres(20), width: centimetres(20), height: centimetres(10) }),
 *   medium: vanGenuchten1980({ residual: waterContent(0.1), saturated: waterContent(0.9), alpha: perCentimetre(0.1), n: 1.7 }),
 *   saturatedConductivity: centimetresPerHour(60),
 * })
 * const rest = flow.profile(flow.startAt((height) => centimetresOfSuction(inCentimetres(height))))
 * probeReading(rest, { height: centimetres(3), sensedHeight: centimetres(4) }) // => 0.859
 */
export function probeReading(profile: readonly ContainerLayer[], probe: ProbeInContainer): WaterContent {
  requireRows(profile, 'profile')
  const { height, half, rods } = placeOf(probe)
  const weights = rods === 'lying' ? roundSection(half) : EVEN
  const [bottom, top] = [profile[0]?.height ?? 0, profile.at(-1)?.height ?? 0]
  const [from, to] = [Math.max(height - half, bottom), Math.min(height + half, top)]
  if (!(to > from)) throw new InputError('height', 'lies outside the profile', `place the probe below ${top} cm`)
  let [sum, whole] = [0, 0]
  for (let i = 1; i < profile.length; i++) {
    const [a, b] = [profile[i - 1]!, profile[i]!]
    const [low, high] = [Math.max(a.height, from), Math.min(b.height, to)]
    if (!(high > low)) continue
    const slope = (b.waterContent - a.waterContent) / (b.height - a.height)
    const atMiddle = a.waterContent + slope * (height - a.height)
    const [size, moment] = [0, 1].map((k) => weights(high - height)[k]! - weights(low - height)[k]!) as [number, number]
    sum += atMiddle * size + slope * moment
    whole += size
  }
  return (sum / whole) as WaterContent
}

/** Where a probe sits, checked. */
export function placeOf(probe: ProbeInContainer) {
  requireObject(probe, 'probe')
  return {
    height: numberIn(probe.height, PROBE_HEIGHT, 'height'),
    half: numberIn(probe.sensedHeight, SENSED_HEIGHT, 'sensedHeight') / 2,
    rods: oneOf(optionOr(probe.rods, 'upright'), ['upright', 'lying'], 'rods'),
  }
}

/** Integrals of the weight, and of the weight times the distance from the middle, up to a distance from it. */
type Weights = (u: number) => readonly [size: number, moment: number]

const EVEN: Weights = (u) => [u, (u * u) / 2]

/** Chords of a circle. */
function roundSection(radius: number): Weights {
  return (u) => {
    const chord = Math.sqrt(Math.max(radius * radius - u * u, 0))
    const angle = Math.asin(Math.min(Math.max(u / radius, -1), 1))
    return [(u * chord + radius * radius * angle) / 2, -(chord ** 3) / 3]
  }
}
