import type { NamesOf } from '../../quantity/one-of.js'
import type { SafeLimits } from './input.js'
import type { WateringRefusal } from './refusal.js'

const LIMITS: NamesOf<SafeLimits> = {
  flow: 1,
  maxPerShot: 1,
  maxPerDay: 1,
  maxRunTime: 1,
  minRest: 1,
  maxReadingAge: 1,
  minBelievable: 1,
  maxBelievable: 1,
  fullPoint: 1,
  backUpAfter: 1,
  lineFill: 1,
  substrateVolume: 1,
}

/** What is meant as a limit and is none. Requests and facts may carry more than is asked for. */
export function judgeNames(limits: object): WateringRefusal[] {
  const refusals: WateringRefusal[] = []
  for (const name in limits)
    if (!Object.hasOwn(LIMITS, name)) refusals.push({ code: 'limit-unknown', level: 'danger', about: name })
  return refusals
}
