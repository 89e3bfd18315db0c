import { SUBSTRATE } from '../../quantity/domains.js'
import type { Flow } from '../../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../../quantity/guard.js'
import type { ProbedVolume } from '../terms.js'
import type { KnownLine } from './dry-down.js'

/** A dry-down and the medium in which it was seen. */
export interface WaterUseInput extends ProbedVolume, KnownLine {}

/** Water that left the medium in an hour, or why that is not known. */
export type WaterUse =
  | {
      readonly known: true
      /** Water in an hour. Unit: L/h. */
      readonly use: Flow
      /** Standard error of it, from the scatter about the line alone. Unit: L/h. */
      readonly error: Flow
    }
  | { readonly known: false; readonly reason: 'not-falling' | 'few-readings' | 'within-noise' }

/**
 * Water that left the medium in an hour of a dry-down: taken up by plants and evaporated, and drained if drain had not stopped. It tells of
 * the hours of that dry-down; for the coming hour use `waterUseAhead`, whose bands were measured to hold.
 *
 * @equation `Q = -b \, V_s`
 * @param input - Line, made by `fitDryDown`, and volume of medium.
 * @returns Use with its standard error, or that nothing left that noise could not have made.
 * @validity The probe must stand for the whole medium; a weighed container tells whether it does.
 * @source definition: water balance of the container without irrigation; a slope within two standard errors of zero is not believed: common practice, no source
 * @example
 * const line = fitDryDown({ time: [0, 3600, 7200, 10800], waterContent: [0.6, 0.592, 0.584, 0.576] })
 * waterUseOfDryDown({ line, substrateVolume: litres(10) }) // => { known: true, use: 0.08 }
 */
export function waterUseOfDryDown(input: WaterUseInput): WaterUse {
  requireObject(input, 'input')
  const { line, substrateVolume } = input
  const volume = numberIn(substrateVolume, SUBSTRATE, 'substrateVolume')
  if (!(line.slopePerHour < 0)) return { known: false, reason: 'not-falling' }
  if (line.readings < 3) return { known: false, reason: 'few-readings' }
  if (-line.slopePerHour < 2 * line.slopeError) return { known: false, reason: 'within-noise' }
  return { known: true, use: (-line.slopePerHour * volume) as Flow, error: (line.slopeError * volume) as Flow }
}
