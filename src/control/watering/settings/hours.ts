import { InputError } from '../../../quantity/errors.js'
import { isList, numberIn } from '../../../quantity/guard.js'
import { onlyNames } from '../../../quantity/one-of.js'
import { TIME_OF_DAY } from '../../domains.js'
import type { AllowedHours } from './settings.js'
import { ALLOWED_HOURS } from './settings-names.js'

const DAY = 86400

/** Plants use water in more hours of a day than these, whenever it may flow. Own judgement, no source. Unit: s. */
export const MIN_HOURS_OF_USE = 28800

/** Hours as plain numbers; `to` is after `from`, beyond midnight if need be. */
export interface Hours {
  readonly from: number
  readonly to: number
}

/** The allowed hours of settings or of a rehearsal, once they were found to make sense. */
export function checkedHours(hours: readonly AllowedHours[]): Hours[] {
  if (!isList(hours) || hours.length === 0 || hours.length > 24)
    throw new InputError(
      'allowedHours',
      'are missing',
      'give one to 24 of { from, to }; from 0 to 86400 is the whole day',
    )
  return hours.map((entry, i) => {
    onlyNames(entry, ALLOWED_HOURS, `allowedHours[${i}]`)
    const from = numberIn(entry.from, TIME_OF_DAY, 'from')
    const to = numberIn(entry.to, TIME_OF_DAY, 'to')
    if (from === to) throw new InputError('allowedHours', 'begin when they end', 'give the whole day as 0 to 86400')
    return { from, to: to > from ? to : to + 86400 }
  })
}

const timeOfDay = (local: number) => local - Math.floor(local / DAY) * DAY

/** Whether water may flow from a moment on for so long, with a margin on both sides. */
export function inHours(hours: readonly Hours[], local: number, run: number, margin: number): boolean {
  const time = timeOfDay(local)
  for (const { from, to } of hours) {
    if (to - from >= DAY) return true
    for (const start of [time, time + DAY]) if (start - margin >= from && start + run + margin <= to) return true
  }
  return false
}

/** How far the allowed hours of a moment have gone on, as a share of them; null outside them. */
export function shareOfHours(hours: readonly Hours[], local: number): number | null {
  const time = timeOfDay(local)
  for (const { from, to } of hours)
    for (const at of [time, time + DAY]) if (at >= from && at < to) return (at - from) / (to - from)
  return null
}

/** Seconds of a day in which water may flow; what stands in several hours counts once. */
export function allowedSeconds(hours: readonly Hours[]): number {
  const parts = hours.flatMap(({ from, to }) => [
    [from, Math.min(to, DAY)] as const,
    [0, Math.max(0, to - DAY)] as const,
  ])
  let [sum, until] = [0, 0]
  for (const [from, to] of parts.sort(([one], [other]) => one - other)) {
    sum += Math.max(0, to - Math.max(from, until))
    until = Math.max(until, to)
  }
  return sum
}

/** Whether at least a third of the allowed hours are allowed by a clock that is so far ahead as well. */
export function sharesEnough(hours: readonly Hours[], ahead: number): boolean {
  let shared = 0
  for (const { from, to } of hours)
    for (let i = 0; i < 12; i++)
      if (inHours(hours, from + ((i + 0.5) / 12) * (to - from) + ahead, 0, 0)) shared += (to - from) / 12
  return shared * 3 >= allowedSeconds(hours)
}
