import { ADVICE, type Advice } from '../../quantity/advice.js'
import { answerOf } from '../../quantity/answer.js'
import { DRAIN_FRACTION, PLANT_DENSITY } from '../../quantity/domains.js'
import type { PlantDensity, RadiationSum, Volume, WaterDepth } from '../../quantity/generated/kinds.js'
import { numberIn, requireObject } from '../../quantity/guard.js'
import type { Reducer } from '../../quantity/reducer.js'
import { LIGHT_COUNTED, LIGHT_THRESHOLD, UPTAKE_PER_LIGHT } from '../domains.js'
import type { DrainWish, LightThreshold } from '../terms.js'

/** A light counter before a sum of light: the light since the last shot. */
export interface LightCounter {
  /** Light since the last shot. Unit: J/cm². Range: [0, 5000]. */
  readonly since: RadiationSum
}

/** Light that came in. */
export interface LightCount {
  /** Light since the last count. Unit: J/cm². Range: [0, 5000]. */
  readonly light: RadiationSum
}

/**
 * Counts light towards shots and keeps what is over for the next one. Set back to zero at every shot instead, a counter loses up to a
 * reading's worth of light each time.
 *
 * More than one shot can fall due in one reading. The state is plain data; begin each day with `start`.
 * A light counter knows nothing of a blocked emitter or a cold root zone: look at drain and water content every day.
 *
 * @equation `n = \left\lfloor \frac{s + \Delta s}{s_1} \right\rfloor, \quad s' = s + \Delta s - n s_1`
 * @returns A reducer that takes light and gives the number of shots that are due.
 * @source definition
 * @example
 * const counter = countLight({ threshold: joulesPerSquareCentimetre(100) })
 * const morning = { since: joulesPerSquareCentimetre(40) }
 * counter.step(morning, { light: joulesPerSquareCentimetre(180) }) // => [{ since: 20 }, 2]
 */
export function countLight(limits: LightThreshold): Reducer<LightCounter, LightCount, number> {
  requireObject(limits, 'limits')
  const threshold = numberIn(limits.threshold, LIGHT_THRESHOLD, 'threshold')
  return {
    start: { since: 0 as RadiationSum },
    step: (state, input) => {
      requireObject(state, 'state')
      requireObject(input, 'input')
      const sum = numberIn(state.since, LIGHT_COUNTED, 'since') + numberIn(input.light, LIGHT_COUNTED, 'light')
      // Light that falls short of a shot only by rounding is a shot.
      const shots = Math.floor(sum / threshold + 1e-9)
      return [{ since: Math.max(0, sum - shots * threshold) as RadiationSum }, shots]
    },
  }
}

/** How much light a shot stands for, and what plants take by it. */
export interface LightShotInput extends LightThreshold, DrainWish {
  /** Water that the crop takes for each J/cm². Unit: mL/m² per J/cm². Range: [0, 10]. */
  readonly uptakePerLight: number
  /** Plants on the ground; or emitters, for the volume of one emitter. Unit: 1/m². Range: (0, ∞). */
  readonly plantDensity: PlantDensity
}

/** A shot that replaces what light made plants take. */
export interface LightShot extends Advice {
  /** Water that the crop takes between two shots. Unit: mm. */
  readonly uptake: WaterDepth
  /** Water of a shot for one plant, with its drain. Unit: L. */
  readonly volume: Volume
}

/**
 * Volume of a shot that is given after a set sum of light.
 *
 * The factor belongs to a site: it changes with leaf area, glass, screens and heating, and lamps need their own. Check it against
 * weighed use. Light that is left over at sunset was used without a shot, so that a day drains a little less than its shots were
 * sized for.
 *
 * @equation `V = \frac{s_1 \, k}{n \, (1 - f)}`
 * @returns Uptake and volume for one plant.
 * @source common practice, no source: about 2 mL/m² for each J/cm² outside a greenhouse of grown fruiting vegetables
 * @example
 * lightShot({
 *   threshold: joulesPerSquareCentimetre(100),
 *   uptakePerLight: 1.7,
 *   plantDensity: plantsPerSquareMetre(2.5),
 *   drainFraction: percent(25),
 * }) // => { uptake: 0.17, volume: 0.09067 }
 */
export function lightShot(input: LightShotInput): LightShot {
  requireObject(input, 'input')
  const uptake =
    (numberIn(input.threshold, LIGHT_THRESHOLD, 'threshold') *
      numberIn(input.uptakePerLight, UPTAKE_PER_LIGHT, 'uptakePerLight')) /
    1000
  const given = uptake / (1 - numberIn(input.drainFraction, DRAIN_FRACTION, 'drainFraction'))
  return {
    uptake: uptake as WaterDepth,
    volume: answerOf(given / numberIn(input.plantDensity, PLANT_DENSITY, 'plantDensity'), 'plantDensity') as Volume,
    caution: ADVICE,
  }
}
