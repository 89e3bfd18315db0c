import fc from 'fast-check'
import * as porewater from 'porewater'
import { describe, expect, it } from 'vitest'

type Unit = (value: number) => number
const units = porewater as unknown as Record<string, Unit>
const readerOf = (name: string) => units[`in${name[0]?.toUpperCase()}${name.slice(1)}`]

/**
 * Canonical value of 1 in each unit, worked out from the definition that stands behind it.
 * SI: BIPM SI Brochure, 9th edition (2019). NIST: Special Publication 811 (2008), Appendix B.8 and its footnotes.
 */
const definitions: [name: string, expected: number, definition: string][] = [
  ['litres', 1, 'canonical'],
  ['millilitres', 1 / 1000, 'SI prefix'],
  ['cubicMetres', 1000, 'SI Table 8: 1 L = 1 dm³'],
  ['usGallons', (231 * 2.54 ** 3) / 1000, 'NIST: 231 cubic inches, 1 in = 2.54 cm'],
  ['usFluidOunces', (231 * 2.54 ** 3) / 1000 / 128, 'NIST: 1/128 US gallon'],
  ['millimetres', 1 / 10, 'SI prefix'],
  ['metres', 100, 'SI prefix'],
  ['inches', 2.54, 'NIST: exact since 1959'],
  ['feet', 12 * 2.54, 'NIST: 12 in'],
  ['squareCentimetres', 1 / 100 ** 2, 'SI prefix'],
  ['hectares', 100 * 100, 'SI Table 8: 1 ha = 1 hm²'],
  ['squareFeet', (12 * 0.0254) ** 2, 'NIST: (12 in)²'],
  ['kilograms', 1000, 'SI prefix'],
  ['milligrams', 1 / 1000, 'SI prefix'],
  ['pounds', 453.59237, 'NIST: avoirdupois pound, exact since 1959'],
  ['ounces', 453.59237 / 16, 'NIST: 1/16 lb'],
  ['nanoseconds', 1e-9, 'SI prefix'],
  ['minutes', 60, 'SI Table 8'],
  ['hours', 60 * 60, 'SI Table 8'],
  ['days', 24 * 60 * 60, 'SI Table 8'],
  ['litresPerMinute', 60, 'SI Table 8'],
  ['millilitresPerMinute', 60 / 1000, 'SI Table 8'],
  ['cubicMetresPerHour', 1000, 'SI Table 8'],
  ['usGallonsPerHour', (231 * 2.54 ** 3) / 1000, 'NIST: 231 cubic inches'],
  ['usGallonsPerMinute', (60 * 231 * 2.54 ** 3) / 1000, 'NIST: 231 cubic inches'],
  ['hectopascals', 1 / 10, 'SI prefix'],
  ['millibars', 1 / 10, 'NIST: 1 bar = 100 kPa'],
  ['bars', 100, 'NIST: 1 bar = 100 kPa'],
  ['poundsPerSquareInch', (0.45359237 * 9.80665) / 0.0254 ** 2 / 1000, 'NIST: lb × standard gravity / in²'],
  ['metresOfWater', 9.80665, 'NIST: conventional metre of water, 1000 kg/m³ × standard gravity'],
  ['millisiemensPerCentimetre', 1, 'SI prefix: 1e-3 S / 1e-2 m = 0.1 S/m'],
  ['microsiemensPerCentimetre', 1 / 1000, 'SI prefix'],
  ['siemensPerMetre', 10, 'SI prefix'],
  ['kilogramsPerCubicMetre', 1 / 1000, 'SI prefix'],
  ['inchesPerDay', 25.4, 'NIST: 1 in = 25.4 mm'],
  ['inchesPerHour', 25.4, 'NIST: 1 in = 25.4 mm'],
  ['inchesOfDepth', 25.4, 'NIST: 1 in = 25.4 mm'],
  ['litresPerSquareMetre', 1, 'SI Table 8: 1 dm³ / 1 m² = 1 mm'],
  ['kilopascalsOfSuction', 100 / 9.80665, 'head = pressure / (1000 kg/m³ × 9.80665 m/s²)'],
  ['hectopascalsOfSuction', 10 / 9.80665, 'head = pressure / (1000 kg/m³ × 9.80665 m/s²)'],
  ['centimetresPerDay', 1 / 24, 'SI Table 8'],
  ['centimetresPerMinute', 60, 'SI Table 8'],
  ['centimetresPerSecond', 60 * 60, 'SI Table 8'],
  ['centimetresPerSquareRootDay', 1 / Math.sqrt(24), 'SI Table 8: 1 d = 24 h'],
  ['metresOfPressureHead', 100, 'SI prefix'],
  ['kilopascalsOfPressureHead', 100 / 9.80665, 'head = pressure / (1000 kg/m³ × 9.80665 m/s²)'],
  ['hectopascalsOfPressureHead', 10 / 9.80665, 'head = pressure / (1000 kg/m³ × 9.80665 m/s²)'],
  ['millimetresPerHourOfConductivity', 1 / 10, 'SI prefix'],
  ['joulesPerSquareCentimetreDay', 1 / 100, 'SI prefix: 1e4 J/m² = 0.01 MJ/m²'],
  ['wattsPerSquareMetreDayMean', 86400 / 1e6, 'SI Table 8: 1 W = 1 J/s, 1 d = 86400 s'],
  ['wattsPerSquareMetreHourMean', 3600 / 1e6, 'SI Table 8'],
  ['megajoulesPerSquareMetre', 100, 'SI prefix'],
  ['wattHoursPerSquareMetre', 3600 / 1e4, 'SI Table 8'],
  ['footCandles', 1 / (12 * 0.0254) ** 2, 'NIST: 1 lm/ft²'],
  ['kilometresPerHour', 1000 / 3600, 'SI Table 8'],
  ['milesPerHour', (5280 * 12 * 0.0254) / 3600, 'NIST: 5280 ft'],
  ['knots', 1852 / 3600, 'International Hydrographic Conference 1929: 1852 m'],
  ['megahertz', 1e6, 'SI prefix'],
  ['gigahertz', 1e9, 'SI prefix'],
  ['kilowatts', 1000, 'SI prefix'],
  ['millimolesPerLitreOfOxygen', 2 * 15.999, 'IUPAC abridged standard atomic weight of oxygen (2021)'],
  ['feetAboveSeaLevel', 12 * 0.0254, 'NIST: 12 in'],
  ['fahrenheitOfChange', 5 / 9, 'NIST: 1.8 °F of difference = 1 K'],
  ['millipascalSeconds', 1 / 1000, 'SI prefix'],
  ['millinewtonsPerMetre', 1 / 1000, 'SI prefix'],
  ['millisiemens', 1 / 1000, 'SI prefix'],
  ['microsiemens', 1 / 1e6, 'SI prefix'],
  ['cellConstantPerCentimetre', 100, 'SI prefix'],
  ['gramsPerLitreOfSolids', 1000, 'SI prefix'],
  ['molesPerLitre', 1000, 'SI prefix'],
  ['percentOfOxygenSaturation', 1 / 100, 'definition'],
  ['percent', 1 / 100, 'definition'],
  ['percentWaterContent', 1 / 100, 'definition'],
  ['percentagePoints', 1 / 100, 'definition'],
]

describe('unit constructors', () => {
  it.each(definitions)('%s(1) is %s: %s', (name, expected) => {
    expect(units[name]!(1) / expected).toBeCloseTo(1, 15)
  })
  it('place the fixed points of the temperature scales (NIST SP 811, B.8)', () => {
    expect(porewater.fahrenheit(32)).toBe(0)
    expect(porewater.fahrenheit(212)).toBe(100)
    expect(porewater.fahrenheit(-40)).toBe(-40)
    expect(porewater.kelvin(273.15)).toBe(0)
  })
  it('put pF 2 at 100 cm, which is 9.80665 kPa', () => {
    expect(porewater.pF(2)).toBe(100)
    expect(porewater.inKilopascalsOfSuction(porewater.pF(2))).toBeCloseTo(9.80665, 13)
    expect(porewater.inPF(porewater.centimetresOfSuction(1000))).toBeCloseTo(3, 15)
  })

  const pairs = Object.keys(porewater).filter(
    (name) => typeof units[name] === 'function' && readerOf(name) !== undefined,
  )
  it('come with a reader each', () => {
    expect(pairs.length).toBeGreaterThan(80)
  })
  it.each(pairs)('%s is undone by its reader', (name) => {
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 1, noNaN: true }), (value) => {
        const back = (readerOf(name) as Unit)(units[name]!(value))
        // An offset scale loses digits near its zero; a factor loses one or two units in the last place.
        expect(Math.abs(back - value)).toBeLessThan(/celsius|fahrenheit|kelvin|pF/.test(name) ? 2e-13 : 1e-15 * value)
      }),
    )
  })
  it.each(pairs)('%s refuses NaN and infinity', (name) => {
    for (const value of [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]) {
      expect(() => units[name]!(value)).toThrow(expect.objectContaining({ code: 'outside-domain', value }))
    }
  })
  it('keep their meaning in a list', () => {
    expect([1, 2].map(porewater.litres)).toEqual([1, 2])
  })
})
