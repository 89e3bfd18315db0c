import type { ProbeWatch } from '../watch/watch-probe.js'
import type { ShotEvidence } from './judge-shot.js'

/** Two probes of which each rises as the other did: places differ in what they get and show of a shot, and keep their difference. */
export interface SwappedRises {
  readonly first: number
  readonly second: number
  /** Mean rise of each as a share of its own usual one. Unit: 1. */
  readonly rises: readonly [number, number]
  readonly since: number
}

/** Shots of a day that make a mean, and of which a usual rise is known: chosen on rehearsals. */
const SHOTS = 12
const KNOWN = 16
/** So many standard errors the two must have come apart, and each half of the way. Chosen on rehearsals. */
const CLEAR = 5
const EACH = 0.5
/** Of places that rise so much alike, chance tells what it likes. Unit: 1. */
const MIN_EXPECTED = 0.1

/** So far below its highest level a place overflows of no shot: most of one of the rehearsals. Unit: m³/m³. */
const ROOM = 0.015

function hasRoom({ levels }: ShotEvidence, probe: number, top: number): boolean {
  return (levels[probe] ?? top) <= top - ROOM
}

export function swappedRises(shots: readonly ShotEvidence[], probes: readonly ProbeWatch[]): SwappedRises | null {
  for (let first = 0; first < probes.length; first++)
    for (let second = first + 1; second < probes.length; second++) {
      const found = swappedPair(shots, probes, first, second)
      if (found !== null) return found
    }
  return null
}

function swappedPair(
  shots: readonly ShotEvidence[],
  probes: readonly ProbeWatch[],
  first: number,
  second: number,
): SwappedRises | null {
  const [one, other] = [probes[first]!, probes[second]!]
  const top = (probe: number) => shots.reduce((max, { levels }) => Math.max(max, levels[probe] ?? 0), 0)
  if (Math.min(one.rises, other.rises) < KNOWN || !(one.usualRise > 0) || !(other.usualRise > 0)) return null
  const seen = shots
    .filter(({ rises }) => rises[first] != null && rises[second] != null)
    .filter((shot) => hasRoom(shot, first, top(first)) && hasRoom(shot, second, top(second)))
    .slice(-SHOTS)
  if (seen.length < SHOTS || shots[shots.length - 1]!.time - seen[0]!.time > 86400) return null
  const mean = (of: (shot: ShotEvidence) => number) => seen.reduce((sum, shot) => sum + of(shot) / SHOTS, 0)
  const rises = [mean((shot) => shot.rises[first]!), mean((shot) => shot.rises[second]!)] as const
  const ratio = one.usualRise / other.usualRise
  const [expected, apart] = [1 / ratio - ratio, rises[0] - rises[1]]
  const error = mean((shot) => shot.error) * Math.sqrt(2 / SHOTS)
  if (
    Math.abs(expected) < MIN_EXPECTED ||
    Math.abs(apart) < CLEAR * error ||
    apart / expected < 0.5 ||
    apart / expected > 1.6
  )
    return null
  const went = Math.min((rises[0] - 1) / (1 / ratio - 1), (rises[1] - 1) / (ratio - 1))
  return went < EACH ? null : { first, second, rises, since: seen[0]!.time }
}
