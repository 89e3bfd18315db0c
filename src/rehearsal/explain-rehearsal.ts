import { requireObject } from '../quantity/guard.js'
import type { RehearsalFinding } from './rehearsal-finding.js'

/**
 * A finding of a rehearsal as an English sentence.
 *
 * @procedure Puts the numbers of the finding into the sentence of its code.
 * @param finding - The finding, made by `rehearse`.
 * @returns One sentence.
 * @source definition
 * @example
 * explainRehearsal({ code: 'stress', level: 'caution', hours: 3.25 }) // => 'The zone was drier than the stress level for 3.3 h.'
 */
export function explainRehearsal(finding: RehearsalFinding): string {
  requireObject(finding, 'finding')
  switch (finding.code) {
    case 'beyond-limit-of-day':
      return `The controller gave ${litres(finding.volume)} in the worst 24 h, more than the limit of ${litres(finding.limit)}.`
    case 'beyond-limit-of-day-against-will':
      return `${litres(finding.volume)} passed in the worst 24 h where ${litres(finding.limit)} are the limit, part of it while the controller wanted the valve closed: only a main valve, or a person, can stop that.`
    case 'opening-too-long':
      return `The valve was open for ${Math.round(finding.duration)} s at a time, longer than the limit of ${finding.limit} s.`
    case 'opened-outside-hours':
      return `The valve was opened outside the allowed hours: ${count(finding.openings, 'opening')}.`
    case 'opened-while-locked':
      return `Water was given while the zone was locked and somebody was at work there: ${count(finding.openings, 'opening')}.`
    case 'opened-blind':
      return `Without any reading that could be believed there began ${count(finding.openings, 'opening')}.`
    case 'stress':
      return `The zone was drier than the stress level for ${finding.hours.toFixed(1)} h.`
    case 'over-wet':
      return `The zone was wetter than the full level for ${finding.hours.toFixed(1)} h.`
    case 'fault-without-alarm':
      return `No alarm named the fault ${finding.fault}.`
    case 'false-alarms':
      return finding.alarms === 1
        ? 'One alarm named nothing that was wrong.'
        : `${finding.alarms} alarms named nothing that was wrong.`
    case 'controller-threw':
      return `The controller threw an error in ${count(finding.calls, 'call')}; the valve was closed each time.`
    case 'water-not-conserved':
      return `The simulation lost or made ${finding.volume} L of water: its medium is at fault, not the controller.`
  }
}

function count(number: number, thing: string): string {
  return `${number} ${thing}${number === 1 ? '' : 's'}`
}

function litres(volume: number): string {
  return `${volume.toFixed(2)} L`
}
