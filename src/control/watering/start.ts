import type { Limits } from './checked-settings.js'
import { SLOTS } from './given-water.js'
import type { WateringProbe, WateringState } from './state.js'
import { freshTally } from './tally.js'

/** The state before the first decision: nothing is known, every pause begins, and no probe has proved itself. */
export function startState(limits: Limits): WateringState {
  const water = { slot: 0, litres: new Array<number>(SLOTS).fill(0), paced: 0, room: 0 }
  return {
    made: { zone: limits.name, settings: limits.fingerprint },
    clock: {
      raw: null,
      elapsed: 0,
      base: null,
      pace: 0,
      paces: 0,
      steady: 0,
      stalls: 0,
      same: 0,
      usual: 0,
      lent: 0,
      bad: 0,
      doubt: 0,
      agreed: 0,
      sent: null,
      sentAt: 0,
      vouched: 0,
      refused: null,
      byCount: 0,
      byClock: 0,
    },
    valve: { opened: null, lasts: 0, counted: 0, why: 'dry', closed: 0, openings: 0 },
    water,
    spare: water,
    tally: freshTally(),
    probes: limits.probes.map(freshProbe),
    zone: {
      dry: false,
      best: 0,
      spell: 0,
      lastWet: 0,
      use: 0,
      given: 0,
      level: null,
      told: null,
      disputed: false,
      verdict: 'plausible',
    },
    fill: {
      full: null,
      tried: 0,
      under: null,
      most: 0,
      fails: 0,
      cut: false,
      net: 0,
      due: 0,
      passing: 0.1,
      lately: 0.1,
      excess: 0,
      before: limits.probes.map(() => null),
      atFull: limits.probes.map(() => null),
      levelAtFull: null,
      bias: limits.probes.map(() => 0),
      drift: limits.probes.map(() => 0),
      apart: limits.probes.map(() => 0),
      foretold: null,
      slip: 0,
    },
    counters: {
      metered: null,
      drained: null,
      meteredSince: 0,
      drainedSince: 0,
      leaked: 0,
      ordered: 0,
      shown: null,
      delivery: { metered: 1, shots: 0, shown: 1, seen: 0, usual: 1, agreed: 0, partial: false },
      drains: 0,
      latched: [],
    },
    override: null,
  }
}

function freshProbe(): WateringProbe {
  return {
    time: null,
    measured: 0,
    values: [],
    times: [],
    changed: 0,
    quiet: 0,
    probation: 0,
    anchor: null,
    anchorAt: 0,
    fall: 0,
    before: null,
    beforeAt: 0,
    misses: 0,
    fellFrom: null,
    latched: false,
  }
}
