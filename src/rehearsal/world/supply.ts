import type { Effects } from '../faults/effects.js'
import type { RehearsalZone } from '../scenario/zone.js'
import type { ZoneWater } from '../scenario/zone-water.js'
import type { Containers } from './containers.js'
import type { Valve } from './valve.js'

/**
 * Lets the valve pass water, through the line and the drippers to `applied`, for a time in which nothing changes. Gives what passed. Unit: L a
 * container.
 */
export type Supply = (duration: number, open: boolean, wanted: boolean, effects: Effects) => number

export function supplyOf(
  zone: RehearsalZone,
  { weights, drippers }: Containers,
  valve: Valve,
  water: ZoneWater,
  applied: Float64Array,
): Supply {
  const perSecond = zone.flow / 3600
  const lineVolume = perSecond * zone.lineFill
  /** What gets through, of the flow at a share of its pressure. */
  const pass = (duration: number, open: boolean, share: number, effects: Effects): number => {
    const fills = open && water.line < lineVolume ? Math.min(lineVolume - water.line, perSecond * share * duration) : 0
    const left = 1 - fills / (perSecond * share * duration)
    water.line += fills
    let through = fills
    for (let i = 0; i < weights.length; i++) {
      const clogged = effects.drippers[i < zone.probes ? i : effects.drippers.length - 1]!
      const comes = perSecond * share * duration * left * drippers[i]! * clogged
      applied[i]! += comes
      through += weights[i]! * comes
    }
    return through
  }
  return (duration, open, wanted, effects) => {
    const share = valve.mainOpen() && effects.power ? effects.supply * (open ? 1 : effects.weep) : 0
    const through = share > 0 ? pass(duration, open, share, effects) : 0
    const burst = share > 0 && open ? effects.burst * perSecond * duration : 0
    if (!open && water.line > 0) {
      water.spilt += water.line
      water.line = 0
    }
    water.spilt += burst
    water.given += through + burst
    if (!wanted) water.unordered += through + burst
    water.metered += (through + burst) * effects.meter
    water.flow = ((through + burst) * effects.meter * 3600) / duration
    return through + burst
  }
}
