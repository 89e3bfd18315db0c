import { middle } from '../../middle.js'
import type { Watched } from '../watch/watched.js'
import type { ShotEvidence } from './judge-shot.js'
import { volumeOf } from './shares-of-shots.js'
import { together } from './waterings.js'

/** Waterings of the last 24 hours beside those before. */
export interface DayBesideBefore {
  readonly since: number
  /** Waterings of the day. */
  readonly count: number
  /** Middle of the shares that drained, of the day and before. Unit: 1. */
  readonly drained: number
  readonly drainedBefore: number
  /** Mean rise of the probes, as a share of the usual, of the day and before, and its standard error. Unit: 1. */
  readonly rise: number
  readonly riseBefore: number
  readonly error: number
  /** The driest waterings of the day: how much more drained than before, and how many times as much. Unit: 1. */
  readonly dryMore: number
  readonly dryTimes: number
  /** How many times as much as before three of four waterings drained at least, and at most. Unit: 1. */
  readonly minTimes: number
  readonly maxTimes: number
}

/** Waterings before the day, and within it, that make a comparison. Chosen on rehearsals. */
const EARLIER = 4
const OF_DAY = 4
/** A watering drains so many steps of the gauge at least: else it is a matter of chance how many are counted of it. Chosen. */
const STEPS = 4
/** Levels that differ by less are as wet: a mean of places errs by as much. Chosen. Unit: m³/m³. */
const AS_WET = 0.005
/** Water that overflows does so in the wettest waterings; what runs past a dry medium, or is counted wrongly, drains of the driest too. */
const DRIEST = 3

interface Watering {
  readonly shots: readonly ShotEvidence[]
  readonly time: number
  readonly drained: number
  /** Levels before the first shot and before the last. Unit: m³/m³. */
  readonly level: number
  readonly lastLevel: number
  readonly rise: number | null
}

/** A watering of the day, and what drained of earlier ones like it. */
interface Compared extends Watering {
  readonly usual: number
}

export function dayBesideBefore(
  shots: readonly ShotEvidence[],
  since: number,
  step: number,
  zone: Watched,
): DayBesideBefore | null {
  const told = wateringsOf(shots, zone)
  const before = told.filter(({ time }) => time < since)
  const day = told.flatMap((one) => (one.time < since ? [] : compared(one, before)))
  const rises = day.flatMap(({ rise }) => (rise === null ? [] : [rise]))
  const risesBefore = before.flatMap(({ rise }) => (rise === null ? [] : [rise]))
  if (rises.length < OF_DAY || risesBefore.length < EARLIER) return null
  const drainedBefore = middle(day.map(({ usual }) => usual))
  const volume = middle(day.map((one) => volumeOf(one.shots)))
  if (STEPS * step > drainedBefore * volume) return null
  const timesBefore = ({ drained, usual }: Compared) => drained / Math.max(1e-3, usual)
  const times = day.map(timesBefore).sort((a, b) => a - b)
  const driest = [...day].sort((a, b) => a.level - b.level).slice(0, DRIEST)
  return {
    since,
    count: day.length,
    drained: middle(day.map(({ drained }) => drained)),
    drainedBefore,
    rise: rises.reduce((sum, one) => sum + one / rises.length, 0),
    riseBefore: risesBefore.reduce((sum, one) => sum + one / risesBefore.length, 0),
    error: errorOf(day),
    dryMore: middle(driest.map(({ drained, usual }) => drained - usual)),
    dryTimes: middle(driest.map(timesBefore)),
    minTimes: times[Math.floor(times.length / 4)]!,
    maxTimes: times[Math.ceil((3 * times.length) / 4) - 1]!,
  }
}

/** Beside those before that ended as wet or wetter: where these are too few it may overflow, and nothing is said of it. */
function compared(one: Watering, before: readonly Watering[]): Compared[] {
  const alike = before.filter(({ lastLevel }) => lastLevel >= one.lastLevel - AS_WET)
  return alike.length < EARLIER ? [] : [{ ...one, usual: middle(alike.map(({ drained }) => drained)) }]
}

/** Standard error of the mean rise by the noise of the readings. */
function errorOf(day: readonly Watering[]): number {
  const counted = day.filter(({ rise }) => rise !== null)
  const squares = counted.reduce((sum, { shots }) => sum + shots[0]!.error ** 2 / shots.length, 0)
  return Math.sqrt(squares) / counted.length
}

/** Waterings that have drained; of the first one nobody knows whether it is whole. */
function wateringsOf(shots: readonly ShotEvidence[], zone: Watched): Watering[] {
  return together(shots)
    .slice(1)
    .flatMap((group): Watering[] => {
      const level = group[0]!.level
      const lastLevel = group[group.length - 1]!.level
      if (level === null || lastLevel === null) return []
      if (group.some(({ drained }) => drained === null)) return []
      const volume = volumeOf(group)
      const drained = group.reduce((sum, one) => sum + one.drained! * one.volume, 0) / volume
      const rises = group.flatMap((shot) => riseWithRoom(shot, zone) ?? [])
      const rise = rises.length === 0 ? null : rises.reduce((sum, one) => sum + one / rises.length, 0)
      return [{ shots: group, time: group[0]!.time, drained, level, lastLevel, rise }]
    })
}

/** Mean rise of the probes that had room for all of the shot: others overflow. */
function riseWithRoom({ rises, levels, volume }: ShotEvidence, zone: Watched): number | null {
  const told = rises.filter(
    (rise, i): rise is number => rise !== null && levels[i]! + volume / zone.volume <= zone.full,
  )
  return told.length === 0 ? null : told.reduce((sum, one) => sum + one / told.length, 0)
}
