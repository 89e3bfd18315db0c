import type { VanGenuchtenParameters } from '../curves/van-genuchten-1980.js'
import type { SaturatedFlow } from '../terms.js'
import type { SourcedRow, TextureClass } from './sourced-row.js'

/** A soil as the numbers of a van Genuchten curve with its saturated conductivity. */
export interface VanGenuchtenSoil extends VanGenuchtenParameters, SourcedRow, SaturatedFlow {}

const SOURCE = 'carsel-1988, class means by texture, seen in three secondary copies of the table'

/**
 * Mean van Genuchten parameters of the twelve texture classes after Carsel and Parrish (1988); the paper prints the
 * conductivity in cm/d. Classes scatter widely and alpha of fine textures is poorly known. Field soils only, not growing media.
 */
export const texturesCarselParrish1988 = {
  sand: { residual: 0.045, saturated: 0.43, alpha: 0.145, n: 2.68, saturatedConductivity: 29.7, source: SOURCE, known: 'read' },
  'loamy-sand': { residual: 0.057, saturated: 0.41, alpha: 0.124, n: 2.28, saturatedConductivity: 14.591666666666667, source: SOURCE, known: 'read' },
  'sandy-loam': { residual: 0.065, saturated: 0.41, alpha: 0.075, n: 1.89, saturatedConductivity: 4.420833333333333, source: SOURCE, known: 'read' },
  loam: { residual: 0.078, saturated: 0.43, alpha: 0.036, n: 1.56, saturatedConductivity: 1.04, source: SOURCE, known: 'read' },
  silt: { residual: 0.034, saturated: 0.46, alpha: 0.016, n: 1.37, saturatedConductivity: 0.25, source: SOURCE, known: 'read' },
  'silt-loam': { residual: 0.067, saturated: 0.45, alpha: 0.02, n: 1.41, saturatedConductivity: 0.45, source: SOURCE, known: 'read' },
  'sandy-clay-loam': { residual: 0.1, saturated: 0.39, alpha: 0.059, n: 1.48, saturatedConductivity: 1.31, source: SOURCE, known: 'read' },
  'clay-loam': { residual: 0.095, saturated: 0.41, alpha: 0.019, n: 1.31, saturatedConductivity: 0.26, source: SOURCE, known: 'read' },
  'silty-clay-loam': { residual: 0.089, saturated: 0.43, alpha: 0.01, n: 1.23, saturatedConductivity: 0.06999999999999999, source: SOURCE, known: 'read' },
  'sandy-clay': { residual: 0.1, saturated: 0.38, alpha: 0.027, n: 1.23, saturatedConductivity: 0.12, source: SOURCE, known: 'read' },
  'silty-clay': { residual: 0.07, saturated: 0.36, alpha: 0.005, n: 1.09, saturatedConductivity: 0.02, source: SOURCE, known: 'read' },
  clay: { residual: 0.068, saturated: 0.38, alpha: 0.008, n: 1.09, saturatedConductivity: 0.19999999999999998, source: SOURCE, known: 'read' },
} as unknown as Readonly<Record<TextureClass, VanGenuchtenSoil>>
