import { InputError } from '../../quantity/errors.js'
import { stateReader } from '../../record/restore-state.js'
import type { DayDifference } from '../day/day-differences.js'
import { DOUBTED_COLUMNS, LIKE_UNITS, OFF_TARGET, type ZoneFindingCode } from '../findings/zone-finding.js'
import { LEFT_OUT_FOR, TABLES } from '../record/left-out.js'
import { checkNumbers, checkText, EPOCH } from './checked-results.js'

/** The numbers that the sentence of a finding names; `times` is a list of them, and `probe` a name. */
const NUMBERS: Readonly<Record<ZoneFindingCode | DayDifference['code'], string>> = {
  'no-readings': 'probe',
  'looks-like-percent': 'probe middle',
  'few-shots-seen': 'probe seen of',
  'fell-away': 'probe below others',
  'no-late-reading': 'probe',
  'no-level-after-drain': 'probe',
  'shots-without-rise': 'probe times',
  'shots-not-judged': 'probe times',
  'rises-without-shot': 'probe times',
  'rises-alone': 'probe rises',
  'climbs-between-shots': 'probe from to rise',
  'level-stepped': 'probe time change',
  'rises-with-salt': 'probe levelPerDay drainPerDay',
  'no-water': 'shots',
  bypass: 'shots',
  'off-capacity': 'probe difference',
  'probes-differ': 'spread',
  'readings-out-of-order': 'count',
  'entries-left-out': 'table because count',
  'root-readings-left-out': 'count',
  'negative-use': 'use',
  'use-doubted': 'use climate',
  'drain-gauge-silent': 'given entries',
  'more-drain-than-given': 'given drained',
  'salts-not-steady': 'share steady',
  'ec-doubted': 'about value beside',
  'root-zone-temperature': 'band extreme value',
  'climate-doubted': 'weather',
  'light-assumed': '',
  'light-off-noon': 'time',
  'unit-doubted': 'about value like',
  'log-on-another-clock': 'hours',
  'level-remembered': 'probe days',
  'all-probes-left-out': '',
  shots: 'today tomorrow',
  given: 'today tomorrow',
  'drain-fraction': 'today tomorrow',
  'first-shot': 'today tomorrow',
  'last-shot': 'today tomorrow',
}

/** A finding that may have been kept as JSON: its code is known, and it has what its sentence needs. */
export function checkFinding(finding: unknown, hint = 'give it as it was found', levelled = false): void {
  const reader = stateReader(finding, 'finding', hint)
  if (levelled) reader.word('level', ['note', 'caution', 'danger'])
  const { code } = finding as { readonly code?: unknown }
  if (typeof code !== 'string' || !Object.hasOwn(NUMBERS, code))
    throw new InputError('finding.code', `"${String(code).slice(0, 30)}" is none of a zone`, hint)
  for (const field of NUMBERS[code as ZoneFindingCode].split(' ').filter((one) => one !== '')) {
    if (field === 'times') checkNumbers(reader, field, EPOCH)
    else if (field === 'probe') checkText(reader, field)
    else if (field === 'band') reader.word(field, OFF_TARGET)
    else if (field === 'extreme') reader.word(field, ['lowest', 'highest'])
    else if (field === 'about') reader.word(field, DOUBTED_COLUMNS)
    else if (field === 'like') reader.word(field, LIKE_UNITS)
    else if (field === 'table') reader.word(field, TABLES)
    else if (field === 'because') reader.word(field, LEFT_OUT_FOR)
    else if (field === 'weather') reader.inside(field, (weather) => checkText(weather, 'code'))
    else reader.number(field)
  }
}
