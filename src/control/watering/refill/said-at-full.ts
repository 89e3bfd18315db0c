import type { ProbeView } from '../probes/probes.js'
import type { ZoneLevel } from '../probes/zone-level.js'
import type { Limits } from '../settings/checked-settings.js'
import type { WateringFill } from '../state/state.js'

/** Containers differ by no more than this where nothing is wrong: as `PARTS` of each parts two of them in three days. Own judgement. Unit: m³/m³. */
const MAX_APART = 0.06

/**
 * What each probe says beyond its bias while the zone is full, within what containers that drink and drip a little differently come to: it
 * is known, and no dispute.
 */
export function apartAtFull(
  views: readonly ProbeView[],
  atFull: readonly (number | null)[],
  bias: readonly number[],
): readonly number[] {
  const mean = meanAtFull(atFull)
  // Where none of them was full itself they part to both sides of what they say together.
  const max = mean === null ? MAX_APART / 2 : MAX_APART
  const like = mean ?? togetherAtFull(views, bias)
  return views.map(({ seen }, i) => {
    // A container that was never full itself is taken for one like the others.
    const full = atFull[i] ?? like
    return seen === null || full === null ? 0 : Math.max(-max, Math.min(max, seen - full - bias[i]!))
  })
}

/** What the believed probes say in the mean without their bias; null where none is believed. Unit: m³/m³. */
export function togetherAtFull(views: readonly ProbeView[], bias: readonly number[]): number | null {
  let [sum, told] = [0, 0]
  for (let i = 0; i < views.length; i++) {
    const { level } = views[i]!
    if (level === null) continue
    sum += level - bias[i]!
    told++
  }
  return told === 0 ? null : sum / told
}

/**
 * What probes say of a full zone: those that stood in one, or else what all said when the zone as a whole was full, though their own containers had
 * room. Null where nothing is known. Unit: m³/m³.
 */
export function knownAtFull({ atFull, levelAtFull }: WateringFill): number | null {
  return meanAtFull(atFull) ?? levelAtFull
}

/** What the probes said of a full zone in the mean; null where none has stood in one. Unit: m³/m³. */
function meanAtFull(atFull: readonly (number | null)[]): number | null {
  const known = atFull.filter((told) => told !== null)
  return known.length === 0 ? null : known.reduce((sum, told) => sum + told, 0) / known.length
}

/** What a zone will have taken beyond use once it is full, by its probes now; null where it is not known what they say of a full one. Unit: L. */
export function foretoldFor({ atFull, net, due, full }: WateringFill, level: ZoneLevel, limits: Limits): number | null {
  const mean = meanAtFull(atFull)
  if (full === null || level.level === null || mean === null) return null
  return net - due + (mean - level.level) * limits.substrate
}
