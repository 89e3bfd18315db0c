import type { ZoneDay } from './zone-day.js'

/** One thing that is different between a day and what is proposed for the next. `explainZoneFinding` puts it into words. */
export type DayDifference = { readonly level: 'note' } & (
  | {
      readonly code: 'shots'
      /** Shots. Unit: 1. */
      readonly today: number
      /** Shots. Unit: 1. */
      readonly tomorrow: number
    }
  | {
      readonly code: 'given'
      /** Water a container. Unit: L. */
      readonly today: number
      /** Water a container. Unit: L. */
      readonly tomorrow: number
    }
  | {
      readonly code: 'drain-fraction'
      /** Share that drains. Unit: 1. */
      readonly today: number
      /** Share that drains. Unit: 1. */
      readonly tomorrow: number
    }
  | {
      readonly code: 'first-shot' | 'last-shot'
      /** When it began. Unit: s. */
      readonly today: number
      /** When it begins. Unit: s. */
      readonly tomorrow: number
    }
)

interface Proposed {
  readonly shots: readonly { readonly time: number }[]
  readonly given: number
  readonly drainFraction: number
}

/** What a proposal changes, compared with what was done on the day before. What is not known of the day is left out. */
export function differencesOf(day: ZoneDay, proposed: Proposed): DayDifference[] {
  const { given, drainFraction } = day.balance
  const times = shotTimes(day)
  const [first, last] = [proposed.shots[0]?.time, proposed.shots[proposed.shots.length - 1]?.time]
  const differences: DayDifference[] = []
  if (times !== undefined && times.length !== proposed.shots.length)
    differences.push({ code: 'shots', level: 'note', today: times.length, tomorrow: proposed.shots.length })
  if (given.known && Math.abs(given.value - proposed.given) > 0.02 * given.value)
    differences.push({ code: 'given', level: 'note', today: given.value, tomorrow: proposed.given })
  if (drainFraction.known && Math.abs(drainFraction.value - proposed.drainFraction) > 0.01)
    differences.push({
      code: 'drain-fraction',
      level: 'note',
      today: drainFraction.value,
      tomorrow: proposed.drainFraction,
    })
  const moved = (code: 'first-shot' | 'last-shot', today: number | undefined, tomorrow: number | undefined) => {
    if (today === undefined || tomorrow === undefined) return
    const later = tomorrow - today - (day.to - day.from)
    if (Math.abs(later) >= 900) differences.push({ code, level: 'note', today, tomorrow })
  }
  moved('first-shot', times?.[0], first)
  moved('last-shot', times?.[times.length - 1], last)
  return differences
}

/** When shots were given: by the log, or else as the probe that saw most of them saw them. */
function shotTimes(day: ZoneDay): readonly number[] | undefined {
  if (day.openings.length > 0) return day.openings
  const seen = day.probes.filter((probe) => probe.used).map((probe) => probe.shots.map(({ start }) => start))
  const fullest = seen.reduce((a, b) => (b.length > a.length ? b : a), [])
  return seen.length > 0 ? fullest : undefined
}
