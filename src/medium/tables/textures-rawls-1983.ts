import type { HydraulicConductivity, Porosity, SuctionHead } from '../../quantity/generated/kinds.js'
import type { SourcedRow, TextureClass } from './sourced-row.js'

/** A soil as the numbers of the infiltration equation of Green and Ampt. */
export interface GreenAmptSoil extends SourcedRow {
  /** All pores. Unit: 1. */
  readonly porosity: Porosity
  /** Pores less the water that stays: what a front can fill in air-dry soil, and the basis of `rise` in Green and Ampt. Unit: 1. */
  readonly effectivePorosity: Porosity
  /** Suction at the wetting front. Unit: cm. */
  readonly wettingFrontSuction: SuctionHead
  /** Conductivity of the wetted soil, about half of the saturated one because air stays trapped. Unit: cm/h. */
  readonly conductivity: HydraulicConductivity
}

const SOURCE = 'rawls-1983, table of means by texture, as chow-1988, Table 4.3.1, reprints it'

/**
 * Green–Ampt parameters of eleven texture classes (all but silt) after Rawls, Brakensiek and Miller (1983). Field soils only.
 * Below the effective porosity lies water that does not take part: a front fills at most the effective porosity, 21 % less water than the
 * porosity in a clay loam.
 */
export const texturesRawls1983 = {
  sand: { porosity: 0.437, effectivePorosity: 0.417, wettingFrontSuction: 4.95, conductivity: 11.78, source: SOURCE, known: 'read' },
  'loamy-sand': { porosity: 0.437, effectivePorosity: 0.401, wettingFrontSuction: 6.13, conductivity: 2.99, source: SOURCE, known: 'read' },
  'sandy-loam': { porosity: 0.453, effectivePorosity: 0.412, wettingFrontSuction: 11.01, conductivity: 1.09, source: SOURCE, known: 'read' },
  loam: { porosity: 0.463, effectivePorosity: 0.434, wettingFrontSuction: 8.89, conductivity: 0.34, source: SOURCE, known: 'read' },
  'silt-loam': { porosity: 0.501, effectivePorosity: 0.486, wettingFrontSuction: 16.68, conductivity: 0.65, source: SOURCE, known: 'read' },
  'sandy-clay-loam': { porosity: 0.398, effectivePorosity: 0.33, wettingFrontSuction: 21.85, conductivity: 0.15, source: SOURCE, known: 'read' },
  'clay-loam': { porosity: 0.464, effectivePorosity: 0.309, wettingFrontSuction: 20.88, conductivity: 0.1, source: SOURCE, known: 'read' },
  'silty-clay-loam': { porosity: 0.471, effectivePorosity: 0.432, wettingFrontSuction: 27.3, conductivity: 0.1, source: SOURCE, known: 'read' },
  'sandy-clay': { porosity: 0.43, effectivePorosity: 0.321, wettingFrontSuction: 23.9, conductivity: 0.06, source: SOURCE, known: 'read' },
  'silty-clay': { porosity: 0.479, effectivePorosity: 0.423, wettingFrontSuction: 29.22, conductivity: 0.05, source: SOURCE, known: 'read' },
  clay: { porosity: 0.475, effectivePorosity: 0.385, wettingFrontSuction: 31.63, conductivity: 0.03, source: SOURCE, known: 'read' },
} as unknown as Readonly<Record<Exclude<TextureClass, 'silt'>, GreenAmptSoil>>
