import type { WaterContent, WaterContentChange } from '../../quantity/generated/kinds.js'
import { numberIn, requireObject, requireRows } from '../../quantity/guard.js'
import { alignedSeries } from '../aligned-series.js'
import { DRAIN_TIME, MAX_STEP } from '../domains.js'
import type { FollowedStep, WaterContentSeries } from '../terms.js'
import type { DrainedShots } from './watch-shots.js'

/** A series with its shots. */
export interface SettledLevelsInput extends FollowedStep, DrainedShots, WaterContentSeries {}

/** What became of a shot after its peak, or why that does not show. */
export type SettledLevel =
  | {
      readonly known: true
      /** Water content after drain. Unit: m³/m³. */
      readonly level: WaterContent
      /** By how much it fell from the peak. Unit: m³/m³. */
      readonly drainBack: WaterContentChange
      /** By how much it stands above the reading before the shot. Unit: m³/m³. */
      readonly retained: WaterContentChange
    }
  | { readonly known: false; readonly reason: 'gap' | 'record-ends' | 'next-shot' }

/**
 * For each shot, the water content after drain, how much fell back and how much was kept, as the probe sees it.
 *
 * @procedure Takes the first good reading at or after the peak and the time to drain, unless the next shot or a break comes first.
 * @returns One result for each shot, in their order.
 * @throws `DomainError` outside the ranges, `InputError` for lists of different lengths.
 * @validity The probe sees its surroundings: water that runs past it shows neither as rise nor as drain.
 * @source common practice, no source
 * @example
 * const series = { time: [0, 300, 600, 900, 1200], waterContent: [0.5, 0.52, 0.53, 0.524, 0.521] }
 * const shots = findShots({ ...series, minRise: waterContentChange(0.01), maxRiseTime: minutes(30), maxStep: minutes(8) })
 * findSettledLevels({ ...series, shots, drainTime: minutes(10), maxStep: minutes(8) }) // => [{ known: true, drainBack: 0.009, retained: 0.021 }]
 */
export function findSettledLevels(input: SettledLevelsInput): SettledLevel[] {
  requireObject(input, 'input')
  const { shots, ...limits } = input
  const wait = numberIn(limits.drainTime, DRAIN_TIME, 'drainTime')
  const step = numberIn(limits.maxStep, MAX_STEP, 'maxStep')
  const [time, waterContent] = alignedSeries(input.time, input.waterContent, 'waterContent')
  requireRows(shots, 'shots')
  return shots.map((shot, k) => {
    const next = shots[k + 1]?.startIndex ?? Infinity
    let before = shot.peak
    for (let i = shot.peakIndex + 1; i < time.length; i++) {
      const x = waterContent[i]!
      const now = time[i]!
      if (Number.isNaN(x)) continue
      if (!(now > before) || now - before > step) return { known: false, reason: 'gap' }
      // The foot of the next shot is the last reading of this one.
      if (i > next) break
      before = now
      if (now >= shot.peak + wait)
        return {
          known: true,
          level: x as WaterContent,
          drainBack: (shot.top - x) as WaterContentChange,
          retained: (x - shot.before) as WaterContentChange,
        }
    }
    return { known: false, reason: next === Infinity ? 'record-ends' : 'next-shot' }
  })
}
