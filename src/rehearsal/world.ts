import { containersOf } from './containers.js'
import { controllerClock } from './controller-clock.js'
import type { Effects } from './effects.js'
import { changesOf, effectsAt } from './effects-at.js'
import { messagesOf } from './messages.js'
import type { CheckedRehearsal } from './rehearsal.js'
import type { Observation, ReceivedReading, RehearsalTruth, ValveOrder } from './rehearsed-controller.js'
import { probesOf } from './sense.js'
import { streamSeed } from './stream-seed.js'
import { type Tally, tallyOf } from './tally.js'
import { valveOf } from './valve.js'
import { weatherOf } from './weather.js'
import { waterCourse, type ZoneWater } from './zone-water.js'

/** The simulated zone as the loop of a rehearsal sees it. */
export interface World {
  readonly tally: Tally
  readonly water: ZoneWater
  readonly truth: RehearsalTruth
  readonly waterContents: Float64Array
  readonly mean: () => number
  /** Newest number of each probe; NaN where it sent no number. */
  readonly shown: Float64Array
  readonly effects: () => Effects
  readonly observe: (restarted: boolean, acknowledged: boolean) => Observation
  readonly order: (order: ValveOrder) => void
  readonly pourByHand: (litres: number) => void
  readonly pass: (until: number) => void
  /** Lets the containers take what came in the last, shorter step. */
  readonly finish: () => void
  /** Water that was lost or made since the start. Unit: L. */
  readonly imbalance: () => number
  /** Whether the controller wants the valve open and it is. */
  readonly wanted: () => boolean
}

/** Light from outside at its brightest: invented. Unit: W/m². */
const BRIGHT = 800

export function worldOf({ zone, limits, faults, seed, days, start }: CheckedRehearsal): World {
  const containers = containersOf(zone, streamSeed(seed, 1))
  const weather = weatherOf(zone, days, streamSeed(seed, 2))
  const probes = probesOf(zone, streamSeed(seed, 3))
  const messages = messagesOf(streamSeed(seed, 4))
  const valve = valveOf(streamSeed(seed, 5), zone.has.mainValve)
  const tally = tallyOf(limits)
  const course = waterCourse(zone, containers, valve, weather, tally)
  const { water } = course
  const changes = changesOf(faults)
  const salts = zone.feedEC
  const newest = new Float64Array(zone.probes).fill(Number.NaN)
  const stamps = new Float64Array(zone.probes).fill(Number.NaN)
  const shown = new Float64Array(zone.probes).fill(Number.NaN)
  const truth: RehearsalTruth = { waterContent: zone.waterContent, time: 0, hour: 0, given: 0 }
  const before = containers.held()
  let effects = effectsAt(faults, zone.probes, 0)
  let change = changes.findIndex((time) => time > 0)
  let time = 0
  let calls = 0
  let nextReading = 0

  const poreEC = () => water.salt / Math.max(1e-6, containers.mean() * zone.medium.substrateVolume)
  const sendReadings = (now: number, pore: number, warm: number) => {
    if (time < nextReading || !effects.power) return
    nextReading = (Math.floor(time / zone.readingsEvery) + 1) * zone.readingsEvery
    const salt = pore - salts
    for (let probe = 0; probe < zone.probes; probe++) {
      const value = probes.send(probe, effects, time, salt, warm)
      shown[probe] = typeof value === 'number' ? value : Number.NaN
      if (value === undefined) continue
      messages.send({ probe, value, time: now + effects.senderAhead }, effects, time)
    }
  }
  /** Notes what a controller that believes nothing impossible could know now. */
  const note = (readings: readonly ReceivedReading[], now: number) => {
    for (const { probe, value, time } of readings) {
      if (typeof value !== 'number' || !(value >= limits.believedFrom && value <= limits.believedTo)) continue
      if (time >= stamps[probe]! || Number.isNaN(stamps[probe]!)) {
        newest[probe] = value
        stamps[probe] = time
      }
    }
    let blind = true
    for (const stamp of stamps) if (now - stamp <= limits.maxAge && now - stamp >= -limits.maxAge) blind = false
    tally.known.blind = blind
    tally.known.hour = Number.isFinite(now) ? hourOf((now - start) / 3600) : truth.hour
  }
  return {
    tally,
    water,
    truth,
    waterContents: containers.waterContents,
    mean: containers.mean,
    shown,
    effects: () => effects,
    wanted: () => valve.isWanted(time) && valve.isOpen(effects),
    order: (order) => valve.give(order, effects, time),
    pourByHand: course.pourByHand,
    imbalance: () =>
      containers.held() + water.drained + water.used + water.spilt + water.line - before - water.given - water.byHand,
    observe: (restarted, acknowledged) => {
      const now = controllerClock(effects, start, time, calls)
      calls++
      truth.waterContent = containers.mean()
      truth.given = water.given - water.unordered
      truth.time = time
      truth.hour = (time / 3600) % 24
      const pore = poreEC()
      const warm = weather.temperature(time)
      sendReadings(now, pore, warm)
      const readings = messages.arrived(time)
      note(readings, now)
      const contact = effects.feedback === 'works' ? valve.isOpen(effects) : effects.feedback === 'open'
      return {
        now,
        readings,
        metered: zone.has.flowMeter ? water.metered : null,
        meteredFlow: zone.has.flowMeter ? water.flow : null,
        drained: zone.has.drainGauge ? water.gauged : null,
        valveOpen: zone.has.valveContact ? contact : null,
        override: effects.override,
        locked: effects.locked,
        acknowledged,
        restarted,
        light: BRIGHT * weather.light(time) * effects.light,
        rootTemperature: warm,
        feedEC: salts * effects.feed,
        drainEC: pore,
      }
    },
    finish: () => course.finish(time, effects),
    pass: (until) => {
      while (time < until) {
        const end = Math.min(until, changes[change]!)
        const from = time
        course.pass(from, end, effects)
        probes.follow(containers.waterContents, end - from)
        time = end
        if (time >= changes[change]!) {
          change++
          effects = effectsAt(faults, zone.probes, time)
        }
      }
    },
  }
}

/** The hour of the day of any count of hours, before the start too. */
function hourOf(hours: number): number {
  return hours - 24 * Math.floor(hours / 24)
}
