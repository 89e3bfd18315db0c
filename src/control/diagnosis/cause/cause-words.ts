import { InputError } from '../../../quantity/errors.js'
import { inWords, shareInWords } from '../../../quantity/in-words.js'
import type { Cause, CauseCode, CheckCode, Evidence, EvidenceCode, UnknownReason } from './cause.js'

/** What may be wrong. */
export const CAUSE_WORDS: { readonly [Code in CauseCode]: string } = {
  'no-water': 'ordered shots bring no water',
  'partial-water': 'ordered shots bring only a part of their water',
  'valve-stuck-open': 'water runs although none is ordered: the valve may be stuck open',
  'leak-between-shots': 'water passes between shots: the valve may weep, or the line may leak',
  'line-leak': 'water leaves the line before it reaches the probes: a leak or a burst',
  'zone-full': 'the zone is full and does not fall: shots cannot show',
  'clogged-dripper': 'one place gets less water than the others: a clogged dripper, or a probe with poor contact',
  channelling: 'water runs past the medium: it has channels, or repels water',
  'watered-by-hand': 'the zone got water that no shot brought, by hand or as rain',
  'probe-dead': 'a probe sends nothing that could be a reading',
  'probe-lifted': 'a probe may have been pulled out, or have air around its rods',
  'probe-frozen': 'a probe repeats one number',
  'probe-drifting': 'a probe changes from day to day in a way that water does not explain',
  'probe-noisy': 'a probe is noisy',
  'probes-swapped': 'probes may carry the wrong names',
  'probe-reinserted': 'a probe reads another level than before, as if moved or put in again',
  'salt-driven': 'a reading may be rising with salt instead of water',
  'temperature-driven': 'a reading follows the temperature instead of water',
  'unit-slip': 'a number is in another unit, such as percent, raw counts or millilitres',
  'no-readings': 'readings do not arrive, or arrive late',
  'feed-tank-wrong': 'the EC of the feed has changed: stop dosing',
  'drain-gauge-wrong': 'the drain gauge does not count what drains',
  'flow-meter-wrong': 'the flow meter does not count what flows',
  'clock-wrong': 'a clock is wrong',
  'power-cut': 'time is missing, as after a power cut',
}

/** What to do by hand to make sure. */
const CHECKS: { readonly [Code in CheckCode]: string } = {
  'look-at-supply': 'Check valve, filter, pump and supply. The zone is full: do not water by hand.',
  'look-at-supply-and-weigh':
    'Check valve, filter, pump and supply; no probe can be trusted, so weigh a container before anybody waters.',
  'look-at-supply-then-water-by-hand':
    'Check valve, filter, pump and supply; until water runs again, give a small shot by hand and see the reading rise.',
  'shut-main-valve-and-look': 'Shut the main valve by hand, then check valve, line and drain. Do not add water.',
  'walk-the-line': 'Close the zone and walk the line while somebody opens it for a moment.',
  'catch-test':
    'Catch the water of some drippers, including the one at this place, and compare; clean or replace those that give less.',
  'weigh-a-container':
    'Weigh a container, or lift it: a full one drains when it is tilted a little. Wet containers are heavy.',
  'small-shots-and-weigh': 'Weigh a container before and after a shot; give smaller shots with pauses.',
  'ask-who-watered': 'Ask who watered; if nobody did, check valve and meter.',
  'look-at-probe-and-cable': 'Check probe, cable and plug, and try the probe in water.',
  'reseat-the-probe':
    'Check that the probe sits firmly; if not, put it into undisturbed medium, and compare it with a hand meter.',
  'restart-the-probe': 'Restart the probe and its logger, and see whether the reading changes after a shot.',
  'compare-with-hand-meter': 'Measure the place with a hand meter or weigh a container, today and tomorrow.',
  'read-the-labels': 'Check the labels: pull out one probe, and see which number falls.',
  'flush-and-read-again':
    'Flush with water of known EC, and read the probe before and after. Drain is waste water: follow local rules.',
  'read-in-the-dark': 'Compare readings of the same hour on different days, and weigh a container through one evening.',
  'check-the-unit':
    'Look up the unit in the settings of the logger, and the units of flow and volume; do not guess a conversion.',
  'look-at-gateway': 'Check gateway, network and batteries, and the time stamps of the readings.',
  'measure-feed-ec':
    'Measure the feed with your own meter, and mix it again. Acids and concentrates burn: wear goggles and gloves, and add acid to water.',
  'pour-into-the-gauge': 'Pour a measured litre into the drain gauge, and see whether it counts it.',
  'fill-a-bucket': 'Fill a measured bucket through the meter, and see whether it counts it.',
  'set-the-clock': 'Compare all clocks with a good one and set them; keep records in universal time.',
  'look-at-the-power': 'Find out when the power was off.',
}

/** Checks at valves, pumps and boxes. */
const NEAR_CURRENT: readonly CheckCode[] = [
  'look-at-supply',
  'look-at-supply-and-weigh',
  'look-at-supply-then-water-by-hand',
  'shut-main-valve-and-look',
  'walk-the-line',
  'look-at-the-power',
]
const ELECTRIC =
  'Water and electricity: switch off the power before you open boxes, pumps or valves; leave mains work to a licensed electrician.'

/** Why a cause can be neither named nor ruled out. */
export const UNKNOWN_WORDS: { readonly [Code in UnknownReason]: string } = {
  'too-few-shots': 'too few shots were seen',
  'too-few-nights': 'too few nights were seen',
  'no-trusted-probe': 'no probe can be trusted',
  'only-newest-reading': 'only the newest reading shows it',
  'only-one-probe': 'there is only one probe, and nothing to compare it with',
  'no-flow-meter': 'there is no flow meter',
  'no-drain-gauge': 'there is no drain gauge',
  'no-temperature': 'no temperature is recorded',
  'no-drain-ec': 'the EC of the drain is not recorded',
  'no-feed-ec': 'the EC of the feed is not recorded',
  'ec-below-rain': 'its EC is below that of rain: the sensor is dead or dry, or the water is pure',
  'series-out-of-step': 'the times of orders and readings do not match',
  'readings-far-apart': 'readings are so far apart that a shot between two of them looks like a jump',
  'counts-too-late': 'the counter counts so late, or in such large steps, that shots cannot be told apart',
  'no-clock': 'the clock gives no time in seconds',
}

/** The sentence of a cause with the numbers on which it rests, and what to do by hand to make sure. */
export function causeInWords({ code, about, evidence, check }: Cause, words: string): string {
  if (!Object.hasOwn(CHECKS, check))
    throw new InputError(
      'finding',
      `"${code}" with "${check}" is none of a diagnosis`,
      'give a cause that watchZone told',
    )
  const who = about === undefined || about.length === 0 ? '' : `${about.join(', ')}: `
  const numbers = evidence.map(evidenceInWords).join('; ')
  const sentence = `${who}${words}`
  return `${sentence[0]?.toUpperCase()}${sentence.slice(1)} (${numbers}). ${CHECKS[check]}${NEAR_CURRENT.includes(check) ? ` ${ELECTRIC}` : ''}`
}

/** Water contents that are no differences. */
const LEVELS: readonly EvidenceCode[] = ['level', 'reading']
/** Numbers without a unit that are shares of one; all others are counts. */
const SHARES: readonly EvidenceCode[] = [
  'best-rise-share',
  'drained-share',
  'drained-share-of-a-day',
  'lowest-rise-share',
  'metered-share',
  'readings-lost',
  'rise-share',
  'rise-share-of-a-day',
  'shot-over-medium',
]

function evidenceInWords({ code, value, unit, usual, about }: Evidence): string {
  const said = (number: number) =>
    SHARES.includes(code) ? shareInWords(number) : inWords(number, unit, { level: LEVELS.includes(code) })
  const beside = usual === undefined ? '' : `, usually ${said(usual)}`
  return `${code.replaceAll('-', ' ')}${about === undefined ? '' : ` of ${about}`} ${said(value)}${beside}`
}
