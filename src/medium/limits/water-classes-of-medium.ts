import type { Porosity, SuctionHead } from '../../quantity/generated/kinds.js'
import { requireMade, requireObject } from '../../quantity/guard.js'
import { checkPorosity } from '../container/water-and-air.js'
import type { KnownPorosity, RetainingMedium } from '../terms.js'
import { type WaterClasses, waterClassesDeBoodt1972 } from './water-classes.js'

/** A medium and, where it is known, its porosity. */
export interface MediumOfPorosity extends RetainingMedium, KnownPorosity {}

/**
 * Air and water classes after De Boodt and Verdonck (1972) of a medium whose retention curve is known.
 *
 * @equation `\theta_{10} = \theta(10\,\text{cm}), \quad \theta_{50} = \theta(50\,\text{cm}), \quad \theta_{100} = \theta(100\,\text{cm})`
 * @returns The classes, which add up to the pore space.
 * @throws `DomainError` outside the range; `InputError` when the porosity is below the saturated water content.
 * @source de-boodt-1972
 * @example
 * const medium = vanGenuchten1980({
 *   residual: waterContent(0.18),
 *   saturated: waterContent(0.92),
 *   alpha: perCentimetre(0.15),
 *   n: 1.7,
 * })
 * waterClassesOfMedium({ medium }).airCapacity // => 0.26877373
 */
export function waterClassesOfMedium(request: MediumOfPorosity): WaterClasses {
  requireObject(request, 'request')
  const { medium, porosity } = request
  requireMade(medium, 'waterContent', 'medium')
  const at = (suction: number) => medium.waterContent(suction as SuctionHead)
  const totalPoreSpace = checkPorosity(porosity, medium) as Porosity
  return waterClassesDeBoodt1972({ totalPoreSpace, at10: at(10), at50: at(50), at100: at(100) })
}
