import { readOrRefuse } from '../../quantity/attempt.js'
import { isList } from '../../quantity/guard.js'
import { restoredDailyUse } from '../../record/forecast/daily-use-state.js'
import { type LevelState, restoredLevelState } from '../../record/forecast/level-state.js'
import { type StateReader, stateReader } from '../../record/restore-state.js'
import type { DrainedLevel } from '../day/zone-day.js'
import { SALT_DAYS, type SaltDay, type ZoneMemory } from '../day/zone-memory.js'
import { inBlocks, type KeptRows, type Row } from '../record/kept-rows.js'
import { LEFT_OUT_FOR, type LeftOut, TABLES } from '../record/left-out.js'
import { type LocalDay, localDayOf } from '../record/local-day.js'
import type { ZoneEntry } from '../record/zone-record.js'
import type { Zone } from '../zone.js'
import { checkNumber, EPOCH } from './checked-results.js'
import { ENTRY_KINDS, type HeldEntry, type ZoneFollowState } from './follow-state.js'

/** A state of a follower that was kept as JSON, checked against the zone. */
export function restoredFollow(zone: Zone, stored: unknown): ZoneFollowState {
  return readOrRefuse('state', () => followState(zone, stored))
}

function followState(zone: Zone, stored: unknown): ZoneFollowState {
  const reader = stateReader(stored)
  const object = stored as Readonly<Record<string, unknown>>
  const rows = (kind: (typeof ENTRY_KINDS)[number]) => restoredRows(reader, kind, object[kind], widthOf(zone, kind))
  return {
    day: reader.insideOrNull('day', (day) => restoredDay(zone, day)),
    reading: rows('reading'),
    climate: rows('climate'),
    watering: rows('watering'),
    forecast: rows('forecast'),
    held: listOf(reader, 'held', object.held).map((entry, k) => restoredHeld(zone, reader, k, entry)),
    outOfOrder: reader.numbers('outOfOrder', MAX_ROWS, EPOCH[0], EPOCH[1]),
    leftOut: listOf(reader, 'leftOut', object.leftOut).map((entry, k) =>
      restoredLeftOut(reader, `leftOut[${k}]`, entry),
    ),
    newest: reader.inside('newest', (newest) => ({
      climate: newest.numberOrNull('climate'),
      watering: newest.numberOrNull('watering'),
      forecast: newest.numberOrNull('forecast'),
    })),
    memory: restoredMemory(zone, object.memory, 'state.memory'),
  }
}

/** More rows than a week by the second. */
const MAX_ROWS = 700000

/** Columns of a kind of row, its time among them. */
function widthOf(zone: Zone, kind: ZoneEntry['kind']): number {
  return kind === 'reading' ? 2 + zone.probes.length : kind === 'forecast' ? 3 : 5
}

/** A local day, checked to be one of the zone. */
export function restoredDay(zone: Zone, reader: StateReader): LocalDay {
  const day = localDayOf(zone.place.clock, checkNumber(reader, 'from', EPOCH))
  if (reader.number('from') !== day.from) reader.refuse('from', 'is no midnight of the zone')
  if (reader.number('to') !== day.to) reader.refuse('to', 'is not the end of the day')
  reader.word('date', [day.date])
  return day
}

function listOf(reader: StateReader, field: string, list: unknown): readonly unknown[] {
  if (!isList(list)) return reader.refuse(field, 'is not a list')
  // What walks over a list passes over an entry that was deleted.
  return list.length <= MAX_ROWS ? Array.from(list) : reader.refuse(field, `has ${list.length} entries`)
}

function restoredRows(reader: StateReader, field: string, stored: unknown, width: number): KeptRows {
  return reader.inside(field, (inside) => {
    const { full, open } = stored as Readonly<Record<string, unknown>>
    const rows = [
      ...listOf(inside, 'full', full).flatMap((block, k) => listOf(inside, `full[${k}]`, block)),
      ...listOf(inside, 'open', open),
    ].map((row) => restoredRow(inside, 'rows', row, width))
    const equal = field === 'watering' || field === 'forecast'
    for (let i = 1; i < rows.length; i++) {
      const step = rows[i]![0] - rows[i - 1]![0]
      if (!(equal ? step >= 0 : step > 0)) inside.refuse('rows', 'are not in the order of time')
    }
    return inBlocks(rows)
  })
}

function restoredRow(reader: StateReader, field: string, row: unknown, width: number): Row {
  const list = listOf(reader, field, row)
  if (list.length !== width) return reader.refuse(field, `hold a row of ${list.length} columns, not ${width}`)
  list.forEach((x, k) => {
    const number = typeof x === 'number' && x - x === 0
    if (!number && !(k > 0 && x === null)) reader.refuse(field, `hold ${x === null ? 'null for a time' : typeof x}`)
  })
  return list as unknown as Row
}

function restoredHeld(zone: Zone, reader: StateReader, k: number, entry: unknown): HeldEntry {
  const field = `held[${k}]`
  const list = listOf(reader, field, entry)
  const kind = ENTRY_KINDS.find((one) => one === list[0]) ?? reader.refuse(field, 'is of no kind')
  return [kind, restoredRow(reader, field, list[1], widthOf(zone, kind))]
}

function restoredLeftOut(reader: StateReader, field: string, entry: unknown): LeftOut {
  const list = listOf(reader, field, entry)
  const [moment, of, why] = list
  const table = TABLES.find((one) => one === of)
  const reason = LEFT_OUT_FOR.find((one) => one === why)
  const told = typeof moment === 'number' && moment >= EPOCH[0] && moment <= EPOCH[1]
  return told && table !== undefined && reason !== undefined && list.length === 3
    ? [moment, table, reason]
    : reader.refuse(field, 'is no entry that was left out')
}

/** What was learned and kept as JSON, checked field by field; what belongs to no probe of the zone is left behind. */
export function restoredMemory(zone: Zone, stored: unknown, path = 'memory'): ZoneMemory {
  const reader = stateReader(stored, path)
  const object = stored as Readonly<Record<string, unknown>>
  const byProbe = <T>(field: string, read: (one: StateReader, value: unknown) => T): Record<string, T> =>
    reader.inside(field, (inside) => {
      const held: unknown = object[field]
      const values = held as Readonly<Record<string, unknown>>
      const names = zone.probes.map(({ name }) => name).filter((name) => Object.hasOwn(values, name))
      return Object.fromEntries(names.map((name) => [name, inside.inside(name, (one) => read(one, values[name]))]))
    })
  return {
    levels: byProbe('levels', restoredLevel),
    lastDrain: reader.numberOrNull('lastDrain'),
    salt: reader.list('salt', SALT_DAYS, (one) => restoredSaltDay(zone, one)),
    drying: byProbe<LevelState>('drying', (_, value) => restoredLevelState(value)),
    use: reader.inside('use', () => restoredDailyUse(object.use)),
  }
}

function restoredSaltDay(zone: Zone, reader: StateReader): SaltDay {
  return {
    at: reader.number('at'),
    drainEC: reader.number('drainEC'),
    levels: reader.numbersOrNulls('levels', zone.probes.length),
  }
}

function restoredLevel(reader: StateReader): DrainedLevel {
  return {
    level: reader.number('level', -1, 2),
    spread: reader.number('spread', 0, 2),
    shots: reader.count('shots'),
    at: reader.number('at'),
  }
}
