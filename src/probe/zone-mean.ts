import { InputError } from '../quantity/errors.js'
import type { WaterContent } from '../quantity/generated/kinds.js'
import { numberIn, requireObject, requireRows } from '../quantity/guard.js'
import { PROBE_CONTENT, PROBE_WEIGHT } from './domains.js'
import type { ProbeFinding } from './probe-finding.js'

/** One probe of a zone and what it stands for. */
export interface ZoneProbe {
  readonly name: string
  /** Its water content; left out when it is missing or not to be trusted. Unit: m³/m³. Range: [0, 1]. */
  readonly waterContent?: WaterContent
  /** What it stands for: plants, litres of medium or area, in one unit for the whole zone. Unit: 1. Range: (0, ∞). */
  readonly weight: number
}

/** The probes of one zone. */
export interface ZoneInput {
  /** All probes, those that are missing included. */
  readonly probes: readonly ZoneProbe[]
}

/** The state of a zone. */
export interface ZoneMean {
  /** Weighted mean of the probes that report. Unit: m³/m³. */
  readonly mean: WaterContent
  /** Weighted median, which one bad probe cannot move. Unit: m³/m³. */
  readonly median: WaterContent
  /** Robust standard deviation: 1.4826 times the weighted median distance from the median. Unit: m³/m³. */
  readonly robustSpread: number
  /** Share of the weight that reports a water content that can be. Unit: 1. */
  readonly coverage: number
  /** Names of probes that lie far from the others. */
  readonly apart: readonly string[]
  readonly findings: readonly ProbeFinding[]
}

/** Less than this no medium with a plant in it reads: what a dead probe or a broken cable sends. Common practice, no source. Unit: m³/m³. */
export const NOTHING = 0.01
/** Probes that differ so much, and of which none stands alone, are in dispute. Common practice, no source. Unit: m³/m³. */
const DISPUTE = 0.1
/** A probe is named when it is this many robust standard deviations, and at least this much water content, from the median. */
const APART = { deviations: 3, min: 0.05 }

/**
 * Mean water content of a zone from probes that stand for different shares of it, with a spread that one bad probe cannot hide.
 *
 * A probe apart from the others may be broken, or its plant dry: look, before it is left out. One that reads less than 0.01, as a dead
 * probe does, counts as missing. When less than half of the weight reports, or probes differ and nothing tells which is right, the mean
 * is marked as a danger and must not start a valve.
 *
 * @equation `\bar\theta = \frac{\sum w_i \theta_i}{\sum w_i}, \quad s = 1.4826\,\operatorname{med}_w |\theta_i - \operatorname{med}_w \theta|`
 * @returns Mean, median, robust spread, coverage and probes apart.
 * @throws `DomainError` outside the ranges; `InputError` when no probe reports, all read nothing, or two have one name.
 * @source rousseeuw-1993 (factor 1.4826); limits are common practice, no source
 * @example
 * const zone = zoneMean({
 *   probes: [
 *     { name: 'A', waterContent: waterContent(0.56), weight: 40 },
 *     { name: 'B', waterContent: waterContent(0.54), weight: 40 },
 *     { name: 'C', waterContent: waterContent(0.58), weight: 20 },
 *     { name: 'D', waterContent: waterContent(0.31), weight: 20 },
 *   ],
 * })
 * zone // => { mean: 0.515, median: 0.55, coverage: 1, apart: ['D'] }
 */
export function zoneMean(input: ZoneInput): ZoneMean {
  requireObject(input, 'input')
  const { probes } = input
  requireRows(probes, 'probes')
  const all = checked(probes)
  const dead = all.filter(({ value = 1 }) => value < NOTHING)
  const reporting = all.filter((probe): probe is Reporting => probe.value !== undefined && probe.value >= NOTHING)
  if (reporting.length === 0)
    throw new InputError(
      'probes',
      dead.length === 0 ? 'none reports' : `all that report read less than ${NOTHING} m³/m³, as dead ones do`,
      'look at power and wiring, and water by hand until one does',
    )
  const weight = total(reporting)
  const mean = reporting.reduce((sum, probe) => sum + probe.weight * probe.value, 0) / weight
  const median = weightedMedian(reporting)
  const distances = reporting.map((probe) => ({ ...probe, value: Math.abs(probe.value - median) }))
  const robustSpread = 1.4826 * weightedMedian(distances)
  const far = Math.max(APART.deviations * robustSpread, APART.min)
  const distant = distances.filter(({ value }) => value > far)
  const apart = distant.map(({ name }) => name)
  const coverage = weight / total(all)
  const findings = [
    ...dead.map(({ name, value = 0 }) => finding('reads-nothing', name, value, NOTHING)),
    ...distant.map(({ name, value }) => finding('probe-apart', name, value, far)),
  ]
  if (distant.length === 0 && robustSpread > DISPUTE)
    findings.push(finding('probes-disagree', 'probes', robustSpread, DISPUTE, 'danger'))
  if (coverage < 1) findings.push(missing(coverage))
  return { mean: mean as WaterContent, median: median as WaterContent, robustSpread, coverage, apart, findings }
}

/** The probes with numbers that can be; a name that stands twice would count one probe for two. */
function checked(probes: readonly ZoneProbe[]) {
  const names = new Set<unknown>()
  return probes.map(({ name, weight, waterContent }, i) => {
    if (typeof name === 'string' && names.has(name))
      throw new InputError(`probes[${i}].name`, `${name} stands twice`, 'give each probe once, by its own name')
    names.add(name)
    return {
      name,
      weight: numberIn(weight, PROBE_WEIGHT, 'weight'),
      value: waterContent === undefined ? undefined : numberIn(waterContent, PROBE_CONTENT, 'waterContent'),
    }
  })
}

function finding(
  code: ProbeFinding['code'],
  about: string,
  value: number,
  limit: number,
  level: ProbeFinding['level'] = 'caution',
): ProbeFinding {
  return { code, level, about, value, limit, unit: 'm³/m³' }
}

interface Reporting {
  readonly name: string
  readonly weight: number
  readonly value: number
}

function total(probes: readonly { readonly weight: number }[]): number {
  return probes.reduce((sum, probe) => sum + probe.weight, 0)
}

/** The value with half of the weight on either side; between two values their mean. */
function weightedMedian(probes: readonly Reporting[]): number {
  const sorted = [...probes].sort((a, b) => a.value - b.value)
  const half = total(sorted) / 2
  let below = 0
  for (let i = 0; i < sorted.length; i++) {
    const probe = sorted[i]!
    below += probe.weight
    if (Math.abs(below - half) <= 1e-12 * half) return (probe.value + (sorted[i + 1] ?? probe).value) / 2
    if (below > half) return probe.value
  }
  return sorted.at(-1)!.value
}

function missing(coverage: number): ProbeFinding {
  const level = coverage < 0.5 ? 'danger' : 'caution'
  return { code: 'probes-missing', level, about: 'probes', value: coverage, unit: '1' }
}
