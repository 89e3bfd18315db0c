import type { WateringFill, WateringZone } from '../state/state.js'
import { AGES, each, inRange, isCount, type Loose, nullOr } from './field.js'

export function zoneSound(zone: Loose<WateringZone>, elapsed: number): boolean {
  return (
    typeof zone.dry === 'boolean' &&
    inRange(zone.best, -1, 2) &&
    inRange(zone.spell, -AGES, AGES) &&
    inRange(zone.lastWet, -AGES, elapsed) &&
    inRange(zone.use, 0, AGES) &&
    inRange(zone.given, 0, AGES) &&
    nullOr(zone.level, -1, 2) &&
    nullOr(zone.told, -1, 2) &&
    inRange(zone.behind, 0, AGES) &&
    typeof zone.disputed === 'boolean' &&
    (zone.verdict === 'plausible' || zone.verdict === 'use-too-small' || zone.verdict === 'use-too-large')
  )
}

export function fillSound(fill: Loose<WateringFill>, elapsed: number, probes: number): boolean {
  const { before, atFull, bias, drift, apart } = fill
  return (
    nullOr(fill.full, 0, elapsed) &&
    inRange(fill.tried, 0, elapsed) &&
    nullOr(fill.under, 0, AGES) &&
    inRange(fill.max, -AGES, AGES) &&
    isCount(fill.fails, 9) &&
    typeof fill.cut === 'boolean' &&
    inRange(fill.net, -AGES, AGES) &&
    inRange(fill.due, 0, AGES) &&
    inRange(fill.owed, -AGES, AGES) &&
    inRange(fill.passing, 0, 1) &&
    inRange(fill.lately, 0, 1) &&
    inRange(fill.excess, 0, AGES) &&
    inRange(fill.overflow, 0, AGES) &&
    Array.isArray(before) &&
    before.length === probes &&
    each(before, (level) => nullOr(level, -1, 2)) &&
    Array.isArray(atFull) &&
    atFull.length === probes &&
    each(atFull, (level) => nullOr(level, -1, 2)) &&
    nullOr(fill.levelAtFull, -2, 2) &&
    Array.isArray(bias) &&
    bias.length === probes &&
    each(bias, (change) => inRange(change, -1, 1)) &&
    Array.isArray(drift) &&
    drift.length === probes &&
    each(drift, (change) => inRange(change, 0, 1)) &&
    Array.isArray(apart) &&
    apart.length === probes &&
    each(apart, (change) => inRange(change, -1, 1)) &&
    nullOr(fill.foretold, -AGES, AGES) &&
    inRange(fill.slip, -1, 1) &&
    inRange(fill.usual, 0, 1)
  )
}
