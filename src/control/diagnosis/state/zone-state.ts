import type { CauseCode } from '../cause/cause.js'
import type { ShotEvidence } from '../shots/judge-shot.js'
import type { FullLevels } from '../watch/full-levels.js'
import { type BalanceWatch, newBalance } from '../watch/watch-balance.js'
import { type ClockWatch, newClock } from '../watch/watch-clock.js'
import { newSteady, type SteadyWatch } from '../watch/watch-feed.js'
import { type GaugeWatch, newGauge } from '../watch/watch-gauge.js'
import { type NightEvidence, type NightWatch, newNight } from '../watch/watch-night.js'
import { newPairs, type PairWatch } from '../watch/watch-pairs.js'
import { newProbe, type ProbeWatch } from '../watch/watch-probe.js'
import { newTiming, type TimingWatch } from '../watch/watch-timing.js'
import { newValve, type ValveWatch } from '../watch/watch-valve.js'

/** What is remembered of a zone; plain data of at most about 28 kB of JSON with two probes. */
export interface ZoneWatchState {
  readonly clock: ClockWatch
  readonly probes: readonly ProbeWatch[]
  readonly valve: ValveWatch
  readonly balance: BalanceWatch
  readonly timing: TimingWatch
  /** The newest shots. */
  readonly shots: readonly ShotEvidence[]
  readonly usual: UsualShares
  readonly night: NightWatch
  readonly nights: readonly NightEvidence[]
  /** What the probes said when the zone was full. */
  readonly fulls: readonly FullLevels[]
  readonly gauge: GaugeWatch
  readonly pairs: PairWatch
  readonly feed: SteadyWatch
  /** EC of the newest drain, if any. Unit: dS/m. */
  readonly drainEC: number | null
  /** Light now, if it is measured. Unit: W/m². */
  readonly light: number | null
  readonly hasTemperature: boolean
  /** Causes that are told, with the time since when. */
  readonly standing: readonly { readonly code: CauseCode; readonly since: number }[]
}

/** Shares of the water of a shot when all is well, learnt from shots that rose as usual. */
export interface UsualShares {
  readonly metered: number
  readonly meteredShots: number
  readonly drained: number
  readonly drainedShots: number
  /** Level at which that drained. Unit: m³/m³. */
  readonly drainedAt: number
}

const newUsual: UsualShares = { metered: 0, meteredShots: 0, drained: 0, drainedShots: 0, drainedAt: 0 }

export function newZoneState(probes: number): ZoneWatchState {
  return {
    clock: newClock,
    probes: Array.from({ length: probes }, () => newProbe),
    valve: newValve,
    balance: newBalance,
    timing: newTiming(probes),
    shots: [],
    usual: newUsual,
    night: newNight(probes),
    nights: [],
    fulls: [],
    gauge: newGauge,
    pairs: newPairs(probes),
    feed: newSteady,
    drainEC: null,
    light: null,
    hasTemperature: false,
    standing: [],
  }
}
