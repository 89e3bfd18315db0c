import type { ProbeWatch } from './watch-probe.js'

/** Whether a probe repeats itself for longer than its noise allows; times chosen on rehearsals. */
export function isFrozen({ flatSince, flatCount, flatUsual, times, usualNoise }: ProbeWatch): boolean {
  if (flatSince === null || flatCount < 10) return false
  const ran = times[times.length - 1]! - flatSince
  // A probe that shows its noise is never the same ten times in a row; a coarse one may be, for hours of a night.
  return ran >= (usualNoise >= 5e-4 ? 900 : Math.max(14400, 3 * flatUsual))
}

/** Whether it scatters far more than it did. */
export function isNoisy(probe: ProbeWatch): boolean {
  return scatters(probe) || newSpikes(probe) > 1
}

/** Whether most of its readings scatter, not a few of them: three times as much as usual, and more than half a percent. Chosen on rehearsals. */
export function scatters({ noise, usualNoise }: ProbeWatch): boolean {
  return noise > 0.006 && noise > 3 * usualNoise
}

/** Spikes of the last two hours; a single one may be anything, a second comes from the probe. */
export function newSpikes({ spikes, times }: ProbeWatch): number {
  const now = times[times.length - 1] ?? 0
  return spikes.filter((time) => now - time < 7200).length
}
