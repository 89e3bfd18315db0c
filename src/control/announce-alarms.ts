import { readOrRefuse } from '../quantity/attempt.js'
import { InputError } from '../quantity/errors.js'
import type { Duration } from '../quantity/generated/kinds.js'
import { numberIn, requireObject, requireRows, wholeNumberIn } from '../quantity/guard.js'
import { type NamesOf, oneOf, onlyNames } from '../quantity/one-of.js'
import type { Reducer } from '../quantity/reducer.js'
import { ALARM_WINDOW, MAX_ALARMS } from './domains.js'
import { isMoment } from './moment.js'
import type { AskedNow, SeenClock } from './terms.js'

const PRIORITIES: readonly string[] = ['high', 'medium', 'low']

/** What one person can take in. */
export interface AnnounceSettings {
  /** Most alarms in the time below. Unit: 1. Range: integers [1, 100]. */
  readonly maxAlarms: number
  /** Time in which they are counted. Unit: s. Range: (0, 86400]. */
  readonly window: Duration
}

const NAMES: NamesOf<AnnounceSettings> = { maxAlarms: 1, window: 1 }

/** Alarms that became unacknowledged at one moment. */
export interface NewAlarms extends AskedNow {
  /** Their names and how urgent they are; what can hurt people or flood the house is `high`. */
  readonly alarms: readonly { readonly name: string; readonly priority: 'high' | 'medium' | 'low' }[]
}

/** What is remembered: the moments of the last announcements, at most as many as are allowed. */
export interface AnnounceState extends SeenClock {
  /** How long no later moment has come, counted in inputs: one for an input with alarms, ten for one without, up to 100. Unit: 1. */
  readonly idle: number
  readonly recent: readonly number[]
  readonly held: readonly { readonly name: string; readonly priority: 'high' | 'medium' | 'low' }[]
}

/** Who is told what. */
export interface Announcement {
  /** Names to tell one by one. */
  readonly tell: readonly string[]
  /** Names that are only listed, because there are too many at a time. */
  readonly held: readonly string[]
  /** Whether there are too many: say so once, and say how many. */
  readonly flood: boolean
}

/**
 * Keeps a flood of alarms from hiding the one that matters: the most urgent are told one by one up to a number in a time, the others
 * wait in a list and are told when there is room. An alarm of high priority is always told. None is dropped, and none waits for a clock that
 * stands still: after ten inputs without a later moment and without an alarm, or a hundred with alarms, there is room again.
 *
 * @procedure Sorts by priority, tells as many as the window has room for and all of high priority, and holds the rest back.
 * @returns A reducer that takes new alarms and gives what to tell.
 * @throws `DomainError` outside the ranges; its step throws `InputError` for a missing list, an alarm without a name, a priority that is not one of the three words,
 * and an input or a state of which a part throws when it is read.
 * @source isa-18-2-2016, where more than ten alarms in ten minutes for one operator are a flood
 * @example
 * const reducer = announceAlarms({ maxAlarms: 2, window: minutes(10) })
 * const alarms = ['a', 'b', 'c'].map((name) => ({ name, priority: 'low' as const }))
 * const { outputs } = runReducer({ reducer, inputs: [{ now: 0, alarms }, { now: 700, alarms: [] }] })
 * outputs // => [{ tell: ['a', 'b'], held: ['c'], flood: true }, { tell: ['c'], held: [], flood: false }]
 */
export function announceAlarms(settings: AnnounceSettings): Reducer<AnnounceState, NewAlarms, Announcement> {
  const { max, window } = readOrRefuse('settings', () => {
    onlyNames(settings, NAMES, 'settings')
    return {
      max: wholeNumberIn(settings.maxAlarms, MAX_ALARMS, 'maxAlarms'),
      window: numberIn(settings.window, ALARM_WINDOW, 'window'),
    }
  })
  const stepped = (state: AnnounceState, input: NewAlarms): [AnnounceState, Announcement] => {
    const { now, alarms } = input
    requireRows(alarms, 'alarms')
    const kept = listOf<number>(state?.recent).filter(isMoment)
    // A moment that cannot be read passes no time.
    const moment = isMoment(now) ? now : (kept[kept.length - 1] ?? 0)
    const last = isMoment(state?.last) ? state.last : null
    const idle = isMoment(now) && now !== last ? 0 : idleOf(state?.idle) + (alarms.length > 0 ? 1 : 10)
    // Times that lie ahead belong to a clock that was set back; where it stands still no time of the window would ever pass.
    const recent = idle >= STILL ? [] : kept.filter((time) => moment - time < window && time <= moment)
    for (const alarm of alarms) checkAlarm(alarm)
    const rank = { high: 0, medium: 1, low: 2 }
    const waiting = [...listOf<AnnounceState['held'][number]>(state?.held).filter(isHeld), ...alarms].sort(
      (a, b) => rank[a.priority] - rank[b.priority],
    )
    const room = max - recent.length
    const tell = waiting.filter(({ priority }, i) => i < room || priority === 'high')
    const held = waiting.slice(tell.length)
    const times = [...recent, ...tell.map(() => moment)].slice(-max)
    return [
      { last: isMoment(now) ? now : last, idle: idle >= STILL ? 0 : idle, recent: times, held },
      { tell: tell.map(({ name }) => name), held: held.map(({ name }) => name), flood: held.length > 0 },
    ]
  }
  return {
    start: { last: null, idle: 0, recent: [], held: [] },
    step: (state, input) => {
      requireObject(input, 'input')
      return readOrRefuse('input', () => stepped(state, input))
    },
  }
}

/** A clock that brought no later moment for so long stands still. */
const STILL = 100

function idleOf(stored: unknown): number {
  return typeof stored === 'number' && stored >= 0 && stored <= STILL ? stored : 0
}

function checkAlarm({ name, priority }: NewAlarms['alarms'][number]): void {
  if (typeof name !== 'string') throw new InputError('name', `a ${typeof name} is no name`, 'name each alarm')
  oneOf(priority, PRIORITIES, 'priority')
}

/** A list of a stored state, or none where it was lost. */
function listOf<T>(stored: readonly T[] | undefined): readonly T[] {
  return Array.isArray(stored) ? stored : []
}

function isHeld(alarm: Partial<AnnounceState['held'][number]> | null): boolean {
  return typeof alarm?.name === 'string' && PRIORITIES.includes(alarm.priority as string)
}
