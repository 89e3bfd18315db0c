import fc from 'fast-check'
import {
  airSpaceBand,
  celsius,
  countLight,
  type DrainFraction,
  decisiemensPerMetre,
  evaporationCeiling,
  explainIrrigationFinding,
  fraction,
  grams,
  inMillilitres,
  inPercentOfOxygenSaturation,
  joulesPerSquareCentimetre,
  kilograms,
  kilopascals,
  type LightCounter,
  lightShot,
  litres,
  type MediaTestMethod,
  mediaSaltBand,
  milligramsPerLitreOfOxygen,
  mixedTemperature,
  percent,
  plantsPerSquareMetre,
  radiationSum,
  rootOxygenBand,
  rootTemperatureBand,
  type SolutionEC,
  squareMetres,
  waterUseDepthFromWeighing,
  waterUseFromWeighing,
} from 'porewater'
import { describe, expect, it } from 'vitest'
import { checkPublished } from '../support/published.js'
import { expectDomainError, expectInputError } from '../support/refusals.js'

const dark: LightCounter = { since: joulesPerSquareCentimetre(0) }

describe('light in J/m² or MJ/m² where J/cm² is meant', () => {
  const counter = countLight({ threshold: joulesPerSquareCentimetre(100) })
  const shot = {
    uptakePerLight: 1.7,
    plantDensity: plantsPerSquareMetre(2.5),
    drainFraction: percent<DrainFraction>(25),
  }

  it('asked for ten thousand times the shots', () => {
    const light = joulesPerSquareCentimetre(600_000)
    expectDomainError(() => counter.step(dark, { light }), { argument: 'light', unit: 'J/cm²', max: 5000 })
    expectDomainError(() => counter.step({ since: light }, { light: dark.since }), { argument: 'since' })
  })
  it('as the sum of a shot asked for none, or for a hundred times as many', () => {
    for (const typed of [1_000_000, 1]) {
      const threshold = joulesPerSquareCentimetre(typed)
      expectDomainError(() => countLight({ threshold }), { argument: 'threshold', min: 5, max: 5000 })
      expectDomainError(() => lightShot({ threshold, ...shot }), { argument: 'threshold' })
    }
  })
  it('evaporated 24 m of water in a day', () => {
    const year = joulesPerSquareCentimetre(700_000)
    expect(evaporationCeiling({ sum: year })).toBeCloseTo(2857, 0)
    expectDomainError(() => evaporationCeiling({ sum: joulesPerSquareCentimetre(6_000_000) }), { argument: 'sum' })
  })
})

checkPublished('irrigation', 'radiation.count', ({ t, G, threshold }) => {
  let state = dark
  let events = 0
  const counter = countLight({ threshold: joulesPerSquareCentimetre(threshold) })
  for (let i = 1; i < t.length; i++) {
    const light = radiationSum({ times: [t[i - 1], t[i]], irradiance: [G[i - 1], G[i]] }).sum
    const [next, shots] = counter.step(state, { light })
    state = next
    events += shots
  }
  return { events, remainder: state.since }
})
checkPublished('irrigation', 'radiation.event', ({ threshold, uptake_per_J, density, DF }) => {
  const shot = lightShot({
    threshold: joulesPerSquareCentimetre(threshold),
    uptakePerLight: uptake_per_J,
    plantDensity: plantsPerSquareMetre(density),
    drainFraction: fraction(DF),
  })
  return { uptake_mL_m2: shot.uptake * 1000, shot_mL_plant: inMillilitres(shot.volume) }
})
const weighed = ({ m0, m1, irrigation, drain }: Record<string, number>) => ({
  before: kilograms(m0 as number),
  after: kilograms(m1 as number),
  applied: litres(irrigation as number),
  drained: litres(drain as number),
})
checkPublished('irrigation', 'et.weighing', (given) => ({ ET: waterUseFromWeighing(weighed(given)) }))
checkPublished('irrigation', 'et.weighing_mm', (given) => ({
  ET: waterUseDepthFromWeighing({ ...weighed(given), area: squareMetres(given.area) }),
}))
checkPublished('irrigation', 'temperature.mix', ({ V1, T1, V2, T2 }) => ({
  T: mixedTemperature({
    firstVolume: litres(V1),
    firstTemperature: celsius(T1),
    secondVolume: litres(V2),
    secondTemperature: celsius(T2),
  }),
}))
const salts = (method: MediaTestMethod, ec: number) =>
  mediaSaltBand({ method, ec: decisiemensPerMetre<SolutionEC>(ec) }).band
checkPublished('irrigation', 'bands.pour_through', ({ EC }) => ({ class: salts('pour-through', EC) }))
checkPublished('irrigation', 'bands.sme', ({ EC }) => ({ class: salts('saturated-media-extract', EC) }))
checkPublished('irrigation', 'bands.one_to_two', ({ EC }) => ({ class: salts('one-to-two', EC) }))
checkPublished('irrigation', 'bands.pythium', ({ T }) => ({
  // The paper writes the species with a capital.
  class: rootTemperatureBand({ temperature: celsius(T), organism: 'Pythium' }).band.replace('pythium-', 'Pythium '),
}))

const ORGANISMS = [
  'fruiting-vegetables',
  'Pythium',
  'Pythium myriotylum',
  'Phytophthora cryptogea',
  'Phytophthora nicotianae',
] as const

describe('the light counter', () => {
  const counter = countLight({ threshold: joulesPerSquareCentimetre(100) })
  const sums = fc.array(fc.double({ min: 0, max: 350, noNaN: true }).map(joulesPerSquareCentimetre), { maxLength: 40 })
  it('loses no light: shots and remainder are the sum', () => {
    fc.assert(
      fc.property(sums, (lights) => {
        let state = dark
        let shots = 0
        for (const light of lights) {
          const [next, due] = counter.step(state, { light })
          expect(next.since).toBeLessThan(100)
          state = next
          shots += due
        }
        const all = lights.reduce((sum, light) => sum + light, 0)
        expect(Math.abs(100 * shots + state.since - all)).toBeLessThanOrEqual(1e-6)
      }),
    )
  })
  it('does not depend on how often it is asked', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 5000 }), fc.integer({ min: 1, max: 50 }), (light, parts) => {
        const [, once] = counter.step(dark, { light: joulesPerSquareCentimetre(light) })
        let state = dark
        let shots = 0
        for (let i = 0; i < parts; i++) {
          const [next, due] = counter.step(state, { light: joulesPerSquareCentimetre(light / parts) })
          state = next
          shots += due
        }
        expect(shots).toBe(once)
      }),
    )
  })
  it('can be kept as JSON, and leaves its state as it was', () => {
    const state = Object.freeze({ since: joulesPerSquareCentimetre(70) })
    const [next] = counter.step(state, { light: joulesPerSquareCentimetre(50) })
    expect(JSON.parse(JSON.stringify(next))).toEqual({ since: 20 })
    expect(state.since).toBe(70)
  })
})

describe('a light shot', () => {
  it('gives more when more is to drain, and what is not drained is the uptake', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 0.9, noNaN: true }),
        fc.double({ min: 0.5, max: 4, noNaN: true }),
        (f, k) => {
          const shot = lightShot({
            threshold: joulesPerSquareCentimetre(120),
            uptakePerLight: k,
            plantDensity: plantsPerSquareMetre(2.5),
            drainFraction: fraction(f),
          })
          expect(shot.volume * 2.5 * (1 - f)).toBeCloseTo(shot.uptake, 12)
        },
      ),
    )
  })
})

describe('weighing', () => {
  it('closes the water balance and shows a fault as it is', () => {
    const balance = { before: grams(5000), after: grams(5200), applied: litres(0.1), drained: litres(0) }
    expect(waterUseFromWeighing(balance)).toBeCloseTo(-0.1, 12)
  })
})

describe('mixed water', () => {
  it('lies between its parts', () => {
    const amounts = fc.double({ min: 0.01, max: 100, noNaN: true })
    const degrees = fc.double({ min: 0, max: 100, noNaN: true })
    fc.assert(
      fc.property(amounts, degrees, amounts, degrees, (v1, t1, v2, t2) => {
        const mixed = mixedTemperature({
          firstVolume: litres(v1),
          firstTemperature: celsius(t1),
          secondVolume: litres(v2),
          secondTemperature: celsius(t2),
        })
        expect(mixed).toBeGreaterThanOrEqual(Math.min(t1, t2) - 1e-9)
        expect(mixed).toBeLessThanOrEqual(Math.max(t1, t2) + 1e-9)
      }),
    )
    expectInputError(
      () =>
        mixedTemperature({
          firstVolume: litres(0),
          firstTemperature: celsius(1),
          secondVolume: litres(0),
          secondTemperature: celsius(1),
        }),
      'firstVolume',
    )
  })
})

describe('bands of the root zone', () => {
  it('put a number at a limit where the source puts it', () => {
    expect(airSpaceBand(percent(13)).band).toBe('accepted')
    expect(airSpaceBand(percent(12.9)).band).toBe('low')
    expect(airSpaceBand(percent(31)).band).toBe('high')
    // 2.6 dS/m by three methods: the comparison that extension services print.
    expect(salts('one-to-two', 2.6)).toBe('extreme')
    expect(salts('saturated-media-extract', 2.6)).toBe('normal')
    expect(salts('pour-through', 2.6)).toBe('low')
  })
  it('depend on the organism: cold favours one mould and warmth another', () => {
    const at = (degrees: number, organism: Parameters<typeof rootTemperatureBand>[0]['organism']) =>
      rootTemperatureBand({ temperature: celsius(degrees), organism })
    expect(at(10, 'Phytophthora cryptogea')).toMatchObject({ band: 'zoospores', findings: [{ level: 'caution' }] })
    expect(at(31, 'Phytophthora cryptogea')).toMatchObject({ band: 'no-zoospores', findings: [{ level: 'note' }] })
    expect(at(10.5, 'Phytophthora nicotianae').findings[0]?.level).toBe('note')
    expect(at(27, 'Phytophthora nicotianae')).toMatchObject({ band: 'best', findings: [{ level: 'caution' }] })
    expect(at(22.9, 'Pythium').band).toBe('pythium-dissotocum')
    // The two were compared from 17 °C, which belongs to the comparison.
    expect(at(17, 'Pythium').band).toBe('pythium-dissotocum')
    expect(at(16.9, 'Pythium').band).toBe('not-studied')
    expect(at(27, 'Pythium').band).toBe('pythium-aphanidermatum')
    expect(at(24, 'fruiting-vegetables').band).toBe('target')
    expectInputError(() => at(20, 'roses' as never), 'organism')
  })
  it('each give a number, a source and a caution', () => {
    for (const band of [
      airSpaceBand(percent(20)),
      rootTemperatureBand({ temperature: celsius(30), organism: 'Pythium myriotylum' }),
      rootOxygenBand({ concentration: milligramsPerLitreOfOxygen(1.5), temperature: celsius(20) }),
      mediaSaltBand({ method: 'pour-through', ec: decisiemensPerMetre<SolutionEC>(9) }),
    ]) {
      expect(band.findings[0]?.source).toMatch(/\w/)
      expect(band.findings[0]?.value).toBe(band.value)
      expect(band.caution).toMatch(/\w/)
      expect(band.findings.map(explainIrrigationFinding)[0]?.message).toContain(String(band.value))
    }
    const [air] = airSpaceBand(percent(20)).findings
    expectInputError(() => explainIrrigationFinding({ ...air, band: 'airy' } as never), 'finding')
  })
  it('have words in every table', () => {
    for (const organism of ORGANISMS)
      for (let degrees = -5; degrees <= 60; degrees += 0.5)
        for (const finding of rootTemperatureBand({ temperature: celsius(degrees), organism }).findings)
          expect(explainIrrigationFinding(finding).message).toMatch(/^-?[\d.]+ °C: \w.{5}/)
  })
  it('relate oxygen to what water can hold at the site', () => {
    const water = { concentration: milligramsPerLitreOfOxygen(6), temperature: celsius(25) }
    expect(inPercentOfOxygenSaturation(rootOxygenBand(water).saturation)).toBeCloseTo(72.609, 2)
    const high = rootOxygenBand({ ...water, pressure: kilopascals(81.8) })
    expect(high.saturation).toBeGreaterThan(rootOxygenBand(water).saturation)
    expect(rootOxygenBand({ ...water, concentration: milligramsPerLitreOfOxygen(2) }).band).toBe('low')
    expectDomainError(() => rootOxygenBand({ ...water, concentration: milligramsPerLitreOfOxygen(200) }))
    expectInputError(() => salts('paste' as never, 2), 'method')
  })
})
