import { dayOfCivilDate } from '../../numerics/civil-date.js'
import type { LocalOffset } from '../../record/local-time.js'
import { checkOffsets, utcFromLocal } from '../../record/local-time.js'

/** The order of the parts of a date that is written with slashes. */
export type DateOrder = 'day-month-year' | 'month-day-year'

/** A time as it stands in a table: a moment, or the reading of a local clock. */
export type CellTime = { readonly utc: number } | { readonly local: number }

const ISO =
  /^(\d{4})-(\d\d)-(\d\d)(?:[T ](\d{1,2}):(\d\d)(?::(\d\d)(?:[.,](\d{1,9}))?)?)?\s?(Z|UTC|[+-]\d\d(?::?\d\d)?)?$/
const DOTS = /^(\d{1,2})\.(\d{1,2})\.(\d{4})(?:[T ,]+(\d{1,2}):(\d\d)(?::(\d\d)(?:[.,](\d{1,9}))?)?)?$/
const SLASHES = /^(\d{1,2})\/(\d{1,2})\/(\d{4})(?:[T ,]+(\d{1,2}):(\d\d)(?::(\d\d)(?:[.,](\d{1,9}))?)?)?$/
const YEAR_FIRST = /^(\d{4})\/(\d{1,2})\/(\d{1,2})(?:[T ,]+(\d{1,2}):(\d\d)(?::(\d\d)(?:[.,](\d{1,9}))?)?)?$/
const SECONDS = /^-?\d{9,10}(\.\d+)?$/
const MILLISECONDS = /^\d{12,13}$/
/** 2026051907 and 202605190710: dates without marks, which as seconds or milliseconds since 1970 would be of 2033 and 2034, or of 1976. */
const RUN_TOGETHER = /^20[0-2]\d(0[1-9]|1[0-2])(0[1-9]|[12]\d|3[01])([01]\d|2[0-4])([0-5]\d){0,2}$/

/** The time of a cell, or undefined where it is none: a 30 February is none. */
export function timeOfCell(cell: string, order: DateOrder | undefined): CellTime | undefined {
  const iso = ISO.exec(cell)
  if (iso !== null) {
    const [, year, month, day, hour, minute, second, part, zone] = iso
    const local = clockReading(year, month, day, [hour, minute, second, part])
    if (local === undefined) return undefined
    if (zone === undefined) return { local }
    const offset = secondsOfZone(zone)
    return offset === undefined ? undefined : { utc: local - offset }
  }
  const dots = DOTS.exec(cell)
  if (dots !== null) return localOf(clockReading(dots[3], dots[2], dots[1], dots.slice(4)))
  const first = YEAR_FIRST.exec(cell)
  if (first !== null) return localOf(clockReading(first[1], first[2], first[3], first.slice(4)))
  const slashes = SLASHES.exec(cell)
  if (slashes !== null && order !== undefined) {
    const [day, month] = order === 'day-month-year' ? [slashes[1], slashes[2]] : [slashes[2], slashes[1]]
    return localOf(clockReading(slashes[3], month, day, slashes.slice(4)))
  }
  if (RUN_TOGETHER.test(cell)) return undefined
  if (SECONDS.test(cell)) return { utc: Number(cell) }
  return MILLISECONDS.test(cell) ? { utc: Number(cell) / 1000 } : undefined
}

/** The order of dates with slashes, from a day beyond 12; undefined where none is, or where they contradict each other. */
export function dateOrderOf(cells: Iterable<string>): DateOrder | undefined {
  let [dayFirst, monthFirst] = [false, false]
  for (const cell of cells) {
    const match = cell.includes('/') ? SLASHES.exec(cell) : null
    if (match === null) continue
    if (Number(match[1]) > 12) dayFirst = true
    if (Number(match[2]) > 12) monthFirst = true
  }
  return dayFirst === monthFirst ? undefined : dayFirst ? 'day-month-year' : 'month-day-year'
}

/** What to do about a cell that is no time, in words. */
export function remedyForTime(cell: string): string {
  if (SLASHES.test(cell)) return 'say with dateOrder whether the day or the month comes first'
  if (RUN_TOGETHER.test(cell)) return 'part the date as 2026-05-19 07:10: run together it could be a number of seconds'
  if (/[ap]\.?m\.?$/i.test(cell)) return 'write the time in 24 hours'
  if (/^\d{5}([.,]\d+)?$/.test(cell))
    return 'if it is the day number of a spreadsheet, give the column the format of date and time and save it again'
  if (/^\d{1,2}([./-])\d{1,2}\1\d\d\b/.test(cell)) return 'write the year with four digits'
  if (!/\d/.test(cell))
    return 'where the line holds no reading, such as units below the names, remove it or begin it with #'
  if (ISO.test(cell) || DOTS.test(cell) || YEAR_FIRST.test(cell)) return 'there is no such day or hour; correct it'
  return 'write it as 2026-05-19T07:10+02:00, or as 2026-05-19 07:10 with a clock'
}

function localOf(local: number | undefined): CellTime | undefined {
  return local === undefined ? undefined : { local }
}

function clockReading(
  year: string | undefined,
  month: string | undefined,
  day: string | undefined,
  [hour = '0', minute = '0', second = '0', part = '']: readonly (string | undefined)[],
): number | undefined {
  const [y, mm, dd] = [Number(year), Number(month), Number(day)]
  const first = dayOfCivilDate(y, mm, 1)
  // Behind the twelfth month is the first of the next year.
  const days = dayOfCivilDate(y, mm + 1, 1) - first
  if (mm < 1 || mm > 12 || dd < 1 || dd > days) return undefined
  const [h, m, s] = [Number(hour), Number(minute), Number(second)]
  // 24:00 is the midnight at the end of a day: ISO 8601.
  if (h > 24 || m > 59 || s > 59 || (h === 24 && (m > 0 || s > 0))) return undefined
  return (first + dd - 1) * 86400 + h * 3600 + m * 60 + s + (part === '' ? 0 : Number(`0.${part}`))
}

function secondsOfZone(zone: string): number | undefined {
  if (zone === 'Z' || zone === 'UTC') return 0
  const [hours, minutes] = [Number(zone.slice(1, 3)), Number(zone.slice(-2))]
  const some = zone.length > 3 ? minutes : 0
  return hours > 14 || some > 59 ? undefined : (zone.startsWith('-') ? -1 : 1) * (hours * 3600 + some * 60)
}

/** Times in the order of a table, as moments; how the rows must be turned to run with time. */
export interface OrderedTimes {
  /** Moment of each row; NaN where a local clock never showed it, or where it cannot be told from another. */
  readonly time: Float64Array
  readonly order: 'rising' | 'newest-first' | 'shuffled'
}

/**
 * Moments of the rows. Local readings are told apart in the repeated hour of autumn by the order in which they stand, also in a table
 * that begins with the newest; in a table without order they cannot be, and are left without a time.
 */
export function orderedTimes(times: readonly CellTime[], clock: readonly LocalOffset[]): OrderedTimes {
  const inUtc = (rows: readonly CellTime[]) => {
    if (!rows.some((one) => 'local' in one))
      return Float64Array.from(rows as readonly { readonly utc: number }[], ({ utc }) => utc)
    if (clock.length > 0) checkOffsets(clock, 'clock')
    const local = utcFromLocal({
      local: rows.map((one) => ('local' in one ? one.local : Number.NaN)),
      offsets: clock.length > 0 ? clock : [{ from: 0, ahead: 0 }],
    }).time
    return local.map((moment, i) => {
      const one = rows[i]!
      return 'utc' in one ? one.utc : moment
    })
  }
  const straight = inUtc(times)
  if (rises(straight)) return { time: straight, order: 'rising' }
  const turned = inUtc([...times].reverse())
  if (rises(turned)) return { time: turned.reverse(), order: 'newest-first' }
  const doubtful = (one: CellTime) =>
    'local' in one &&
    clock.filter(({ ahead }, k) => {
      const moment = one.local - ahead
      return moment < (clock[k + 1]?.from ?? Infinity) && (k === 0 || moment >= clock[k]!.from)
    }).length > 1
  return {
    time: straight.map((moment, i) => (doubtful(times[i]!) ? Number.NaN : moment)),
    order: 'shuffled',
  }
}

/** Whether times never fall, those that are missing left out. */
function rises(time: Float64Array): boolean {
  let last = -Infinity
  for (const now of time) {
    if (Number.isNaN(now)) continue
    if (now < last) return false
    last = now
  }
  return true
}
