import type { OxygenConcentration, OxygenSaturation, Pressure, Temperature } from '../../quantity/generated/kinds.js'
import { oxygenShareOfSaturation } from '../../water/oxygen-benson-krause-1984.js'
import { inBands, type RootZoneBand } from './root-zone-bands.js'

/** Oxygen in water around roots. */
export interface RootOxygenInput {
  /** Dissolved oxygen. Unit: mg/L. Range: [0, 100]. */
  readonly concentration: OxygenConcentration
  /** Temperature of the water. Unit: °C. Range: [0, 50]. */
  readonly temperature: Temperature
  /** Pressure of the air at the site; 101.325 kPa if left out. Unit: kPa. Range: [30, 200]. */
  readonly pressure?: Pressure
}

/** Oxygen around roots, judged. */
export interface RootOxygenBand extends RootZoneBand<'low' | 'watch' | 'enough'> {
  /** Share of what the water would hold in equilibrium with air at that temperature and pressure. Unit: 1. */
  readonly saturation: OxygenSaturation
}

/**
 * What dissolved oxygen in water around roots means for fruiting vegetables, with its share of saturation at the site.
 *
 * @procedure Up to 2 mg/L is low: young tomato plants grew less. Up to 4 mg/L is to be watched, above it no loss was seen. Saturation is
 * that of Benson and Krause (1984) at the temperature and pressure given.
 * @returns Band, saturation, finding with source, and caution.
 * @validity Young tomato in solution at 22 and 30 °C; cucumber stood 1 mg/L at 25 °C but not at 33 °C.
 * @source rong-1997; ahn-2022 (tomatoes in slabs)
 * @example
 * const oxygen = rootOxygenBand({ concentration: milligramsPerLitreOfOxygen(3.2), temperature: celsius(25) })
 * oxygen // => { band: 'watch', saturation: 0.3872 }
 */
export function rootOxygenBand(input: RootOxygenInput): RootOxygenBand {
  const saturation = oxygenShareOfSaturation(input)
  const band = inBands(
    input.concentration,
    [
      { upTo: 2, band: 'low', level: 'caution' },
      { upTo: 4, band: 'watch', level: 'note' },
      { upTo: Infinity, band: 'enough', level: 'note' },
    ],
    {
      code: 'root-oxygen',
      unit: 'mg/L',
      source: 'rong-1997',
      caution:
        'roots in a drained medium get most of their oxygen from its air: tomatoes in slabs at 3.2 mg/L were seen to yield well; look at air-filled porosity and temperature too',
    },
  )
  return { ...band, saturation }
}
