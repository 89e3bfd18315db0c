import { rootTemperatureBand } from '../irrigation/root-zone/root-temperature-band.js'
import { maxOf, minOf } from '../quantity/extremes.js'
import type { Temperature, WaterContent } from '../quantity/generated/kinds.js'
import { waterUseOfNextDay } from '../record/forecast/forecast-daily-use.js'
import { timeUntilLevel } from '../record/forecast/time-until-level.js'
import { answersOf, compareAnswers, isIn, openingsOf, type ShotAnswers } from './answers-to-shots.js'
import { betweenShots } from './between-shots.js'
import { type CheckedProbe, checkProbe } from './check-probe.js'
import { type ClimateDemand, climateDemand } from './climate-demand.js'
import { expectedRadiation } from './expected-radiation.js'
import { type Known, known, unknown } from './known.js'
import { longestShotFree, nightOf } from './last-night.js'
import { learnDrying, learnUse } from './learn.js'
import { lightOfDay } from './light-of-day.js'
import { type LocalDay, localDayOf } from './local-day.js'
import { type Candidate, drainedLevel, fallenAway, levelOfZone } from './probe-days.js'
import { saltFindings, withSaltDay } from './salt-days.js'
import { lateLevel, type WaterBalance, waterBalance } from './water-balance.js'
import type { Zone } from './zone.js'
import type { DrainedLevel, ProbeDay, ReadingGap, RootZoneTemperature, ZoneDay } from './zone-day.js'
import type { ZoneFinding } from './zone-finding.js'
import { type MediumAtRest, mediumAtRest } from './zone-levels.js'
import type { ZoneMemory } from './zone-memory.js'
import { firstAt, type ZoneWindow } from './zone-window.js'

/** Beyond these shares of the climate's, a use is doubted: common practice, no source. */
const BELIEVED_USE = { min: 0.6, max: 1.6 }

/** With these a water balance is not learned from. */
const NOT_LEARNED: readonly string[] = ['drain-gauge-silent', 'more-drain-than-given', 'negative-use']

function ownOf<T>(record: Readonly<Record<string, T>>, name: string): T | undefined {
  return Object.hasOwn(record, name) ? record[name] : undefined
}

/** Reviews one day of a zone from its window, and gives what the next day should remember. */
export function reviewWindow(zone: Zone, window: ZoneWindow, memory: ZoneMemory): { day: ZoneDay; memory: ZoneMemory } {
  const { day } = window
  const openings = openingsOf(zone, window.watering)
  const checked = zone.probes.map((_, p) => checkProbe(zone, window, p))
  const logged = openings.length > 0
  const answers = logged ? checked.map((probe) => answersOf(zone, window, probe, openings)) : []
  const medium = mediumAtRest(zone)
  const levels = checked.map((probe) => drainedLevel(zone, window, probe, memory))
  const judged = judge(zone, window, checked, answers, levels)
  const { level, limits } = levelOfZone(zone, judged.candidates, medium)
  const used = checked.filter((probe) => limits.has(probe.name))
  const balance = waterBalance(zone, window, used.length > 0 ? used : [])
  const climate = climateDemand(zone, window.climate, day)
  const light = lightOfDay(zone, window.climate, day)
  const rootTemperature = rootZone(window)
  const free = longestShotFree(window, checked, openings)
  const drying = checked.map((probe) => learnDrying(zone, window, probe, ownOf(memory.drying, probe.name)))
  const probes = checked.map((probe, p): ProbeDay => {
    const last = judged.candidates[p]?.last
    const own = limits.get(probe.name)
    return {
      name: probe.name,
      counts: probe.counts,
      extrapolated: probe.extrapolated,
      range: rangeOf(window, probe),
      shots: probe.shots
        .filter(({ start }) => isIn(day, start))
        .map(({ start, peak, rise }) => ({ start, peak, rise })),
      ...(logged && { answers: answers[p]! }),
      drainedLevel: levels[p]!,
      limits: own === undefined ? unknown('not-used') : known(own),
      night: free.known ? nightOf(zone, window, probe, free.value) : free,
      last: last === undefined ? unknown('no-late-reading') : known(last),
      refill:
        own === undefined
          ? { known: false, reason: 'not-used' }
          : timeUntilLevel({ state: drying[p]!, level: own.refillPoint as WaterContent }),
      used: own !== undefined,
    }
  })
  const balanced = balanceFindings(balance, climate, memory, day.to)
  const believed = !balanced.some(({ code }) => NOT_LEARNED.includes(code))
  const expected = (wanted: LocalDay) => expectedRadiation(zone, window.forecast, light, wanted)
  const use = learnUse(memory.use, balance, light, believed, expected(day))
  const tomorrow = expected(localDayOf(zone.place.clock, day.to))
  const salt = withSaltDay(memory.salt, balance, levels, day.to)
  const findings: ZoneFinding[] = [
    ...judged.findings,
    ...answerFindings(probes),
    ...checked.flatMap((probe) => betweenShots(zone, window, probe, openings)),
    ...levelFindings(judged.candidates, limits, medium, day.to),
    ...(level.known || level.reason !== 'all-probes-left-out'
      ? []
      : [{ code: 'all-probes-left-out', level: 'danger' } as const]),
    ...(window.outOfOrder.length > 0
      ? [{ code: 'readings-out-of-order', level: 'caution', count: window.outOfOrder.length } as const]
      : []),
    ...balanced,
    ...(salt.at(-1)?.at === day.to ? saltFindings(zone, salt) : []),
    ...(climate.known ? climate.value.findings : []),
    ...(light.source === 'assumed' ? [{ code: 'light-assumed', level: 'caution' } as const] : []),
    ...rootFindings(rootTemperature),
  ]
  return {
    day: {
      zone: zone.name,
      date: day.date,
      from: day.from,
      to: day.to,
      readings: window.time.length - firstAt(window.time, day.from),
      light,
      medium,
      probes,
      gaps: checked.flatMap((probe) => gapsOf(zone, window, probe)),
      shotFree: free,
      level,
      balance,
      openings: openings.filter((time) => isIn(day, time)),
      climate,
      ...(tomorrow !== undefined && { expectedRadiation: tomorrow }),
      nextUse: waterUseOfNextDay({ state: use, ...(tomorrow !== undefined && { expectedRadiation: tomorrow }) }),
      rootTemperature,
      findings,
    },
    memory: {
      levels: {
        ...memory.levels,
        ...Object.fromEntries(
          checked.flatMap((probe, p) => {
            const found = levels[p]!
            return found.known ? [[probe.name, found.value]] : []
          }),
        ),
      },
      drying: Object.fromEntries(checked.map(({ name }, p) => [name, drying[p]!])),
      use,
      salt,
      lastDrain: balance.drained.known && balance.drained.value > 0 ? day.to : memory.lastDrain,
    },
  }
}

/** Which probes count, and why others do not. */
function judge(
  zone: Zone,
  window: ZoneWindow,
  checked: readonly CheckedProbe[],
  answers: readonly ShotAnswers[],
  levels: readonly Known<DrainedLevel>[],
): { readonly candidates: readonly Candidate[]; readonly findings: ZoneFinding[] } {
  const findings: ZoneFinding[] = []
  const drainedAny = window.watering.drained.some((x, i) => x > 0 && isIn(window.day, window.watering.time[i]!))
  const measured = window.watering.drained.some((x) => !Number.isNaN(x))
  const compared = compareAnswers(
    answers.map((one, p) => ({ name: checked[p]?.name as string, answers: one })),
    measured ? drainedAny : undefined,
  )
  findings.push(...compared.findings)
  const first = checked.map((probe, p): Candidate => {
    const { name, counts, looksLikePercent, waterContent, weight } = probe
    const last = lateLevel(zone, window.time, waterContent, window.day)
    const deaf = compared.deaf.get(name)
    const before = findings.length
    if (looksLikePercent !== undefined)
      findings.push({ code: 'looks-like-percent', level: 'danger', probe: name, middle: looksLikePercent })
    else if (counts.pass + counts.notEvaluated === 0)
      findings.push({ code: 'no-readings', level: 'danger', probe: name })
    else if (deaf !== undefined)
      findings.push({
        code: 'few-shots-seen',
        level: 'danger',
        probe: name,
        seen: deaf.seen,
        of: deaf.seen + deaf.withoutRise.length,
      })
    else if (last === undefined) findings.push({ code: 'no-late-reading', level: 'caution', probe: name })
    return { name, weight, level: levels[p]!, last, leftOut: findings.length > before }
  })
  const fallen = fallenAway(first)
  findings.push(...fallen)
  const away = new Set(fallen.map((one) => ('probe' in one ? one.probe : '')))
  const candidates = first.map((one) => ({ ...one, leftOut: one.leftOut || away.has(one.name) }))
  const someLevel = candidates.some(({ leftOut, level }) => !leftOut && level.known)
  for (const { name, leftOut, level } of candidates)
    if (someLevel && !leftOut && !level.known)
      findings.push({ code: 'no-level-after-drain', level: 'caution', probe: name })
  return { candidates, findings }
}

function answerFindings(probes: readonly ProbeDay[]): ZoneFinding[] {
  return probes.flatMap(({ name, answers }): ZoneFinding[] => {
    if (answers === undefined) return []
    const { withoutRise, notJudged, withoutLog } = answers
    return [
      ...(withoutRise.length > 0
        ? [{ code: 'shots-without-rise', level: 'caution', probe: name, times: withoutRise } as const]
        : []),
      ...(notJudged.length > 0
        ? [{ code: 'shots-not-judged', level: 'note', probe: name, times: notJudged } as const]
        : []),
      ...(withoutLog.length > 0
        ? [{ code: 'rises-without-shot', level: 'caution', probe: name, times: withoutLog } as const]
        : []),
    ]
  })
}

function levelFindings(
  candidates: readonly Candidate[],
  limits: ReadonlyMap<string, unknown>,
  medium: Known<MediumAtRest>,
  end: number,
): ZoneFinding[] {
  const findings: ZoneFinding[] = []
  for (const { name, level } of candidates) {
    if (!limits.has(name) || !level.known) continue
    const days = Math.round((end - level.value.at) / 86400)
    if (days > 0) findings.push({ code: 'level-remembered', level: 'note', probe: name, days })
    const difference = medium.known ? level.value.level - medium.value.containerCapacity : 0
    if (Math.abs(difference) > 0.05) findings.push({ code: 'off-capacity', level: 'caution', probe: name, difference })
  }
  const last = candidates.flatMap((one) => (limits.has(one.name) && one.last !== undefined ? [one.last] : []))
  const spread = maxOf(last) - minOf(last)
  if (last.length > 1 && spread > 0.05) findings.push({ code: 'probes-differ', level: 'note', spread })
  return findings
}

function balanceFindings(
  balance: WaterBalance,
  climate: Known<ClimateDemand>,
  memory: ZoneMemory,
  end: number,
): ZoneFinding[] {
  const { given, drained, use, drainFraction, feedEC, drainEC, entries } = balance
  const findings: ZoneFinding[] = []
  if (given.known && drained.known && drained.value > given.value)
    findings.push({ code: 'more-drain-than-given', level: 'caution', given: given.value, drained: drained.value })
  // A gauge that told of drain in the last week and shows none of several shots may be stuck or bypassed.
  const drainedLately = memory.lastDrain !== null && end - memory.lastDrain <= 8 * 86400
  if (given.known && given.value > 0 && drained.known && drained.value === 0 && (entries >= 3 || drainedLately))
    findings.push({ code: 'drain-gauge-silent', level: 'caution', given: given.value, entries })
  if (use.known && use.value < 0) findings.push({ code: 'negative-use', level: 'caution', use: use.value })
  else if (use.known && climate.known) {
    const ratio = use.value / climate.value.perContainer
    if (!(ratio >= BELIEVED_USE.min && ratio <= BELIEVED_USE.max))
      findings.push({ code: 'use-doubted', level: 'caution', use: use.value, climate: climate.value.perContainer })
  }
  if (feedEC.known && drainEC.known && drainFraction.known && drainEC.value > 0) {
    const steady = feedEC.value / drainEC.value
    if (drainFraction.value < steady - 0.05)
      findings.push({ code: 'salts-not-steady', level: 'note', share: drainFraction.value, steady })
  }
  return findings
}

function rootZone({ day, time, rootTemperature }: ZoneWindow): Known<RootZoneTemperature> {
  const there = rootTemperature.subarray(firstAt(time, day.from)).filter((x) => x >= -5 && x <= 60)
  if (there.length === 0) return unknown('not-recorded')
  let [min, max, sum] = [Infinity, -Infinity, 0]
  for (const x of there) {
    min = Math.min(min, x)
    max = Math.max(max, x)
    sum += x
  }
  return known({ min, max, mean: sum / there.length })
}

function rootFindings(root: Known<RootZoneTemperature>): ZoneFinding[] {
  if (!root.known) return []
  return (['lowest', 'highest'] as const).flatMap((extreme): ZoneFinding[] => {
    const value = extreme === 'lowest' ? root.value.min : root.value.max
    const { band, findings } = rootTemperatureBand({
      temperature: value as Temperature,
      organism: 'fruiting-vegetables',
    })
    const level = findings[0]?.level ?? 'note'
    return band === 'target' ? [] : [{ code: 'root-zone-temperature', level, band, extreme, value }]
  })
}

function rangeOf({ day, time }: ZoneWindow, { waterContent }: CheckedProbe): ProbeDay['range'] {
  let [min, max] = [Infinity, -Infinity]
  for (let i = firstAt(time, day.from); i < time.length; i++) {
    const x = waterContent[i]!
    if (x < min) min = x
    if (x > max) max = x
  }
  return min <= max ? known({ min, max }) : unknown('no-readings')
}

/** Stretches of the day, of at least half an hour and two missing readings, without a reading that can be trusted. */
function gapsOf(zone: Zone, { day, time }: ZoneWindow, { name, waterContent }: CheckedProbe): ReadingGap[] {
  const gaps: ReadingGap[] = []
  const longest = Math.max(1800, 2.5 * zone.readingStep)
  let last = day.from
  const look = (now: number) => {
    if (now - last > longest) gaps.push({ probe: name, from: last, to: now })
  }
  for (let i = firstAt(time, day.from); i < time.length; i++) {
    if (Number.isNaN(waterContent[i])) continue
    look(time[i]!)
    last = time[i]!
  }
  look(day.to)
  return gaps
}
