import { rootTemperatureBand } from '../../irrigation/root-zone/root-temperature-band.js'
import { ecDoubt } from '../../irrigation/salt/ec-doubt.js'
import { maxOf, minOf } from '../../quantity/extremes.js'
import type { Temperature } from '../../quantity/generated/kinds.js'
import type { ProbeDay, RootZoneTemperature } from '../day/zone-day.js'
import type { MediumAtRest } from '../day/zone-levels.js'
import type { ZoneMemory } from '../day/zone-memory.js'
import type { Known } from '../findings/known.js'
import { OFF_TARGET, type ZoneFinding } from '../findings/zone-finding.js'
import type { ZoneWindow } from '../record/zone-window.js'
import type { WaterBalance } from '../water/water-balance.js'
import type { ClimateDemand } from '../weather/climate-demand.js'
import { type DayLight, LIGHT_STEP } from '../weather/light-of-day.js'
import type { Candidate } from './probe-days.js'

/** Beyond these shares of the climate's, a use is doubted: common practice, no source. */
const BELIEVED_USE = { min: 0.6, max: 1.6 }

export function answerFindings(probes: readonly ProbeDay[]): ZoneFinding[] {
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

export function levelFindings(
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

export function balanceFindings(
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
  const doubt = feedEC.known && drainEC.known ? ecDoubt(feedEC.value, drainEC.value) : undefined
  if (doubt !== undefined) findings.push(doubt)
  else if (feedEC.known && drainEC.known && drainFraction.known && drainEC.value > 0) {
    const steady = feedEC.value / drainEC.value
    if (drainFraction.value < steady - 0.05)
      findings.push({ code: 'salts-not-steady', level: 'note', share: drainFraction.value, steady })
  }
  return findings
}

/** Half of the light of a day comes before so many hours after midnight by any clock: 14:40 in Galicia, 15:00 in Kashgar, and clouds move it. */
const MIDDLE_OF_LIGHT = { min: 9, max: 16.5 }

/** Light that nobody measured, and light whose middle lies far from noon: a climate on another clock. Lamps burn when they like. */
export function lightFindings({ source, course }: DayLight, { day, now }: ZoneWindow): ZoneFinding[] {
  if (source === 'assumed') return [{ code: 'light-assumed', level: 'caution' }]
  if (source !== 'measured' || now !== undefined) return []
  const half = course.reduce((sum, x) => sum + x, 0) / 2
  let [sum, i] = [0, 0]
  while (sum < half) sum += course[i++]!
  const hours = (i * LIGHT_STEP) / 3600
  return hours < MIDDLE_OF_LIGHT.min || hours > MIDDLE_OF_LIGHT.max
    ? [{ code: 'light-off-noon', level: 'caution', time: day.from + i * LIGHT_STEP }]
    : []
}

export function rootFindings(root: Known<RootZoneTemperature>): ZoneFinding[] {
  if (!root.known) return []
  return (['lowest', 'highest'] as const).flatMap((extreme): ZoneFinding[] => {
    const value = extreme === 'lowest' ? root.value.min : root.value.max
    const { band, findings } = rootTemperatureBand({
      temperature: value as Temperature,
      organism: 'fruiting-vegetables',
    })
    const level = findings[0]?.level ?? 'note'
    const off = OFF_TARGET.find((one) => one === band)
    return off === undefined ? [] : [{ code: 'root-zone-temperature', level, band: off, extreme, value }]
  })
}
