import type { BrooksCoreyParameters } from '../curves/brooks-corey-1964.js'
import type { SaturatedFlow } from '../terms.js'
import type { SourcedRow, TextureClass } from './sourced-row.js'

/** A soil as the numbers of a Brooks–Corey curve with its saturated conductivity. */
export interface BrooksCoreySoil extends BrooksCoreyParameters, SourcedRow, SaturatedFlow {}

const SOURCE = 'rawls-1982, Table 2, geometric means'

/**
 * Brooks–Corey parameters of eleven texture classes (all but silt) after Rawls, Brakensiek and Saxton (1982): geometric means of
 * bubbling pressure and pore-size index, with the porosity as saturated water content. Only porosity and residual water content
 * were compared with a copy of the table. Field soils only, not growing media.
 */
export const texturesRawls1982 = {
  sand: { residual: 0.02, saturated: 0.437, airEntry: 7.26, lambda: 0.592, saturatedConductivity: 21.0, source: SOURCE, known: 'confirmed' },
  'loamy-sand': { residual: 0.035, saturated: 0.437, airEntry: 8.69, lambda: 0.474, saturatedConductivity: 6.11, source: SOURCE, known: 'confirmed' },
  'sandy-loam': { residual: 0.041, saturated: 0.453, airEntry: 14.66, lambda: 0.322, saturatedConductivity: 2.59, source: SOURCE, known: 'confirmed' },
  loam: { residual: 0.027, saturated: 0.463, airEntry: 11.15, lambda: 0.22, saturatedConductivity: 1.32, source: SOURCE, known: 'confirmed' },
  'silt-loam': { residual: 0.015, saturated: 0.501, airEntry: 20.76, lambda: 0.211, saturatedConductivity: 0.68, source: SOURCE, known: 'confirmed' },
  'sandy-clay-loam': { residual: 0.068, saturated: 0.398, airEntry: 28.08, lambda: 0.25, saturatedConductivity: 0.43, source: SOURCE, known: 'confirmed' },
  'clay-loam': { residual: 0.075, saturated: 0.464, airEntry: 25.89, lambda: 0.194, saturatedConductivity: 0.23, source: SOURCE, known: 'confirmed' },
  'silty-clay-loam': { residual: 0.04, saturated: 0.471, airEntry: 32.56, lambda: 0.151, saturatedConductivity: 0.15, source: SOURCE, known: 'confirmed' },
  'sandy-clay': { residual: 0.109, saturated: 0.43, airEntry: 29.17, lambda: 0.168, saturatedConductivity: 0.12, source: SOURCE, known: 'confirmed' },
  'silty-clay': { residual: 0.056, saturated: 0.479, airEntry: 34.19, lambda: 0.127, saturatedConductivity: 0.09, source: SOURCE, known: 'confirmed' },
  clay: { residual: 0.09, saturated: 0.475, airEntry: 37.3, lambda: 0.131, saturatedConductivity: 0.06, source: SOURCE, known: 'confirmed' },
} as unknown as Readonly<Record<Exclude<TextureClass, 'silt'>, BrooksCoreySoil>>
