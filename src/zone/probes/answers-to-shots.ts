import type { Duration } from '../../quantity/generated/kinds.js'
import { matchShots } from '../../record/shots/match-shots.js'
import { splitRecord } from '../../record/shots/split-record.js'
import type { ZoneFinding } from '../findings/zone-finding.js'
import type { LocalDay } from '../record/local-day.js'
import type { WateringColumns, ZoneWindow } from '../record/zone-window.js'
import type { Zone } from '../zone.js'
import { type CheckedProbe, maxStepOf } from './check-probe.js'

/** How a probe answered to the openings of the valve on a day, matched by time. */
export interface ShotAnswers {
  /** Openings on the day. Unit: 1. */
  readonly openings: number
  /** Those with a rise of their own, or within the rise of one just before. Unit: 1. */
  readonly seen: number
  /** Times of openings without a rise, though readings ran on. Unit: s. */
  readonly withoutRise: readonly number[]
  /** Times of openings at a gap, which cannot be judged. Unit: s. */
  readonly notJudged: readonly number[]
  /** Beginnings of rises that no opening explains. Unit: s. */
  readonly withoutLog: readonly number[]
}

/** Times at which the valve opened and gave water. */
export function openingsOf(zone: Zone, watering: WateringColumns): number[] {
  if (zone.wateringLog === 'days') return []
  return Array.from(watering.time).filter((_, i) => watering.given[i]! > 0)
}

/** Matches the rises that a probe saw with the openings of the valve. */
export function answersOf(
  zone: Zone,
  window: ZoneWindow,
  probe: CheckedProbe,
  openings: readonly number[],
): ShotAnswers {
  const { day, time } = window
  const matches = matchShots({
    shots: probe.shots,
    log: openings,
    segments: splitRecord({ time, value: probe.waterContent, maxStep: maxStepOf(zone) }),
    maxLag: Math.min(86400, Math.max(1800, 2 * zone.readingStep)) as Duration,
    maxLead: Math.min(86400, zone.readingStep) as Duration,
  })
  const within = (moment: number) => isIn(day, moment)
  const opened = (positions: readonly number[]) => positions.map((e) => openings[e]!).filter(within)
  return {
    openings: openings.filter(within).length,
    seen: opened([...matches.matched, ...matches.joined].map(({ log }) => log)).length,
    withoutRise: opened(matches.withoutRise),
    notJudged: opened(matches.notJudged),
    withoutLog: matches.withoutLog.map((k) => probe.shots[k]?.start as number).filter(within),
  }
}

/** Whether a moment lies in a day. */
export function isIn(day: LocalDay, moment: number): boolean {
  return moment >= day.from && moment < day.to
}

/** A probe that rises so often without an opening, and so many times as often as any other, scatters or gets water of its own. */
const MIN_ALONE = 4

/**
 * What the answers of all probes together say, and which probes saw too few of the shots: under half of what another one saw, of three at
 * least. This only decides which probes count; `diagnoseDay` tells what may be wrong.
 */
export function compareAnswers(
  answers: readonly { readonly name: string; readonly answers: ShotAnswers }[],
  drained: boolean | undefined,
): {
  readonly findings: ZoneFinding[]
  readonly deaf: ReadonlyMap<string, ShotAnswers>
  readonly alone: ReadonlyMap<string, number>
} {
  const judged = answers.map(({ answers: one }) => one.seen + one.withoutRise.length)
  const shots = judged.reduce((max, one) => Math.max(max, one), 0)
  // A shot at a gap speaks neither for a probe nor against it.
  const seen = answers.map(({ answers: one }, p) => one.seen + shots - judged[p]!)
  const maxSeen = seen.reduce((a, b) => Math.max(a, b), 0)
  if (answers.length > 0 && shots >= 2 && maxSeen === 0)
    return {
      findings: [
        drained === true ? { code: 'bypass', level: 'caution', shots } : { code: 'no-water', level: 'danger', shots },
      ],
      deaf: new Map(),
      alone: new Map(),
    }
  // Only probes that saw most of the shots can say that a rise was none.
  const witnesses = answers.filter(({ answers: one }) => one.openings >= 3 && 2 * one.seen > one.openings)
  const alone = answers.filter(({ name, answers: { withoutLog } }) => {
    const others = witnesses.filter((other) => other.name !== name)
    const isFar = others.every((other) => MIN_ALONE * other.answers.withoutLog.length <= withoutLog.length)
    return others.length > 0 && withoutLog.length >= MIN_ALONE && isFar
  })
  const few = shots < 3 ? [] : answers.filter((_, p) => 2 * seen[p]! < maxSeen)
  return {
    findings: [],
    deaf: new Map(few.map((one) => [one.name, one.answers])),
    alone: new Map(alone.map((one) => [one.name, one.answers.withoutLog.length])),
  }
}
