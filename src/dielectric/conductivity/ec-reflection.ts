import { answerOf } from '../../quantity/answer.js'
import type { CellConstant, MeasuredEC, Resistance } from '../../quantity/generated/kinds.js'
import { numberIn, optionsOf } from '../../quantity/guard.js'
import { CABLE_IMPEDANCE, CELL_CONSTANT, CONDUCTIVITY, LONG_TIME_REFLECTION } from '../domains.js'

/** A travel-time probe and its cable. */
export interface ProbeOnCable {
  /** Cell constant of the probe. Unit: 1/m. Range: (0, ∞). */
  readonly cellConstant: CellConstant
  /** Impedance of the cable. Unit: Ω. Range: (0, ∞). */
  readonly impedance: Resistance
}

/** The probe and what came back. */
export interface LongTimeReflection extends ProbeOnCable {
  /** Reflection coefficient when all echoes have died out. Unit: 1. Range: (-1, 1]. */
  readonly reflection: number
}

/** The probe and the medium around it. */
export interface ProbeInConductor extends ProbeOnCable {
  /** Bulk conductivity at the temperature of the medium. Unit: dS/m. Range: [0, ∞). */
  readonly conductivity: MeasuredEC
}

/**
 * Bulk electrical conductivity from the long-time reflection of a travel-time probe.
 *
 * The factor 10 takes S/m to dS/m. Subtract the resistance of cable and connectors first; in salty media it decides.
 *
 * @equation `\sigma_b = 10\,\frac{K}{Z_0}\,\frac{1 - r}{1 + r}`
 * @returns Bulk conductivity at the temperature of the medium. Unit: dS/m.
 * @source giese-1975; topp-1988
 * @example
 * conductivityFromReflection({ cellConstant: cellConstantPerMetre(8), impedance: ohms(50), reflection: 0.6 }) // => 0.4
 */
export function conductivityFromReflection(reading: LongTimeReflection): MeasuredEC {
  const r = numberIn(optionsOf(reading).reflection, LONG_TIME_REFLECTION, 'reflection')
  return answerOf(
    ((10 * numberIn(reading.cellConstant, CELL_CONSTANT, 'cellConstant')) /
      numberIn(reading.impedance, CABLE_IMPEDANCE, 'impedance')) *
      ((1 - r) / (1 + r)),
    'impedance',
  ) as MeasuredEC
}

/**
 * Long-time reflection coefficient of a travel-time probe in a medium of known bulk conductivity.
 *
 * @equation `r = \frac{1 - y}{1 + y}, \quad y = \frac{\sigma_b Z_0}{10 K}`
 * @returns Reflection coefficient. Unit: 1.
 * @source giese-1975, solved for the reflection
 * @example
 * reflectionFromConductivity({
 *   cellConstant: cellConstantPerMetre(8),
 *   impedance: ohms(50),
 *   conductivity: decisiemensPerMetre(0.4),
 * }) // => 0.6
 */
export function reflectionFromConductivity(probe: ProbeInConductor): number {
  const load =
    (numberIn(optionsOf(probe).conductivity, CONDUCTIVITY, 'conductivity') *
      numberIn(probe.impedance, CABLE_IMPEDANCE, 'impedance')) /
    (10 * numberIn(probe.cellConstant, CELL_CONSTANT, 'cellConstant'))
  return answerOf((1 - load) / (1 + load), 'cellConstant')
}
