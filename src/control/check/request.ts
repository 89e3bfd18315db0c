import type { SafeLimits, WateringFacts, WateringRequest } from './input.js'
import { known, type Loose, limitOf } from './known.js'
import type { WateringRefusal } from './refusal.js'

const DAY = 86400

/** What speaks against a request by itself and by what was given before. */
export function judgeRequest(
  request: Loose<WateringRequest>,
  limits: Loose<SafeLimits>,
  facts: Loose<WateringFacts>,
): WateringRefusal[] {
  const refusals: WateringRefusal[] = []
  const volume = known(request.volume, 0)
  const runTime = known(request.runTime, 0)
  for (const [about, value] of [
    ['volume', volume],
    ['runTime', runTime],
  ] as const)
    if (value === undefined) refusals.push({ code: 'request-unclear', level: 'danger', about })
  const flow = limitOf(limits, 'flow', 'L/h', refusals)
  const fill = limits.lineFill === undefined ? 0 : limitOf(limits, 'lineFill', 's', refusals, 600)
  if (volume !== undefined && runTime !== undefined && flow !== undefined && fill !== undefined) {
    const gives = Math.min((flow / 3600) * Math.max(0, runTime - fill), Number.MAX_VALUE)
    // Lines and emitters differ; a slip of a unit is a factor.
    if (gives < 0.9 * volume || gives > 1.25 * volume)
      refusals.push({ code: 'volume-not-run-time', level: 'danger', value: gives, limit: volume, unit: 'L' })
  }
  const over = (code: 'shot-too-large' | 'run-too-long', value = 0, limit = value, unit: string) => {
    if (value > limit) refusals.push({ code, level: 'caution', value, limit, unit })
  }
  const maxPerShot = limitOf(limits, 'maxPerShot', 'L', refusals)
  const medium = limits.substrateVolume === undefined ? undefined : limitOf(limits, 'substrateVolume', 'L', refusals)
  over('shot-too-large', volume, maxPerShot, 'L')
  // A limit that no shot into this medium reaches limits nothing.
  if (maxPerShot !== undefined && medium !== undefined && maxPerShot > medium)
    refusals.push({ code: 'limits-contradict', level: 'danger', about: 'maxPerShot' })
  over('run-too-long', runTime, limitOf(limits, 'maxRunTime', 's', refusals, 7200), 's')
  return [...refusals, ...judgeDay(volume, flow, limits, facts), ...judgeRest(limits, facts)]
}

function judgeDay(
  volume = 0,
  flow = Infinity,
  limits: Loose<SafeLimits>,
  facts: Loose<WateringFacts>,
): WateringRefusal[] {
  const refusals: WateringRefusal[] = []
  const limit = limitOf(limits, 'maxPerDay', 'L', refusals)
  // A limit that a valve open all day does not reach limits nothing.
  if (limit !== undefined && limit > flow * 24)
    refusals.push({ code: 'limits-contradict', level: 'danger', about: 'maxPerDay' })
  const given = known(facts.givenInDay, 0)
  if (given === undefined) refusals.push({ code: 'given-unknown', level: 'caution' })
  else if (limit !== undefined && given + volume > limit) {
    const value = Math.min(given + volume, Number.MAX_VALUE)
    refusals.push({ code: 'beyond-limit-of-day', level: 'caution', value, limit, unit: 'L' })
  }
  return refusals
}

function judgeRest(limits: Loose<SafeLimits>, facts: Loose<WateringFacts>): WateringRefusal[] {
  const refusals: WateringRefusal[] = []
  const limit = limitOf(limits, 'minRest', 's', refusals, DAY)
  const told = known(facts.sinceLastShot, 0)
  const given = known(facts.givenInDay, 0) ?? 0
  // Water of the last 24 hours and no shot in them contradict each other, as milliseconds do; an hour is left for how somebody counts.
  const since = given > 0 && told !== undefined && told > DAY + 3600 ? undefined : told
  if (since === undefined) refusals.push({ code: 'last-shot-unknown', level: 'caution' })
  else if (limit !== undefined && since < limit)
    refusals.push({ code: 'too-soon', level: 'caution', value: since, limit, unit: 's' })
  return refusals
}
