import { explainControlFinding } from '../../control/explain-control-finding.js'
import type { DayDiagnosis } from '../diagnose/diagnose-day.js'
import { explainZoneFinding } from '../explain-zone-finding.js'
import type { Known } from '../findings/known.js'
import type { Clock } from './report-words.js'

/** Causes at the end of the day, the likeliest first, and those that came and went. */
export function causeLines(found: Known<DayDiagnosis>, at: Clock): string[] {
  if (!found.known) return [`Not told: ${explainZoneFinding({ code: found.reason }).message}.`]
  const { diagnosis, told } = found.value
  const { causes, cannotTell } = diagnosis
  const gone = told.filter(({ cause }) => !causes.some(({ code }) => code === cause.code))
  const reasons = [...new Set(cannotTell.map(({ reason }) => reason))]
  const untold = reasons.map((why) => {
    const codes = cannotTell.flatMap(({ code, reason }) => (reason === why ? [code.replaceAll('-', ' ')] : []))
    return `Because ${explainControlFinding({ code: why }).message} it cannot tell: ${codes.join(', ')}.`
  })
  return [
    ...(causes.length + gone.length === 0 ? ['The record shows no cause.'] : []),
    ...causes.map((cause, i) => `${i + 1}. ${explainControlFinding(cause).message}`),
    ...gone.map(({ time, cause }) => `For a while from ${at(time)}: ${explainControlFinding(cause).message}`),
    ...untold,
  ]
}
