import { INSTANT } from '../../quantity/domains.js'
import type { StateReader } from '../../record/restore-state.js'
import { KEPT, type ProbeWatch } from './watch-probe.js'

export function restoredProbe(reader: StateReader): ProbeWatch {
  const times = reader.numbers('times', KEPT, INSTANT.min, INSTANT.max)
  const levels = reader.numbers('levels', KEPT, 0, 1)
  if (times.length !== levels.length) reader.refuse('levels', 'are not as many as times')
  const flatSince = reader.numberOrNull('flatSince')
  if (flatSince !== null && times.length === 0) reader.refuse('flatSince', 'is there without a reading')
  return {
    times,
    levels,
    bad: reader.insideOrNull('bad', restoredBad),
    heard: reader.numberOrNull('heard'),
    count: reader.count('count'),
    flatSince,
    flatCount: reader.count('flatCount'),
    flatUsual: reader.number('flatUsual', 0),
    noise: reader.number('noise', 0),
    usualNoise: reader.number('usualNoise', 0),
    spikes: reader.numbers('spikes', 8),
    step: reader.insideOrNull('step', (one) => ({
      time: one.number('time'),
      before: one.number('before'),
      after: one.number('after'),
    })),
    low: reader.numberOrNull('low'),
    lowTime: reader.number('lowTime'),
    climb: reader.insideOrNull('climb', (one) => ({
      time: one.number('time'),
      size: one.number('size'),
      lasted: one.number('lasted', 0),
    })),
    fall: reader.number('fall', 0),
    fallTime: reader.numberOrNull('fallTime'),
    fallLight: reader.numberOrNull('fallLight'),
    usualRise: reader.number('usualRise', 0),
    rises: reader.count('rises'),
    age: reader.number('age'),
    ageSpread: reader.number('ageSpread', 0),
  }
}

function restoredBad(reader: StateReader): NonNullable<ProbeWatch['bad']> {
  return {
    kind: reader.word('kind', ['not-a-number', 'unbelievable']),
    value: reader.numberOrNull('value'),
    since: reader.number('since'),
    count: reader.count('count'),
    alike: reader.word('alike', [true, false]),
    before: reader.numberOrNull('before'),
  }
}
