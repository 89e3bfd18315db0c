import type { Containers } from './containers.js'
import type { Effects } from './effects.js'
import type { Tally } from './tally.js'
import type { Valve } from './valve.js'
import type { Weather } from './weather.js'
import type { RehearsalZone } from './zone.js'

/** Water on its way through a zone, in L a container since the start. */
export interface ZoneWater {
  /** Through the valve; what of it nobody ordered; by hand. */
  given: number
  unordered: number
  byHand: number
  drained: number
  used: number
  /** Beside the containers: from the line and from bursts. */
  spilt: number
  /** In the line now. */
  line: number
  /** What meter and gauge count, and what flows now. Unit: L, L, L/h. */
  metered: number
  gauged: number
  flow: number
  /** Salts of a container. Unit: dS/m L. */
  salt: number
}

/** What water does between two calls of the controller. */
export interface WaterCourse {
  readonly water: ZoneWater
  /** Lets time pass while the effects stay as they are. */
  readonly pass: (from: number, until: number, effects: Effects) => void
  readonly pourByHand: (litres: number) => void
  /** Lets the containers take what is still to come in the last, shorter step. */
  readonly finish: (time: number, effects: Effects) => void
}

/** Salts that plants take up with the water, as a share of those in the feed: invented. */
const UPTAKE = 0.6

export function waterCourse(
  zone: RehearsalZone,
  containers: Containers,
  valve: Valve,
  weather: Weather,
  tally: Tally,
): WaterCourse {
  const perSecond = zone.flow / 3600
  const lineVolume = perSecond * zone.lineFill
  const { weights, drippers } = containers
  const places = weights.length
  const step = zone.medium.step
  const applied = new Float64Array(places)
  const water: ZoneWater = {
    given: 0,
    unordered: 0,
    byHand: 0,
    drained: 0,
    used: 0,
    spilt: 0,
    line: 0,
    metered: 0,
    gauged: 0,
    flow: 0,
    salt: zone.feedEC * zone.waterContent * zone.medium.substrateVolume,
  }
  let stepStart = 0

  /** Lets the valve pass water for a time in which nothing changes. */
  const give = (duration: number, open: boolean, wanted: boolean, effects: Effects) => {
    const share = valve.mainOpen() && effects.power ? effects.supply * (open ? 1 : effects.weep) : 0
    let through = 0
    let burst = 0
    if (share > 0) {
      burst = open ? effects.burst * perSecond * duration : 0
      const fills =
        open && water.line < lineVolume ? Math.min(lineVolume - water.line, perSecond * share * duration) : 0
      const left = 1 - fills / (perSecond * share * duration)
      water.line += fills
      through += fills
      for (let i = 0; i < places; i++) {
        const clogged = effects.drippers[i < zone.probes ? i : effects.drippers.length - 1]!
        const comes = perSecond * share * duration * left * drippers[i]! * clogged
        applied[i]! += comes
        through += weights[i]! * comes
      }
    }
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

  const drink = (until: number, effects: Effects) => {
    const duration = until - stepStart
    if (!(duration > 0)) return
    let came = 0
    for (let i = 0; i < places; i++) came += weights[i]! * applied[i]!
    const use = weather.use(stepStart) * effects.use * duration
    const { drained, used } = containers.step(applied, use, duration, effects)
    applied.fill(0)
    water.drained += drained
    water.used += used
    water.gauged += drained * effects.gauge
    const waterContent = containers.mean()
    const held = waterContent * zone.medium.substrateVolume
    water.salt += zone.feedEC * (came * effects.feed - UPTAKE * used)
    water.salt = Math.max(0, water.salt * (1 - drained / (held + drained)))
    tally.level(waterContent, duration)
    stepStart = until
  }

  return {
    water,
    finish: drink,
    pourByHand: (litres) => {
      water.byHand += litres
      for (let i = 0; i < places; i++) applied[i]! += litres
    },
    pass: (from, until, effects) => {
      let time = from
      while (time < until) {
        valve.settle(effects, time)
        const open = valve.isOpen(effects)
        const wanted = valve.isWanted(time)
        let end = Math.min(until, stepStart + step)
        const next = valve.next()
        if (next > time && next < end) end = next
        const volume = give(end - time, open, wanted, effects)
        tally.valve(time, end, wanted && open, volume, effects.locked)
        time = end
        if (time >= stepStart + step) drink(time, effects)
      }
    },
  }
}
