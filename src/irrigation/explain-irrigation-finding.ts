import { explained, type OneCodeEach } from '../quantity/explained.js'
import type { Finding } from '../quantity/finding.js'
import type { EmitterFinding } from './emitter/emitter-finding.js'
import { EMITTER_WORDS } from './emitter/emitter-words.js'
import type { StaggerFinding } from './emitter/stagger-findings.js'
import { STAGGER_WORDS } from './emitter/stagger-words.js'
import type { PlanFinding } from './plan/plan-finding.js'
import { PLAN_WORDS } from './plan/plan-words.js'
import { PLANNED_SHOT_WORDS, type PlannedShotReason } from './plan/planned-shot-words.js'
import { BAND_WORDS } from './root-zone/band-words.js'
import type { BandFinding } from './root-zone/root-zone-bands.js'
import type { SaltFinding } from './salt/salt-finding.js'
import { SALT_WORDS } from './salt/salt-words.js'
import { SHOT_WORDS } from './shot/shot-words.js'
import type { ShotFinding } from './shot/size-shot.js'

/** Everything that is found out about shots, emitters, plans, salts and the root zone, and why a planned shot is given. */
export type IrrigationFinding = OneCodeEach<
  [ShotFinding, EmitterFinding, StaggerFinding, PlanFinding, PlannedShotReason, BandFinding, SaltFinding]
>

/**
 * Puts a finding about shots, emitters, plans, salts or the root zone into words, or why a planned shot is given: what is wrong, by how
 * much, and what to do.
 *
 * @procedure Looks up the sentence of the code and writes its numbers with their units into it.
 * @param finding - A finding of this topic, or `{ code: shot.reason, waterContent: shot.waterContent }` of a planned shot. Range: any.
 * @returns A finding with the sentence for people, and where the rule comes from.
 * @throws `InputError` for a code or a band that this topic does not give.
 * @source definition; the source of each rule stands in its finding
 * @example
 * const shot = sizeShot({
 *   substrateVolume: litres(10),
 *   rise: percentagePoints(2),
 *   drainFraction: percent(20),
 *   emitterFlow: litresPerHour(2),
 *   emitters: 2,
 *   maxRunTime: minutes(3),
 * })
 * const [closed] = shot.findings.map(explainIrrigationFinding)
 * closed?.message // => 'the valve closes 45 s before the wanted volume is given: give more shots, or allow a longer one'
 */
export function explainIrrigationFinding(finding: IrrigationFinding): Finding {
  return explained<IrrigationFinding>(finding, {
    ...SHOT_WORDS,
    ...EMITTER_WORDS,
    ...STAGGER_WORDS,
    ...PLAN_WORDS,
    ...PLANNED_SHOT_WORDS,
    ...BAND_WORDS,
    ...SALT_WORDS,
  })
}
