import type { CheckedLimits } from '../scenario/rehearsal-limits.js'
import type { RehearsalFinding } from './rehearsal-finding.js'
import type { RehearsalOutcome } from './rehearsal-outcome.js'

/** What an outcome shows against its limits. */
export function findingsOf(outcome: Omit<RehearsalOutcome, 'findings'>, limits: CheckedLimits): RehearsalFinding[] {
  const findings = beyondLimits(outcome, limits)
  if (outcome.blindOpenings > 0) findings.push({ code: 'opened-blind', level: 'note', openings: outcome.blindOpenings })
  if (outcome.stressTime > 0) findings.push({ code: 'stress', level: 'caution', hours: outcome.stressTime / 3600 })
  if (outcome.fullTime > 0) findings.push({ code: 'over-wet', level: 'caution', hours: outcome.fullTime / 3600 })
  outcome.faults.forEach(({ fault }, i) => {
    const told = outcome.timeToAlarm[i]!
    if (!told.known && told.reason === 'never-named')
      findings.push({ code: 'fault-without-alarm', level: 'caution', fault })
  })
  if (outcome.falseAlarms > 0) findings.push({ code: 'false-alarms', level: 'caution', alarms: outcome.falseAlarms })
  if (outcome.refusals > 0) findings.push({ code: 'controller-threw', level: 'danger', calls: outcome.refusals })
  if (Math.abs(outcome.imbalance) > 1e-9 * Math.max(1, outcome.given))
    findings.push({ code: 'water-not-conserved', level: 'danger', volume: outcome.imbalance })
  return findings
}

/** What the controller did that it must not. */
function beyondLimits(outcome: Omit<RehearsalOutcome, 'findings'>, limits: CheckedLimits): RehearsalFinding[] {
  const findings: RehearsalFinding[] = []
  const max = limits.maxPerDay
  const slack = 1 + 1e-9
  if (outcome.worstDay > max * slack)
    findings.push({ code: 'beyond-limit-of-day', level: 'danger', volume: outcome.worstDay, limit: max })
  else if (outcome.worstDayInAll > max * slack)
    findings.push({
      code: 'beyond-limit-of-day-against-will',
      level: 'danger',
      volume: outcome.worstDayInAll,
      limit: max,
    })
  if (outcome.maxOpening > limits.maxRunTime + 1e-6)
    findings.push({
      code: 'opening-too-long',
      level: 'danger',
      duration: outcome.maxOpening,
      limit: limits.maxRunTime,
    })
  if (outcome.outsideHours > 0)
    findings.push({ code: 'opened-outside-hours', level: 'danger', openings: outcome.outsideHours })
  const locked = outcome.openings.filter((opening) => opening.locked).length
  if (locked > 0) findings.push({ code: 'opened-while-locked', level: 'danger', openings: locked })
  return findings
}
