import type { Duration, Volume } from '../../quantity/generated/kinds.js'
import { type CheckedLimits, isAllowedHour } from '../scenario/rehearsal-limits.js'
import type { Passage } from './worst-window.js'

/** One opening that the controller wanted. */
export interface Opening extends Passage {
  /** When it began, from the start of the rehearsal. Unit: s. */
  readonly from: Duration
  /** When it ended. Unit: s. */
  readonly until: Duration
  /** Water that passed. Unit: L. */
  readonly volume: Volume
  /** Whether there was no reading that could be believed when it began. */
  readonly blind: boolean
  /** Whether it began outside the allowed hours, by the true clock and by the controller's own. */
  readonly outside: boolean
  readonly outsideByOwnClock: boolean
  /** Whether somebody had locked the zone, or ordered closed, while it lasted. */
  readonly locked: boolean
}

/** Counts what a rehearsal is judged by. */
export interface Tally {
  /** A span in which the valve did one thing. */
  readonly valve: (from: number, until: number, wanted: boolean, volume: number, locked: boolean) => void
  /** A span at one mean water content. */
  readonly level: (waterContent: number, duration: number) => void
  /** What the controller can know at its next decisions. */
  readonly known: { blind: boolean; hour: number }
  readonly openings: readonly Opening[]
  /** All water that passed the valve, wanted or not. */
  readonly passages: readonly Passage[]
  readonly stress: () => number
  readonly full: () => number
  readonly driest: () => number
  readonly wettest: () => number
}

type Open = { -readonly [K in keyof Opening]: Opening[K] }

export function tallyOf(limits: CheckedLimits): Tally {
  const openings: Open[] = []
  const passages: { from: number; until: number; volume: number }[] = []
  const known = { blind: true, hour: 0 }
  let stress = 0
  let full = 0
  let driest = Number.POSITIVE_INFINITY
  let wettest = Number.NEGATIVE_INFINITY

  const opening = (from: number, until: number, volume: number, locked: boolean) => {
    const last = openings[openings.length - 1]
    if (last !== undefined && last.until === from) {
      last.until = until as Duration
      last.volume = (last.volume + volume) as Volume
      last.locked ||= locked
      return
    }
    openings.push({
      from: from as Duration,
      until: until as Duration,
      volume: volume as Volume,
      blind: known.blind,
      outside: !isAllowedHour(limits.allowedHours, (from / 3600) % 24),
      outsideByOwnClock: !isAllowedHour(limits.allowedHours, known.hour),
      locked,
    })
  }
  return {
    known,
    openings,
    passages,
    stress: () => stress,
    full: () => full,
    driest: () => driest,
    wettest: () => wettest,
    valve: (from, until, wanted, volume, locked) => {
      if (wanted) opening(from, until, volume, locked)
      if (volume <= 0) return
      const last = passages[passages.length - 1]
      // Even rates only: a weeping valve must not be spread over the shot that follows it.
      const rate = volume / (until - from)
      if (last !== undefined && last.until === from && isRate(last, rate)) {
        last.until = until
        last.volume += volume
      } else passages.push({ from, until, volume })
    },
    level: (waterContent, duration) => {
      if (waterContent < limits.stressBelow) stress += duration
      if (waterContent > limits.fullAbove) full += duration
      if (waterContent < driest) driest = waterContent
      if (waterContent > wettest) wettest = waterContent
    },
  }
}

function isRate({ from, until, volume }: Passage, rate: number): boolean {
  return Math.abs(volume / (until - from) - rate) <= 1e-9 * rate
}
