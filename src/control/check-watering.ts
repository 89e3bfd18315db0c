import type { CheckWateringInput } from './check/input.js'
import { judgeNames } from './check/names.js'
import { judgeReading } from './check/reading.js'
import type { WateringCheck, WateringRefusal } from './check/refusal.js'
import { judgeRequest } from './check/request.js'
import { judgeZone } from './check/zone.js'

/**
 * Refuses a shot that is not known to be safe, with every reason. What is not known counts as unsafe, and whatever is no finite number
 * where a number belongs is not known: null, text, NaN and a limit that was left out all speak against watering. It stands between
 * whatever plans water and whatever opens valves, and never opens one itself.
 *
 * @procedure Compares the request with itself (its volume must be what the flow gives in its run time after `lineFill`, from a tenth less to a quarter
 * more), with each limit and with each known fact; a limit under a name that it does not know is told. It never throws, whatever is given: a loop that waters must not fall over its own check.
 * @returns Whether it is allowed, and the reasons against it.
 * @source common practice, no source
 * @example
 * const limits = {
 *   flow: litresPerHour(4), maxPerShot: litres(0.5), maxPerDay: litres(5), maxRunTime: minutes(10), minRest: minutes(15),
 *   maxReadingAge: minutes(20), minBelievable: waterContent(0.2), maxBelievable: waterContent(0.8), fullPoint: waterContent(0.62),
 * }
 * const facts = {
 *   givenInDay: litres(4.8), sinceLastShot: minutes(40), waterContent: waterContent(0.55), age: minutes(3), flag: 1,
 *   clockRanOn: true, flowWhileClosed: false, locked: false, alarms: [],
 * }
 * const verdict = checkWatering({ request: { volume: litres(0.4), runTime: minutes(6) }, limits, facts })
 * verdict.allowed // => false
 * verdict.refusals.map((refusal) => refusal.code) // => ['beyond-limit-of-day']
 */
export function checkWatering(input: CheckWateringInput): WateringCheck {
  const refusals = refusalsOf(input)
  return { allowed: refusals.length === 0, refusals }
}

function refusalsOf(input: unknown): WateringRefusal[] {
  try {
    const { request, limits, facts, backUp }: Partial<CheckWateringInput> = Object(input)
    return [
      ...judgeNames(Object(limits)),
      ...judgeRequest(Object(request), Object(limits), Object(facts)),
      ...judgeReading(Object(limits), Object(facts), backUp === true),
      ...judgeZone(Object(facts)),
    ]
  } catch {
    // Whatever a getter or a proxy throws: what cannot be read is not known.
    return [{ code: 'input-unreadable', level: 'danger' }]
  }
}
