import { middle, spread } from '../../middle.js'
import { cameBetween, fallByWater, isFarApart, type WaterOfLate } from './leap-by-water.js'
import { MIN_STEP, type ProbeWatch } from './watch-probe.js'
import type { Watched } from './watched.js'

/** Beside a shot: since when the probes are quiet, what water a shot can bring, and the water of late, which few readings ask for. Unit: s, m³/m³/s. */
export interface Beside {
  readonly quietFrom: number
  readonly maxRate: number
  readonly water: () => WaterOfLate
}

/**
 * Looks for a jump between the last five readings and the five before. Beside a shot only a leap from one reading to the next counts that
 * no water can make: a fall by more than is drunk and drains, and a rise by twice of what the valve passes in that time, or less once it is
 * known how its place rises.
 */
export function withStep(read: ProbeWatch, beside: Beside, zone: Watched): ProbeWatch {
  const probe = withReturn(read)
  const { times, levels } = probe
  const n = levels.length
  if (n < 10) return probe
  const leap = levels[n - 5]! - levels[n - 6]!
  const passed = times[n - 5]! - times[n - 6]!
  if (Math.abs(leap) < MIN_STEP / 2 || passed > 5 * zone.maxAge) return probe
  const [old, young] = [levels.slice(n - 10, n - 5), levels.slice(n - 5)]
  const [before, after] = [middle(old), middle(young)]
  const change = Math.abs(after - before)
  const jump = leap * Math.sign(after - before)
  const scatter = Math.max(spread(old), spread(young))
  const quiet = times[n - 10]! >= beside.quietFrom
  const water = beside.water()
  const came = cameBetween(water, times[n - 6]!, times[n - 5]!, zone)
  const minSize =
    leap < 0
      ? Math.max(MIN_STEP, fallByWater(levels[n - 6]!, passed, came, water, zone))
      : quiet
        ? MIN_STEP
        : minJump(probe, after, beside, came, passed, zone)
  if (change < Math.max(minSize, 6 * scatter) || jump < (quiet ? change / 2 : Math.max(minSize, change / 2)))
    return probe
  const time = times[n - 5]!
  return {
    ...probe,
    step: { time, before, after },
    low: after,
    lowTime: times[n - 1]!,
    climb: climbBefore(probe, time),
  }
}

/** Rises after which it is known how a place rises. */
export const KNOWN_RISES = 4

/**
 * The least rise that no water makes: half more than all that came lately, or that the valve passes between the two readings. A probe that only
 * comes back to where it was half an hour ago rises by less for other reasons.
 */
function minJump(
  { levels, rises, usualRise, usualNoise }: ProbeWatch,
  after: number,
  { maxRate }: Beside,
  came: number,
  passed: number,
  zone: Watched,
): number {
  const water = Math.min(came, maxRate * passed)
  const isBack = levels.slice(0, -10).some((level) => level > after - MIN_STEP / 2)
  // The valve may have run all the time between two readings that are near each other, but not between any others.
  if (rises < KNOWN_RISES || isBack) return MIN_STEP + 2 * (isFarApart(passed, zone) ? water : maxRate * passed)
  return Math.max(1.5 * MIN_STEP, 5 * usualNoise + 1.5 * Math.max(1, usualRise) * water)
}

/** Times and shares chosen on rehearsals. Within two hours a probe may leap back to where it was: then it did not move for good. */
function withReturn(probe: ProbeWatch): ProbeWatch {
  const { times, levels, step } = probe
  const n = levels.length
  if (step === null || n < 4 || times[n - 3]! - step.time > 7200 || times[n - 3]! <= step.time) return probe
  const share = (levels[n - 4]! - levels[n - 3]!) / (step.after - step.before)
  // A shot between them makes one leap look smaller than the other.
  if (share < 0.6 || share > 2) return probe
  const [low, lowTime] = [middle(levels.slice(-3)), times[n - 1]!]
  return { ...probe, step: null, low, lowTime, climb: climbBefore(probe, times[n - 3]!) }
}

/** What leapt did not climb. */
function climbBefore({ climb }: ProbeWatch, time: number): ProbeWatch['climb'] {
  return climb !== null && climb.time >= time ? null : climb
}
