import { SOME_POROSITY, WATER_CONTENT } from '../../quantity/domains.js'
import { InputError } from '../../quantity/errors.js'
import type { AirFilledPorosity, Porosity, WaterContent, WaterContentChange } from '../../quantity/generated/kinds.js'
import { numberIn, optionsOf } from '../../quantity/guard.js'

/** A sample on the sand box: its pores and its water content at three suctions. */
export interface ReleaseSample {
  /** Total pore space, or the water content at zero suction. Unit: 1. Range: (0, 1]. */
  readonly totalPoreSpace: Porosity
  /** Water content at a suction of 10 cm. Unit: m³/m³. Range: [0, 1]. */
  readonly at10: WaterContent
  /** Water content at a suction of 50 cm. Unit: m³/m³. Range: [0, 1]. */
  readonly at50: WaterContent
  /** Water content at a suction of 100 cm. Unit: m³/m³. Range: [0, 1]. */
  readonly at100: WaterContent
}

/** Air and water of a medium by how easily it gives the water. */
export interface WaterClasses {
  /** Total pore space. Unit: 1. Range: any. */
  readonly totalPoreSpace: Porosity
  /** Air at a suction of 10 cm. Unit: 1. Range: any. */
  readonly airCapacity: AirFilledPorosity
  /** Water given between 10 and 50 cm. Unit: m³/m³. Range: any. */
  readonly easilyAvailableWater: WaterContentChange
  /** Water given between 50 and 100 cm. Unit: m³/m³. Range: any. */
  readonly waterBufferingCapacity: WaterContentChange
  /** Water given between 10 and 100 cm. Unit: m³/m³. Range: any. */
  readonly availableWater: WaterContentChange
  /** Water still held at 100 cm. Unit: m³/m³. Range: any. */
  readonly lessAvailableWater: WaterContent
}

/**
 * Air and water classes of a sample after De Boodt and Verdonck (1972): how its pore space divides at suctions of 10, 50 and 100 cm.
 *
 * The classes belong to the medium. What a container holds depends on its height as well: see `containerCapacity`.
 *
 * @equation `\mathrm{AC} = \phi - \theta_{10}, \quad \mathrm{EAW} = \theta_{10} - \theta_{50}, \quad \mathrm{WBC} = \theta_{50} - \theta_{100}`
 * @returns The classes, which add up to the pore space.
 * @throws `DomainError` outside the ranges; `InputError` when the water content rises with suction or exceeds the pore space.
 * @source de-boodt-1972
 * @example
 * waterClassesDeBoodt1972({
 *   totalPoreSpace: percent(95),
 *   at10: percentWaterContent(82),
 *   at50: percentWaterContent(7),
 *   at100: percentWaterContent(4),
 * }) // => { airCapacity: 0.13, easilyAvailableWater: 0.75, waterBufferingCapacity: 0.03 }
 */
export function waterClassesDeBoodt1972(sample: ReleaseSample): WaterClasses {
  const { totalPoreSpace, at10, at50, at100 } = optionsOf(sample)
  numberIn(totalPoreSpace, SOME_POROSITY, 'totalPoreSpace')
  for (const [name, waterContent] of Object.entries({ at10, at50, at100 })) numberIn(waterContent, WATER_CONTENT, name)
  if (at10 > totalPoreSpace || at50 > at10 || at100 > at50)
    throw new InputError(
      'at10, at50, at100',
      `${at10}, ${at50} and ${at100} at 10, 50 and 100 cm do not fall from the pore space of ${totalPoreSpace}`,
      'check the order of the readings and whether the sample shrank',
    )
  return {
    totalPoreSpace,
    airCapacity: (totalPoreSpace - at10) as AirFilledPorosity,
    easilyAvailableWater: (at10 - at50) as WaterContentChange,
    waterBufferingCapacity: (at50 - at100) as WaterContentChange,
    availableWater: (at10 - at100) as WaterContentChange,
    lessAvailableWater: at100,
  }
}
