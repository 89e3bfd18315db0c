import { InputError } from '../../quantity/errors.js'
import { requireObject } from '../../quantity/guard.js'
import type { PlannedShot, ShotReason } from './day-plan.js'

const WORDS: Readonly<Record<ShotReason, (level: string) => string>> = {
  'morning-rewet': (level) => `morning rewet from ${level}`,
  'refill-point': (level) => `${level} is at the refill point`,
  'last-of-day': (level) => `last shot of the day, from ${level}`,
  'light-sum': (level) => `light since the last shot has reached its sum, from ${level}`,
  'set-time': (level) => `set time, from ${level}`,
  given: () => 'given',
}

/**
 * Puts the reason of a planned shot into words.
 *
 * @procedure Looks up the sentence of the reason and writes the water content before the shot into it.
 * @param shot - One of the shots of a plan, made by `planDay` or `replanDay`.
 * @returns Why the shot is given, for people.
 * @throws `InputError` for a reason that a plan does not give.
 * @source common practice, no source
 * @example
 * explainPlannedShot({
 *   time: instant(1779174000), volume: litres(0.6), perEmitter: litres(0.3), runTime: seconds(548),
 *   reason: 'morning-rewet', waterContent: waterContent(0.582),
 * }) // => 'morning rewet from 58.2 %'
 */
export function explainPlannedShot(shot: PlannedShot): string {
  requireObject(shot, 'shot')
  const { reason, waterContent } = shot
  if (!Object.hasOwn(WORDS, reason))
    throw new InputError('shot.reason', `"${reason}" is unknown`, `give one of ${Object.keys(WORDS).join(', ')}`)
  return WORDS[reason](`${(waterContent * 100).toFixed(1)} %`)
}
