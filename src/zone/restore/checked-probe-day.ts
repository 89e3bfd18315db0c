import { FARTHEST } from '../../record/forecast/clock-rates.js'
import type { StateReader } from '../../record/restore-state.js'
import {
  checkForeseenUse,
  checkKnown,
  checkKnownNumber,
  checkLimits,
  checkNumber,
  checkNumbers,
  type Ends,
  EPOCH,
  isKnown,
  MAX,
  numbersOf,
  WATER,
} from './checked-results.js'

/** What one probe says of a day, checked field by field. */
export function checkProbeDay(probe: StateReader, names: readonly string[], litres: Ends): void {
  probe.word('name', names)
  probe.inside('counts', (counts) => {
    for (const flag of ['pass', 'notEvaluated', 'suspect', 'fail', 'missing']) counts.count(flag)
  })
  probe.count('extrapolated')
  checkKnown(probe, 'range', numbersOf(['min', 'max'], WATER))
  probe.list('shots', MAX, (shot) => {
    numbersOf(['start', 'peak'], EPOCH)(shot)
    checkNumber(shot, 'rise', WATER)
  })
  if (probe.stored.answers !== undefined) probe.inside('answers', checkAnswers)
  checkKnown(probe, 'drainedLevel', (level) => {
    numbersOf(['level', 'spread'], WATER)(level)
    level.count('shots')
    checkNumber(level, 'at', EPOCH)
  })
  checkKnown(probe, 'limits', checkLimits)
  checkKnown(probe, 'night', (night) => {
    numbersOf(['from', 'to'], EPOCH)(night)
    numbersOf(['evening', 'morning', 'fall', 'perHour'], WATER)(night)
  })
  checkKnownNumber(probe, 'last', WATER)
  probe.inside('timeToRefill', checkRefill)
  checkForeseenUse(probe, 'nextHour', litres)
  probe.word('used', [true, false])
}

function checkAnswers(answers: StateReader): void {
  for (const field of ['openings', 'seen']) answers.count(field)
  for (const field of ['withoutRise', 'notJudged', 'withoutLog']) checkNumbers(answers, field, EPOCH)
}

function checkRefill(refill: StateReader): void {
  if (!isKnown(refill)) return
  checkNumber(refill, 'from', WATER)
  refill.number('time', 0, FARTHEST)
  for (const band of ['band50', 'band90'])
    refill.inside(band, (ends) => {
      ends.number('earliest', 0, FARTHEST)
      if (ends.stored.latest !== undefined) ends.number('latest', 0, FARTHEST)
    })
}
