import { argumentsOf } from '../explorer/arguments-of.js'
import type { Equation } from '../explorer/equation.js'
import { ulpsBetween } from './ulps.js'

/**
 * Only + − × ÷ √ and comparisons: the standard of the language (ECMA-262, Number and Math.sqrt, after IEEE 754) leaves no freedom, so
 * every engine gives the same bits. Powers, exponentials, logarithms and angles may differ in the last digits.
 */
export const EXACT = [
  'airFilledPorosity',
  'appliedForLeaching',
  'bulkConductivityHilhorst2000',
  'cellConstant',
  'cropET',
  'dailyLightIntegral',
  'degreeOfSaturation',
  'drainFraction',
  'fahrenheit',
  'flushVolume',
  'gravimetricFromWaterContent',
  'fieldLeachingRequirement',
  'litres',
  'millilitres',
  'permittivityLedieu1986',
  'poreWaterConductivityHilhorst2000',
  'readilyAvailableWater',
  'refillPointByDepletion',
  'runTime',
  'shotVolume',
  'steadyDrainEC',
  'travelTimeFromPermittivity',
  'usGallons',
  'waterContentHerkelrath1991',
  'waterContentLedieu1986',
  'waterContentRoth1990',
  'waterContentTopp1980',
  'zoneFlow',
]
/** Units in the last place; what a chain of a few elementary functions, each good to one or two, may differ by. */
const FEW = 16

/** A program for any engine that has the package as `porewater`: every equation with the inputs of its example, as one JSON text. */
export function programOf(equations: readonly Equation[]): string {
  const calls = equations.map((equation) => [equation.name, argumentsOf(equation)])
  // JSON keeps the digits of every double and turns an argument that is left out into null, which is put back.
  return `JSON.stringify(${JSON.stringify(calls)}.map(function (call) {
    return String(porewater[call[0]].apply(null, call[1].map(function (one) { return one === null ? undefined : one })))
  }))`
}

/** How far two engines are apart: what must have the same bits and has not, what differs by more than a few units, and the share that is the same. */
export function apart(equations: readonly Equation[], here: readonly number[], there: readonly number[]) {
  const ulps = equations.map(({ name }, i) => ({
    name,
    ulps: ulpsBetween(here[i]!, there[i] ?? Number.NaN),
  }))
  return {
    notExact: ulps.filter(({ name, ulps }) => EXACT.includes(name) && ulps !== 0),
    far: ulps.filter(({ ulps }) => !(ulps <= FEW)),
    same: ulps.filter(({ ulps }) => ulps === 0).length / ulps.length,
  }
}
