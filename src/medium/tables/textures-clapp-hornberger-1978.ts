import type { SuctionHead } from '../../quantity/generated/kinds.js'
import type { CampbellParameters } from '../curves/campbell-1974.js'
import type { SaturatedFlow } from '../terms.js'
import type { SourcedRow, TextureClass } from './sourced-row.js'

/** A soil as the numbers of a Campbell curve with its saturated conductivity. */
export interface CampbellSoil extends CampbellParameters, SourcedRow, SaturatedFlow {
  /** Suction at a wetting front. Unit: cm. */
  readonly wettingFrontSuction: SuctionHead
}

const SOURCE = 'clapp-1978, Table 2, seen in a secondary copy'

/**
 * Mean Campbell parameters of eleven texture classes (all but silt) after Clapp and Hornberger (1978); the paper prints the
 * conductivity in cm/min. Field soils only, not growing media.
 */
export const texturesClappHornberger1978 = {
  sand: { saturated: 0.395, airEntry: 12.1, b: 4.05, wettingFrontSuction: 4.66, saturatedConductivity: 63.36, source: SOURCE, known: 'read' },
  'loamy-sand': { saturated: 0.41, airEntry: 9.0, b: 4.38, wettingFrontSuction: 2.38, saturatedConductivity: 56.28, source: SOURCE, known: 'read' },
  'sandy-loam': { saturated: 0.435, airEntry: 21.8, b: 4.9, wettingFrontSuction: 9.52, saturatedConductivity: 12.48, source: SOURCE, known: 'read' },
  'silt-loam': { saturated: 0.485, airEntry: 78.6, b: 5.3, wettingFrontSuction: 75.3, saturatedConductivity: 2.592, source: SOURCE, known: 'read' },
  loam: { saturated: 0.451, airEntry: 47.8, b: 5.39, wettingFrontSuction: 20.0, saturatedConductivity: 2.502, source: SOURCE, known: 'read' },
  'sandy-clay-loam': { saturated: 0.42, airEntry: 29.9, b: 7.12, wettingFrontSuction: 11.7, saturatedConductivity: 2.268, source: SOURCE, known: 'read' },
  'silty-clay-loam': { saturated: 0.477, airEntry: 35.6, b: 7.75, wettingFrontSuction: 19.7, saturatedConductivity: 0.612, source: SOURCE, known: 'read' },
  'clay-loam': { saturated: 0.476, airEntry: 63.0, b: 8.52, wettingFrontSuction: 48.1, saturatedConductivity: 0.882, source: SOURCE, known: 'read' },
  'sandy-clay': { saturated: 0.426, airEntry: 15.3, b: 10.4, wettingFrontSuction: 8.18, saturatedConductivity: 0.78, source: SOURCE, known: 'read' },
  'silty-clay': { saturated: 0.492, airEntry: 49.0, b: 10.4, wettingFrontSuction: 23.0, saturatedConductivity: 0.372, source: SOURCE, known: 'read' },
  clay: { saturated: 0.482, airEntry: 40.5, b: 11.4, wettingFrontSuction: 24.3, saturatedConductivity: 0.462, source: SOURCE, known: 'read' },
} as unknown as Readonly<Record<Exclude<TextureClass, 'silt'>, CampbellSoil>>
