import type { StateReader } from '../../../record/restore-state.js'
import type { BalanceMark } from '../watch/found-water.js'
import type { BalanceWatch } from '../watch/watch-balance.js'
import type { ClockWatch } from '../watch/watch-clock.js'
import { type CounterWatch, MAX_LATE } from '../watch/watch-counter.js'
import type { SteadyWatch } from '../watch/watch-feed.js'
import { type GaugeWatch, TIMES } from '../watch/watch-gauge.js'
import type { PairWatch } from '../watch/watch-pairs.js'
import { QUARTERS, type TimingWatch } from '../watch/watch-timing.js'
import type { UsualShares } from './zone-state.js'

/** Reads each place of a list by its number. */
export function places<T>(count: number, read: (place: string) => T): T[] {
  return Array.from({ length: count }, (_, i) => read(String(i)))
}

/** A list of just so many entries. */
export function exactly<T>(reader: StateReader, field: string, length: number, list: T[]): T[] {
  return list.length === length ? list : reader.refuse(field, `has ${list.length} entries, not ${length}`)
}

export function clock(reader: StateReader): ClockWatch {
  return {
    last: reader.numberOrNull('last'),
    cadence: reader.number('cadence', 0),
    jitter: reader.number('jitter', 0),
    recent: reader.number('recent', 0),
    calls: reader.count('calls'),
    still: reader.count('still'),
    trouble: reader.insideOrNull('trouble', (one) => ({
      kind: one.word('kind', ['unreadable', 'back', 'ahead', 'still', 'rate']),
      size: one.number('size'),
      call: one.count('call'),
    })),
  }
}

export function counter(reader: StateReader): CounterWatch {
  return {
    count: reader.numberOrNull('count'),
    top: reader.numberOrNull('top'),
    slipped: reader.numberOrNull('slipped'),
    changed: reader.numberOrNull('changed'),
    until: reader.numberOrNull('until'),
    awaited: reader.numberOrNull('awaited'),
    lag: reader.number('lag', 0, MAX_LATE),
    grain: reader.number('grain', 0),
    step: reader.number('step', 0),
  }
}

export function balance(reader: StateReader, probes: number): BalanceWatch {
  const mark = (one: StateReader): BalanceMark => ({
    time: one.number('time'),
    balance: one.number('balance'),
    levels: one.numbersOrNulls('levels', probes),
    came: one.number('came', 0),
    left: one.number('left', 0),
  })
  return {
    came: reader.number('came', 0),
    left: reader.number('left', 0),
    low: reader.insideOrNull('low', mark),
    lowBefore: reader.insideOrNull('lowBefore', mark),
    from: reader.number('from'),
    flowed: reader.numberOrNull('flowed'),
    found: reader.insideOrNull('found', (one) => ({
      time: one.number('time'),
      size: one.number('size'),
      drained: one.number('drained'),
      lasted: one.number('lasted', 0),
    })),
  }
}

export function timing(reader: StateReader, probes: number): TimingWatch {
  return {
    from: reader.numberOrNull('from'),
    ordered: reader.number('ordered', 0),
    metered: reader.number('metered', 0),
    levels: reader.numbersOrNulls('levels', probes),
    quarters: reader.list('quarters', QUARTERS, (one) => ({
      ordered: one.number('ordered', 0),
      metered: one.numberOrNull('metered'),
      change: one.numberOrNull('change'),
    })),
    moved: reader.insideOrNull('moved', (one) => ({ by: one.number('by'), time: one.number('time') })),
  }
}

export function usual(reader: StateReader): UsualShares {
  return {
    metered: reader.number('metered', 0),
    meteredShots: reader.count('meteredShots'),
    drained: reader.number('drained', 0),
    drainedShots: reader.count('drainedShots'),
    drainedAt: reader.number('drainedAt'),
  }
}

export function gauge(reader: StateReader): GaugeWatch {
  return {
    usual: reader.numberOrNull('usual'),
    since: reader.numberOrNull('since'),
    drained: reader.number('drained', 0),
    beyond: reader.list('beyond', TIMES, (one) => ({ time: one.number('time'), share: one.number('share', 0) })),
  }
}

export function steady(reader: StateReader): SteadyWatch {
  return {
    usual: reader.number('usual', 0),
    count: reader.count('count'),
    odd: reader.count('odd'),
    now: reader.number('now', 0),
    since: reader.numberOrNull('since'),
  }
}

export function pairs(reader: StateReader, probes: number): PairWatch {
  return {
    start: reader.numberOrNull('start'),
    sums: reader.inside('sums', (list) => places(probes, (i) => list.number(i))),
    counts: reader.inside('counts', (list) => places(probes, (i) => list.count(i))),
    seen: reader.numbersOrNulls('seen', probes),
    means: reader.list('means', 8, (row) => places(probes, (i) => row.numberOrNull(i))),
    swap: reader.insideOrNull('swap', (one) => ({
      time: one.number('time'),
      first: one.count('first', probes - 1),
      second: one.count('second', probes - 1),
      before: one.number('before'),
      after: one.number('after'),
    })),
  }
}
