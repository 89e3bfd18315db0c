import type { StateReader } from '../../../record/restore-state.js'
import type { Sums } from '../watch/night-line.js'
import type { NightEvidence, NightWatch } from '../watch/watch-night.js'
import { exactly, places } from './restore-parts.js'

export function night(reader: StateReader, probes: number): NightWatch {
  return {
    from: reader.numberOrNull('from'),
    last: reader.numberOrNull('last'),
    sums: reader.inside('sums', (list) =>
      places(probes, (i) => list.inside(i, (row) => places(9, (k) => row.number(k)) as unknown as Sums)),
    ),
    origin: reader.numbersOrNulls('origin', probes),
    seen: reader.numbersOrNulls('seen', probes),
  }
}

export function nightEvidence(reader: StateReader, probes: number): NightEvidence {
  return {
    start: reader.number('start'),
    end: reader.number('end'),
    falls: reader.numbersOrNulls('falls', probes),
    errors: exactly(reader, 'errors', probes, reader.numbers('errors', probes, 0)),
    warmth: reader.numbersOrNulls('warmth', probes),
    plateaus: reader.numbersOrNulls('plateaus', probes),
    drained: reader.numberOrNull('drained'),
    drainEC: reader.numberOrNull('drainEC'),
    odd: reader.inside('odd', (list) => places(probes, (i) => list.word(i, [true, false]))),
  }
}
