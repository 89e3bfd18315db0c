import { InputError } from '../../quantity/errors.js'
import type { AirFilledPorosity, SuctionHead, Volume, WaterContent } from '../../quantity/generated/kinds.js'
import { numberIn, optionOr, requireObject } from '../../quantity/guard.js'
import { bottomSuctionAtRest } from '../container/bottom-suction.js'
import { meanWaterContentAtRest, requireMediumInContainer } from '../container/container-water.js'
import { checkPorosity } from '../container/water-and-air.js'
import { DEPLETION, MIN_AIR } from '../domains.js'
import { limitFindings } from './limit-findings.js'
import { refillPointByDepletion, refillPointBySuction } from './refill-point.js'
import type { IrrigationLimits, LimitsRequest, WaterLimit } from './water-limits.js'

/** End of the water buffering capacity of De Boodt and Verdonck (1972). */
const END_OF_BUFFER = 100 as SuctionHead

/**
 * Full point and refill point of a container from its medium, and which need sets each. The full point is container capacity, or less
 * where the roots need more air than a drained container leaves. The refill point is the wetter of those that the allowed depletion
 * and the allowed suction give.
 *
 * Both belong to this container and this curve. Compare them with what probe and scale show on the crop before anything waters by
 * them: a wrong limit can cost the crop.
 *
 * @equation `\theta_f = \min(\theta_{CC}, \phi - \varepsilon_{min}), \quad \theta_r = \max(\theta_{depletion}, \theta_{suction})`
 * @param request - Container, medium and needs.
 * @returns The two points, what binds each, and findings.
 * @throws `DomainError` outside the ranges; `InputError` when neither depletion nor suction is given, or when the needs contradict
 * the medium.
 * @validity Water at rest, one medium of even packing, no hysteresis.
 * @source allen-1998, Eqs. 82 and 83 (depletion)
 * @source de-boodt-1972 (water up to 100 cm)
 * @example
 * const medium = vanGenuchten1980({
 *   residual: waterContent(0.12),
 *   saturated: waterContent(0.93),
 *   alpha: perCentimetre(0.1),
 *   n: 1.6,
 * })
 * const container = boxContainer({ length: centimetres(100), width: centimetres(15), height: centimetres(7.5) })
 * const limits = irrigationLimits({ container, medium, depletion: percent(25), maxSuction: centimetresOfSuction(30) })
 * limits.fullPoint // => { waterContent: 0.870978, limit: 'container-capacity' }
 * limits.refillPoint.limit // => 'depletion'
 */
export function irrigationLimits(request: LimitsRequest): IrrigationLimits {
  requireObject(request, 'request')
  const { container, medium, minAir } = request
  requireMediumInContainer(request)
  const porosity = checkPorosity(request.porosity, medium)
  const capacity: WaterLimit = {
    waterContent: meanWaterContentAtRest({ container, medium }) as WaterContent,
    limit: 'container-capacity',
  }
  const considered = [capacity]
  let full = capacity
  if (minAir !== undefined) {
    const airy: WaterLimit = {
      waterContent: (porosity - numberIn(minAir, MIN_AIR, 'minAir')) as WaterContent,
      limit: 'min-air',
    }
    considered.push(airy)
    if (airy.waterContent < full.waterContent) full = airy
  }
  const refills = refillLimits(request, full.waterContent)
  const refill = wetterRefill(refills, medium.residual)
  const bottomSuctionAtRefill = bottomSuctionAtRest({ container, medium, waterContent: refill.waterContent })
  const middle = (bottomSuctionAtRefill + container.height / 2) as SuctionHead
  const conductivity = medium.relativeConductivity
  const limits = {
    fullPoint: full,
    refillPoint: refill,
    considered: [...considered, ...refills],
    airAtFull: (porosity - full.waterContent) as AirFilledPorosity,
    bottomSuctionAtRefill,
    ...(conductivity ? { conductivityAtRefill: conductivity(middle) } : {}),
    waterBetween: ((full.waterContent - refill.waterContent) * container.volume) as Volume,
  }
  return { ...limits, findings: limitFindings(request, limits, porosity - capacity.waterContent) }
}

/** The refill points that the needs give, depletion first. */
function refillLimits(request: LimitsRequest, fullPoint: WaterContent): WaterLimit[] {
  const { container, medium, depletion, maxSuction, suctionHeight } = request
  const refills: WaterLimit[] = []
  if (depletion !== undefined) {
    numberIn(depletion, DEPLETION, 'depletion')
    const lowerLimit = optionOr(request.lowerLimit, medium.waterContent(END_OF_BUFFER))
    const waterContent = refillPointByDepletion({ fullPoint, lowerLimit, depletion })
    refills.push({ waterContent, limit: 'depletion' })
  }
  if (maxSuction !== undefined) {
    const place = suctionHeight === undefined ? {} : { suctionHeight }
    const waterContent = refillPointBySuction({ container, medium, maxSuction, ...place })
    refills.push({ waterContent, limit: 'suction' })
  }
  return refills
}

function wetterRefill([first, second]: readonly WaterLimit[], residual: WaterContent): WaterLimit {
  if (first === undefined)
    throw new InputError('depletion, maxSuction', 'both are missing', 'say by which of them to water')
  const refill = second !== undefined && second.waterContent > first.waterContent ? second : first
  if (refill.waterContent <= residual)
    throw new InputError(
      'lowerLimit',
      `the medium never dries to ${refill.waterContent} m³/m³, its curve ends at ${residual} m³/m³`,
      'give a lower limit above the residual water content, or less depletion',
    )
  return refill
}
