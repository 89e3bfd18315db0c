import { INSTANT } from '../../../quantity/domains.js'
import type { StateReader } from '../../../record/restore-state.js'
import type { PaceWatch } from '../watch/watch-pace.js'
import { type Climb, KEPT, type LevelStep, type ProbeWatch } from '../watch/watch-probe.js'

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
    step: reader.insideOrNull('step', restoredStep),
    low: reader.numberOrNull('low'),
    lowTime: reader.number('lowTime'),
    climb: reader.insideOrNull('climb', restoredClimb),
    fall: reader.number('fall', 0),
    fallTime: reader.numberOrNull('fallTime'),
    fallLight: reader.numberOrNull('fallLight'),
    usualRise: reader.number('usualRise', 0),
    rises: reader.count('rises'),
    age: reader.number('age'),
    ageSpread: reader.number('ageSpread', 0),
    isStray: reader.word('isStray', [true, false]),
    pace: reader.inside('pace', restoredPace),
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

function restoredPace(reader: StateReader): PaceWatch {
  return {
    now: reader.number('now', 0),
    usual: reader.number('usual', 0),
    swing: reader.number('swing', 0),
    watched: reader.number('watched', 0),
  }
}

function restoredStep(reader: StateReader): LevelStep {
  return { time: reader.number('time'), before: reader.number('before'), after: reader.number('after') }
}

function restoredClimb(reader: StateReader): Climb {
  return { time: reader.number('time'), size: reader.number('size'), lasted: reader.number('lasted', 0) }
}
