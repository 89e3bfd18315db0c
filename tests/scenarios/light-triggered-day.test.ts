import {
  countLight,
  drainFraction,
  inJoulesPerSquareCentimetre,
  inMillilitres,
  inSeconds,
  joulesPerSquareCentimetre,
  type LightCounter,
  lightShot,
  litres,
  litresPerHour,
  percent,
  plantsPerSquareMetre,
  radiationSum,
  runTime,
} from 'porewater'
import { describe, expect, it } from 'vitest'

/**
 * Source of facts and numbers: reference scenario, recomputed (an invented but plausible day).
 * A glasshouse crop is watered by the sun: a pyranometer on the roof is read every hour from six in the morning to seven in the
 * evening, and each 100 J/cm² brings a shot.
 */
describe('a day of irrigation by light', () => {
  const times = Array.from({ length: 14 }, (_, hour) => 3600 * hour)
  const irradiance = [0, 40, 150, 300, 450, 580, 680, 720, 690, 600, 470, 310, 140, 30]
  const threshold = joulesPerSquareCentimetre(100)
  const perLight = 2
  const density = plantsPerSquareMetre(2.5)
  const sum = radiationSum({ times, irradiance }).sum
  const shot = lightShot({ threshold, uptakePerLight: perLight, plantDensity: density, drainFraction: percent(25) })

  const counter = countLight({ threshold })
  let state: LightCounter = counter.start
  let shots = 0
  for (let i = 1; i < times.length; i++) {
    const light = radiationSum({ times: times.slice(i - 1, i + 1), irradiance: irradiance.slice(i - 1, i + 1) }).sum
    const [next, due] = counter.step(state, { light })
    state = next
    shots += due
  }

  it('brings 18 shots, with half a shot of light left over at sunset', () => {
    expect(inJoulesPerSquareCentimetre(sum)).toBeCloseTo(1852.2, 6)
    expect(shots).toBe(18)
    expect(inJoulesPerSquareCentimetre(state.since)).toBeCloseTo(52.2, 6)
  })
  it('gives each plant shots of 107 mL for 192 s', () => {
    expect(Math.abs(inMillilitres(shot.volume) - 106.667)).toBeLessThanOrEqual(0.0107)
    expect(inSeconds(runTime({ volume: shot.volume, emitterFlow: litresPerHour(2), emitters: 1 }))).toBeCloseTo(192, 6)
  })
  it('drains less over the day than its shots were sized for, because the last light brought no shot', () => {
    const perPlant = shots * shot.volume
    const applied = perPlant * density
    const uptake = (sum * perLight) / 1000
    expect(perPlant).toBeCloseTo(1.92, 6)
    expect(applied).toBeCloseTo(4.8, 6)
    expect(uptake).toBeCloseTo(3.7044, 6)
    const drained = drainFraction({ applied: litres(applied), drained: litres(applied - uptake) })
    expect(Math.abs(drained - 0.22825)).toBeLessThanOrEqual(2.28e-5)
    expect(drained).toBeLessThan(0.25)
  })
})
