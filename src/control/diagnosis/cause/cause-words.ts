import { InputError } from '../../../quantity/errors.js'
import { inWords, shareInWords } from '../../../quantity/in-words.js'
import type { Cause, CauseCode, CheckCode, Evidence, EvidenceCode, UnknownReason } from './cause.js'

/** What may be wrong. */
export const CAUSE_WORDS: { readonly [Code in CauseCode]: string } = {
  'no-water': 'ordered shots bring no water',
  'partial-water': 'ordered shots bring only a part of their water',
  'valve-stuck-open': 'water runs though nothing is ordered: the valve may be stuck open',
  'leak-between-shots': 'water passes between shots: the valve may weep, or the line leak',
  'line-leak': 'water leaves the line before it reaches the probes: a leak or a burst',
  'zone-full': 'the zone is full and does not fall: shots cannot show',
  'clogged-dripper': 'one place gets less water than the others: a clogged dripper, or a probe without contact',
  channelling: 'water runs past the medium: channels, or a medium that repels water',
  'watered-by-hand': 'the zone got water that came by no ordered shot, as by hand or by rain',
  'probe-dead': 'a probe sends nothing that can be a reading',
  'probe-lifted': 'a probe may be pulled out or have air at its rods',
  'probe-frozen': 'a probe repeats one number',
  'probe-drifting': 'a probe changes from day to day by what no water explains',
  'probe-noisy': 'a probe scatters',
  'probes-swapped': 'probes may carry the wrong names',
  'probe-reinserted': 'a probe stands at another level than before, as after it was moved or put in again',
  'salt-driven': 'a reading may climb with the salt instead of water',
  'temperature-driven': 'a reading follows the temperature instead of water',
  'unit-slip': 'a probe sends, or the zone was given, another unit, such as percent, raw counts or millilitres',
  'no-readings': 'readings do not come, or come late',
  'feed-tank-wrong': 'the feed has changed its EC: stop dosing',
  'drain-gauge-wrong': 'the drain gauge does not count what drains',
  'flow-meter-wrong': 'the flow meter does not count what flows',
  'clock-wrong': 'a clock is wrong',
  'power-cut': 'time is missing, as after a power cut',
}

/** What to do by hand to make sure. */
const CHECKS: { readonly [Code in CheckCode]: string } = {
  'look-at-supply': 'Look at valve, filter, pump and supply. The zone is full: do not water by hand.',
  'look-at-supply-and-weigh':
    'Look at valve, filter, pump and supply; no probe can be trusted, so weigh a container before anybody waters.',
  'look-at-supply-then-water-by-hand':
    'Look at valve, filter, pump and supply; until water runs again give a small shot by hand and see it rise.',
  'shut-main-valve-and-look': 'Shut the main valve by hand, then look at valve, line and drain. Do not add water.',
  'walk-the-line': 'Close the zone and walk the line while somebody opens it for a moment.',
  'catch-test':
    'Catch the water of some drippers, that of the place among them, and compare; clean or replace those that give less.',
  'weigh-a-container':
    'Weigh a container, or lift it: a full one drains when it is tilted a little. Wet containers are heavy.',
  'small-shots-and-weigh': 'Weigh a container before and after a shot; give smaller shots with pauses.',
  'ask-who-watered': 'Ask who watered; if nobody did, look at valve and meter.',
  'look-at-probe-and-cable': 'Look at probe, cable and plug, and try the probe in water.',
  'reseat-the-probe':
    'Look whether the probe sits firmly; put it into undisturbed medium and compare with a hand meter.',
  'restart-the-probe': 'Restart the probe and its logger, and see its number change after a shot.',
  'compare-with-hand-meter': 'Read the place with a hand meter or weigh a container, today and tomorrow.',
  'read-the-labels': 'Read the labels: pull one probe, and see which number falls.',
  'flush-and-read-again':
    'Flush with water of known EC and read again before and after. Drain is waste water: follow local rules.',
  'read-in-the-dark': 'Compare readings at the same hour, and with a weighed container through one evening.',
  'check-the-unit':
    'Look up the unit in the settings of the logger, and those of flow and volume; do not convert by guessing.',
  'look-at-gateway': 'Look at gateway, network and batteries, and at the time stamps of the readings.',
  'measure-feed-ec':
    'Measure the feed with a meter of your own, and mix again. Acids and concentrates burn: goggles and gloves, acid into water.',
  'pour-into-the-gauge': 'Pour a measured litre into the drain gauge and see it counted.',
  'fill-a-bucket': 'Fill a measured bucket through the meter and see it counted.',
  'set-the-clock': 'Compare all clocks with a good one, and set them; keep records in universal time.',
  'look-at-the-power': 'Ask for the hours without power.',
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
  'Water and electricity: switch the current off before you open boxes, pumps or valves; leave mains work to a licensed electrician.'

/** Why a cause can be neither told nor ruled out. */
export const UNKNOWN_WORDS: { readonly [Code in UnknownReason]: string } = {
  'too-few-shots': 'too few shots were seen',
  'too-few-nights': 'too few nights were seen',
  'no-trusted-probe': 'no probe can be trusted',
  'only-newest-reading': 'only the newest reading says so, and those before it do not',
  'only-one-probe': 'there is only one probe, and nothing to compare it with',
  'no-flow-meter': 'there is no flow meter',
  'no-drain-gauge': 'there is no drain gauge',
  'no-temperature': 'no temperature is recorded',
  'no-drain-ec': 'the EC of the drain is not recorded',
  'no-feed-ec': 'the EC of the feed is not recorded',
  'ec-below-rain': 'its EC is less than rain has: the sensor is dead or dry, or the water is pure',
  'series-out-of-step': 'orders and readings are not of the same times',
  'readings-far-apart': 'readings come so seldom that a shot between two of them looks like a leap',
  'counts-too-late': 'the counter counts so late, or so much at once, that it does not tell one shot from the next',
  'no-clock': 'the clock gives no moment in seconds',
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
