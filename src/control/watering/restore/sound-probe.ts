import { isMoment } from '../../moment.js'
import { MAX_PROBATION } from '../probes/probes.js'
import type { WateringProbe } from '../state/state.js'
import { AGES, each, inRange, isCount, type Loose, nullOr } from './field.js'

export function probeSound(probe: Loose<WateringProbe>, elapsed: number): boolean {
  const { values, times } = probe
  return (
    (probe.time === null || isMoment(probe.time)) &&
    inRange(probe.measured, -AGES, elapsed) &&
    Array.isArray(values) &&
    Array.isArray(times) &&
    values.length <= 3 &&
    values.length === times.length &&
    each(values, (value) => inRange(value, 0, 1)) &&
    each(times, (time) => inRange(time, -AGES, elapsed)) &&
    inRange(probe.changed, -AGES, elapsed) &&
    inRange(probe.quiet, 0, AGES) &&
    isCount(probe.probation, MAX_PROBATION) &&
    nullOr(probe.anchor, -1, 2) &&
    inRange(probe.anchorAt, -AGES, elapsed) &&
    inRange(probe.fall, 0, 1) &&
    nullOr(probe.before, -1, 2) &&
    inRange(probe.beforeAt, -AGES, elapsed) &&
    nullOr(probe.peak, -1, 2) &&
    isCount(probe.misses, 48) &&
    nullOr(probe.fellFrom, -1, 2) &&
    typeof probe.latched === 'boolean'
  )
}
