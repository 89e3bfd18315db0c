import { InputError } from '../../quantity/errors.js'
import type { DrainEC, PoreWaterEC, SaturatedExtractEC, SolutionEC } from '../../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../../quantity/guard.js'
import { asName, hasRow } from '../../quantity/one-of.js'
import { MEDIA_EXTRACT_EC } from '../domains.js'
import { type Band, inBands, type RootZoneBand } from '../root-zone/root-zone-bands.js'

const NAMES = ['very-low', 'low', 'normal', 'high', 'very-high'] as const
const LIMITS: Readonly<Record<MediaTestMethod, readonly number[]>> = {
  'pour-through': [1, 2.6, 4.6, 6.5, 7.8],
  'saturated-media-extract': [0.75, 2, 3.5, 5, 6],
  'one-to-two': [0.25, 0.75, 1.25, 1.75, 2.25],
}

/** How the extract was made: leachate of a pot, extract of a saturated paste of medium, or one volume of medium in two of water. */
export type MediaTestMethod = 'pour-through' | 'saturated-media-extract' | 'one-to-two'

/** Salt bands of media tests. */
export type MediaSaltBand = (typeof NAMES)[number] | 'extreme'

/** An EC and how its extract was made. */
export interface MediaSaltInput {
  /** How the extract was made. */
  readonly method: MediaTestMethod
  /** EC of the extract. Unit: dS/m. Range: [0, ∞). */
  readonly ec: SolutionEC | DrainEC | PoreWaterEC | SaturatedExtractEC
}

/**
 * What the EC of a media test means for greenhouse crops in peat mixes. The same medium gives very different numbers by the three
 * methods: 2.6 dS/m is extreme in a one-to-two extract, normal in a saturated one and low in a pour-through.
 *
 * @procedure Finds the band of the method's table in which the EC lies. Published bands leave small gaps between each other; here a
 * number at a limit belongs to the lower band.
 * @returns Band, finding with source, and caution.
 * @throws `DomainError` outside the range, `InputError` for an unknown method.
 * @validity Greenhouse crops in soilless peat mixes. Seedlings stand less; stone wool and coir with continuous feeding run higher.
 * @source umass-nd, table of soluble salts (read in a copy)
 * @example
 * mediaSaltBand({ method: 'pour-through', ec: decisiemensPerMetre<DrainEC>(3.2) }).band // => 'normal'
 */
export function mediaSaltBand(input: MediaSaltInput): RootZoneBand<MediaSaltBand> {
  requireObject(input, 'input')
  const { method, ec } = input
  const value = numberIn(ec, MEDIA_EXTRACT_EC, 'ec')
  const limits = hasRow(LIMITS, method) ? LIMITS[method] : undefined
  if (limits === undefined)
    throw new InputError('method', `${asName(method)} is unknown`, `use one of ${Object.keys(LIMITS).join(', ')}`)
  const bands: Band<MediaSaltBand>[] = limits.map((upTo, i) => {
    const band = NAMES[i]!
    return { upTo, band, level: i === 2 ? 'note' : 'caution' }
  })
  bands.push({ upTo: Infinity, band: 'extreme', level: 'danger' })
  return inBands(value, bands, {
    code: 'media-salts',
    about: method,
    unit: 'dS/m',
    source: 'umass-nd, table of soluble salts',
    caution: 'the bands are for crops in peat mixes; they compare only with tests by the same method',
  })
}
