import type { HydraulicConductivity } from '../../quantity/hydraulic-conductivity.js'
import type { Porosity } from '../../quantity/share.js'
import type { SuctionHead } from '../../quantity/suction.js'
import type { SourcedRow, TextureClass } from './sourced-row.js'

/** A soil as the numbers of the infiltration equation of Green and Ampt. */
export interface GreenAmptSoil extends SourcedRow {
  /** Unit: 1. */
  readonly porosity: Porosity
  /** Suction at the wetting front. Unit: cm. */
  readonly wettingFrontSuction: SuctionHead
  /** Conductivity of the wetted soil, about half of the saturated one because air stays trapped. Unit: cm/h. */
  readonly conductivity: HydraulicConductivity
}

const SOURCE =
  'Rawls, W. J., Brakensiek, D. L. and Miller, N. (1983), Journal of Hydraulic Engineering 109:62-70, table of means by texture, seen in a secondary copy'

/** Green–Ampt parameters of eleven texture classes (all but silt) after Rawls, Brakensiek and Miller (1983). Field soils only. */
export const texturesRawls1983 = {
  sand: { porosity: 0.437, wettingFrontSuction: 4.95, conductivity: 11.78, source: SOURCE, known: 'read' },
  'loamy sand': { porosity: 0.437, wettingFrontSuction: 6.13, conductivity: 2.99, source: SOURCE, known: 'read' },
  'sandy loam': { porosity: 0.453, wettingFrontSuction: 11.01, conductivity: 1.09, source: SOURCE, known: 'read' },
  loam: { porosity: 0.463, wettingFrontSuction: 8.89, conductivity: 0.34, source: SOURCE, known: 'read' },
  'silt loam': { porosity: 0.501, wettingFrontSuction: 16.68, conductivity: 0.65, source: SOURCE, known: 'read' },
  'sandy clay loam': { porosity: 0.398, wettingFrontSuction: 21.85, conductivity: 0.15, source: SOURCE, known: 'read' },
  'clay loam': { porosity: 0.464, wettingFrontSuction: 20.88, conductivity: 0.1, source: SOURCE, known: 'read' },
  'silty clay loam': { porosity: 0.471, wettingFrontSuction: 27.3, conductivity: 0.1, source: SOURCE, known: 'read' },
  'sandy clay': { porosity: 0.43, wettingFrontSuction: 23.9, conductivity: 0.06, source: SOURCE, known: 'read' },
  'silty clay': { porosity: 0.479, wettingFrontSuction: 29.22, conductivity: 0.05, source: SOURCE, known: 'read' },
  clay: { porosity: 0.475, wettingFrontSuction: 31.63, conductivity: 0.03, source: SOURCE, known: 'read' },
} as unknown as Readonly<Record<Exclude<TextureClass, 'silt'>, GreenAmptSoil>>
