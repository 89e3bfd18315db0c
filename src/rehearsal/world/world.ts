import type { Observation, RehearsalTruth, ValveOrder } from '../controllers/rehearsed-controller.js'
import type { Effects } from '../faults/effects.js'
import { changesOf, effectsAt } from '../faults/effects-at.js'
import { type Tally, tallyOf } from '../outcome/tally.js'
import type { ZoneWater } from '../scenario/zone-water.js'
import { streamSeed } from '../stream-seed.js'
import { blindnessOf } from './blindness.js'
import { containersOf } from './containers.js'
import { controllerClock } from './controller-clock.js'
import { messagesOf } from './messages.js'
import type { CheckedRehearsal } from './rehearsal.js'
import { type Sender, senderOf } from './sender.js'
import { probesOf } from './sense.js'
import { valveOf } from './valve.js'
import { waterCourse } from './water-course.js'
import { weatherOf } from './weather.js'

/** The simulated zone as the loop of a rehearsal sees it. */
export interface World extends Pick<Sender, 'shown'> {
  readonly tally: Tally
  readonly water: ZoneWater
  readonly truth: RehearsalTruth
  readonly waterContents: Float64Array
  readonly mean: () => number
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
  const sender = senderOf(zone, probes, messages)
  const isBlind = blindnessOf(limits, zone.probes)
  const truth: RehearsalTruth = { waterContent: zone.waterContent, time: 0, hour: 0, given: 0 }
  const before = containers.held()
  let effects = effectsAt(faults, zone.probes, 0)
  let change = changes.findIndex((time) => time > 0)
  let time = 0
  let calls = 0

  const poreEC = () => water.salt / Math.max(1e-6, containers.mean() * zone.medium.substrateVolume)
  /** What the instruments of the zone show, where it has them. */
  const instruments = () => {
    const contact = effects.feedback === 'works' ? valve.isOpen(effects) : effects.feedback === 'open'
    return {
      metered: zone.has.flowMeter ? water.metered : null,
      meteredFlow: zone.has.flowMeter ? water.flow : null,
      drained: zone.has.drainGauge ? water.gauged : null,
      valveOpen: zone.has.valveContact ? contact : null,
    }
  }
  return {
    tally,
    water,
    truth,
    waterContents: containers.waterContents,
    mean: containers.mean,
    shown: sender.shown,
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
      const drainEC = poreEC()
      const rootTemperature = weather.temperature(time)
      sender.send(effects, time, now, drainEC - zone.feedEC, rootTemperature)
      const readings = messages.arrived(time)
      tally.known.blind = isBlind(readings, now)
      tally.known.hour = Number.isFinite(now) ? hourOf((now - start) / 3600) : truth.hour
      return {
        now,
        readings,
        ...instruments(),
        override: effects.override,
        locked: effects.locked,
        acknowledged,
        restarted,
        light: BRIGHT * weather.light(time) * effects.light,
        rootTemperature,
        feedEC: zone.feedEC * effects.feed,
        drainEC,
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
