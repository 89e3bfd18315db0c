import type { SafeLimits, WateringFacts } from './input.js'
import { known, type Loose, limitOf } from './known.js'
import type { WateringRefusal } from './refusal.js'

const DAY = 86400

/** What speaks against water by the newest reading, or against a back-up shot although there is a good one. */
export function judgeReading(
  limits: Loose<SafeLimits>,
  facts: Loose<WateringFacts>,
  isBackUp: boolean,
): WateringRefusal[] {
  const refusals: WateringRefusal[] = []
  const oldest = limitOf(limits, 'maxReadingAge', 's', refusals, DAY)
  const min = limitOf(limits, 'minBelievable', 'm³/m³', refusals, 1)
  const max = limitOf(limits, 'maxBelievable', 'm³/m³', refusals, 1)
  const full = limitOf(limits, 'fullPoint', 'm³/m³', refusals, 1)
  if (oldest === undefined || min === undefined || max === undefined || full === undefined) return refusals
  if (!(min < full && full < max)) refusals.push({ code: 'limits-contradict', level: 'danger', about: 'fullPoint' })
  const doubts = doubtsOf(facts, { oldest, min, max })
  const level = known(facts.waterContent, Number.NEGATIVE_INFINITY)
  if (!isBackUp) refusals.push(...doubts)
  else {
    const after = limits.backUpAfter === undefined ? oldest : limitOf(limits, 'backUpAfter', 's', refusals, 7 * DAY)
    if (after !== undefined) refusals.push(...tooSoon(facts, after))
  }
  // A good reading that says "full" forbids a back-up shot as well.
  if (level !== undefined && level >= full && doubts.length === 0)
    refusals.push({ code: 'full', level: 'caution', value: level, limit: full, unit: 'm³/m³' })
  return refusals
}

function doubtsOf(
  facts: Loose<WateringFacts>,
  { oldest, min, max }: { readonly oldest: number; readonly min: number; readonly max: number },
): WateringRefusal[] {
  const level = known(facts.waterContent, Number.NEGATIVE_INFINITY)
  if (level === undefined) return [{ code: 'reading-unknown', level: 'caution' }]
  const doubts: WateringRefusal[] = []
  // A medium in use is never dry: zero is what a dead probe sends, also where somebody believes all from zero on.
  if (level < min || level > max || level <= 0)
    doubts.push({
      code: 'unbelievable-reading',
      level: 'caution',
      value: level,
      limit: level > max ? max : min,
      unit: 'm³/m³',
    })
  const age = known(facts.age, 0)
  if (age === undefined) doubts.push({ code: 'old-reading', level: 'caution' })
  else if (age > oldest) doubts.push({ code: 'old-reading', level: 'caution', value: age, limit: oldest, unit: 's' })
  if (facts.flag !== 1) {
    const flag = known(facts.flag, Number.NEGATIVE_INFINITY)
    doubts.push({ code: 'doubtful-reading', level: 'caution', ...(flag !== undefined && { value: flag, unit: '1' }) })
  }
  return doubts
}

/** A back-up shot waits from the later of the last shot and the last good reading. */
function tooSoon(facts: Loose<WateringFacts>, after: number): WateringRefusal[] {
  const shot = known(facts.sinceLastShot, 0)
  const good = facts.flag === 1 && known(facts.waterContent, 0) !== undefined ? known(facts.age, 0) : undefined
  const since = Math.min(shot ?? Number.POSITIVE_INFINITY, good ?? Number.POSITIVE_INFINITY)
  return since < after
    ? [{ code: 'too-soon-for-back-up', level: 'caution', value: since, limit: after, unit: 's' }]
    : []
}
