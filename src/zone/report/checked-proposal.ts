import { requireObject } from '../../quantity/guard.js'
import { type StateReader, stateReader } from '../../record/restore-state.js'
import type { DayDiagnosis } from '../diagnose/diagnose-day.js'
import type { Known } from '../findings/known.js'
import type { ProposedDay } from '../propose/propose-day.js'
import { checkFinding } from '../restore/checked-finding.js'
import { checkNumber, checkText, EPOCH, isKnown, MAX } from '../restore/checked-results.js'

const HINT = 'give it as proposeDay or diagnoseDay made it'
const VOLUMES = ['expectedUse', 'given', 'drained'] as const

/** A proposal that may have been kept as JSON, checked field by field. */
export function checkProposal(proposal: Known<ProposedDay>): Known<ProposedDay> {
  requireObject(proposal, 'proposal')
  const reader = stateReader(proposal, 'proposal', HINT)
  if (isKnown(reader)) reader.inside('value', checkProposedDay)
  return proposal
}

function checkProposedDay(day: StateReader): void {
  checkText(day, 'date')
  for (const field of VOLUMES) day.number(field)
  day.number('drainFraction', 0, 1)
  day.word('useFrom', ['days-so-far', 'water-balance', 'climate'])
  day.word('lightFrom', ['measured', 'lamps', 'measured-and-lamps', 'assumed'])
  if (day.stored.expectedRadiation !== undefined) day.number('expectedRadiation')
  if (day.stored.useBand90 !== undefined && day.numbers('useBand90', 2).length !== 2)
    day.refuse('useBand90', 'has not two ends')
  day.list('shots', MAX, (shot) => {
    checkNumber(shot, 'time', EPOCH)
    for (const field of ['volume', 'perEmitter', 'runTime']) shot.number(field, 0)
    shot.number('waterContent', -1, 2)
    checkText(shot, 'reason')
  })
  for (const field of ['time', 'waterContent']) day.numbers(field, MAX)
  day.list('compromises', MAX, (finding) => checkText(finding, 'code'))
  day.list('differences', MAX, (finding) => checkFinding(finding.stored, HINT))
}

/** The same of a diagnosis. */
export function checkDiagnosis(diagnosis: Known<DayDiagnosis>): Known<DayDiagnosis> {
  requireObject(diagnosis, 'diagnosis')
  const reader = stateReader(diagnosis, 'diagnosis', HINT)
  if (isKnown(reader))
    reader.inside('value', (value) => {
      value.number('from')
      value.inside('diagnosis', (found) => {
        found.list('causes', MAX, (cause) => checkText(cause, 'code'))
        found.list('cannotTell', MAX, (one) => [checkText(one, 'code'), checkText(one, 'reason')])
      })
      value.list('told', MAX, (one) => {
        checkNumber(one, 'time', EPOCH)
        one.inside('cause', (cause) => checkText(cause, 'code'))
      })
    })
  return diagnosis
}
