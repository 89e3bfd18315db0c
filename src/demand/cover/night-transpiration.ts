import { saturationVapourPressureFao56 } from '../../air/saturation-vapour-pressure-fao56.js'
import { rootBetween } from '../../numerics/root.js'
import type { Irradiance, Temperature, VapourPressureDeficit } from '../../quantity/generated/kinds.js'
import { numberIn, optionOr, optionsOf } from '../../quantity/guard.js'
import { NIGHT_NET_RADIATION } from '../domains.js'
import type { CarbonDioxide, CropInAir, LeafBoundary } from '../terms.js'
import {
  type CanopyTranspiration,
  leafResistanceStanghellini1987,
  transpirationStanghellini1987,
} from './stanghellini-1987.js'

/** The air among plants at night. */
export interface NightInput extends CarbonDioxide, LeafBoundary, CropInAir {
  /** Net radiation of the crop: below zero under a cold roof, above beside warm pipes; 0 by default. Unit: W/m². Range: [-300, 300]. */
  readonly netRadiation?: Irradiance
}

/**
 * Transpiration of a tomato crop at night, with the leaf temperature, the resistance of the closed leaves and the dryness at the leaf
 * brought into agreement with each other.
 *
 * Leaf temperature and dryness enter the resistance within 0 to 60 °C and 0 to 10 kPa.
 *
 * @equation `T_l = T + \frac{R_n - \lambda E(r_s)}{2\,LAI\,\rho c_p / r_a}, \qquad r_s = r_{night}(T_l, D_l), \qquad D_l = D + e_s(T_l) - e_s(T)`
 * @param input - Air, leaf area and what else is known.
 * @returns Transpiration, heat flows and leaf temperature; negative transpiration is dew.
 * @throws `DomainError` outside the ranges, `InputError` for a deficit above the saturation vapour pressure of the air.
 * @validity Tomato under glass. Other crops lose from a tenth to a third of a day's water at night [not confirmed, source not seen]; check against a scale.
 * @source stanghellini-1987
 * @example
 * nightTranspiration({ temperature: celsius(18), deficit: kilopascals(0.5), leafArea: leafAreaIndex(3) }).transpiration // => 0.0211
 */
export function nightTranspiration(input: NightInput): CanopyTranspiration {
  const netRadiation = numberIn(
    optionOr(optionsOf(input).netRadiation, 0),
    NIGHT_NET_RADIATION,
    'netRadiation',
  ) as Irradiance
  const { temperature, deficit, leafArea, airResistance, pressure } = optionsOf(input)
  const at = (leafResistance: number) =>
    transpirationStanghellini1987({
      netRadiation,
      temperature,
      deficit,
      leafArea,
      leafResistance,
      ...(airResistance === undefined ? {} : { airResistance }),
      ...(pressure === undefined ? {} : { pressure }),
    })
  const open = at(1)
  const air = saturationVapourPressureFao56(temperature)
  const resistanceAt = (leaf: number) => {
    const leafTemperature = Math.min(60, Math.max(0, leaf)) as Temperature
    const dry = Math.min(10, Math.max(0, deficit + saturationVapourPressureFao56(leafTemperature) - air))
    return leafResistanceStanghellini1987({
      radiationOnLeaf: 0 as Irradiance,
      leafTemperature,
      deficit: dry as VapourPressureDeficit,
      carbonDioxide: optionOr(input.carbonDioxide, 200),
      night: true,
    })
  }
  // Leaves lie between those that are wide open and those that are sealed, and so does the root; it has no slope to hand.
  const [one, other] = [open.leafTemperature, at(100000).leafTemperature]
  if (one === other) return at(resistanceAt(one))
  const miss = (leaf: number) => [at(resistanceAt(leaf)).leafTemperature - leaf, Number.NaN] as const
  return at(resistanceAt(rootBetween(miss, Math.min(one, other), Math.max(one, other))))
}
