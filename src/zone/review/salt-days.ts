import { ecDoubt } from '../../irrigation/salt/ec-doubt.js'
import type { WaterContent } from '../../quantity/generated/kinds.js'
import { saltDrift } from '../../record/compare/salt-drift.js'
import type { DrainedLevel } from '../day/zone-day.js'
import { SALT_DAYS, type SaltDay } from '../day/zone-memory.js'
import type { Known } from '../findings/known.js'
import type { ZoneFinding } from '../findings/zone-finding.js'
import type { WaterBalance } from '../water/water-balance.js'
import type { Zone } from '../zone.js'

/** Days older than three weeks are not compared. */
const OLDEST = 1814400

/** The days in which salt may show, with this one. */
export function withSaltDay(
  before: readonly SaltDay[],
  { feedEC, drainEC }: WaterBalance,
  levels: readonly Known<DrainedLevel>[],
  end: number,
): readonly SaltDay[] {
  const recent = before.filter(({ at, levels: of }) => at < end && end - at <= OLDEST && of.length === levels.length)
  const own = levels.map((one) => (one.known && one.value.at === end ? one.value.level : null))
  // A dead sensor beside days on which it was alive would be a trend.
  const doubted = feedEC.known && drainEC.known && ecDoubt(feedEC.value, drainEC.value)?.about === 'drainEC'
  if (!drainEC.known || doubted || own.every((one) => one === null)) return recent
  return [...recent, { at: end, drainEC: drainEC.value, levels: own }].slice(-SALT_DAYS)
}

/** Probes whose level after drain climbs together with the conductivity of the drain. */
export function saltFindings(zone: Zone, days: readonly SaltDay[]): ZoneFinding[] {
  return zone.probes.flatMap(({ name }, p): ZoneFinding[] => {
    const { findings } = saltDrift({
      day: days.map(({ at }) => at / 86400),
      plateau: days.map(({ levels }) => levels[p] ?? Number.NaN),
      drainEC: days.map(({ drainEC }) => drainEC),
      // Whether a level is above the capacity is told beside, from the bench test.
      containerCapacity: 1 as WaterContent,
    })
    return findings.flatMap((one): ZoneFinding[] =>
      one.code === 'reading-rises-with-salt'
        ? [
            {
              code: 'rises-with-salt',
              level: 'caution',
              probe: name,
              levelPerDay: one.levelPerDay,
              drainPerDay: one.drainPerDay,
            },
          ]
        : [],
    )
  })
}
