import { checkedSettings } from './watering/settings/checked-settings.js'
import { settingsDoubts } from './watering/settings/doubt-settings.js'
import type { WateringSettings } from './watering/settings/settings.js'
import type { WateringSettingsFinding } from './watering/settings/settings-finding.js'

/**
 * Tells what the settings of a zone leave unguarded, or have most likely wrong, before `controlWatering` waters by them: a shot larger than its band, a flow in
 * another unit, a probe that decides alone, containers that nothing fills. What contradicts itself is refused as there. Settings without a finding can still
 * be wrong for the crop: watch the first days.
 *
 * @procedure Compares the shot with the band and with the noise of probes, the opening with the time that a line needs and with the limit of a day, the usual use with
 * the medium, with that limit and with what rests and hours leave room for, times with those of a day and of probes, and names each guard that is left out.
 * @param settings - What `controlWatering` takes.
 * @returns What to look at, in the order of the settings; none where nothing is left open.
 * @throws `DomainError` outside the ranges, `InputError` for limits that contradict each other and for unknown words.
 * @source common practice, no source
 * @example
 * const findings = checkWateringSettings({
 *   lower: waterContent(0.5), upper: waterContent(0.52), minBelievable: waterContent(0.2), maxBelievable: waterContent(0.8),
 *   substrateVolume: litres(10), flow: litresPerHour(240), shot: millilitres(400), maxRunTime: minutes(5), maxPerDay: litres(4),
 *   usualPerDay: litres(2), minRest: minutes(10), probeLag: minutes(15), maxReadingAge: minutes(20), maxUnchanged: hours(4),
 *   maxShotsWithoutRise: 4, allowedHours: [{ from: hours(7), to: hours(18) }], valveClosesByItself: true, inDoubt: 'timed-shots',
 *   probes: [{ name: 'row 2' }, { name: 'row 5' }], drainFraction: percent(20), decideEvery: minutes(1),
 * })
 * findings.map(({ code }) => code) // => ['shot-beyond-band', 'opening-very-short', 'opening-beyond-day']
 * explainControlFinding(findings[1]!).message // => 'flow: the valve would be open so briefly that the line hardly fills: give the flow in litres per hour, for the same containers as the volumes (6 s, compared with 10 s)'
 */
export function checkWateringSettings(settings: WateringSettings): readonly WateringSettingsFinding[] {
  return settingsDoubts(checkedSettings(settings))
}
