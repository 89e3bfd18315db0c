import type { ConductiveModel } from '../medium/curves/retention-model.js'
import { SUCTION } from '../quantity/domains.js'
import { InputError } from '../quantity/errors.js'
import type { HydraulicConductivity, SoilWaterDiffusivity, SuctionHead } from '../quantity/generated/kinds.js'
import { numberIn, requireMade, requireObject } from '../quantity/guard.js'
import { SATURATED_CONDUCTIVITY } from './domains.js'

/** A medium at a suction. */
export interface ConductingMedium {
  /** How the medium holds and conducts water. */
  readonly medium: ConductiveModel
  /** Conductivity at saturation. Unit: cm/h. Range: (0, ∞). */
  readonly saturatedConductivity: HydraulicConductivity
  /** Suction. Unit: cm. Range: [0, ∞). */
  readonly suction: SuctionHead
}

/**
 * Diffusivity of water in a medium: how fast a difference of water content evens out.
 *
 * @equation `D = K / C`
 * @returns Diffusivity. Unit: cm²/h.
 * @throws `DomainError` outside the ranges; `InputError` where the water content does not change with suction, as at saturation.
 * @source definition
 * @example
 * const medium = gardner1958({ residual: waterContent(0.1), saturated: waterContent(0.9), alpha: perCentimetre(0.05) })
 * soilWaterDiffusivity({ medium, saturatedConductivity: centimetresPerHour(30), suction: centimetresOfSuction(60) }) // => 750
 */
export function soilWaterDiffusivity(state: ConductingMedium): SoilWaterDiffusivity {
  requireObject(state, 'state')
  requireMade(state.medium, 'relativeConductivity', 'medium')
  const conductivity = numberIn(state.saturatedConductivity, SATURATED_CONDUCTIVITY, 'saturatedConductivity')
  const suction = numberIn(state.suction, SUCTION, 'suction') as SuctionHead
  const diffusivity = (conductivity * state.medium.relativeConductivity(suction)) / state.medium.capacity(suction)
  if (diffusivity < Infinity) return diffusivity as SoilWaterDiffusivity
  throw new InputError(
    'suction',
    'the water content does not change there',
    'give a suction at which the medium drains',
  )
}
