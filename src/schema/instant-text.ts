import { type Instant, instant } from '../quantity/calendar.js'
import { InputError } from '../quantity/errors.js'

const ISO = /^(\d{4})-(\d\d)-(\d\d)[T ](\d\d):(\d\d)(?::(\d\d)(?:\.(\d{1,9}))?)?(Z|[+-]\d\d:\d\d)$/

/** The instant behind a date and time with its zone, as in ISO 8601. A time without a zone means different moments to different people. */
export function instantFromText(text: string): Instant {
  const match = ISO.exec(text.trim())
  if (match === null) throw notAnInstant(text)
  const [, year, month, day, hour, minute, second = '0', part = '', zone] = match as unknown as string[]
  // Date.UTC takes the years 0 to 99 for 1900 to 1999.
  const date = new Date(0)
  date.setUTCFullYear(Number(year), Number(month) - 1, Number(day))
  const offset = zone === 'Z' ? 0 : minutesOf(zone as string)
  const fits =
    date.getUTCMonth() === Number(month) - 1 &&
    date.getUTCDate() === Number(day) &&
    date.getUTCFullYear() === Number(year)
  if (!fits || Number(hour) > 23 || Number(minute) > 59 || Number(second) > 59 || offset === undefined)
    throw notAnInstant(text)
  const midnight = date.getTime() / 1000
  const whole = midnight + Number(hour) * 3600 + Number(minute) * 60 + Number(second) - offset * 60
  // Up to milliseconds one division gives the nearest double, which is what was written.
  const scale = 10 ** part.length
  return instant(part.length <= 3 ? (whole * scale + Number(part)) / scale : whole + Number(part) / scale)
}

/** An instant in ISO 8601 where milliseconds hold it in full, else as seconds since 1970. */
export function textFromInstant(time: number): string {
  const milliseconds = Math.round(time * 1000)
  if (milliseconds / 1000 !== time || time < -62_135_596_800 || time > 253_402_300_799) return String(time)
  return new Date(milliseconds).toISOString().replace('.000Z', 'Z')
}

function minutesOf(zone: string): number | undefined {
  const [hours, minutes] = [Number(zone.slice(1, 3)), Number(zone.slice(4, 6))]
  if (hours > 14 || minutes > 59) return undefined
  return (zone.startsWith('-') ? -1 : 1) * (hours * 60 + minutes)
}

function notAnInstant(text: string): InputError {
  return new InputError(
    'time',
    `"${text.slice(0, 60)}" is not a date and time with a zone`,
    'write it as 2026-05-19T06:30:00Z or 2026-05-19T08:30:00+02:00, or as seconds since 1970 in universal time',
  )
}
