import { requireObject } from '../../quantity/guard.js'
import { type StateReader, stateReader } from '../../record/restore-state.js'
import type { ZoneDay } from '../day/zone-day.js'
import type { LocalDay } from '../record/local-day.js'
import { LIGHT_STEP } from '../weather/light-of-day.js'
import type { Zone } from '../zone.js'
import { checkFinding } from './checked-finding.js'
import { checkProbeDay } from './checked-probe-day.js'
import {
  checkForeseenUse,
  checkKnown,
  checkKnownNumber,
  checkLimits,
  type Ends,
  EPOCH,
  MAX,
  numbersOf,
} from './checked-results.js'
import { restoredDay } from './restore-zone.js'

const HINT = 'give the day as reviewZone or followZone made it, of the same zone'
/** A container cannot use more than so many fillings of its medium in a day. */
const MAX_FILLS = 50
const SHARE = [0, 1] as const
/** Temperatures that a root zone can have. Unit: °C. */
const ROOT = [-5, 60] as const

/** A reviewed day that may have been kept as JSON, checked field by field: what was cut or changed must not make a plan. */
export function checkDay(zone: Zone, day: ZoneDay): ZoneDay {
  requireObject(day, 'day')
  const reader = stateReader(day, 'day', HINT)
  const local = restoredDay(zone, reader)
  const max = MAX_FILLS * zone.container.substrateVolume
  const litres: Ends = [-max, max]
  const names = zone.probes.map(({ name }) => name)
  reader.word('zone', [zone.name])
  reader.count('readings')
  if (reader.stored.underWay !== undefined) reader.inside('underWay', (rest) => checkUnderWay(rest, local, litres))
  reader.inside('light', (light) => checkLight(light, local))
  checkKnown(reader, 'medium', numbersOf(['porosity', 'containerCapacity', 'airFilledPorosity'], SHARE))
  if (reader.list('probes', names.length, (probe) => checkProbeDay(probe, names, litres)).length !== names.length)
    reader.refuse('probes', `are not the ${names.length} of the zone`)
  reader.list('gaps', MAX, (gap) => {
    gap.word('probe', names)
    numbersOf(['from', 'to'], EPOCH)(gap)
  })
  checkKnown(reader, 'shotFree', numbersOf(['from', 'to'], EPOCH))
  checkKnown(reader, 'level', checkLevel)
  reader.inside('balance', (balance) => checkBalance(balance, litres))
  reader.numbers('openings', MAX, local.from, local.to)
  checkKnown(reader, 'climate', (climate) => {
    numbersOf(['referenceET', 'cropET', 'perPlant', 'perContainer'])(climate)
    checkFindings(climate)
  })
  checkRadiation(reader)
  checkForeseenUse(reader, 'nextUse', litres)
  checkKnown(reader, 'rootTemperature', numbersOf(['min', 'max', 'mean'], ROOT))
  checkFindings(reader)
  return day
}

function checkUnderWay(rest: StateReader, { from, to }: LocalDay, litres: Ends): void {
  rest.number('at', from, to)
  checkRadiation(rest)
  checkForeseenUse(rest, 'use', litres)
  checkKnownNumber(rest, 'usedLately', litres)
}

function checkRadiation(reader: StateReader): void {
  if (reader.stored.expectedRadiation !== undefined) reader.number('expectedRadiation', 0, 1e4)
}

function checkLevel(level: StateReader): void {
  numbersOf(['mean', 'coverage'], SHARE)(level)
  level.inside('limits', checkLimits)
  level.word('from', ['level-after-drain', 'container-capacity'])
}

function checkFindings(reader: StateReader): void {
  reader.list('findings', MAX, (finding) => checkFinding(finding.stored, HINT, true))
}

function checkLight(light: StateReader, { from, to }: LocalDay): void {
  light.word('source', ['measured', 'lamps', 'measured-and-lamps', 'assumed'])
  light.number('dawn', from, to)
  light.number('dusk', from, to + 86400)
  const steps = Math.round((to - from) / LIGHT_STEP)
  if (light.numbers('course', steps, -1e4, 1e4).length !== steps) light.refuse('course', `has not ${steps} steps`)
}

function checkBalance(balance: StateReader, litres: Ends): void {
  balance.count('entries')
  for (const field of ['given', 'drained', 'stored', 'use']) checkKnownNumber(balance, field, litres)
  for (const field of ['drainFraction', 'feedEC', 'drainEC']) checkKnownNumber(balance, field)
}
