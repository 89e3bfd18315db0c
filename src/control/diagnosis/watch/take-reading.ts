import { levelOf } from './level-of-probe.js'
import { KEPT, MIN_STEP, type ProbeWatch } from './watch-probe.js'
import type { Watched } from './watched.js'

/** Most of a shot shows in half of the time in which all of it does. */
const MOSTLY_SHOWN = 0.5

export function withReading(
  probe: ProbeWatch,
  { time: told, value }: { readonly time: number; readonly value: number | null },
  now: number,
  quietFrom: number,
  zone: Watched,
): ProbeWatch {
  // Nothing was read later than now: a clock ahead must not hold the readings back that follow.
  const time = Math.min(told, now)
  const heard = { ...probe, heard: now, count: probe.count + 1 }
  const last = probe.times[probe.times.length - 1] ?? Number.NEGATIVE_INFINITY
  const isOld = time <= last
  if (value === null || value < zone.min || value > zone.max) return isOld ? heard : withBad(heard, value, now)
  if (isOld || Math.abs(now - told) > zone.maxAge) return heard
  const flat = withFlat(returned(heard, value), value, time)
  const noisy = withNoise(flat, value, time, quietFrom, zone)
  return {
    ...noisy,
    bad: null,
    times: [...noisy.times, time].slice(-KEPT),
    levels: [...noisy.levels, value].slice(-KEPT),
  }
}

function withBad(probe: ProbeWatch, value: number | null, now: number): ProbeWatch {
  const { bad, levels } = probe
  const kind = value === null ? 'not-a-number' : 'unbelievable'
  if (bad === null || bad.kind !== kind)
    return {
      ...probe,
      bad: { kind, value, since: now, count: 1, alike: true, before: levelOf(probe) ?? levels[0] ?? null },
    }
  return { ...probe, bad: { ...bad, value, count: bad.count + 1, alike: bad.alike && bad.value === value } }
}

/** So far outside what water content can be, a number is a code for "no reading" and no spike. */
const BEYOND = 0.5

/** A reading or two beyond the band, and then the level of before: a spike that was too large for the medium. */
function returned(probe: ProbeWatch, value: number): ProbeWatch {
  const { bad } = probe
  if (bad === null || bad.count > 2 || bad.value === null || bad.before === null) return probe
  const isSpike = Math.abs(bad.value - bad.before) < BEYOND && Math.abs(value - bad.before) < MIN_STEP
  return isSpike ? { ...probe, spikes: withSpike(probe, bad.since) } : probe
}

/** Up to three readings beside each other lie off the line between their neighbours when one of them has a spike: they are one. */
function withSpike({ spikes, times }: ProbeWatch, time: number): readonly number[] {
  const last = spikes[spikes.length - 1]
  if (last !== undefined && last >= (times[times.length - 3] ?? Number.NEGATIVE_INFINITY)) return spikes
  return [...spikes, time].slice(-8)
}

/**
 * The age of the newest reading of a message: those before it waited for it. One far from the usual may be a stray, and two in a row are a new
 * usual if they go on: the mean goes there at once, and the spread tells how sure that is.
 */
export function withAge(probe: ProbeWatch, told: number): ProbeWatch {
  const age = Math.max(-86400, Math.min(86400, told))
  const off = Math.abs(age - probe.age)
  if (probe.count > 20 && off > Math.max(300, 4 * probe.ageSpread))
    return probe.isStray
      ? { ...probe, age, ageSpread: probe.ageSpread + 0.3 * (off - probe.ageSpread), isStray: false }
      : { ...probe, isStray: true }
  const share = Math.max(1 / probe.count, 0.05)
  const mean = probe.age + share * (age - probe.age)
  const ageSpread = probe.ageSpread + share * (Math.abs(age - mean) - probe.ageSpread)
  return { ...probe, age: mean, ageSpread, isStray: false }
}

function withFlat(probe: ProbeWatch, value: number, time: number): ProbeWatch {
  const last = probe.levels[probe.levels.length - 1]
  if (last === value && probe.flatSince !== null) return { ...probe, flatCount: probe.flatCount + 1 }
  const ran = probe.flatSince === null ? 0 : probe.times[probe.times.length - 1]! - probe.flatSince
  return { ...probe, flatSince: time, flatCount: 1, flatUsual: Math.max(0.98 * probe.flatUsual, ran) }
}

/**
 * Noise from how far each reading lies off the line between its neighbours. Means over thirty readings, and five hundred for the usual; spans
 * chosen on rehearsals. A shot of which most shows between two readings bends that line, and is no noise.
 */
function withNoise(probe: ProbeWatch, value: number, time: number, quietFrom: number, zone: Watched): ProbeWatch {
  const n = probe.levels.length
  if (n < 2 || (time - probe.times[n - 1]! > MOSTLY_SHOWN * zone.responseTime && probe.times[n - 2]! < quietFrom))
    return probe
  const off = Math.abs(probe.levels[n - 1]! - (probe.levels[n - 2]! + value) / 2)
  // The mean distance from zero of a normal number is 0.798 of its deviation, and this one holds 1.5 times the variance of the noise.
  const one = off / 0.798 / Math.sqrt(1.5)
  const clipped = Math.min(one, Math.max(0.01, 5 * probe.noise))
  const noise = probe.noise + (clipped - probe.noise) / 30
  const learns = noise < Math.max(0.004, 2 * probe.usualNoise)
  const usualNoise = learns ? probe.usualNoise + (noise - probe.usualNoise) / 500 : probe.usualNoise
  const spike = one > Math.max(0.04, 10 * probe.usualNoise)
  const spikes = spike ? withSpike(probe, time) : probe.spikes
  return { ...probe, noise, usualNoise, spikes }
}
