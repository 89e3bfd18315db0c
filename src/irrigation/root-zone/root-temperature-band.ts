import { InputError } from '../../quantity/errors.js'
import type { Temperature } from '../../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../../quantity/guard.js'
import { asName, hasRow } from '../../quantity/one-of.js'
import { ROOT_TEMPERATURE } from '../domains.js'
import { type Band, inBands, type RootTemperatureBandName, type RootZoneBand } from './root-zone-bands.js'

/** Whose temperatures are meant. */
export type RootZoneOrganism =
  | 'fruiting-vegetables'
  | 'Pythium'
  | 'Pythium myriotylum'
  | 'Phytophthora cryptogea'
  | 'Phytophthora nicotianae'

interface Organism {
  readonly bands: readonly Band<RootTemperatureBandName>[]
  readonly source: string
}

const ORGANISMS: Readonly<Record<RootZoneOrganism, Organism>> = {
  'fruiting-vegetables': {
    bands: [
      { upTo: 15, band: 'cold', level: 'caution' },
      { upTo: 18, band: 'cool', level: 'note' },
      { upTo: 24, band: 'target', level: 'note' },
      { upTo: 27, band: 'warm', level: 'note' },
      { upTo: Infinity, band: 'hot', level: 'caution' },
    ],
    source: 'common practice, no source; tomato yielded most at 24 °C (gosselin-1983)',
  },
  Pythium: {
    bands: [
      {
        upTo: 17,
        below: true,
        band: 'not-studied',
        level: 'note',
      },
      {
        upTo: 23,
        below: true,
        band: 'pythium-dissotocum',
        level: 'caution',
      },
      { upTo: 23, band: 'either', level: 'caution' },
      {
        upTo: Infinity,
        band: 'pythium-aphanidermatum',
        level: 'caution',
      },
    ],
    source: 'gold-1985',
  },
  'Pythium myriotylum': {
    bands: [
      { upTo: 15, band: 'least', level: 'note' },
      { upTo: Infinity, band: 'favoured', level: 'caution' },
    ],
    source: 'fortnum-2000, abstract',
  },
  'Phytophthora cryptogea': {
    bands: [
      {
        upTo: 15,
        band: 'zoospores',
        level: 'caution',
      },
      { upTo: 20, below: true, band: 'between', level: 'caution' },
      {
        upTo: 25,
        band: 'growth',
        level: 'caution',
      },
      { upTo: 30, below: true, band: 'declining', level: 'note' },
      { upTo: Infinity, band: 'no-zoospores', level: 'note' },
    ],
    source: 'kennedy-1990, abstract: stone wool',
  },
  'Phytophthora nicotianae': {
    bands: [
      { upTo: 10, below: true, band: 'nearly-stopped', level: 'note' },
      { upTo: 24, below: true, band: 'slow', level: 'note' },
      { upTo: 30, band: 'best', level: 'caution' },
      { upTo: 36, band: 'declining', level: 'note' },
      { upTo: Infinity, band: 'nearly-stopped', level: 'note' },
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
 * @procedure Finds the band of the organism's table in which the temperature lies.
 * @returns Band, finding with source, and caution.
 * @throws `DomainError` outside the range, `InputError` for an unknown organism.
 * @validity Each table holds for the crops and media of its source.
 * @source gold-1985, and the sources in the findings
 * @example
 * rootTemperatureBand({ temperature: celsius(18), organism: 'Pythium' }).band // => 'pythium-dissotocum'
 */
export function rootTemperatureBand(input: RootTemperatureInput): RootZoneBand<RootTemperatureBandName> {
  requireObject(input, 'input')
  const { temperature, organism } = input
  const value = numberIn(temperature, ROOT_TEMPERATURE, 'temperature')
  const table = hasRow(ORGANISMS, organism) ? ORGANISMS[organism] : undefined
  if (table === undefined)
    throw new InputError(
      'organism',
      `there is no table for ${asName(organism)}`,
      `use one of ${Object.keys(ORGANISMS).join(', ')}`,
    )
  return inBands(value, table.bands, {
    code: 'root-temperature',
    about: organism,
    unit: '°C',
    source: table.source,
    caution:
      'temperature tells what is favoured, not what is present: only a diagnosis justifies treatment, and labels and law decide on products',
  })
}
