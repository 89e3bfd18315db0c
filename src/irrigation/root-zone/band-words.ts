import { InputError } from '../../quantity/errors.js'
import type { WordsOf } from '../../quantity/explained.js'
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
    'pythium-dissotocum': 'favours P. dissotocum over P. aphanidermatum',
    either: 'either of P. dissotocum and P. aphanidermatum may lead',
    'pythium-aphanidermatum': 'favours P. aphanidermatum over P. dissotocum',
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

/** What the band of a number means; where each band comes from stands in its finding. */
export const BAND_WORDS: WordsOf<BandFinding> = {
  'air-space': [(finding) => ofTable(finding, AIR)],
  'root-oxygen': [(finding) => ofTable(finding, OXYGEN)],
  'root-temperature': [(finding) => ofTable(finding, TEMPERATURE[finding.about ?? ''])],
  'media-salts': [(finding) => `${number(finding)}: ${plain(finding.band)} salts by ${plain(finding.about ?? '')}`],
}

function ofTable(finding: BandFinding, table: Words | undefined): string {
  const { code, band } = finding
  if (table === undefined || !Object.hasOwn(table, band))
    throw new InputError('finding', `"${code}" has no band ${band}`, 'give a finding of a band of the root zone')
  return `${number(finding)}: ${table[band]}`
}

const number = ({ value, unit }: BandFinding) => `${Number(value.toPrecision(4))}${unit === '1' ? '' : ` ${unit}`}`
const plain = (code: string) => (code === 'pour-through' ? code : code.replaceAll('-', ' '))
