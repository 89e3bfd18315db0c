import type { AirFilledPorosity } from '../../quantity/generated/kinds.js'
import { numberIn } from '../../quantity/guard.js'
import { AIR_FILLED_POROSITY } from '../domains.js'
import { inBands, type RootZoneBand } from './root-zone-bands.js'

/**
 * What the air left in a drained container means for general nursery stock.
 *
 * @param air - Air-filled porosity at container capacity. Unit: 1. Range: [0, 1].
 * @procedure Compares with the 13 to 30 % that an industry guideline accepts.
 * @returns Band, finding with source, and caution.
 * @validity General nursery stock in containers.
 * @source nursery-queensland-nd, 13 to 30 %
 * @example
 * airSpaceBand(percent(9)).band // => 'low'
 */
export function airSpaceBand(air: AirFilledPorosity): RootZoneBand<'low' | 'accepted' | 'high'> {
  const value = numberIn(air, AIR_FILLED_POROSITY)
  return inBands(
    value,
    [
      { upTo: 0.13, below: true, band: 'low', level: 'caution' },
      { upTo: 0.3, band: 'accepted', level: 'note' },
      { upTo: 1, band: 'high', level: 'note' },
    ],
    {
      code: 'air-space',
      unit: '1',
      source: 'nursery-queensland-nd',
      caution:
        'air depends on the height of the container as much as on the medium; it falls as media settle and roots fill pores',
    },
  )
}
