import { SUCTION, WATER_CONTENT } from '../../quantity/domains.js'
import { InputError } from '../../quantity/errors.js'
import type { SuctionHead, WaterContent } from '../../quantity/generated/kinds.js'
import { numberIn, optionOr, optionsOf, requireMade } from '../../quantity/guard.js'
import type { RetentionModel } from './retention-model.js'

/** Two main curves of a medium, and where it turned between them. */
export interface ScanningTurn {
  /** The main drying curve: how the medium holds water as it drains from saturation. */
  readonly drying: RetentionModel
  /** The main wetting curve, with the same water content at saturation. */
  readonly wetting: RetentionModel
  /** Suction at which the medium turned from one to the other. Unit: cm. Range: [0, ∞). */
  readonly suction: SuctionHead
  /** Water content there; that of the drying curve when left out. Unit: m³/m³. Range: [0, 1]. */
  readonly waterContent?: WaterContent
}

/** The two ways on from a turn. */
export interface ScanningCurves {
  /** Water content at a suction above that of the turn, when the medium drains on. */
  readonly whileDraining: (suction: SuctionHead) => WaterContent
  /** Water content at a suction below that of the turn, when the medium wets. */
  readonly whileWetting: (suction: SuctionHead) => WaterContent
}

/** How far a turn may lie outside the main loop: rounding. */
const ROUNDING = 1e-9

/**
 * Scanning curves from a turn: a medium that is wetted before it is dry, or drained before it is full, runs between its main curves. Each
 * way on is the main curve of its direction, scaled so that it passes through the turn.
 *
 * Loops that are run through again and again do not close at first: they creep to a place of their own (pumping). The guide on water on
 * the move shows by how much.
 *
 * @equation `\theta_\downarrow(s) = \theta_r + \frac{\theta^* - \theta_r}{\theta_d(s^*) - \theta_r} \left( \theta_d(s) - \theta_r \right), \quad
 * \theta_\uparrow(s) = \theta_s - \frac{\theta_s - \theta^*}{\theta_s - \theta_w(s^*)} \left( \theta_s - \theta_w(s) \right)`
 * @returns The curve on which the medium drains on, and that on which it wets.
 * @throws `DomainError` outside the ranges; `InputError` when the turn is not between the main curves.
 * @validity Rigid media without air trapped on wetting; turns beyond the last are forgotten, so that inner loops do not close.
 * @source scott-1983; kool-1987 takes it up with the curves of van Genuchten
 * @example
 * const drying = { residual: waterContent(0.12), saturated: waterContent(0.93), alpha: perCentimetre(0.1), n: 1.6 }
 * const turned = scanningCurvesScott1983({
 *   drying: vanGenuchten1980(drying),
 *   wetting: wettingCurveKoolParker1987(drying),
 *   suction: centimetresOfSuction(40),
 * })
 * turned.whileWetting(centimetresOfSuction(10)) // => 0.6624993
 */
export function scanningCurvesScott1983(turn: ScanningTurn): ScanningCurves {
  const { drying, wetting, suction, waterContent } = optionsOf(turn)
  requireMade(drying, 'waterContent', 'drying')
  requireMade(wetting, 'waterContent', 'wetting')
  const at = numberIn(suction, SUCTION, 'suction') as SuctionHead
  const [max, min] = [drying.waterContent(at), wetting.waterContent(at)]
  const content = numberIn(optionOr(waterContent, max), WATER_CONTENT, 'waterContent')
  if (!(content <= max + ROUNDING && content >= min - ROUNDING))
    throw new InputError('waterContent', 'is not between the main curves at this suction', `give ${min} to ${max}`)
  const { residual, saturated } = drying
  // At the dry end, and near saturation, both are nothing over nothing.
  const dryingShare = max > residual ? (content - residual) / (max - residual) : 1
  const wettingShare = min < saturated ? (saturated - content) / (saturated - min) : 1
  return {
    whileDraining: (s) => (residual + dryingShare * (drying.waterContent(s) - residual)) as WaterContent,
    whileWetting: (s) => (saturated - wettingShare * (saturated - wetting.waterContent(s))) as WaterContent,
  }
}
