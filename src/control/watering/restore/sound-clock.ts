import { isMoment } from '../../moment.js'
import { EXCUSED } from '../delivery/unknown-time.js'
import type { WateringClock } from '../state/state.js'
import { AGES, inRange, isCount, type Loose, nullOr } from './field.js'

export function clockSound(clock: Loose<WateringClock>): boolean {
  return (
    (clock.raw === null || isMoment(clock.raw)) &&
    nullOr(clock.base, -AGES, AGES) &&
    (clock.raw === null) === (clock.base === null) &&
    inRange(clock.elapsed, 0, AGES) &&
    inRange(clock.pace, 0, AGES) &&
    isCount(clock.paces, 32) &&
    isCount(clock.steady, 100) &&
    isCount(clock.stalls, 100) &&
    isCount(clock.same, AGES) &&
    isCount(clock.usual, 3600) &&
    inRange(clock.lent, 0, AGES) &&
    inRange(clock.owed, 0, AGES) &&
    inRange(clock.longer, 0, AGES) &&
    isCount(clock.longs, 8) &&
    inRange(clock.uneven, 1, AGES) &&
    isCount(clock.unproven, EXCUSED) &&
    isCount(clock.bad, 20) &&
    inRange(clock.doubt, 0, AGES) &&
    inRange(clock.agreed, 0, clock.elapsed as number) &&
    (clock.sent === null || isMoment(clock.sent)) &&
    inRange(clock.sentAt, 0, clock.elapsed as number) &&
    isCount(clock.vouched, 10) &&
    nullOr(clock.refused, -AGES, AGES) &&
    inRange(clock.byCount, -AGES, AGES) &&
    inRange(clock.byClock, -AGES, AGES)
  )
}
