import { maxOf, minOf } from '../../../quantity/extremes.js'
import { middle } from '../../middle.js'
import type { WateringDoubt } from '../findings/finding.js'
import type { Limits } from '../settings/checked-settings.js'
import type { ProbeView } from './probes.js'

/** A dispute ends where probes differ by less than this share of what began it: noise ends none. Six times the scatter of a good probe below 0.08 m³/m³. Own judgement. */
const AGREED = 0.85

/** What the probes say together. */
export interface ZoneLevel {
  readonly level: number | null
  /** Mean of all probes that are good in themselves, in dispute too. */
  readonly mean: number | null
  /** When it was measured; of several probes the oldest counts. Unit: s. */
  readonly measured: number
  readonly doubt: WateringDoubt | null
  /** Probes behind the level. */
  readonly believed: number
  /** By how much probes that are good in themselves differ. Unit: m³/m³. */
  readonly spread: number
  /** Whether probes differ by more than they may, also where it does not matter because all say "dry". */
  readonly disputed: boolean
  /** Which of three or more probes stand too far from the others to decide, by their number. */
  readonly stray: readonly number[]
  /** Whether no probe says anything new in its band. */
  readonly blind: boolean
  /** When probes that say anything all said "above the lower limit" last, in dispute above the middle of the band; null where one of them says otherwise. Unit: s. */
  readonly wet: number | null
  /** When probes that say anything, however old, all said "dry", or null. Unit: s. */
  readonly dry: number | null
}

/**
 * One level from several probes. By how much their containers were found to differ is taken from them first. Two that differ too much decide nothing, because nobody can tell which of them lies; of three or more
 * those decide that stand near their median.
 */
export function zoneLevel(
  views: readonly ProbeView[],
  apart: readonly number[],
  wasDisputed: boolean,
  limits: Limits,
): ZoneLevel {
  const { wet, dry } = lastTold(views, limits.lower)
  const blind = views.every(isBlind)
  // This runs at each decision: lists of numbers, and results written out, are twice as fast as copies of views.
  const alike = alikeOf(views, apart)
  if (alike.length === 0) return { ...NOTHING, doubt: views[0]?.doubt ?? 'reading-missing', wet, dry, blind }
  const min = minOf(alike)
  const spread = maxOf(alike) - min
  const centre = middle(alike)
  const limit = wasDisputed ? AGREED * limits.disagreement : limits.disagreement
  const reach = alike.length === 2 ? limit / 2 : limit
  const mean = meanLevel(views)
  const { level, measured, believed, stray } = near(views, apart, centre, reach)
  if (believed * 2 > alike.length)
    return {
      level,
      mean,
      measured,
      doubt: null,
      believed,
      spread,
      disputed: false,
      stray,
      wet,
      dry,
      blind,
    }
  // One of them lies: that both say "wet" tells little while one stands near the lower limit.
  const wetter = min < (limits.lower + limits.upper) / 2 ? null : wet
  return { ...levelInDispute(views, limits.lower), mean, spread, disputed: true, stray: [], wet: wetter, dry, blind }
}

/** No probe is believed. */
const NOTHING = { level: null, mean: null, measured: 0, believed: 0, spread: 0, disputed: false, stray: [] }

/** What the probes say together that stand near the middle, and which do not. */
function near(views: readonly ProbeView[], apart: readonly number[], centre: number, reach: number) {
  let [sum, believed, measured] = [0, 0, Infinity]
  const stray: number[] = []
  for (let i = 0; i < views.length; i++) {
    const view = views[i]!
    if (view.level === null) continue
    if (Math.abs(view.level - apart[i]! - centre) > reach) {
      stray.push(i)
      continue
    }
    sum += view.level
    believed++
    measured = Math.min(measured, view.measured)
  }
  return { level: sum / believed, measured, believed, stray }
}

/** The mean of all that is told. */
function meanLevel(views: readonly ProbeView[]): number {
  let [sum, told] = [0, 0]
  for (const { level } of views) {
    if (level === null) continue
    sum += level
    told++
  }
  return sum / told
}

/** What the believed probes say, without what their containers were found to differ by. */
function alikeOf(views: readonly ProbeView[], apart: readonly number[]): readonly number[] {
  const alike: number[] = []
  for (let i = 0; i < views.length; i++) {
    const { level } = views[i]!
    if (level !== null) alike.push(level - apart[i]!)
  }
  return alike
}

/** Where all say dry it does not matter by how much they differ: the wettest decides. */
function levelInDispute(
  views: readonly ProbeView[],
  lower: number,
): Pick<ZoneLevel, 'level' | 'measured' | 'doubt' | 'believed'> {
  let [wettest, measured] = [-Infinity, Infinity]
  for (const view of views) {
    if (view.level === null) continue
    wettest = Math.max(wettest, view.level)
    measured = Math.min(measured, view.measured)
  }
  if (wettest > lower) return { level: null, measured: 0, doubt: 'probes-disagree', believed: 0 }
  return { level: wettest, measured, doubt: null, believed: 1 }
}

/** Doubts in which a number is missing, old, out of its band, or stands still. */
const BLIND: readonly unknown[] = ['reading-missing', 'reading-old', 'reading-unbelievable', 'reading-frozen']

function isBlind({ seen, doubt }: ProbeView): boolean {
  return seen === null || BLIND.includes(doubt)
}

/** What readings say that are good but for their age. */
function lastTold(views: readonly ProbeView[], lower: number): Pick<ZoneLevel, 'wet' | 'dry'> {
  let wet: number | null = null
  let dry: number | null = null
  for (const { seen, doubt, measured } of views) {
    if (seen === null || (doubt !== null && doubt !== 'reading-old')) continue
    if (seen > lower) wet = Math.max(wet ?? measured, measured)
    else dry = Math.min(dry ?? measured, measured)
  }
  return { wet: dry === null ? wet : null, dry: wet === null ? dry : null }
}
