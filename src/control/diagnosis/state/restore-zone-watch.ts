import { type StateReader, stateReader } from '../../../record/restore-state.js'
import { CAUSE_CODES } from '../cause/cause-codes.js'
import { SHOTS, type ShotEvidence } from '../shots/judge-shot.js'
import { FULLS } from '../watch/full-levels.js'
import { NIGHTS } from '../watch/watch-night.js'
import type { ValveWatch } from '../watch/watch-valve.js'
import { night, nightEvidence } from './restore-night.js'
import { balance, clock, counter, exactly, gauge, pairs, places, steady, timing, usual } from './restore-parts.js'
import { restoredProbe } from './restore-probe.js'
import { newZoneState, type ZoneWatchState } from './zone-state.js'

type Parts = { readonly [K in keyof ZoneWatchState]: (reader: StateReader) => ZoneWatchState[K] }

/** A state that was kept as JSON, checked field by field; the first one that is none is named. */
export function restoredZoneWatch(stored: unknown, probes: number): ZoneWatchState {
  const reader = stateReader(stored)
  return eachPart(partsFor(probes), (_, read) => read(reader))
}

/** What is whole of a damaged state; each other part begins anew. */
export function salvagedZoneWatch(stored: unknown, probes: number): ZoneWatchState {
  const fresh = newZoneState(probes)
  let reader: StateReader
  try {
    reader = stateReader(stored)
  } catch {
    return fresh
  }
  return eachPart(partsFor(probes), (field, read) => {
    try {
      return read(reader)
    } catch {
      return fresh[field]
    }
  })
}

function eachPart(
  parts: Parts,
  take: <K extends keyof ZoneWatchState>(field: K, read: Parts[K]) => ZoneWatchState[K],
): ZoneWatchState {
  return {
    clock: take('clock', parts.clock),
    probes: take('probes', parts.probes),
    valve: take('valve', parts.valve),
    balance: take('balance', parts.balance),
    timing: take('timing', parts.timing),
    shots: take('shots', parts.shots),
    usual: take('usual', parts.usual),
    night: take('night', parts.night),
    nights: take('nights', parts.nights),
    fulls: take('fulls', parts.fulls),
    gauge: take('gauge', parts.gauge),
    pairs: take('pairs', parts.pairs),
    feed: take('feed', parts.feed),
    drainEC: take('drainEC', parts.drainEC),
    light: take('light', parts.light),
    hasTemperature: take('hasTemperature', parts.hasTemperature),
    standing: take('standing', parts.standing),
  }
}

function partsFor(probes: number): Parts {
  return {
    clock: (reader) => reader.inside('clock', clock),
    probes: (reader) => exactly(reader, 'probes', probes, reader.list('probes', 8, restoredProbe)),
    valve: (reader) => reader.inside('valve', (one) => valve(one, probes)),
    balance: (reader) => reader.inside('balance', (one) => balance(one, probes)),
    timing: (reader) => reader.inside('timing', (one) => timing(one, probes)),
    shots: (reader) => reader.list('shots', SHOTS, (one) => shot(one, probes)),
    usual: (reader) => reader.inside('usual', usual),
    night: (reader) => reader.inside('night', (one) => night(one, probes)),
    nights: (reader) => reader.list('nights', NIGHTS, (one) => nightEvidence(one, probes)),
    fulls: (reader) =>
      reader.list('fulls', FULLS, (one) => ({
        time: one.number('time'),
        levels: one.numbersOrNulls('levels', probes),
      })),
    gauge: (reader) => reader.inside('gauge', gauge),
    pairs: (reader) => reader.inside('pairs', (one) => pairs(one, probes)),
    feed: (reader) => reader.inside('feed', steady),
    drainEC: (reader) => reader.numberOrNull('drainEC'),
    light: (reader) => reader.numberOrNull('light'),
    hasTemperature: (reader) => reader.word('hasTemperature', [true, false]),
    standing: (reader) =>
      reader.list('standing', 40, (one) => ({
        code: one.word('code', CAUSE_CODES),
        since: one.number('since'),
      })),
  }
}

function valve(reader: StateReader, probes: number): ValveWatch {
  return {
    open: reader.insideOrNull('open', (one) => ({ start: one.number('start'), until: one.numberOrNull('until') })),
    shot: reader.insideOrNull('shot', (one) => ({
      start: one.number('start'),
      end: one.number('end'),
      before: one.inside('before', (list) =>
        places(probes, (i) =>
          list.insideOrNull(i, (entry) => ({ level: entry.number('level'), time: entry.number('time') })),
        ),
      ),
      metered: one.number('metered', 0),
    })),
    lastEnd: reader.numberOrNull('lastEnd'),
    quietFrom: reader.numberOrNull('quietFrom'),
    meter: reader.inside('meter', counter),
    gauge: reader.inside('gauge', counter),
    hasMeter: reader.word('hasMeter', [true, false]),
    hasDrain: reader.word('hasDrain', [true, false]),
    drainedSince: reader.number('drainedSince', 0),
    closedFlow: reader.number('closedFlow', 0),
    closedFlowFor: reader.number('closedFlowFor', 0),
    closedVolume: reader.number('closedVolume', 0),
    lateDrain: reader.number('lateDrain', 0),
    lateDrainFor: reader.number('lateDrainFor', 0),
  }
}

function shot(reader: StateReader, probes: number): ShotEvidence {
  return {
    time: reader.number('time'),
    volume: reader.number('volume', Number.MIN_VALUE),
    rises: reader.numbersOrNulls('rises', probes),
    metered: reader.numberOrNull('metered'),
    drained: reader.numberOrNull('drained'),
    levels: reader.numbersOrNulls('levels', probes),
    level: reader.numberOrNull('level'),
    error: reader.number('error', 0),
    sure: reader.word('sure', [true, false]),
  }
}
