import { waterUseOfNextDay } from '../../record/forecast/forecast-daily-use.js'
import type { ZoneDay } from '../day/zone-day.js'
import { mediumAtRest } from '../day/zone-levels.js'
import type { ZoneMemory } from '../day/zone-memory.js'
import { unknown } from '../findings/known.js'
import type { ZoneFinding } from '../findings/zone-finding.js'
import { doubtsAny, unitDoubts } from '../plausibility/unit-doubts.js'
import { isIn, openingsOf } from '../probes/answers-to-shots.js'
import { betweenShots } from '../probes/between-shots.js'
import { countsLeftOut } from '../record/left-out.js'
import { type LocalDay, localDayOf } from '../record/local-day.js'
import { firstAt, type ZoneWindow } from '../record/zone-window.js'
import { waterBalance } from '../water/water-balance.js'
import { climateDemand } from '../weather/climate-demand.js'
import { expectedRadiation } from '../weather/expected-radiation.js'
import { lightOfDay } from '../weather/light-of-day.js'
import type { Zone } from '../zone.js'
import { answerFindings, balanceFindings, levelFindings, lightFindings, rootFindings } from './day-findings.js'
import { dayUnderWay, demandTime } from './day-under-way.js'
import { learnUse } from './learn.js'
import { gapsOf, probesOfDay } from './probes-of-day.js'
import { rootDoubts, rootZone } from './root-zone.js'
import { saltFindings, withSaltDay } from './salt-days.js'

/** With these a water balance is not learned from. */
const NOT_LEARNED: readonly string[] = ['drain-gauge-silent', 'more-drain-than-given', 'negative-use']

/** What a review has found out, before it is put together. */
type Reviewed = ReturnType<typeof partsOfDay>

/** Reviews one day of a zone from its window, and gives what the next day should remember. */
export function reviewWindow(zone: Zone, window: ZoneWindow, memory: ZoneMemory): { day: ZoneDay; memory: ZoneMemory } {
  const parts = partsOfDay(zone, window, memory)
  return { day: dayOf(zone, window, parts), memory: memoryAfter(memory, parts, window.day) }
}

function partsOfDay(zone: Zone, window: ZoneWindow, memory: ZoneMemory) {
  const { day } = window
  const openings = openingsOf(zone, window.watering)
  const medium = mediumAtRest(zone)
  const seen = probesOfDay(zone, window, memory, openings, medium)
  const counting = seen.checked.filter((probe) => seen.limits.has(probe.name))
  const balance = waterBalance(zone, window, counting)
  const doubts = unitDoubts(window, demandTime(window))
  const climate = believedDemand(zone, window, doubts)
  const light = lightOfDay(zone, window)
  const rootTemperature = doubtsAny(doubts, ['rootTemperature']) ? unknown('numbers-impossible') : rootZone(window)
  // Half a day has no balance: its first shots need not drain.
  const balanced = window.now === undefined ? balanceFindings(balance, climate, memory, day.to) : []
  const whole = !window.leftOut.some(([, table]) => table === 'watering')
  const believed = whole && !balanced.some(({ code }) => NOT_LEARNED.includes(code))
  const expected = (wanted: LocalDay) => expectedRadiation(zone, window.forecast, light, wanted)
  const today = expected(day)
  const underWay = dayUnderWay(zone, window, counting, memory, today)
  const use = underWay === undefined ? learnUse(memory.use, balance, light, believed, today) : memory.use
  const tomorrow = expected(localDayOf(zone.place.clock, day.to))
  const salt = withSaltDay(memory.salt, balance, seen.levels, day.to)
  const reviewed = { openings, medium, seen, balance, doubts, climate, light, rootTemperature }
  return { ...reviewed, balanced, underWay, use, tomorrow, salt }
}

/** The demand of a climate whose units are believed; a wind that may be a storm stays. */
function believedDemand(zone: Zone, window: ZoneWindow, doubts: readonly ZoneFinding[]): ZoneDay['climate'] {
  return doubtsAny(doubts, ['airTemperature', 'relativeHumidity', 'irradiance'])
    ? unknown('climate-impossible')
    : climateDemand(zone, window.climate, demandTime(window))
}

function dayOf(zone: Zone, window: ZoneWindow, parts: Reviewed): ZoneDay {
  const { day } = window
  const { seen, tomorrow } = parts
  const foreseen = tomorrow !== undefined && { expectedRadiation: tomorrow }
  return {
    zone: zone.name,
    date: day.date,
    from: day.from,
    to: day.to,
    readings: window.time.length - firstAt(window.time, day.from),
    ...(parts.underWay !== undefined && { underWay: parts.underWay }),
    light: parts.light,
    medium: parts.medium,
    probes: seen.probes,
    gaps: seen.checked.flatMap((probe) => gapsOf(zone, window, probe)),
    shotFree: seen.free,
    level: seen.level,
    balance: parts.balance,
    openings: parts.openings.filter((time) => isIn(day, time)),
    climate: parts.climate,
    ...foreseen,
    nextUse: waterUseOfNextDay({ state: parts.use, ...foreseen }),
    rootTemperature: parts.rootTemperature,
    findings: findingsOfDay(zone, window, parts),
  }
}

function findingsOfDay(zone: Zone, window: ZoneWindow, parts: Reviewed): ZoneFinding[] {
  const { day, outOfOrder } = window
  const { medium, seen, climate, light, salt } = parts
  const { checked, judged, level, limits, probes } = seen
  return [
    ...judged.findings,
    ...answerFindings(probes),
    ...checked.flatMap((probe) => betweenShots(zone, window, probe, seen.openings)),
    ...levelFindings(judged.candidates, limits, medium, day.to),
    ...(level.known || level.reason !== 'no-trusted-probe'
      ? []
      : [{ code: 'all-probes-left-out', level: 'danger' } as const]),
    ...(outOfOrder.length > 0
      ? [{ code: 'readings-out-of-order', level: 'caution', count: outOfOrder.length } as const]
      : []),
    ...countsLeftOut(window.leftOut).map((one) => ({ code: 'entries-left-out', level: 'caution', ...one }) as const),
    ...parts.balanced,
    ...(salt.at(-1)?.at === day.to ? saltFindings(zone, salt) : []),
    ...(climate.known ? climate.value.findings : []),
    ...parts.doubts,
    ...lightFindings(light, window),
    ...rootFindings(parts.rootTemperature),
    ...rootDoubts(parts.rootTemperature, window),
  ]
}

/** What the next day should remember. */
function memoryAfter(memory: ZoneMemory, { seen, balance, use, salt }: Reviewed, day: LocalDay): ZoneMemory {
  const found = seen.checked.flatMap(({ name }, p) => {
    const level = seen.levels[p]!
    return level.known ? [[name, level.value] as const] : []
  })
  return {
    levels: { ...memory.levels, ...Object.fromEntries(found) },
    drying: Object.fromEntries(seen.checked.map(({ name }, p) => [name, seen.drying[p]!])),
    use,
    salt,
    lastDrain: balance.drained.known && balance.drained.value > 0 ? day.to : memory.lastDrain,
  }
}
