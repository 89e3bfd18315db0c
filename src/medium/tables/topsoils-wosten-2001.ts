import type { VanGenuchtenSoil } from './textures-carsel-parrish-1988.js'

const SOURCE = 'wosten-2001, topsoil units, seen in a secondary copy'

/** The topsoil units of Wösten and co-workers (2001) that are mineral. */
export type TopsoilUnit = 'b1-non-loamy-sand' | 'b2-loamy-sand' | 'b3-very-loamy-sand' | 'b4-extremely-loamy-sand' | 'b5-coarse-sand' | 'b6-boulder-clay' | 'b7-sandy-loam' | 'b8-silt-loam' | 'b9-clayey-loam' | 'b10-light-clay' | 'b11-heavy-clay' | 'b12-very-heavy-clay' | 'b13-loam'

/**
 * Van Genuchten parameters of thirteen Dutch mineral topsoils with a fitted exponent of pore connection, after Wösten and
 * co-workers (2001); the report prints the conductivity in cm/d. Field soils only, not growing media.
 */
export const topsoilsWosten2001 = {
  'b1-non-loamy-sand': { residual: 0.02, saturated: 0.43, alpha: 0.0234, n: 1.801, poreConnection: 0.0, saturatedConductivity: 0.9754166666666667, source: SOURCE, known: 'read' },
  'b2-loamy-sand': { residual: 0.02, saturated: 0.42, alpha: 0.0276, n: 1.491, poreConnection: -1.06, saturatedConductivity: 0.5216666666666666, source: SOURCE, known: 'read' },
  'b3-very-loamy-sand': { residual: 0.02, saturated: 0.46, alpha: 0.0144, n: 1.534, poreConnection: -0.215, saturatedConductivity: 0.6425, source: SOURCE, known: 'read' },
  'b4-extremely-loamy-sand': { residual: 0.02, saturated: 0.46, alpha: 0.0156, n: 1.406, poreConnection: 0.0, saturatedConductivity: 1.2175, source: SOURCE, known: 'read' },
  'b5-coarse-sand': { residual: 0.01, saturated: 0.36, alpha: 0.0452, n: 1.933, poreConnection: -0.359, saturatedConductivity: 2.2045833333333333, source: SOURCE, known: 'read' },
  'b6-boulder-clay': { residual: 0.01, saturated: 0.38, alpha: 0.0222, n: 1.238, poreConnection: -1.747, saturatedConductivity: 4.195416666666667, source: SOURCE, known: 'read' },
  'b7-sandy-loam': { residual: 0.0, saturated: 0.4, alpha: 0.0194, n: 1.25, poreConnection: -0.802, saturatedConductivity: 0.58625, source: SOURCE, known: 'read' },
  'b8-silt-loam': { residual: 0.01, saturated: 0.43, alpha: 0.0099, n: 1.288, poreConnection: -2.244, saturatedConductivity: 0.09833333333333333, source: SOURCE, known: 'read' },
  'b9-clayey-loam': { residual: 0.0, saturated: 0.43, alpha: 0.0065, n: 1.325, poreConnection: -2.161, saturatedConductivity: 0.06416666666666666, source: SOURCE, known: 'read' },
  'b10-light-clay': { residual: 0.01, saturated: 0.43, alpha: 0.0064, n: 1.21, poreConnection: -3.884, saturatedConductivity: 0.029166666666666664, source: SOURCE, known: 'read' },
  'b11-heavy-clay': { residual: 0.01, saturated: 0.59, alpha: 0.0195, n: 1.109, poreConnection: -5.901, saturatedConductivity: 0.18875, source: SOURCE, known: 'read' },
  'b12-very-heavy-clay': { residual: 0.01, saturated: 0.54, alpha: 0.0239, n: 1.094, poreConnection: -5.681, saturatedConductivity: 0.22375, source: SOURCE, known: 'read' },
  'b13-loam': { residual: 0.01, saturated: 0.42, alpha: 0.0084, n: 1.441, poreConnection: -1.497, saturatedConductivity: 0.5408333333333334, source: SOURCE, known: 'read' },
} as unknown as Readonly<Record<TopsoilUnit, VanGenuchtenSoil>>
