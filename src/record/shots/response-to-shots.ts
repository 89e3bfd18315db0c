import { medianInPlace } from '../../numerics/select.js'
import { SUBSTRATE } from '../../quantity/domains.js'
import { InputError } from '../../quantity/errors.js'
import type { Share, Volume, WaterContentChange } from '../../quantity/generated/kinds.js'
import { numberIn, requireObject, requireRows } from '../../quantity/guard.js'
import { SHOT_RISE, WATER_RETAINED } from '../domains.js'
import type { RecordFinding } from '../record-finding.js'

/** Shots of which rise and water kept are known. */
export interface ResponseInput {
  /** The shots. */
  readonly shots: readonly ShotResponse[]
  /** Volume of medium that a shot waters. Unit: L. Range: (0, ∞). */
  readonly substrateVolume: Volume
}

/** What a probe saw of a shot, and what the container kept of it. */
export interface ShotResponse {
  /** Rise of the water content, after drain. Unit: m³/m³. Range: [-1, 1]. */
  readonly rise: WaterContentChange
  /** Water applied less water drained. Unit: L. Range: (0, ∞). */
  readonly retained: Volume
}

/** How much of the water a probe sees. */
export interface ResponseToShots {
  /** Median over the shots of rise times volume of medium, by the water kept; 1 where the probe stands for the whole. Unit: 1. */
  readonly share: Share
  /** Shots on which it rests. Unit: 1. */
  readonly shots: number
  readonly findings: readonly RecordFinding[]
}

/**
 * How much of the water that a container keeps shows at its probe. A probe with air at its pins, or above the wet part, sees little; one
 * under the dripper sees too much.
 *
 * @equation `r = \mathrm{median}\; \frac{\Delta\theta \, V_s}{V_{retained}}`
 * @returns The share, with a finding below one half and above three halves.
 * @throws `DomainError` outside the ranges, `InputError` when there is no shot.
 * @validity With at least three shots; it cannot tell an air gap from a wrong volume of medium or an uneven spread of water: weigh the container.
 * @source definition: water balance of the container; the limits of one half and three halves: common practice, no source
 * @example
 * const shots = [0.011, 0.012, 0.013].map((rise) => ({ rise: waterContentChange(rise), retained: litres(0.42) }))
 * const seen = responseToShots({ shots, substrateVolume: litres(12) })
 * seen // => { share: 0.343, shots: 3 }
 * seen.findings.map((finding) => finding.code) // => ['probe-sees-little']
 */
export function responseToShots(input: ResponseInput): ResponseToShots {
  requireObject(input, 'input')
  const { shots, substrateVolume } = input
  requireRows(shots, 'shots')
  const volume = numberIn(substrateVolume, SUBSTRATE, 'substrateVolume')
  const shares = Float64Array.from(
    shots,
    ({ rise, retained }) =>
      (numberIn(rise, SHOT_RISE, 'rise') * volume) / numberIn(retained, WATER_RETAINED, 'retained'),
  )
  const count = shots.length
  if (count === 0) throw new InputError('shots', 'are none', 'give some')
  const share = medianInPlace(shares)
  const findings: RecordFinding[] = []
  if (share < 0.5) findings.push({ code: 'probe-sees-little', level: 'caution', share })
  if (share > 1.5) findings.push({ code: 'probe-sees-much', level: 'caution', share })
  if (count < 3) findings.push({ code: 'few-shots', level: 'note', shots: count })
  return { share: share as Share, shots: count, findings }
}
