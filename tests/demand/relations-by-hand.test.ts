import {
  celsius,
  centimetres,
  cropCoefficient,
  dailyReferenceETFao56,
  dayOfYear,
  hours,
  initialCropCoefficientFao56,
  kilopascals,
  latitude,
  leafAreaIndex,
  leafResistanceGraamans2017,
  leafResistanceStanghellini1987,
  maxCropCoefficientFao56,
  metres,
  metresAboveSeaLevel,
  metresPerSecond,
  micromolesPerSquareMetreSecond,
  millimetresOfDepth,
  millimetresPerDay,
  monthlyReferenceETFao56,
  nightTranspiration,
  percent,
  transpirationStanghellini1987,
  transpirationUnderLamps,
  wattsPerSquareMetre,
} from 'porewater'
import { describe, expect, it } from 'vitest'

describe('leaves under lamps', () => {
  it('let out as Graamans (2017) has it: 60 (1500 + I) / (200 + I)', () => {
    for (const [photons, resistance] of [
      [0, 450],
      [100, 320],
      [200, 255],
      [1100, 120],
    ] as const)
      expect(leafResistanceGraamans2017(micromolesPerSquareMetreSecond(photons))).toBeCloseTo(resistance, 10)
  })
  it('stand in air that resists by 200 s/m where no fan is told', () => {
    const room = {
      photonFlux: micromolesPerSquareMetreSecond(300),
      photonsPerJoule: 4.8,
      cover: percent<never>(90),
      temperature: celsius(24),
      deficit: kilopascals<never>(0.9),
      leafArea: leafAreaIndex(3),
    }
    expect(transpirationUnderLamps(room)).toEqual(transpirationUnderLamps({ ...room, airResistance: 200 }))
  })
})

describe('leaves at night', () => {
  it('close as at 60 °C where they are warmer', () => {
    const night = {
      temperature: celsius(60),
      deficit: kilopascals<never>(0),
      leafArea: leafAreaIndex(0.3),
      netRadiation: wattsPerSquareMetre(300),
    }
    const found = nightTranspiration(night)
    expect(found.leafTemperature).toBeGreaterThan(62)
    const leafResistance = leafResistanceStanghellini1987({
      radiationOnLeaf: wattsPerSquareMetre(0),
      leafTemperature: celsius(60),
      deficit: kilopascals(0),
      night: true,
    })
    expect(transpirationStanghellini1987({ ...night, leafResistance }).leafTemperature).toBeCloseTo(
      found.leafTemperature,
      8,
    )
  })
})

describe('coefficients of FAO-56', () => {
  it('of the most that can evaporate are those of Eq. 72, and 0.05 above the basal one at least', () => {
    const max = (basal: number, wind: number, humidity: number, height: number) =>
      maxCropCoefficientFao56({
        basalCoefficient: cropCoefficient(basal),
        windSpeed: metresPerSecond(wind),
        minHumidity: percent(humidity),
        height: centimetres(100 * height),
      })
    expect(max(0.3, 4, 20, 2)).toBeCloseTo(1.2 + (0.04 * 2 + 0.004 * 25) * (2 / 3) ** 0.3, 12)
    expect(max(1.3, 2, 45, 2)).toBeCloseTo(1.35, 12)
  })
  // Annex 7, Eq. 7-3 and 7-4, with the parameters of Figures 29 and 30 (p. 267 and 268), from memory.
  it.each([
    ['coarse', 15, 7, 6],
    ['medium', 28, 13, 9],
    ['fine', 28, 13, 9],
  ] as const)('of the initial stage are those of the curves of a %s soil', (texture, most, rise, ready) => {
    for (const reference of [1, 2.5, 4, 6, 9])
      for (const interval of [0.5, 1, 2, 4, 8, 16]) {
        const curve = (evaporable: number, readily: number) => {
          const wet = readily / (1.15 * reference)
          if (interval < wet) return 1.15
          const left = evaporable - readily
          const share = Math.exp((-(interval - wet) * 1.15 * reference * (1 + readily / left)) / evaporable)
          return (evaporable - left * share) / (interval * reference)
        }
        const evaporable = Math.min(most, rise * Math.sqrt(reference))
        const found = initialCropCoefficientFao56({
          daysBetweenWettings: interval,
          referenceET: millimetresPerDay(reference),
          infiltration: millimetresOfDepth(20),
          texture,
        })
        expect(found.lightCoefficient).toBeCloseTo(curve(10, Math.min(Math.max(2.5, 6 / Math.sqrt(reference)), 7)), 12)
        expect(found.heavyCoefficient).toBeCloseTo(curve(evaporable, Math.min(ready, evaporable - 0.01)), 12)
        expect(Math.max(found.lightCoefficient, found.heavyCoefficient)).toBeLessThan(1.15 + 1e-12)
      }
  })
})

describe('a month of weather', () => {
  it('has the sun of its 15th: that of April is day 105, as in Example 17 of FAO-56', () => {
    const bangkok = {
      latitude: latitude(13.733333),
      elevation: metresAboveSeaLevel(2),
      maxTemperature: celsius(34.8),
      minTemperature: celsius(25.6),
      vapourPressure: kilopascals<never>(2.85),
      sunshine: hours(8.5),
      wind: { speed: metresPerSecond(2), height: metres(2) },
    }
    const { assumedInputs, ...month } = monthlyReferenceETFao56({ ...bangkok, month: 4 })
    expect(assumedInputs.map(({ code }) => code)).toEqual(['assumed-soil-heat'])
    expect(dailyReferenceETFao56({ ...bangkok, day: dayOfYear(105) })).toMatchObject(month)
  })
})
