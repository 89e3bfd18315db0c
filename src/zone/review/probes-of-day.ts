import type { DrainedLevel, ProbeDay, ReadingGap } from '../day/zone-day.js'
import type { MediumAtRest } from '../day/zone-levels.js'
import type { ZoneMemory } from '../day/zone-memory.js'
import { type Known, known, unknown } from '../findings/known.js'
import type { ZoneFinding } from '../findings/zone-finding.js'
import { logClock } from '../plausibility/log-clock.js'
import { answersOf, compareAnswers, isIn, type ShotAnswers } from '../probes/answers-to-shots.js'
import { type CheckedProbe, checkProbe } from '../probes/check-probe.js'
import { longestShotFree, nightOf } from '../probes/last-night.js'
import { firstAt, type ZoneWindow } from '../record/zone-window.js'
import { lateLevel } from '../water/water-balance.js'
import type { Zone } from '../zone.js'
import { foreseen } from './foreseen.js'
import { learnDrying } from './learn.js'
import { type Candidate, drainedLevel, fallenAway, levelOfZone } from './probe-days.js'

/** What each probe of a zone showed in a day, which of them count, and what they say of the zone together. */
export function probesOfDay(
  zone: Zone,
  window: ZoneWindow,
  memory: ZoneMemory,
  log: readonly number[],
  medium: Known<MediumAtRest>,
) {
  const checked = zone.probes.map((_, p) => checkProbe(zone, window, p))
  // A log on another clock says how much was given on the day, and not when.
  const clock = logClock(zone, window, checked, log)
  const openings = clock === undefined ? log : []
  const logged = openings.length > 0
  const answers = logged ? checked.map((probe) => answersOf(zone, window, probe, openings)) : []
  const levels = checked.map((probe) => drainedLevel(zone, window, probe, memory))
  const judged = judge(zone, window, checked, answers, levels)
  const { level, limits } = levelOfZone(zone, judged.candidates, medium)
  const free = longestShotFree(window, checked, openings)
  const drying = checked.map((probe) => learnDrying(zone, window, probe, ownOf(memory.drying, probe.name)))
  const probes = checked.map((probe, p): ProbeDay => {
    const { last, doubted } = judged.candidates[p]!
    const own = limits.get(probe.name)
    return {
      ...seenBy(window, probe),
      ...(logged && { answers: answers[p]! }),
      drainedLevel: levels[p]!,
      limits: own === undefined ? unknown('not-used') : known(own),
      night: free.known ? nightOf(zone, window, probe, free.value) : free,
      last: last === undefined ? unknown('no-reading-late-in-day') : known(last),
      ...foreseen(zone, drying[p]!, own, doubted),
      used: own !== undefined,
    }
  })
  if (clock !== undefined) judged.findings.unshift(clock)
  return { checked, openings, levels, judged, level, limits, free, drying, probes }
}

/** What a probe showed by itself. */
function seenBy(window: ZoneWindow, probe: CheckedProbe) {
  const { name, counts, extrapolated } = probe
  const shots = probe.shots
    .filter(({ start }) => isIn(window.day, start))
    .map(({ start, peak, rise }) => ({ start, peak, rise }))
  return { name, counts, extrapolated, range: rangeOf(window, probe), shots }
}

function ownOf<T>(record: Readonly<Record<string, T>>, name: string): T | undefined {
  return Object.hasOwn(record, name) ? record[name] : undefined
}

/** Which probes count, and why others do not. */
function judge(
  zone: Zone,
  window: ZoneWindow,
  checked: readonly CheckedProbe[],
  answers: readonly ShotAnswers[],
  levels: readonly Known<DrainedLevel>[],
): { readonly candidates: readonly Candidate[]; readonly findings: ZoneFinding[] } {
  const drainedAny = window.watering.drained.some((x, i) => x > 0 && isIn(window.day, window.watering.time[i]!))
  const measured = window.watering.drained.some((x) => !Number.isNaN(x))
  const compared = compareAnswers(
    answers.map((one, p) => ({ name: checked[p]?.name as string, answers: one })),
    measured ? drainedAny : undefined,
  )
  const findings: ZoneFinding[] = [...compared.findings]
  const first = checked.map((probe, p): Candidate => {
    const { name, waterContent, weight } = probe
    const last = lateLevel(zone, window, waterContent)
    const deaf = compared.deaf.get(name)
    const against = findingAgainst(probe, deaf, compared.alone.get(name), last)
    if (against !== undefined) findings.push(against)
    const doubted = against !== undefined && against.code !== 'no-late-reading'
    return { name, weight, level: levels[p]!, last, doubted, leftOut: against !== undefined }
  })
  const fallen = fallenAway(first)
  for (const finding of fallen) findings.push(finding)
  const away = new Set(fallen.map((one) => ('probe' in one ? one.probe : '')))
  const candidates = first.map((one) => (away.has(one.name) ? { ...one, doubted: true, leftOut: true } : one))
  const someLevel = candidates.some(({ leftOut, level }) => !leftOut && level.known)
  for (const { name, leftOut, level } of candidates)
    if (someLevel && !leftOut && !level.known)
      findings.push({ code: 'no-level-after-drain', level: 'caution', probe: name })
  return { candidates, findings }
}

/** What speaks against a probe by itself; one finding is enough to leave it out. */
function findingAgainst(
  { name, counts, looksLikePercent }: CheckedProbe,
  deaf: ShotAnswers | undefined,
  rises: number | undefined,
  last: number | undefined,
): ZoneFinding | undefined {
  if (looksLikePercent !== undefined)
    return { code: 'looks-like-percent', level: 'danger', probe: name, middle: looksLikePercent }
  if (counts.pass + counts.notEvaluated === 0) return { code: 'no-readings', level: 'danger', probe: name }
  if (deaf !== undefined) {
    const of = deaf.seen + deaf.withoutRise.length
    return { code: 'few-shots-seen', level: 'danger', probe: name, seen: deaf.seen, of }
  }
  if (rises !== undefined) return { code: 'rises-alone', level: 'danger', probe: name, rises }
  return last === undefined ? { code: 'no-late-reading', level: 'caution', probe: name } : undefined
}

function rangeOf({ day, time }: ZoneWindow, { waterContent }: CheckedProbe): ProbeDay['range'] {
  let [min, max] = [Infinity, -Infinity]
  for (let i = firstAt(time, day.from); i < time.length; i++) {
    const x = waterContent[i]!
    if (x < min) min = x
    if (x > max) max = x
  }
  return min <= max ? known({ min, max }) : unknown('no-trusted-readings')
}

/** Stretches of the day, of at least half an hour and two missing readings, without a reading that can be trusted. */
export function gapsOf(
  zone: Zone,
  { day, time, now: end = day.to }: ZoneWindow,
  { name, waterContent }: CheckedProbe,
): ReadingGap[] {
  const gaps: ReadingGap[] = []
  const max = Math.max(1800, 2.5 * zone.readingStep)
  let last = day.from
  const look = (now: number) => {
    if (now - last > max) gaps.push({ probe: name, from: last, to: now })
  }
  for (let i = firstAt(time, day.from); i < time.length; i++) {
    if (Number.isNaN(waterContent[i])) continue
    look(time[i]!)
    last = time[i]!
  }
  look(end)
  return gaps
}
