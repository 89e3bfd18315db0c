import type { WordsOf } from '../../quantity/explained.js'
import type { WaterContent } from '../../quantity/generated/kinds.js'
import { asPercent } from '../../quantity/in-words.js'
import type { ShotReason } from './day-plan.js'

/** Why a shot of a plan is given: its `reason` as a code, and the water content before it. */
export interface PlannedShotReason {
  /** The reason of the shot. */
  readonly code: ShotReason
  /** Water content before the shot. Unit: m³/m³. Range: any. */
  readonly waterContent: WaterContent
}

const PRACTICE = 'common practice, no source'
const level = ({ waterContent }: PlannedShotReason) => asPercent(waterContent)

/** Why a planned shot is given. */
export const PLANNED_SHOT_WORDS: WordsOf<PlannedShotReason> = {
  'morning-rewet': [(shot) => `morning rewet from ${level(shot)}`, PRACTICE],
  'refill-point': [(shot) => `${level(shot)} is at the refill point`, PRACTICE],
  'last-of-day': [(shot) => `last shot of the day, from ${level(shot)}`, PRACTICE],
  'light-sum': [(shot) => `light sum reached, from ${level(shot)}`, PRACTICE],
  'set-time': [(shot) => `set time, from ${level(shot)}`, PRACTICE],
  given: ['already given', PRACTICE],
}
