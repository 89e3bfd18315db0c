import { readable, readOrRefuse } from '../quantity/attempt.js'
import type { Duration } from '../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../quantity/guard.js'
import { type NamesOf, oneOf, onlyNames } from '../quantity/one-of.js'
import type { Reducer } from '../quantity/reducer.js'
import { ALARM_DELAY, SHELF_TIME } from './domains.js'
import { isMoment } from './moment.js'
import type { AskedNow, SeenClock } from './terms.js'

/** How an alarm behaves. */
export interface AlarmSettings {
  /** The condition must last so long before the alarm is raised. Unit: s. Range: [0, 86400]. */
  readonly onDelay: Duration
  /** The condition must be gone so long before it has returned to normal. Unit: s. Range: [0, 86400]. */
  readonly offDelay: Duration
  /** Longest time for which it can be shelved. Unit: s. Range: (0, 604800]. */
  readonly maxShelving: Duration
}

const NAMES: NamesOf<AlarmSettings> = { onDelay: 1, offDelay: 1, maxShelving: 1 }

/** State of an alarm in its life cycle. */
export type AlarmPhase = 'normal' | 'unacknowledged' | 'acknowledged' | 'returned-unacknowledged' | 'shelved'

/** What happens to an alarm: time goes on, its condition comes or goes, somebody does something. */
export interface AlarmInput extends AskedNow {
  /** Whether the condition is there; left out where it is not known, which changes nothing. Only `true` and `false` are known. */
  readonly condition?: boolean
  readonly action?: 'acknowledge' | 'shelve' | 'unshelve'
  /** How long to shelve; the longest time by default, and never more; not at all where it is no time above zero. Unit: s. */
  readonly shelveFor?: number
}

/** What is remembered; plain data. */
export interface AlarmState extends SeenClock {
  readonly phase: AlarmPhase
  /** Whether the condition was there when it was known last. */
  readonly condition: boolean
  /** Since when it is so. Unit: s. */
  readonly since: number | null
  /** Inputs in a row that brought no later moment, up to 100. Unit: 1. */
  readonly idle: number
  /** Whether the alarm is active, delays considered. */
  readonly active: boolean
  /** When it comes off the shelf. Unit: s. */
  readonly shelvedUntil: number | null
}

/** What an input brought. */
export interface AlarmReport {
  readonly phase: AlarmPhase
  readonly changed: boolean
  /** Whether somebody must be told now: only where the alarm becomes unacknowledged. */
  readonly announce: boolean
  /** The message could not be read, as a part of it throws, and said nothing. Left out where it could. */
  readonly unreadable?: true
}

/**
 * The life cycle of one alarm: raised, acknowledged, returned to normal, shelved for a time. Delays on both sides keep a condition that
 * flickers from raising it again and again; a shelved alarm comes back by itself.
 *
 * A moment that cannot be read passes no time, nor does a message that throws when it is read, which says nothing and is marked `unreadable`; where the clock stands still for ten inputs, a condition is told without its delay.
 *
 * @procedure Follows the condition through its delays; then moves between the phases as the standard draws them: an alarm that returns to
 * normal before anybody saw it stays on the list until it is acknowledged.
 * @param settings - Delays and longest time on the shelf.
 * @returns A reducer that takes conditions and actions and gives the phase.
 * @throws `DomainError` outside the ranges; its step throws `InputError` for a missing input and for an action that is not one of the three words.
 * @source isa-18-2-2016, alarm state transitions, as restated in public documentation
 * @example
 * const reducer = alarmLifeCycle({ onDelay: minutes(5), offDelay: minutes(5), maxShelving: hours(8) })
 * const inputs = [
 *   { now: 0, condition: true }, { now: 300, condition: true }, { now: 400, action: 'acknowledge' as const },
 *   { now: 600, condition: false }, { now: 900, condition: false },
 * ]
 * const phases = runReducer({ reducer, inputs }).outputs.map((report) => report.phase)
 * phases // => ['normal', 'unacknowledged', 'acknowledged', 'acknowledged', 'normal']
 */
export function alarmLifeCycle(settings: AlarmSettings): Reducer<AlarmState, AlarmInput, AlarmReport> {
  const { onDelay, offDelay, shelf } = readOrRefuse('settings', () => checkedTimes(settings))
  const start: AlarmState = {
    phase: 'normal',
    last: null,
    condition: false,
    since: null,
    idle: 0,
    active: false,
    shelvedUntil: null,
  }
  return {
    start,
    step: (stored, input) => {
      requireObject(input, 'input')
      const read = readable(() => saidBy(input))
      const { now: told, condition, action, shelveFor } = read ?? SILENT
      if (action !== undefined) oneOf(action, ['acknowledge', 'shelve', 'unshelve'], 'action')
      // What is no state is none: the alarm is raised again rather than kept back.
      const state = readable(() => stateFrom(stored, shelf)) ?? start
      const now = isMoment(told) ? told : null
      // A clock that was set back must not stretch a delay or a shelf: what was waited for counts from now on.
      const seen = now !== null && now < (state.last ?? now) ? shifted(state, now) : state
      const known = withCondition(seen, now, condition, { onDelay, offDelay })
      const next = act(moved(known), action, shelveFor, shelf)
      const changed = next.phase !== state.phase
      const report = { phase: next.phase, changed, announce: changed && next.phase === 'unacknowledged' }
      return [next, read === undefined ? { ...report, unreadable: true } : report]
    },
  }
}

function checkedTimes(settings: AlarmSettings) {
  onlyNames(settings, NAMES, 'settings')
  return {
    onDelay: numberIn(settings.onDelay, ALARM_DELAY, 'onDelay'),
    offDelay: numberIn(settings.offDelay, ALARM_DELAY, 'offDelay'),
    shelf: numberIn(settings.maxShelving, SHELF_TIME, 'maxShelving'),
  }
}

interface Said {
  readonly now: unknown
  readonly condition?: unknown
  readonly action?: AlarmInput['action'] | undefined
  readonly shelveFor?: unknown
}

const SILENT: Said = { now: null }

/** Each part of a message read once, so that none can throw later. */
function saidBy({ now, condition, action, shelveFor }: AlarmInput): Said {
  return { now, condition, action: action ?? undefined, shelveFor }
}

function shifted(state: AlarmState, now: number): AlarmState {
  const back = now - (state.last as number)
  const moved = (time: number | null) => (time === null ? null : time + back)
  return { ...state, since: moved(state.since), shelvedUntil: moved(state.shelvedUntil) }
}

/** So many inputs without a later moment are a clock that stands still: what is there is then told without a delay. */
const IDLE = 10
/** And so many end a shelf. */
const LONG_IDLE = 100

function withCondition(
  state: AlarmState,
  now: number | null,
  told: unknown,
  { onDelay, offDelay }: { readonly onDelay: number; readonly offDelay: number },
): AlarmState {
  const condition = typeof told === 'boolean' ? told : state.condition
  const idle = now === null || now === state.last ? Math.min(LONG_IDLE, state.idle + 1) : 0
  const last = now ?? state.last
  const since = condition === state.condition && state.since !== null ? state.since : last
  const waited = since === null || last === null ? -1 : last - since
  const lasted = waited >= (condition ? onDelay : offDelay) || (condition && idle >= IDLE)
  return { ...state, last, condition, since, idle, active: lasted ? condition : state.active }
}

/** Moves that the alarm makes by itself. */
function moved(state: AlarmState): AlarmState {
  const { phase, active, shelvedUntil, last, idle } = state
  if (phase === 'shelved') {
    if (shelvedUntil !== null && last !== null && last < shelvedUntil && idle < LONG_IDLE) return state
    return { ...state, phase: active ? 'unacknowledged' : 'normal', shelvedUntil: null }
  }
  if (active && (phase === 'normal' || phase === 'returned-unacknowledged'))
    return { ...state, phase: 'unacknowledged' }
  if (!active && phase === 'unacknowledged') return { ...state, phase: 'returned-unacknowledged' }
  if (!active && phase === 'acknowledged') return { ...state, phase: 'normal' }
  return state
}

function act(state: AlarmState, action: AlarmInput['action'], shelveFor: unknown, shelf: number): AlarmState {
  const { phase, active, last } = state
  if (action === 'acknowledge') {
    if (phase === 'unacknowledged') return { ...state, phase: 'acknowledged' }
    if (phase === 'returned-unacknowledged') return { ...state, phase: 'normal' }
  }
  if (action === 'shelve' && phase !== 'shelved' && last !== null) {
    const asked = shelveFor === undefined ? shelf : shelveFor
    // A time that makes no sense must not silence an alarm.
    const wanted = typeof asked === 'number' && asked > 0 ? Math.min(asked, shelf) : 0
    return { ...state, phase: 'shelved', shelvedUntil: last + wanted }
  }
  if (action === 'unshelve' && phase === 'shelved')
    return { ...state, phase: active ? 'unacknowledged' : 'normal', shelvedUntil: null }
  return state
}

const PHASES: readonly unknown[] = ['normal', 'unacknowledged', 'acknowledged', 'returned-unacknowledged', 'shelved']

/** A stored state with each part read once, so that none can throw later; none where it is no state. */
function stateFrom(stored: unknown, shelf: number): AlarmState | undefined {
  if (typeof stored !== 'object' || stored === null) return undefined
  const { phase, last, condition, since, idle, active, shelvedUntil } = stored as AlarmState
  const isWhole =
    PHASES.includes(phase) &&
    (last === null || isMoment(last)) &&
    typeof condition === 'boolean' &&
    (since === null || (isMoment(since) && isMoment(last) && since <= last)) &&
    typeof idle === 'number' &&
    idle >= 0 &&
    idle <= LONG_IDLE &&
    typeof active === 'boolean' &&
    (shelvedUntil === null
      ? phase !== 'shelved'
      : phase === 'shelved' && isMoment(last) && isMoment(shelvedUntil) && shelvedUntil - last <= shelf + 1e-3)
  return isWhole ? { phase, last, condition, since, idle, active, shelvedUntil } : undefined
}
