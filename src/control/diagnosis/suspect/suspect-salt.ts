import { maxOf, minOf } from '../../../quantity/extremes.js'
import { type Trend, trendOf } from '../../../record/compare/trend.js'
import type { Suspicion } from '../cause/cause.js'
import type { RememberedZone } from '../state/settings.js'
import type { ZoneWatchState } from '../state/zone-state.js'
import type { NightEvidence } from '../watch/watch-night.js'
import { evidence, suspicion } from './suspicion.js'

const DAY = 86400
/** Nights after days on which the zone drained so much, more than runs past a coarse medium; and how many make a trend. Chosen on rehearsals. Unit: 1. */
const DRAINED = 0.2
/** A zone that drained stands so near its full level in the evening, at one probe at least. Chosen on rehearsals. Unit: m³/m³. */
const NEAR = 0.035
const FULL_NIGHTS = 4
/** Smaller slopes of the level are none: over days, and over the EC of the drain. Chosen on rehearsals. Unit: m³/m³/d, m³/m³ per dS/m. */
const PER_DAY = 0.002
const PER_SALT = 0.004
/** The EC of the drain must have changed by so much. Chosen on rehearsals. Unit: dS/m. */
const SALTIER = 0.3
/** Slope from day to day that is drift without salt: chosen on rehearsals. Unit: m³/m³/d. */
const FAR = 0.005

interface Going {
  readonly name: string
  readonly trend: Trend
}

/**
 * The level to which shots drain back goes with the EC of the drain: salt. It climbs or falls from day to day: drift, and without salt only where
 * that goes far, since a level also moves with how full the containers are.
 */
export function suspectSalt({ nights }: ZoneWatchState, now: number, zone: RememberedZone): Suspicion[] {
  const { names } = zone
  const last = nights[nights.length - 1]
  const full = nights.filter((night) => isFullNight(night, zone))
  if (last === undefined || now - last.end > DAY || full.length < FULL_NIGHTS) return []
  const days = full.map(({ start }) => start / DAY)
  const salts = full.map(({ drainEC }) => drainEC ?? Number.NaN)
  const since = full[0]!.start
  const salty = isSaltier(salts)
    ? going(names, full, salts).filter(({ trend }) => trend.slope > beyond(trend, PER_SALT))
    : []
  const drifting = going(names, full, days).filter(
    ({ trend }) => trend.error < 0.0015 && Math.abs(trend.slope) > beyond(trend, PER_DAY),
  )
  const isFar = drifting.some(({ trend }) => Math.abs(trend.slope) > Math.max(FAR, 8 * trend.error))
  const drift = drifting.length > 0 && (isFar || salty.length > 0) ? [drifts(drifting, salty.length > 0, since)] : []
  return salty.length === 0 ? drift : [followsSalt(salty, since), ...drift]
}

/** Whether the zone drained, and so far as the probes say can have. */
function isFullNight({ drained, plateaus }: NightEvidence, { full }: RememberedZone): boolean {
  return drained !== null && drained > DRAINED && plateaus.some((level) => level !== null && level > full - NEAR)
}

function isSaltier(salts: readonly number[]): boolean {
  const told = salts.filter((one) => !Number.isNaN(one))
  return told.length >= FULL_NIGHTS && maxOf(told) - minOf(told) > SALTIER
}

/** How the level of each probe goes with something; probes of which too few nights are known are left out. */
function going(names: readonly string[], nights: readonly NightEvidence[], over: readonly number[]): Going[] {
  return names
    .map((name, i) => ({
      name,
      trend: trendOf(
        over,
        nights.map(({ plateaus }) => plateaus[i] ?? Number.NaN),
      ),
    }))
    .filter(({ trend }) => trend.count >= FULL_NIGHTS)
}

/** Four points make an error that is small by chance more often than five do. */
function beyond({ error, count }: Trend, min: number): number {
  return Math.max(min, (count > FULL_NIGHTS ? 4 : 6) * error)
}

function followsSalt(salty: readonly Going[], since: number): Suspicion {
  const because = salty.map(({ name, trend }) =>
    evidence('plateau-per-drain-ec', trend.slope, 'm³/m³ per dS/m', { usual: 0, about: name, time: since }),
  )
  return suspicion('salt-driven', 'caution', 0.85, because, 'flush-and-read-again', namesOf(salty))
}

function drifts(drifting: readonly Going[], isSalty: boolean, since: number): Suspicion {
  const because = drifting.map(({ name, trend }) =>
    evidence('plateau-per-day', trend.slope, 'm³/m³/d', { usual: 0, about: name, time: since }),
  )
  return suspicion(
    'probe-drifting',
    'caution',
    isSalty ? 0.6 : 0.8,
    because,
    'compare-with-hand-meter',
    namesOf(drifting),
  )
}

function namesOf(going: readonly Going[]): string[] {
  return going.map(({ name }) => name)
}
