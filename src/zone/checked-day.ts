import { type StateReader, stateReader } from '../record/restore-state.js'
import type { ZoneDay } from './zone-day.js'

/** More openings, shots and findings than a day can have, and more steps of light than its longest has. */
const MOST = 10000

/**
 * A day of a zone with all that a proposal reads of it: days are kept as JSON between one evening and the next, and one that was cut short or
 * changed must not be planned from.
 */
export function checkedDay(day: unknown): ZoneDay {
  const reader = stateReader(day, 'day')
  reader.number('from')
  reader.number('to')
  reader.inside('light', (light) => {
    light.number('dawn')
    light.number('dusk')
    if (light.numbers('course', MOST, 0).length === 0) light.refuse('course', 'has no step')
  })
  ifKnown(reader, 'level', (level) => {
    level.number('mean', -1, 2)
    level.inside('limits', (limits) => {
      limits.number('fullPoint', -1, 2)
      limits.number('refillPoint', -1, 2)
    })
  })
  reader.inside('balance', (balance) => {
    for (const field of ['use', 'given', 'drainFraction'] as const)
      balance.inside(field, (one) => isKnown(one) && one.number('value'))
  })
  ifKnown(reader, 'climate', (climate) => climate.number('perContainer'))
  reader.inside('nextUse', (next) => {
    if (!isKnown(next)) return
    next.number('use')
    if (next.numbers('band90', 2).length !== 2) next.refuse('band90', 'is no pair')
  })
  if ((day as ZoneDay).expectedRadiation !== undefined) reader.number('expectedRadiation', 0)
  reader.numbers('openings', MOST)
  reader.list('findings', MOST, () => true)
  reader.list('probes', MOST, (probe) => {
    probe.word('used', [true, false])
    return probe.list('shots', MOST, (shot) => shot.number('start'))
  })
  return day as ZoneDay
}

function isKnown(reader: StateReader): boolean {
  return reader.word('known', [true, false])
}

/** Reads the value of a result that is there. */
function ifKnown(reader: StateReader, field: string, read: (value: StateReader) => unknown): void {
  reader.inside(field, (one) => isKnown(one) && one.inside('value', read))
}
