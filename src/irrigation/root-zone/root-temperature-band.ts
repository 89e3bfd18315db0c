import { InputError } from '../../quantity/errors.js'
import type { Temperature } from '../../quantity/generated/temperature.js'
import { numberIn } from '../../quantity/guard.js'
import { requireObject } from '../../quantity/require-object.js'
import { ROOT_TEMPERATURE } from '../domains.js'
import { type Band, inBands, type RootZoneBand } from './root-zone-bands.js'

/** Whose temperatures are meant. */
export type RootZoneOrganism =
  | 'fruiting vegetables'
  | 'Pythium'
  | 'Pythium myriotylum'
  | 'Phytophthora cryptogea'
  | 'Phytophthora nicotianae'

interface Organism {
  readonly bands: readonly Band[]
  readonly source: string
}

const ORGANISMS: Readonly<Record<RootZoneOrganism, Organism>> = {
  'fruiting vegetables': {
    bands: [
      { upTo: 15, band: 'cold', level: 'caution', says: 'roots are slow and take little water' },
      { upTo: 18, band: 'cool', level: 'note', says: 'below the common target' },
      { upTo: 24, band: 'target', level: 'note', says: 'within the common target' },
      { upTo: 27, band: 'warm', level: 'note', says: 'above the common target' },
      { upTo: Infinity, band: 'hot', level: 'caution', says: 'roots need more oxygen than warm water holds' },
    ],
    source: 'common practice, no source; tomato yielded most at 24 °C (gosselin-1983)',
  },
  Pythium: {
    bands: [
      {
        upTo: 17,
        below: true,
        band: 'not studied',
        level: 'note',
        says: 'colder than the temperatures at which the two species were compared',
      },
      {
        upTo: 23,
        below: true,
        band: 'Pythium dissotocum',
        level: 'caution',
        says: 'favours P. dissotocum over P. aphanidermatum',
      },
      { upTo: 23, band: 'either', level: 'caution', says: 'either of P. dissotocum and P. aphanidermatum may lead' },
      {
        upTo: Infinity,
        band: 'Pythium aphanidermatum',
        level: 'caution',
        says: 'favours P. aphanidermatum over P. dissotocum',
      },
    ],
    source: 'gold-1985',
  },
  'Pythium myriotylum': {
    bands: [
      { upTo: 15, band: 'least', level: 'note', says: 'least disease of 15, 20, 25 and 30 °C' },
      { upTo: Infinity, band: 'favoured', level: 'caution', says: 'more disease than at 15 °C' },
    ],
    source: 'fortnum-2000, abstract',
  },
  'Phytophthora cryptogea': {
    bands: [
      {
        upTo: 15,
        band: 'zoospores',
        level: 'caution',
        says: 'zoospores are released best at 10 °C; plants died at 15 °C',
      },
      { upTo: 20, below: true, band: 'between', level: 'caution', says: 'between zoospore release and best growth' },
      {
        upTo: 25,
        band: 'growth',
        level: 'caution',
        says: 'it grows best at 20 to 25 °C, though plants at 25 °C stayed without symptoms',
      },
      { upTo: 30, below: true, band: 'declining', level: 'note', says: 'warmer than its best growth' },
      { upTo: Infinity, band: 'no zoospores', level: 'note', says: 'no zoospores at 30 °C' },
    ],
    source: 'kennedy-1990, abstract: stone wool',
  },
  'Phytophthora nicotianae': {
    bands: [
      { upTo: 10, below: true, band: 'nearly stopped', level: 'note', says: 'it nearly stops below 10 to 12 °C' },
      { upTo: 24, below: true, band: 'slow', level: 'note', says: 'cooler than its best' },
      { upTo: 30, band: 'best', level: 'caution', says: 'it grows best at 24 to 30 °C' },
      { upTo: 36, band: 'declining', level: 'note', says: 'warmer than its best' },
      { upTo: Infinity, band: 'nearly stopped', level: 'note', says: 'it nearly stops above 36 °C' },
    ],
    source: 'inrae-nd, Phytophthora nicotianae',
  },
}

/** A temperature, and whose it is. */
export interface RootTemperatureInput {
  /** Temperature of the medium. Unit: °C. Range: [-5, 60]. */
  readonly temperature: Temperature
  /** Roots of a crop, or a water mould. */
  readonly organism: RootZoneOrganism
}

/**
 * What a root temperature means for a crop, or for a water mould that may be in its root zone. Warm is not always riskier: it depends on
 * the organism.
 *
 * @param input - Temperature and organism.
 * @procedure Finds the band of the organism's table in which the temperature lies.
 * @returns Band, finding with source, and caution.
 * @throws `DomainError` outside the range, `InputError` for an unknown organism.
 * @validity Each table holds for the crops and media of its source.
 * @source gold-1985, and the sources in the findings
 * @example
 * ```ts
 * rootTemperatureBand({ temperature: celsius(18), organism: 'Pythium' }).band // => 'Pythium dissotocum'
 * ```
 */
export function rootTemperatureBand(input: RootTemperatureInput): RootZoneBand {
  requireObject(input, 'input')
  const { temperature, organism } = input
  const value = numberIn(temperature, ROOT_TEMPERATURE, 'temperature')
  const table = Object.hasOwn(ORGANISMS, organism) ? ORGANISMS[organism] : undefined
  if (table === undefined)
    throw new InputError(
      'organism',
      `there is no table for ${organism}`,
      `use one of ${Object.keys(ORGANISMS).join(', ')}`,
    )
  return inBands(value, table.bands, {
    code: 'root-temperature',
    unit: '°C',
    source: table.source,
    caution:
      'temperature tells what is favoured, not what is present: only a diagnosis justifies treatment, and labels and law decide on products',
  })
}
