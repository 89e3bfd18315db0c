import { explainIrrigationFinding } from '../../irrigation/explain-irrigation-finding.js'
import { asLitres, asPercent, asPoints } from '../../quantity/in-words.js'
import { type NamesOf, onlyNames } from '../../quantity/one-of.js'
import { checkZone } from '../checked-zone.js'
import type { OfZoneDay } from '../day/terms.js'
import type { ProbeDay, ZoneDay } from '../day/zone-day.js'
import type { DayDiagnosis } from '../diagnose/diagnose-day.js'
import { explainZoneFinding } from '../explain-zone-finding.js'
import type { Known } from '../findings/known.js'
import type { ProposedDay } from '../propose/propose-day.js'
import { wallClock } from '../record/local-day.js'
import { checkDay } from '../restore/checked-day.js'
import type { Zone } from '../zone.js'
import { checkDiagnosis, checkProposal } from './checked-proposal.js'
import { causeLines } from './report-causes.js'
import { forecastLines } from './report-forecast.js'
import { type Clock, counted, spelt, told } from './report-words.js'

/** A part of a report: its title and its sentences. */
export interface ReportSection {
  readonly title: string
  /** One sentence or more a line; indented lines belong to the one before. */
  readonly lines: readonly string[]
}

/** A reviewed day, and what is proposed for the next. */
export interface ReportZoneInput extends OfZoneDay {
  /** The proposal, made by `proposeDay`. */
  readonly proposal: Known<ProposedDay>
  /** What may be wrong, made by `diagnoseDay`; left out, the report does not speak of it. */
  readonly diagnosis?: Known<DayDiagnosis>
}

const NAMES: NamesOf<ReportZoneInput> = { proposal: 1, diagnosis: 1, day: 1, zone: 1 }

/**
 * A day of a zone and the proposal for the next as sentences for a grower: the numbers of the review with their units, every finding, and
 * what must be minded before anybody acts on them.
 *
 * @procedure Puts every result into a sentence; what is not known says why.
 * @returns Sections with a title and lines.
 * @throws `DomainError` for a number of the zone outside its range, `InputError` for parts that contradict each other, or a day that was changed
 *   since its review.
 * @source definition; the cautions: common practice, no source
 * @example
 * const zone: Zone = {
 *   name: 'bench 4',
 *   container: { substrateVolume: litres(14), height: centimetres(12), plants: 2 },
 *   plantDensity: plantsPerSquareMetre(2.5), cropCoefficient: cropCoefficient(1),
 *   emitters: { count: 2, flow: litresPerHour(2), lineFill: seconds(8) },
 *   probes: [{ name: 'A' }],
 *   place: { latitude: latitude(47.5), elevation: metresAboveSeaLevel(420), clock: [{ from: 0, ahead: 0 }] },
 *   readingStep: minutes(5),
 *   limits: {
 *     maxPerDay: litres(8), minRunTime: minutes(2), maxRunTime: minutes(20), minRest: minutes(20),
 *     drainFraction: percent(20), allowedFall: waterContentChange(0.03), lowerLimit: waterContent(0.1),
 *     minBelievable: waterContent(0.05), maxBelievable: waterContent(0.9), minRise: waterContentChange(0.01),
 *     firstShotAfterLight: hours(1), lastShotBeforeDark: hours(3),
 *   },
 * }
 * const { day } = reviewDay({ zone, record: { time: [0, 300], probes: { A: [0.55, 0.549] } }, date: '1970-01-01' })
 * const sections = reportZone({ zone, day, proposal: proposeDay({ zone, day }) })
 * sections[1]?.lines[1] // => 'A (left out): water content from 54.9 % to 55.0 %; 0 shots seen.'
 */
export function reportZone(input: ReportZoneInput): ReportSection[] {
  onlyNames(input, NAMES, 'input')
  const zone = checkZone(input.zone)
  const day = checkDay(zone, input.day)
  const proposal = checkProposal(input.proposal)
  const at = (time: number) => wallClock(zone.place.clock, time)
  return [
    { title: 'What was read', lines: readLines(day, at) },
    {
      title: 'What the probes say',
      lines: [nightLine(day, at), ...day.probes.flatMap((one) => probeLines(day, one, at))],
    },
    { title: 'What the container holds', lines: containerLines(zone, day) },
    { title: 'Feed and drain', lines: balanceLines(zone, day) },
    { title: 'Demand', lines: demandLines(zone, day) },
    { title: 'What to look at', lines: findingLines(zone, day) },
    { title: 'Forecast, if nobody waters', lines: forecastLines(day) },
    ...(input.diagnosis === undefined
      ? []
      : [{ title: 'What may be wrong', lines: causeLines(checkDiagnosis(input.diagnosis), at) }]),
    {
      title: `Proposal for the ${day.underWay === undefined ? 'next day' : 'rest of the day'}`,
      lines: proposalLines(zone, day, proposal, at),
    },
    { title: 'Before you act on it', lines: CAUTIONS },
  ]
}

const CAUTIONS: readonly string[] = [
  'This is advice from a model and a few readings, not an order. A wrong calibration or a probe that has moved can cost a crop: look at the plants, the drain and the weight of a container first.',
  'If a controller acts on it, every valve needs a maximum run time, a daily maximum, a leak check and a safe state when readings are missing.',
  'Keep electricity away from water: extra-low voltage at the plants, a residual-current device, and a licensed electrician for the rest. Acids and concentrated fertiliser burn: goggles, gloves, acid into water. Drain carries nutrients: discharge or reuse it as local law says.',
]

function readLines({ readings, probes, gaps, to, underWay }: ZoneDay, at: Clock): string[] {
  return [
    `${counted(readings, 'row')} on the day${underWay === undefined ? '' : `, the last at ${at(underWay.at)}: it is not over`}.`,
    ...probes.map(({ name, counts, extrapolated }) => {
      const outside = extrapolated > 0 ? `; ${counted(extrapolated, 'reading')} outside the calibrated span` : ''
      const good = counts.pass + counts.notEvaluated
      return `${name}: ${good} good, ${counts.suspect} doubtful, ${counts.fail} wrong, ${counts.missing} missing${outside}.`
    }),
    ...gaps.map(
      (gap) =>
        `${gap.probe} has no reading that can be trusted from ${at(gap.from)} to ${gap.to === to ? '24:00' : at(gap.to)}.`,
    ),
  ]
}

function nightLine({ openings, shotFree }: ZoneDay, at: Clock): string {
  const log = openings.length > 0 ? `The valve opened ${counted(openings.length, 'time')} by the log. ` : ''
  return `${log}Longest stretch without a shot: ${told(shotFree, ({ from, to }) => `from ${at(from)} to ${at(to)}, ${((to - from) / 3600).toFixed(1)} h`)}.`
}

/** When the level is that of the zone. */
function standing({ underWay }: ZoneDay, at: Clock): string {
  return underWay === undefined ? 'the day ended' : `by ${at(underWay.at)} it stood`
}

function probeLines(
  day: ZoneDay,
  { name, range, shots, answers, drainedLevel, limits, night, last, used, timeToRefill: refill }: ProbeDay,
  at: Clock,
): string[] {
  const seen = answers
    ? `${answers.seen} of ${counted(answers.openings, 'shot')} seen`
    : `${counted(shots.length, 'shot')} seen`
  const mean = shots.reduce((sum, { rise }) => sum + rise, 0) / shots.length
  const [first, final] = [shots[0], shots[shots.length - 1]]
  const rises =
    first && final
      ? `, the first rise from ${at(first.start)}, the last from ${at(final.start)}, by ${asPoints(mean)} on average`
      : ''
  const lines = [
    `${name}${used ? '' : ' (left out)'}: water content ${told(range, ({ min, max }) => `from ${asPercent(min)} to ${asPercent(max)}`)}; ${seen}${rises}.`,
  ]
  if (!range.known) return lines
  lines.push(
    `  Level after drain: ${told(drainedLevel, (x) => `${asPercent(x.level)} ± ${asPercent(x.spread)} (${counted(x.shots, 'shot')})`)}.`,
    `  In that stretch: ${told(night, (x) => `from ${at(x.from)} to ${at(x.to)} it ${x.fall < 0 ? 'rose' : 'fell'} by ${asPoints(Math.abs(x.fall))}, ${asPoints(Math.abs(x.perHour), 2)} an hour, to ${asPercent(x.morning)}`)}.`,
  )
  if (!limits.known || !last.known) return lines
  const above = last.value - limits.value.refillPoint
  lines.push(
    `  Its own refill point is ${asPercent(limits.value.refillPoint)}; ${standing(day, at)} at ${asPercent(last.value)}, ${asPoints(Math.abs(above))} ${above < 0 ? 'below' : 'above'} it.`,
  )
  if (above >= 0) lines.push(`  If nobody waters it reaches that point ${refillText(refill)}.`)
  return lines
}

function refillText(refill: ProbeDay['timeToRefill']): string {
  if (!refill.known) return `at a time that is ${told(refill, () => '')}`
  const hours = (seconds: number) => (seconds / 3600).toFixed(1)
  const { earliest, latest } = refill.band90
  const band =
    latest === undefined
      ? `hardly before ${hours(earliest)} h`
      : `nine of ten times between ${hours(earliest)} and ${hours(latest)} h`
  return `about ${hours(refill.time)} h after its last reading, ${band}`
}

function containerLines({ medium: bench, container }: Zone, { medium, rootTemperature }: ZoneDay): string[] {
  return [
    `The medium: ${told(medium, (x) => `${bench?.name}; porosity ${asPercent(x.porosity)}, container capacity at a height of ${container.height} cm ${asPercent(x.containerCapacity)}, with ${asPercent(x.airFilledPorosity)} of air; ${container.substrateVolume} L of it hold ${(x.containerCapacity * container.substrateVolume).toFixed(1)} L`)}.`,
    `The root zone: ${told(rootTemperature, (x) => `${x.min.toFixed(1)} to ${x.max.toFixed(1)} °C, ${x.mean.toFixed(1)} °C on average`)}.`,
  ]
}

function balanceLines({ container }: Zone, { balance }: ZoneDay): string[] {
  const { entries, given, drained, drainFraction, stored, use, feedEC, drainEC } = balance
  const log = `in ${entries} ${entries === 1 ? 'entry' : 'entries'} of the log`
  const into = (x: number) => (x < 0 ? `${asLitres(-x)} came out of storage` : `${asLitres(x)} went into storage`)
  return [
    `Given: ${told(given, (x) => `${asLitres(x)} a container ${log}`)}. Drained: ${told(drained, asLitres)}. Drain fraction: ${told(drainFraction, (x) => asPercent(x))}.`,
    `By the probes: ${told(stored, into)}. Used by the plants: ${told(use, (x) => `${asLitres(x)} a container, ${asLitres(x / container.plants)} a plant`)}.`,
    `Feed EC: ${told(feedEC, (x) => `${x.toFixed(2)} dS/m`)}. Drain EC: ${told(drainEC, (x) => `${x.toFixed(2)} dS/m, weighted by volume`)}.`,
  ]
}

function demandLines({ cropCoefficient }: Zone, { climate }: ZoneDay): string[] {
  return [
    `By the climate: ${told(climate, (x) => `reference evapotranspiration by FAO-56 ${x.referenceET.toFixed(2)} mm/d; times ${cropCoefficient} ${x.cropET.toFixed(2)} mm/d, which is ${asLitres(x.perPlant)} a plant and ${asLitres(x.perContainer)} a container`)}.`,
    'FAO-56 was made for open fields. Under cover take it as an index and correct its coefficient with your own water balance.',
  ]
}

function findingLines({ place }: Zone, { findings }: ZoneDay): string[] {
  const words = { note: 'Note', caution: 'Look', danger: 'Danger' } as const
  if (findings.length === 0) return ['Nothing stands out.']
  // What can cost a crop stands first.
  const ordered = (['danger', 'caution', 'note'] as const).flatMap((level) =>
    findings.filter((one) => one.level === level),
  )
  return ordered.map((one) => `${words[one.level]}: ${explainZoneFinding(one, place.clock).message}.`)
}

function proposalLines(zone: Zone, day: ZoneDay, proposal: Known<ProposedDay>, at: Clock): string[] {
  const { level, underWay, balance } = day
  const levels = `Level of the zone: ${told(level, ({ mean, limits, from }) => `full point ${asPercent(limits.fullPoint)} (${spelt(from)}), refill point ${asPercent(limits.refillPoint)}; ${standing(day, at)} at ${asPercent(mean)}`)}.`
  if (!proposal.known) return [levels, `No proposal: ${explainZoneFinding({ code: proposal.reason }).message}.`]
  const plan = proposal.value
  const run = (seconds: number) =>
    `${Math.floor(Math.round(seconds) / 60)} min ${String(Math.round(seconds) % 60).padStart(2, '0')} s`
  const light =
    underWay === undefined
      ? `light as on this day (${spelt(plan.lightFrom)})`
      : `light after ${at(underWay.at)} as on the day before (${spelt(plan.lightFrom)})`
  const before =
    underWay === undefined ? '' : ` beside ${asLitres(balance.given.known ? balance.given.value : 0)} given before,`
  const changes = plan.differences.map((finding) => explainZoneFinding(finding, zone.place.clock).message)
  return [
    levels,
    `Expected use ${asLitres(plan.expectedUse)} a container, from the ${spelt(plan.useFrom)}${plan.expectedRadiation === undefined ? '' : ` and an expected radiation of ${plan.expectedRadiation.toFixed(0)} W/m²`}${plan.useBand90 ? ` (nine of ten days between ${asLitres(plan.useBand90[0])} and ${asLitres(plan.useBand90[1])})` : underWay === undefined ? ' of this day' : ' of the 24 hours before'}; ${light}.`,
    `${counted(plan.shots.length, 'shot')}, ${asLitres(plan.given)} together,${before} of at most ${zone.limits.maxPerDay} L a day; ${asPercent(plan.drainFraction)} of it should drain (asked: ${asPercent(zone.limits.drainFraction)}).`,
    ...plan.shots.map((shot, i) => {
      const volumes = `${(1000 * shot.volume).toFixed(0).padStart(5)} mL (${(1000 * shot.perEmitter).toFixed(0)} mL an emitter)`
      const why = explainIrrigationFinding({ code: shot.reason, waterContent: shot.waterContent }).message
      return `  ${String(i + 1).padStart(2)}. ${at(shot.time)}  ${volumes}, valve open ${run(shot.runTime)}: ${why}`
    }),
    ...plan.compromises.map((one) => `Cannot all be had: ${explainIrrigationFinding(one).message}.`),
    ...(underWay === undefined
      ? [`Different from this day: ${changes.length === 0 ? 'nothing' : changes.join('; ')}.`]
      : []),
  ]
}
