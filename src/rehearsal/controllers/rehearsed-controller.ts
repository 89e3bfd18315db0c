import type { Reducer } from '../../quantity/reducer.js'
import type { FaultSign } from '../faults/fault-signs.js'

/** A reading as it arrives. What it holds is whatever was sent: a number that can be believed, or not. */
export interface ReceivedReading {
  /** The probe, counted from zero. Unit: 1. */
  readonly probe: number
  /** What it says; a water content in m³/m³ when all is well. */
  readonly value: unknown
  /** When it was taken, by the clock of the sender. Unit: s. */
  readonly time: number
}

/** What a controller can know at the moment at which it is called. Volumes and flows are those of one container. */
export interface Observation {
  /** Now, by its own clock. Unit: s. */
  readonly now: number
  /** Readings that came in since the last call, in the order of their arrival. */
  readonly readings: readonly ReceivedReading[]
  /** Water that passed the meter since the start; null without a meter. Unit: L. */
  readonly metered: number | null
  /** Flow at the meter; null without a meter. Unit: L/h. */
  readonly meteredFlow: number | null
  /** Drain that the gauge counted since the start; null without a gauge. Unit: L. */
  readonly drained: number | null
  /** What the contact at the valve says; null without a contact. */
  readonly valveOpen: boolean | null
  /** What somebody ordered by hand, which goes before what the controller wants. */
  readonly override: 'open' | 'closed' | null
  /** Whether somebody works at the zone. */
  readonly locked: boolean
  /** Whether somebody has just acknowledged what was reported. */
  readonly acknowledged: boolean
  /** Whether this is the first call after a restart from a stored state. */
  readonly restarted: boolean
  /** Light from outside. Unit: W/m². */
  readonly light: number
  /** Temperature in the medium. Unit: °C. */
  readonly rootTemperature: number
  /** EC of the feed and of the newest drain. Unit: dS/m at 25 °C. */
  readonly feedEC: number
  readonly drainEC: number
}

/** What is true. Only for controllers that stand for perfect knowledge; the object is used again at each call. */
export interface RehearsalTruth {
  /** Mean water content of the zone. Unit: m³/m³. */
  waterContent: number
  /** Seconds since the start. Unit: s. */
  time: number
  /** Hour of the day. Unit: h. */
  hour: number
  /** Water through the valve so far, but for what nobody ordered. Unit: L a container. */
  given: number
}

/** What a controller wants, in the words of a valve. */
export interface ValveOrder {
  /** Whether the valve should be open; anything but true is closed. */
  readonly open: boolean
  /** After which time it should close by itself. Without it the valve stays open until it is told otherwise. Unit: s. */
  readonly closeAfter?: number
  /** False closes the main valve, where there is one. */
  readonly mainOpen?: boolean
  /** Alarms that stand, by the controller's own names, the likeliest first. */
  readonly alarms?: readonly string[]
}

/** Any logic that waters, with the two small functions that join it to the simulated zone. */
export interface RehearsedController<State, Input, Output> {
  /** The logic: a state and what a step makes of it. */
  readonly reducer: Reducer<State, Input, Output>
  /** What the logic is fed, from what can be known. */
  readonly input: (observed: Observation, truth: RehearsalTruth) => Input
  /** What the logic wants, in the words of a valve. */
  readonly order: (output: Output) => ValveOrder
  /** A state from what was stored as JSON; left out, it is taken as it is. What it refuses by throwing, starts anew. */
  readonly restore?: (stored: unknown) => State
  /** Its own alarms that name a fault rightly. Without it every alarm while a fault lasts counts as right. */
  readonly alarmsFor?: Readonly<Partial<Record<FaultSign, readonly string[]>>>
}
