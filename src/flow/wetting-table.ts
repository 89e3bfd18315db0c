import type { ConductiveModel, RetentionModel } from '../medium/curves/retention-model.js'
import { InputError } from '../quantity/errors.js'
import type { Share, SuctionHead } from '../quantity/generated/kinds.js'
import { type MediumTable, mediumTable } from './column/table/medium-table.js'

/** Water content by which a wetting curve may lie above the drying curve: rounding of fitted parameters. */
const ROUNDING = 1e-9

/** The curve along which a medium wets, as a table; it must begin where the drying curve begins, and stay below it. */
export function wettingTable(drying: ConductiveModel, wetting: RetentionModel): MediumTable {
  if (Math.abs(wetting.saturated - drying.saturated) > ROUNDING)
    throw new InputError('wetting', 'is saturated at another water content', 'give both curves one saturated content')
  for (let suction = 0.01; suction < 1e7; suction *= 1.5) {
    const s = suction as SuctionHead
    if (wetting.waterContent(s) > drying.waterContent(s) + ROUNDING)
      throw new InputError('wetting', 'holds more than the drying curve', 'take care that the curves are not swapped')
  }
  // What a medium conducts goes with the water that it holds, so that the conductivity of this curve is never asked for.
  return mediumTable({ ...wetting, relativeConductivity: () => 0 as Share })
}
