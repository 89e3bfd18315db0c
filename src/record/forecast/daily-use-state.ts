import { type StateReader, stateReader } from '../restore-state.js'
import { newRing, restoredRing, type ScoreRing } from './score-ring.js'
import { MEMBERS, type MemberLosses } from './use-members.js'

/** How forecasts of one kind have done. */
export interface UseForecastRecord extends MemberLosses {
  /** Sizes of the newest misses. */
  readonly ring: ScoreRing
}

/** What is remembered of the use of a crop; plain data of about 3 kB. */
export interface DailyUseState {
  /** Days with a use. Unit: 1. Range: any. */
  readonly days: number
  /** Level of each member. Unit: that of the use. Range: any. */
  readonly levels: readonly number[]
  /** Usual size of its relative miss. Unit: 1. Range: any. */
  readonly spreads: readonly number[]
  /** Days with a radiation. Unit: 1. Range: any. */
  readonly litDays: number
  /** A usual radiation. Unit: that of the radiation. Range: any. */
  readonly usualRadiation: number | null
  /** Forecasts made with an expected radiation. */
  readonly withRadiation: UseForecastRecord
  /** Forecasts made without. */
  readonly without: UseForecastRecord
}

const PRIOR_SPREAD = 0.15

export function newDailyUseState(): DailyUseState {
  const record = { losses: new Array<number>(MEMBERS).fill(0), usual: 0.02, ring: newRing(PRIOR_SPREAD, 'size') }
  return { days: 0, levels: [], spreads: [], litDays: 0, usualRadiation: null, withRadiation: record, without: record }
}

/** A state that was kept as JSON, checked. */
export function restoredDailyUse(stored: unknown): DailyUseState {
  const reader = stateReader(stored)
  const days = reader.count('days')
  const length = days > 0 ? MEMBERS : 0
  const list = (field: string) => {
    const values = reader.numbers(field, length, Number.MIN_VALUE)
    return values.length === length ? values : reader.refuse(field, `has ${values.length} entries, not ${length}`)
  }
  return {
    days,
    levels: list('levels'),
    spreads: list('spreads'),
    litDays: reader.count('litDays'),
    usualRadiation: reader.numberOrNull('usualRadiation'),
    withRadiation: reader.inside('withRadiation', restoredRecord),
    without: reader.inside('without', restoredRecord),
  }
}

function restoredRecord(reader: StateReader): UseForecastRecord {
  const losses = reader.numbers('losses', MEMBERS, 0)
  if (losses.length !== MEMBERS) reader.refuse('losses', `has ${losses.length} entries, not ${MEMBERS}`)
  return { losses, usual: reader.number('usual', Number.MIN_VALUE), ring: reader.inside('ring', restoredRing) }
}
