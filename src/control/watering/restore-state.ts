import { isMoment } from '../moment.js'
import { STEPS } from './delivery/pulses.js'
import { PURSE, TALLY_HOURS } from './delivery/tally.js'
import { EXCUSED, MAX_PAUSE } from './delivery/unknown-time.js'
import { LATCHED_CODES, type LatchedCode } from './findings/latched-codes.js'
import { MAX_PROBATION } from './probes/probes.js'
import type { Limits } from './settings/checked-settings.js'
import { SLOTS } from './state/given-water.js'
import type {
  WateringClock,
  WateringCounters,
  WateringDelivery,
  WateringFill,
  WateringOrigin,
  WateringProbe,
  WateringPulses,
  WateringState,
  WateringTally,
  WateringValve,
  WateringZone,
} from './state/state.js'

type Loose<T> = { readonly [K in keyof T]?: unknown }

/**
 * Whether a state that came from outside is one that a decision may go on from: every field there, of its type, and possible together.
 * One field that is not makes the whole a lost state.
 */
export function isSound(state: unknown, limits: Limits): state is WateringState {
  if (!isObject<WateringState>(state)) return false
  const { made, clock, valve, water, spare, tally, probes, zone, fill, counters, override } = state
  if (!isOf(made, limits.name) || made.settings !== limits.fingerprint) return false
  if (!isObject<WateringClock>(clock) || !clockSound(clock)) return false
  const elapsed = clock.elapsed as number
  return (
    isObject<WateringValve>(valve) &&
    valveSound(valve, elapsed, limits) &&
    isObject<WateringState['water']>(water) &&
    water.slot === Math.floor(elapsed / 900) &&
    isVolumes(water.litres) &&
    roomSound(water) &&
    (spare === water || (isVolumesOfDay(spare) && isSame(spare, water as WateringState['water']))) &&
    isObject<WateringTally>(tally) &&
    tallySound(tally) &&
    Array.isArray(probes) &&
    probes.length === limits.probes.length &&
    each(probes, (probe) => isObject<WateringProbe>(probe) && probeSound(probe, elapsed)) &&
    isObject<WateringZone>(zone) &&
    zoneSound(zone, elapsed) &&
    isObject<WateringFill>(fill) &&
    fillSound(fill, elapsed, limits.probes.length) &&
    isObject<WateringCounters>(counters) &&
    countersSound(counters) &&
    overrideSound(override, elapsed)
  )
}

/**
 * A fresh state that still knows the water of the last 24 hours, where one of its two copies in a damaged state is whole. Of two that differ
 * nobody knows which is older: the larger volume of each quarter counts.
 */
export function salvaged(state: unknown, fresh: WateringState): WateringState {
  // The water of another zone says nothing of this one.
  if (!isObject<WateringState>(state) || !isOf(state.made, fresh.made.zone)) return fresh
  const copies = [state.water, state.spare].filter(isVolumesOfDay).sort((a, b) => b.slot - a.slot)
  const [newest, other] = copies
  if (newest === undefined) return fresh
  const whole = other === undefined ? newest : fuller(newest, other)
  // It begins a day after its start: what was given in that day is known. What a probe is like is not.
  const slot = SLOTS - 1
  const litres = fresh.water.litres.map((_, i) => whole.litres[(whole.slot + i - slot + SLOTS) % SLOTS]!)
  // How old it is nobody knows: room for water begins at nothing, as after a state that is lost.
  const water = { slot, litres, paced: slot, room: 0, taken: 0 }
  const day = 900 * slot
  return {
    ...fresh,
    clock: { ...fresh.clock, elapsed: day, agreed: day, ...paceOf(state.clock) },
    valve: { ...fresh.valve, closed: day },
    zone: { ...fresh.zone, lastWet: day },
    fill: { ...fresh.fill, tried: day },
    probes: fresh.probes.map((probe) => ({ ...probe, quiet: day })),
    water,
    spare: water,
  }
}

function isOf(made: unknown, zone: string): made is Loose<WateringOrigin> {
  return isObject<WateringOrigin>(made) && made.zone === zone
}

/** Two copies as one. One that is more than a day behind is not of the same time: it counts as if it were. */
function fuller(newest: WateringState['water'], other: WateringState['water']): WateringState['water'] {
  const behind = newest.slot - other.slot < SLOTS ? newest.slot : other.slot
  const litres = newest.litres.map((_, i) => {
    const back = (newest.slot - i + SLOTS) % SLOTS
    const at = behind - back
    return Math.max(newest.litres[i]!, at > other.slot ? 0 : other.litres[(at + SLOTS) % SLOTS]!)
  })
  return { ...newest, litres }
}

/** The pace of decisions, where that part is whole: a clock that gives nonsense just now must not teach another. */
function paceOf(clock: unknown): Partial<WateringClock> {
  if (!isObject<WateringClock>(clock) || !clockSound(clock)) return {}
  return { pace: clock.pace as number, paces: clock.paces as number }
}

function isVolumesOfDay(water: unknown): water is WateringState['water'] {
  return (
    isObject<WateringState['water']>(water) && isCount(water.slot, AGES) && isVolumes(water.litres) && roomSound(water)
  )
}

function isSame(a: WateringState['water'], b: WateringState['water']): boolean {
  for (let i = 0; i < SLOTS; i++) if (a.litres[i] !== b.litres[i]) return false
  return a.slot === b.slot && a.paced === b.paced && a.room === b.room && a.taken === b.taken
}

function isObject<T>(value: unknown): value is Loose<T> {
  return typeof value === 'object' && value !== null
}
function inRange(value: unknown, min: number, max: number): boolean {
  return typeof value === 'number' && value >= min && value <= max
}
function isCount(value: unknown, max: number): boolean {
  return inRange(value, 0, max) && Number.isInteger(value)
}
function nullOr(value: unknown, min: number, max: number): boolean {
  return value === null || inRange(value, min, max)
}

/** Every entry, also one that was deleted: `every` passes over holes. */
function each(list: readonly unknown[], isGood: (entry: unknown) => boolean): boolean {
  for (let i = 0; i < list.length; i++) if (!isGood(list[i])) return false
  return true
}

const AGES = 1e12

function clockSound(clock: Loose<WateringClock>): boolean {
  return (
    (clock.raw === null || isMoment(clock.raw)) &&
    nullOr(clock.base, -AGES, AGES) &&
    (clock.raw === null) === (clock.base === null) &&
    inRange(clock.elapsed, 0, AGES) &&
    inRange(clock.pace, 0, AGES) &&
    isCount(clock.paces, 32) &&
    isCount(clock.steady, 100) &&
    isCount(clock.stalls, 100) &&
    isCount(clock.same, AGES) &&
    isCount(clock.usual, 3600) &&
    inRange(clock.lent, 0, AGES) &&
    inRange(clock.owed, 0, AGES) &&
    inRange(clock.longer, 0, AGES) &&
    isCount(clock.longs, 8) &&
    inRange(clock.uneven, 1, AGES) &&
    isCount(clock.unproven, EXCUSED) &&
    isCount(clock.bad, 20) &&
    inRange(clock.doubt, 0, AGES) &&
    inRange(clock.agreed, 0, clock.elapsed as number) &&
    (clock.sent === null || isMoment(clock.sent)) &&
    inRange(clock.sentAt, 0, clock.elapsed as number) &&
    isCount(clock.vouched, 10) &&
    nullOr(clock.refused, -AGES, AGES) &&
    inRange(clock.byCount, -AGES, AGES) &&
    inRange(clock.byClock, -AGES, AGES)
  )
}

function valveSound(valve: Loose<WateringValve>, elapsed: number, limits: Limits): boolean {
  return (
    nullOr(valve.opened, 0, elapsed) &&
    inRange(valve.duration, 0, limits.maxRun) &&
    // An opening whose start is gone would begin again.
    (valve.opened !== null || valve.duration === 0) &&
    inRange(valve.counted, 0, AGES) &&
    (valve.reason === 'dry' ||
      valve.reason === 'refill' ||
      valve.reason === 'back-up-shot' ||
      valve.reason === 'override-water') &&
    // A valve that closes by itself is known to close a little later, and after missing decisions the rest begins later.
    inRange(valve.closed, 0, elapsed + Math.max(limits.maxRun, MAX_PAUSE)) &&
    isCount(valve.openings, Number.MAX_SAFE_INTEGER)
  )
}

function isVolumes(litres: unknown): boolean {
  if (!Array.isArray(litres) || litres.length !== SLOTS) return false
  for (let i = 0; i < SLOTS; i++) if (!inRange(litres[i], 0, AGES)) return false
  return true
}

function roomSound({ slot, paced, room, taken }: Loose<WateringState['water']>): boolean {
  return isCount(paced, slot as number) && inRange(room, -AGES, AGES) && inRange(taken, 0, AGES)
}

function tallySound({ at, pace, decisions, purse, drank, due, litres }: Loose<WateringTally>): boolean {
  return (
    inRange(at, 0, AGES) &&
    inRange(pace, 0, AGES) &&
    isCount(decisions, 4096) &&
    inRange(purse, 0, PURSE) &&
    inRange(drank, -AGES, AGES) &&
    inRange(due, 0, AGES) &&
    Array.isArray(litres) &&
    litres.length === TALLY_HOURS &&
    each(litres, (volume) => inRange(volume, 0, AGES))
  )
}

function probeSound(probe: Loose<WateringProbe>, elapsed: number): boolean {
  const { values, times } = probe
  return (
    (probe.time === null || isMoment(probe.time)) &&
    inRange(probe.measured, -AGES, elapsed) &&
    Array.isArray(values) &&
    Array.isArray(times) &&
    values.length <= 3 &&
    values.length === times.length &&
    each(values, (value) => inRange(value, 0, 1)) &&
    each(times, (time) => inRange(time, -AGES, elapsed)) &&
    inRange(probe.changed, -AGES, elapsed) &&
    inRange(probe.quiet, 0, AGES) &&
    isCount(probe.probation, MAX_PROBATION) &&
    nullOr(probe.anchor, -1, 2) &&
    inRange(probe.anchorAt, -AGES, elapsed) &&
    inRange(probe.fall, 0, 1) &&
    nullOr(probe.before, -1, 2) &&
    inRange(probe.beforeAt, -AGES, elapsed) &&
    nullOr(probe.peak, -1, 2) &&
    isCount(probe.misses, 48) &&
    nullOr(probe.fellFrom, -1, 2) &&
    typeof probe.latched === 'boolean'
  )
}

function zoneSound(zone: Loose<WateringZone>, elapsed: number): boolean {
  return (
    typeof zone.dry === 'boolean' &&
    inRange(zone.best, -1, 2) &&
    inRange(zone.spell, -AGES, AGES) &&
    inRange(zone.lastWet, -AGES, elapsed) &&
    inRange(zone.use, 0, AGES) &&
    inRange(zone.given, 0, AGES) &&
    nullOr(zone.level, -1, 2) &&
    nullOr(zone.told, -1, 2) &&
    inRange(zone.behind, 0, AGES) &&
    typeof zone.disputed === 'boolean' &&
    (zone.verdict === 'plausible' || zone.verdict === 'use-too-small' || zone.verdict === 'use-too-large')
  )
}

function fillSound(fill: Loose<WateringFill>, elapsed: number, probes: number): boolean {
  const { before, atFull, bias, drift, apart } = fill
  return (
    nullOr(fill.full, 0, elapsed) &&
    inRange(fill.tried, 0, elapsed) &&
    nullOr(fill.under, 0, AGES) &&
    inRange(fill.max, -AGES, AGES) &&
    isCount(fill.fails, 9) &&
    typeof fill.cut === 'boolean' &&
    inRange(fill.net, -AGES, AGES) &&
    inRange(fill.due, 0, AGES) &&
    inRange(fill.owed, -AGES, AGES) &&
    inRange(fill.passing, 0, 1) &&
    inRange(fill.lately, 0, 1) &&
    inRange(fill.excess, 0, AGES) &&
    inRange(fill.overflow, 0, AGES) &&
    Array.isArray(before) &&
    before.length === probes &&
    each(before, (level) => nullOr(level, -1, 2)) &&
    Array.isArray(atFull) &&
    atFull.length === probes &&
    each(atFull, (level) => nullOr(level, -1, 2)) &&
    nullOr(fill.levelAtFull, -2, 2) &&
    Array.isArray(bias) &&
    bias.length === probes &&
    each(bias, (change) => inRange(change, -1, 1)) &&
    Array.isArray(drift) &&
    drift.length === probes &&
    each(drift, (change) => inRange(change, 0, 1)) &&
    Array.isArray(apart) &&
    apart.length === probes &&
    each(apart, (change) => inRange(change, -1, 1)) &&
    nullOr(fill.foretold, -AGES, AGES) &&
    inRange(fill.slip, -1, 1) &&
    inRange(fill.usual, 0, 1)
  )
}

function countersSound(counters: Loose<WateringCounters>): boolean {
  return (
    nullOr(counters.metered, 0, AGES) &&
    nullOr(counters.drained, 0, AGES) &&
    inRange(counters.meteredSince, 0, AGES) &&
    inRange(counters.drainedSince, 0, AGES) &&
    inRange(counters.leaked, 0, AGES) &&
    inRange(counters.ordered, 0, AGES) &&
    nullOr(counters.shown, -AGES, AGES) &&
    isObject<WateringDelivery>(counters.delivery) &&
    deliverySound(counters.delivery) &&
    isObject<WateringPulses>(counters.pulses) &&
    pulsesSound(counters.pulses) &&
    isCount(counters.drains, 48) &&
    Array.isArray(counters.latched) &&
    counters.latched.length <= LATCHED_CODES.length &&
    each(counters.latched, (code) => LATCHED_CODES.includes(code as LatchedCode))
  )
}

function pulsesSound({ step, unmetered, silent, ordered, metered }: Loose<WateringPulses>): boolean {
  return (
    (step === null || step === 0 || STEPS.includes(step as (typeof STEPS)[number])) &&
    inRange(unmetered, 0, AGES) &&
    inRange(silent, 0, AGES) &&
    inRange(ordered, 0, AGES) &&
    inRange(metered, 0, AGES)
  )
}

function deliverySound({
  metered,
  shots,
  shown,
  seen,
  beyond,
  rose,
  usual,
  agreed,
  partial,
}: Loose<WateringDelivery>): boolean {
  return (
    inRange(metered, 0, 10) &&
    isCount(shots, 8) &&
    inRange(shown, 0, 10) &&
    isCount(seen, 8) &&
    inRange(beyond, -10, 17) &&
    inRange(rose, 0, 10) &&
    inRange(usual, 0.6, 1.2) &&
    typeof partial === 'boolean' &&
    isCount(agreed, 8)
  )
}

function overrideSound(override: unknown, elapsed: number): boolean {
  if (override === null) return true
  return (
    isObject<NonNullable<WateringState['override']>>(override) &&
    (override.action === 'close' || override.action === 'water') &&
    isMoment(override.until) &&
    inRange(override.ends, 0, elapsed + 86400)
  )
}
