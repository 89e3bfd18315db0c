import type { ProbeView } from '../probes/probes.js'
import type { WateringFill } from '../state/state.js'

/** Which probes stand higher than before the last shot by more than a volume of water makes: their containers have room. */
export function liftedBy(
  litres: number,
  { before }: WateringFill,
  views: readonly ProbeView[],
  substrate: number,
): boolean[] {
  return views.map(({ seen }, i) => seen !== null && seen - (before[i] ?? seen) > litres / substrate)
}
