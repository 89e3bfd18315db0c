import { InputError } from '../../quantity/errors.js'
import type { Finding } from '../../quantity/finding.js'
import { requireObject } from '../../quantity/guard.js'
import type { BandFinding } from './root-zone-bands.js'

type Words = Readonly<Record<string, string>>

const AIR: Words = {
  low: 'little air; roots may lack oxygen after shots',
  accepted: 'within the accepted 0.13 to 0.30',
  high: 'much air; it holds less water and needs shots more often',
}
const OXYGEN: Words = {
  low: 'young tomato plants grew less at 1 and 2 mg/L',
  watch: 'between 2 mg/L, where growth fell, and 4 mg/L, where it did not',
  enough: 'no loss of growth was seen from 4 mg/L on',
}
const TEMPERATURE: Readonly<Record<string, Words>> = {
  'fruiting-vegetables': {
    cold: 'roots are slow and take little water',
    cool: 'below the common target',
    target: 'within the common target',
    warm: 'above the common target',
    hot: 'roots need more oxygen than warm water holds',
  },
  Pythium: {
    'not-studied': 'colder than the temperatures at which the two species were compared',
    'Pythium dissotocum': 'favours P. dissotocum over P. aphanidermatum',
    either: 'either of P. dissotocum and P. aphanidermatum may lead',
    'Pythium aphanidermatum': 'favours P. aphanidermatum over P. dissotocum',
  },
  'Pythium myriotylum': {
    least: 'least disease of 15, 20, 25 and 30 °C',
    favoured: 'more disease than at 15 °C',
  },
  'Phytophthora cryptogea': {
    zoospores: 'zoospores are released best at 10 °C; plants died at 15 °C',
    between: 'between zoospore release and best growth',
    growth: 'it grows best at 20 to 25 °C, though plants at 25 °C stayed without symptoms',
    declining: 'warmer than its best growth',
    'no-zoospores': 'no zoospores at 30 °C',
  },
  'Phytophthora nicotianae': {
    'nearly-stopped': 'it nearly stops below 10 to 12 °C and above 36 °C',
    slow: 'cooler than its best',
    best: 'it grows best at 24 to 30 °C',
    declining: 'warmer than its best',
  },
}

/**
 * Puts the band of a root zone into words: what the number means, by its source.
 *
 * @procedure Looks up the sentence of code, table and band, and puts the number before it, rounded to four digits.
 * @param finding - The finding of a band, made by `airSpaceBand`, `rootOxygenBand`, `rootTemperatureBand` or `mediaSaltBand`.
 * @returns A finding with the sentence for people.
 * @throws `InputError` for a code or a band that these functions do not give.
 * @source definition; the source of each band stands in its finding
 * @example
 * const [low] = airSpaceBand(percent(9)).findings.map(explainBandFinding)
 * low?.message // => '0.09: little air; roots may lack oxygen after shots'
 */
export function explainBandFinding(finding: BandFinding): Finding {
  requireObject(finding, 'finding')
  const { code, level, about, band, value, unit, source } = finding
  const says = wordsOf(finding)
  if (says === undefined)
    throw new InputError('finding', `"${code}" has no band ${band}`, 'give a finding of a band of the root zone')
  const number = `${Number(value.toPrecision(4))}${unit === '1' ? '' : ` ${unit}`}`
  return { code, level, message: `${number}: ${says}`, ...(about && { about }), value, unit, source }
}

function wordsOf({ code, about = '', band }: BandFinding): string | undefined {
  if (code === 'media-salts') return `${plain(band)} salts by ${plain(about)}`
  const table = code === 'air-space' ? AIR : code === 'root-oxygen' ? OXYGEN : TEMPERATURE[about]
  return table !== undefined && Object.hasOwn(table, band) ? table[band] : undefined
}

const plain = (code: string) => (code === 'pour-through' ? code : code.replaceAll('-', ' '))
