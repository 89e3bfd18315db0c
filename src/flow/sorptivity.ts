import type { ConductiveModel } from '../medium/curves/retention-model.js'
import { integrate } from '../numerics/quadrature.js'
import { followPair } from '../numerics/runge-kutta.js'
import { domainWith } from '../quantity/domain.js'
import { SUCTION } from '../quantity/domains.js'
import { InputError } from '../quantity/errors.js'
import type { SoilWaterDiffusivity, Sorptivity, SuctionHead, WaterContentChange } from '../quantity/generated/kinds.js'
import { numberIn, optionOr, requireMade, requireObject } from '../quantity/guard.js'
import { namedIn } from '../quantity/named-in.js'
import { DIFFUSIVITY_OF_MEDIUM, SATURATED_CONDUCTIVITY, SURFACE_RISE } from './domains.js'
import type { ConductiveMedium } from './terms.js'

/** A dry medium whose surface is wetted. */
export interface WettedMedium extends ConductiveMedium {
  /** Suction before. Unit: cm. Range: [0, ∞). */
  readonly initialSuction: SuctionHead
  /** Suction that is kept at the surface: none when left out. Unit: cm. Range: [0, ∞). */
  readonly surfaceSuction?: SuctionHead
}

/** A medium of one diffusivity whose surface is wetted. */
export interface WettedWithDiffusivity {
  /** Diffusivity, the same at every water content. Unit: cm²/h. Range: [0, ∞). */
  readonly diffusivity: SoilWaterDiffusivity
  /** Water content at the surface less that before. Unit: m³/m³. Range: [0, 1]. */
  readonly rise: WaterContentChange
}

/**
 * Sorptivity of a medium: the water that its surface draws in over the square root of time, without gravity.
 *
 * φ is the distance over the square root of time (Boltzmann's variable) and G the flux times that root. The flux at the surface is
 * sought with which just nothing is left where the suction is still the initial one.
 *
 * @equation `\frac{d\phi}{ds} = \frac{K}{G}, \quad \frac{dG}{ds} = -\frac{\phi}{2} C, \quad \phi(s_0) = 0, \quad G(s_i) = 0, \quad S = 2\,G(s_0)`
 * @returns Sorptivity. Unit: cm/h^½.
 * @throws `DomainError` outside the ranges; `InputError` when the surface is drier than the medium; `ConvergenceError` when the medium
 * is so dry or so sharp that the steps do not end.
 * @validity Uniform medium that wets as its curve says. A medium that repels water when dry takes up far less: measure it.
 * @source philip-1957
 * @example
 * const medium = vanGenuchten1980({
 *   residual: waterContent(0.078), saturated: waterContent(0.43), alpha: perCentimetre(0.036), n: 1.56,
 * })
 * const sorptivity = sorptivityPhilip1957({
 *   medium, saturatedConductivity: centimetresPerDay(24.96), initialSuction: centimetresOfSuction(1000),
 * })
 * inCentimetresPerSquareRootDay(sorptivity) // => 10.0742
 */
export function sorptivityPhilip1957(wetting: WettedMedium): Sorptivity {
  requireObject(wetting, 'wetting')
  const { medium, conductivity, from, to } = checkWetting(wetting)
  // The weighted integral is within a few per cent; with K/K_s alone, everything is scaled by the root of K_s.
  const near = weightedSorptivity(medium, from, to)
  if (near === 0) return 0 as Sorptivity
  // No medium draws in more than this: its flux falls with the content no faster than in proportion, as behind a front.
  let [low, high] = [near * 0.98, near * Math.SQRT2]
  while (isTooMuch(medium, from, to, low)) low *= 0.9
  while (high - low > 1e-10 * high) {
    const middle = (low + high) / 2
    if (isTooMuch(medium, from, to, middle)) high = middle
    else low = middle
  }
  return (((low + high) / 2) * Math.sqrt(conductivity)) as Sorptivity
}

/** Whether a sorptivity leaves some flux where the suction is the initial one. */
function isTooMuch(medium: ConductiveModel, from: number, to: number, sorptivity: number): boolean {
  const surface = sorptivity / 2
  const min = 1e-11 * surface
  const [, [, flux]] = followPair({
    // From the surface on: of a small difference at a large suction steps become too short to be added to the suction.
    slopes: (x, [phi, g]) => {
      const s = (from + x) as SuctionHead
      return [medium.relativeConductivity(s) / g, (-phi / 2) * medium.capacity(s)]
    },
    from: 0,
    to: to - from,
    start: [0, surface],
    tolerance: 1e-10,
    scale: [1e-9, min],
    ended: ([, g]) => g < min,
  })
  return flux >= min
}

/**
 * Sorptivity by the weighted integral of Parlange (1975), a close estimate that needs no search.
 *
 * @equation `S^2 = \int_{s_0}^{s_i} (\theta_0 + \theta - 2\theta_i)\,K\,ds`
 * @returns Sorptivity. Unit: cm/h^½.
 * @throws `DomainError` outside the ranges; `InputError` when the surface is drier than the medium.
 * @validity Against `sorptivityPhilip1957` it was within 1.4 %, mostly low, for nine media that began at 10 cm of suction or drier,
 * except a clay; up to 7 % high where the medium began nearly full, or for that clay.
 * @source parlange-1975
 * @source lassabatere-2023 (its abstract, which ascribes the integral to Parlange)
 * @example
 * const medium = vanGenuchten1980({
 *   residual: waterContent(0.078), saturated: waterContent(0.43), alpha: perCentimetre(0.036), n: 1.56,
 * })
 * const sorptivity = sorptivityParlange1975({
 *   medium, saturatedConductivity: centimetresPerDay(24.96), initialSuction: centimetresOfSuction(1000),
 * })
 * inCentimetresPerSquareRootDay(sorptivity) // => 10.0144
 */
export function sorptivityParlange1975(wetting: WettedMedium): Sorptivity {
  requireObject(wetting, 'wetting')
  const { medium, conductivity, from, to } = checkWetting(wetting)
  return (weightedSorptivity(medium, from, to) * Math.sqrt(conductivity)) as Sorptivity
}

/**
 * Sorptivity of a medium whose diffusivity is the same at every water content, such as `gardner1958`.
 *
 * @equation `S = 2\,\Delta\theta\,\sqrt{D / \pi}`
 * @returns Sorptivity. Unit: cm/h^½.
 * @source carslaw-1959, section 2.5
 * @example
 * sorptivityConstantDiffusivity({ diffusivity: squareCentimetresPerHour(750), rise: waterContentChange(0.76) }) // => 23.4855
 */
export function sorptivityConstantDiffusivity(wetting: WettedWithDiffusivity): Sorptivity {
  requireObject(wetting, 'wetting')
  const diffusivity = numberIn(wetting.diffusivity, DIFFUSIVITY_OF_MEDIUM, 'diffusivity')
  return (2 * numberIn(wetting.rise, SURFACE_RISE, 'rise') * Math.sqrt(diffusivity / Math.PI)) as Sorptivity
}

/** The weighted integral with K / K_s in the place of K. */
function weightedSorptivity(medium: ConductiveModel, from: number, to: number): number {
  const before = medium.waterContent(to as SuctionHead)
  const surface = medium.waterContent(from as SuctionHead)
  const share = (s: number) => medium.relativeConductivity(s as SuctionHead)
  const rise = (s: number) => surface - before + (medium.waterContent(s as SuctionHead) - before)
  const ends = [from]
  for (let k = 12; k >= 0; k--) ends.push(from + (to - from) * 10 ** -k)
  for (const kink of medium.breakpoints) ends.push(Math.min(Math.max(kink, from), to))
  ends.sort((a, b) => a - b)
  // Water contents have about 1e-16 of rounding, which no finer pieces would remove.
  const floor = 1e-3 * integrate(share, ends, 1e-6)
  return Math.sqrt(integrate((s) => rise(s) * share(s), ends, 1e-12, floor))
}

function checkWetting(wetting: WettedMedium) {
  requireMade(wetting.medium, 'relativeConductivity', 'medium')
  const from = numberIn(
    optionOr(wetting.surfaceSuction, 0),
    domainWith(SUCTION, { quantity: 'suction at the surface' }),
    'surfaceSuction',
  )
  const to = namedIn(wetting.initialSuction, SUCTION, 'initialSuction')
  if (from > to) throw new InputError('surfaceSuction', 'the surface is drier than the medium', 'only wetting is meant')
  return {
    medium: wetting.medium,
    conductivity: numberIn(wetting.saturatedConductivity, SATURATED_CONDUCTIVITY, 'saturatedConductivity'),
    from,
    to,
  }
}
