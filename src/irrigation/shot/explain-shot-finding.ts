import { InputError } from '../../quantity/errors.js'
import type { Finding } from '../../quantity/finding.js'
import { requireObject } from '../../quantity/guard.js'
import type { ShotFinding } from './size-shot.js'

const WORDS = {
  'max-run-time': ['the valve closes', 'before the wanted volume is given', 'give more shots, or allow a longer one'],
  'min-run-time': [
    'the valve is open',
    'longer than the wanted volume needs',
    'the surplus drains; water less often, with a larger rise',
  ],
  'max-rise': [
    'the water content should rise',
    'more than is usual for one shot',
    'check the decimal place and what the medium can still take; give it in parts, or set maxRise if it is meant',
  ],
  'line-fill': [
    'filling the line takes',
    'more than a tenth of the run time',
    'the first emitters get more than the last; give fewer and larger shots, or keep the line full between them',
  ],
  'pump-flow': [
    'the valve takes',
    'more than the pump gives',
    'pressure falls and the farthest emitters get least; split the valve, or find a pump for it',
  ],
} as const

/**
 * Puts a finding of `sizeShot` into words: what is wrong, by how much, and what to do.
 *
 * @procedure Looks up the sentence of the code and writes the number, rounded to three digits, and its unit into it.
 * @param finding - One of the findings of a shot, made by `sizeShot`.
 * @returns A finding with the sentence for people.
 * @throws `InputError` for a code that `sizeShot` does not give.
 * @source common practice, no source
 * @example
 * const shot = sizeShot({
 *   substrateVolume: litres(10),
 *   rise: percentagePoints(2),
 *   drainFraction: percent(20),
 *   emitterFlow: litresPerHour(2),
 *   emitters: 2,
 *   maxRunTime: minutes(3),
 * })
 * const [closed] = shot.findings.map(explainShotFinding)
 * closed?.message // => 'the valve closes 45 s before the wanted volume is given: give more shots, or allow a longer one'
 */
export function explainShotFinding(finding: ShotFinding): Finding {
  requireObject(finding, 'finding')
  const { code, value, unit } = finding
  const words = Object.hasOwn(WORDS, code) ? WORDS[code] : undefined
  if (words === undefined) {
    throw new InputError(
      'finding',
      `"${code}" is no code of a sized shot`,
      `give one of ${Object.keys(WORDS).join(', ')}`,
    )
  }
  const [begin, end, remedy] = words
  const message = `${begin} ${Number(value.toPrecision(3))} ${unit} ${end}: ${remedy}`
  // Only the tenth is a rule of the trade; the other limits are the caller's own.
  return code === 'line-fill' ? { ...finding, message, source: 'common practice, no source' } : { ...finding, message }
}
