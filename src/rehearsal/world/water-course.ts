import type { Effects } from '../faults/effects.js'
import type { Tally } from '../outcome/tally.js'
import type { RehearsalZone } from '../scenario/zone.js'
import type { ZoneWater } from '../scenario/zone-water.js'
import type { Containers } from './containers.js'
import { supplyOf } from './supply.js'
import type { Valve } from './valve.js'
import type { Weather } from './weather.js'

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
  const { weights } = containers
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
  const supply = supplyOf(zone, containers, valve, water, applied)
  let stepStart = 0

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
        const volume = supply(end - time, open, wanted, effects)
        tally.valve(time, end, wanted && open, volume, effects.locked)
        time = end
        if (time >= stepStart + step) drink(time, effects)
      }
    },
  }
}
