import { readdirSync, readFileSync } from 'node:fs'
import fc from 'fast-check'
import * as porewater from 'porewater'
import { formatQuantity, fromUcum, type KindName, parseQuantity, toUcum } from 'porewater/text'
import { describe, expect, it } from 'vitest'
import { KINDS } from '../../src/text/generated/kinds.js'
import { expectInputError } from '../support/refusals.js'

const kinds = Object.keys(KINDS) as KindName[]
const written = kinds.flatMap((kind) =>
  KINDS[kind].units.map((unit) => [kind, unit.shown === '1' ? '' : unit.shown, unit.ucum] as const),
)

describe('the kinds that text knows', () => {
  it('are all that have a unit to write: moments have their own text, a raw reading has no unit, a capacity no constructor, a sorptivity no UCUM code', () => {
    const folders = ['../../src/quantity/', '../../src/quantity/generated/'].map(
      (path) => new URL(path, import.meta.url),
    )
    const branded = folders.flatMap((folder) =>
      readdirSync(folder)
        .filter((file) => file.endsWith('.ts'))
        .flatMap((file) =>
          [...readFileSync(new URL(file, folder), 'utf8').matchAll(/^export type (\w+) = number &\s+Kind</gm)].map(
            ([, name]) => name,
          ),
        ),
    )
    // UCUM has no half powers, as in cm/h^½.
    const without = /^(?:Instant|DayOfYear|RawReading|WaterCapacity|Sorptivity|Unnamed\w+)$/
    expect(kinds.slice().sort()).toEqual(branded.filter((name) => !without.test(name as string)).sort())
  })
})

describe('reading text', () => {
  /** Spellings people use, against our own constructors, whose factors are tested against BIPM and NIST. */
  it.each([
    ['150 mL', 'Volume', porewater.millilitres(150)],
    ['150ml', 'Volume', porewater.millilitres(150)],
    ['3.8 gal', 'Volume', porewater.usGallons(3.8)],
    ['3.8 US gal', 'Volume', porewater.usGallons(3.8)],
    ['8 fl oz', 'Volume', porewater.usFluidOunces(8)],
    ['6 in', 'Length', porewater.inches(6)],
    ['2.4 mS/cm', 'SolutionEC', porewater.millisiemensPerCentimetre(2.4)],
    ['2400 µS/cm', 'DrainEC', porewater.microsiemensPerCentimetre(2400)],
    ['2400 μS/cm', 'DrainEC', porewater.microsiemensPerCentimetre(2400)],
    ['68 °F', 'Temperature', porewater.celsius(20)],
    ['20 °C', 'Temperature', porewater.celsius(20)],
    ['293.15 K', 'Temperature', porewater.celsius(20)],
    ['9 °F', 'TemperatureChange', porewater.kelvinsOfChange(5)],
    ['0.5 gph', 'Flow', porewater.usGallonsPerHour(0.5)],
    ['2 L/h', 'Flow', porewater.litresPerHour(2)],
    ['2 l/hr', 'Flow', porewater.litresPerHour(2)],
    ['35 mL/min', 'Flow', porewater.millilitresPerMinute(35)],
    ['15 psi', 'Pressure', porewater.poundsPerSquareInch(15)],
    ['10 m of water', 'Pressure', porewater.metresOfWater(10)],
    ['pF 2', 'SuctionHead', porewater.pF(2)],
    ['10 cm of water', 'SuctionHead', porewater.centimetresOfSuction(10)],
    ['1 kPa', 'SuctionHead', porewater.kilopascalsOfSuction(1)],
    ['15 %', 'DrainFraction', porewater.fraction(0.15)],
    ['0.15', 'DrainFraction', porewater.fraction(0.15)],
    ['55%', 'WaterContent', porewater.waterContent(0.55)],
    ['3 points', 'WaterContentChange', porewater.percentagePoints(3)],
    ['1500 J/cm²', 'RadiationSum', porewater.joulesPerSquareCentimetre(1500)],
    ['18 MJ/m²/d', 'DailyRadiation', porewater.megajoulesPerSquareMetreDay(18)],
    ['500 µmol m⁻² s⁻¹', 'PhotonFluxDensity', porewater.micromolesPerSquareMetreSecond(500)],
    ['30 mol/m²/d', 'DailyLightIntegral', porewater.molesPerSquareMetreDay(30)],
    ['90 s', 'Duration', porewater.seconds(90)],
    ['2 hours', 'Duration', porewater.hours(2)],
    ['−5 °C', 'Temperature', porewater.celsius(-5)],
    ['1.5 mph', 'WindSpeed', porewater.milesPerHour(1.5)],
    ['0.12 g/cm³', 'BulkDensity', porewater.gramsPerCubicCentimetre(0.12)],
    ['80 kg/m3', 'BulkDensity', porewater.kilogramsPerCubicMetre(80)],
    ['12 g/m³', 'AbsoluteHumidity', porewater.gramsPerCubicMetre(12)],
    ['1.2 kg/m³', 'AirDensity', porewater.kilogramsOfAirPerCubicMetre(1.2)],
    ['8 g/kg', 'HumidityRatio', porewater.gramsPerKilogram(8)],
    ['0.008 kg/kg', 'HumidityRatio', porewater.kilogramsPerKilogram(0.008)],
    ['2.45 MJ/kg', 'LatentHeat', porewater.megajoulesPerKilogram(2.45)],
    ['2450 kJ/kg', 'LatentHeat', porewater.megajoulesPerKilogram(2.45)],
    ['0.066 kPa/K', 'VapourPressureSlope', porewater.kilopascalsPerKelvin(0.066)],
    ['0.066 kPa/°C', 'VapourPressureSlope', porewater.kilopascalsPerKelvin(0.066)],
    ['0.035 1/cm', 'InverseSuction', porewater.perCentimetre(0.035)],
    ['0.035 cm⁻¹', 'InverseSuction', porewater.perCentimetre(0.035)],
    ['3.5 1/m', 'InverseSuction', porewater.perMetre(3.5)],
    ['3.5 m^-1', 'InverseSuction', porewater.perMetre(3.5)],
    ['0.36 1/kPa', 'InverseSuction', porewater.perKilopascal(0.36)],
    ['0.36 kPa⁻¹', 'InverseSuction', porewater.perKilopascal(0.36)],
    ['10 mmol/L', 'AmountConcentration', porewater.millimolesPerLitre(10)],
    ['0.01 mol/L', 'AmountConcentration', porewater.molesPerLitre(0.01)],
    ['20 mmol(+)/L', 'ChargeConcentration', porewater.millimolesOfChargePerLitre(20)],
    ['20 meq/L', 'ChargeConcentration', porewater.millimolesOfChargePerLitre(20)],
    ['20 mmolc/L', 'ChargeConcentration', porewater.millimolesOfChargePerLitre(20)],
    ['640 mg/L', 'DissolvedSolids', porewater.milligramsPerLitreOfSolids(640)],
    ['0.64 g/L', 'DissolvedSolids', porewater.gramsPerLitreOfSolids(0.64)],
    ['100 1/m', 'CellConstant', porewater.cellConstantPerMetre(100)],
    ['1 cm⁻¹', 'CellConstant', porewater.cellConstantPerCentimetre(1)],
    ['1.4 mS', 'Conductance', porewater.millisiemens(1.4)],
    ['1400 µS', 'Conductance', porewater.microsiemens(1400)],
    ['50 Ω', 'Resistance', porewater.ohms(50)],
    ['1.2 kΩ', 'Resistance', porewater.ohms(1200)],
    ['50 ohm', 'Resistance', porewater.ohms(50)],
    ['54 klx', 'Illuminance', porewater.lux(54000)],
    ['200 lux', 'Illuminance', porewater.lux(200)],
    ['1000 fc', 'Illuminance', porewater.footCandles(1000)],
    ['1000 foot-candles', 'Illuminance', porewater.footCandles(1000)],
    ['4.57 µmol/J', 'PhotonYield', porewater.micromolesPerJoule(4.57)],
    ['660 nm', 'Wavelength', porewater.nanometres(660)],
    ['72.8 mN/m', 'SurfaceTension', porewater.millinewtonsPerMetre(72.8)],
    ['1.002 mPa·s', 'Viscosity', porewater.millipascalSeconds(1.002)],
    ['35', 'Salinity', porewater.salinity(35)],
    ['95 %', 'OxygenSaturation', porewater.percentOfOxygenSaturation(95)],
    ['6.2 mm/d', 'PanEvaporation', porewater.millimetresPerDay(6.2)],
    ['52.1 °', 'Latitude', porewater.latitude(52.1)],
    ['-4.4°', 'Longitude', porewater.longitude(-4.4)],
  ] as [string, KindName, number][])('%s as %s', (text, kind, expected) => {
    expect(Math.abs(parseQuantity(text, kind) - expected)).toBeLessThanOrEqual(1e-12 * Math.max(1, Math.abs(expected)))
  })

  it.each([
    ['3 ft', 'Volume', /L, mL, cm³, m³, US gal/],
    ['5', 'Volume', /has no unit/],
    ['5 L', 'DrainFraction', /no unit, %/],
    ['1,5 L', 'Volume', /decimal point/],
    ['1.500,5 L', 'Volume', /decimal point/],
    ['five L', 'Volume', /is not a number/],
    ['', 'Volume', /is not a number/],
    ['0x10 L', 'Volume', /unit/],
    ['5 L L', 'Volume', /unit/],
    ['20 °C', 'Volume', /unit/],
    ['68 gph', 'Temperature', /°C, °F, K/],
    ['2 m/s', 'TemperatureChange', /K, °C, °F/],
    ['pF 2', 'Length', /is not a number/],
    // What is alike in letters but not in meaning: charge for amount, candelas for lux, a share of volume for one of mass.
    ['20 mmol/L', 'ChargeConcentration', /mmol\(\+\)\/L/],
    ['20 meq/L', 'AmountConcentration', /mmol\/L, mol\/L/],
    ['20 cd/m²', 'Illuminance', /lx, klx, fc/],
    ['0.01 m³/m³', 'HumidityRatio', /kg\/kg, g\/kg/],
    ['8', 'HumidityRatio', /has no unit/],
    ['0.035 1/s', 'InverseSuction', /1\/cm, 1\/m, 1\/kPa/],
    ['0.9 rad/s', 'Latitude', /unit/],
  ] as [string, KindName, RegExp][])('refuses %s as %s and lists what it takes', (text, kind, message) => {
    expectInputError(() => parseQuantity(text, kind), /from text/)
    expect(() => parseQuantity(text, kind)).toThrow(message)
  })

  it('lets the kind refuse an impossible value', () => {
    expect(() => parseQuantity('-2 L', 'Volume')).toThrow(expect.objectContaining({ code: 'outside-domain' }))
    expect(() => parseQuantity('150 %', 'DrainFraction')).toThrow(expect.objectContaining({ code: 'outside-domain' }))
    expect(() => parseQuantity('1e400 L', 'Volume')).toThrow(expect.objectContaining({ code: 'outside-domain' }))
    expectInputError(() => parseQuantity('1 L', 'Bucket' as KindName), 'kind')
    expectInputError(() => parseQuantity('1 L', '__proto__' as KindName), 'kind')
  })

  it('throws nothing but typed errors, whatever it is given', () => {
    const pieces = fc
      .array(
        fc.constantFrom(
          '1',
          '-',
          '.',
          'e',
          ' ',
          'L',
          'mL',
          '/',
          '^',
          '(',
          ')',
          '*',
          '°',
          'F',
          'in',
          'µ',
          '²',
          '%',
          'd',
          'constructor',
          '__proto__',
          'pF',
          'NaN',
          '[',
          ']',
          ';',
          '=',
        ),
        { maxLength: 12 },
      )
      .map((list) => list.join(''))
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string({ maxLength: 200 }),
          fc.string({ unit: 'binary', maxLength: 60 }),
          pieces,
          pieces.map((text) => `5 ${text}`),
        ),
        fc.constantFrom(...kinds),
        (text, kind) => {
          try {
            expect(Number.isFinite(parseQuantity(text, kind))).toBe(true)
          } catch (error) {
            expect((error as { code?: string }).code).toMatch(/^(bad-input|outside-domain)$/)
          }
        },
      ),
      { numRuns: 20_000 },
    )
  }, 180_000)
  it('refuses text without end at once', () => {
    for (const text of ['1'.repeat(10_000_000), `5 ${'m '.repeat(5_000_000)}`, `5 ${'('.repeat(1_000_000)}`]) {
      expectInputError(() => parseQuantity(text, 'Volume'), /from text/)
    }
  })
})

describe('digits in groups', () => {
  const spaces = { plain: ' ', 'no-break': '\u00a0', figure: '\u2007', thin: '\u2009', 'narrow no-break': '\u202f' }
  it.each(Object.entries(spaces))(
    'of three with a %s space are one number (SI Brochure 2019, section 5.4.4)',
    (_, space) => {
      expect(parseQuantity(`1${space}500 mL`, 'Volume')).toBe(1.5)
      expect(parseQuantity(`1${space}500${space}mL`, 'Volume')).toBe(1.5)
      expect(parseQuantity(`12${space}345${space}678.5${space}mL`, 'Volume')).toBe(12345.6785)
      expect(parseQuantity(`-1${space}500 mm`, 'WaterDepth')).toBe(-1500)
      expect(parseQuantity(`1${space}013 hPa`, 'Pressure')).toBe(101.3)
      expect(parseQuantity(`1${space}500 1/m`, 'InverseSuction')).toBe(15)
      for (const wrong of [
        '1_50 mL',
        '1_5000 mL',
        '15_00 mL',
        '1500_000 mL',
        '1_500_00 mL',
        '1.5_000 mL',
        '1_500_ 2 mL',
        '1_500mL 2',
      ])
        expectInputError(() => parseQuantity(wrong.replaceAll('_', space), 'Volume'), /from text/)
    },
  )
  it.each([...Object.values(spaces), '\t', '\u3000', "'", '’', '_', ',', '.', '-', '·'])(
    'never lose a factor, whatever stands between: %j',
    (between) => {
      fc.assert(
        fc.property(fc.array(fc.integer({ min: 0, max: 9999 }), { minLength: 2, maxLength: 4 }), (groups) => {
          const text = groups.join(between)
          let value: number
          try {
            value = parseQuantity(`${text} L`, 'Volume')
          } catch (error) {
            expect((error as { code?: string }).code).toBe('bad-input')
            return
          }
          // What is read has all the digits that were written.
          expect(value).toBe(Number(between === '.' ? text : groups.join('')))
        }),
      )
    },
  )
  it.each(['1,500 mL', '1,5 L', '1.500,5 L', '1,234,567 mL', '1 500,5 mL', ',5 L'])(
    'never stand with a comma, which means two things: %s',
    (text) => {
      expectInputError(() => parseQuantity(text, 'Volume'), /from text/)
      expect(() => parseQuantity(text, 'Volume')).toThrow(/decimal point/)
    },
  )
})

describe('what people type', () => {
  it.each([
    ['72F', 'Temperature', porewater.fahrenheit(72)],
    ['72 °F', 'Temperature', porewater.fahrenheit(72)],
    ['72 ° F', 'Temperature', porewater.fahrenheit(72)],
    ['72 deg F', 'Temperature', porewater.fahrenheit(72)],
    ['20 C', 'Temperature', porewater.celsius(20)],
    ['20C', 'Temperature', porewater.celsius(20)],
    ['20 degrees Celsius', 'Temperature', porewater.celsius(20)],
    ['15 PSI', 'Pressure', porewater.poundsPerSquareInch(15)],
    ['15 pounds per square inch', 'Pressure', porewater.poundsPerSquareInch(15)],
    ['15 percent', 'DrainFraction', porewater.percent(15)],
    ['15 per cent', 'DrainFraction', porewater.percent(15)],
    ['3 us gal', 'Volume', porewater.usGallons(3)],
    ['3 US GAL', 'Volume', porewater.usGallons(3)],
    ['3 US gallons', 'Volume', porewater.usGallons(3)],
    ['8 fl. oz', 'Volume', porewater.usFluidOunces(8)],
    ['250 cc', 'Volume', porewater.millilitres(250)],
    ['0.5 GPH', 'Flow', porewater.usGallonsPerHour(0.5)],
    ['2 litres per hour', 'Flow', porewater.litresPerHour(2)],
    ['2 Litres/Hour', 'Flow', porewater.litresPerHour(2)],
    ['2 L h⁻¹', 'Flow', porewater.litresPerHour(2)],
    ['2 L·h^-1', 'Flow', porewater.litresPerHour(2)],
    ['3 gal/hr', 'Flow', porewater.usGallonsPerHour(3)],
    ['500 umol/(m2 s)', 'PhotonFluxDensity', porewater.micromolesPerSquareMetreSecond(500)],
    ['500 μmol·m⁻²·s⁻¹', 'PhotonFluxDensity', porewater.micromolesPerSquareMetreSecond(500)],
    ['2.4 mmho/cm', 'SolutionEC', porewater.millisiemensPerCentimetre(2.4)],
    ['0.3 cm3/cm3', 'WaterContent', porewater.waterContent(0.3)],
    ['0.3 m³ m⁻³', 'WaterContent', porewater.waterContent(0.3)],
    ['2.5 plants/m²', 'PlantDensity', porewater.plantsPerSquareMetre(2.5)],
    ['-12 cm of water', 'PressureHead', porewater.centimetresOfPressureHead(-12)],
    ['0.002 cm/s', 'HydraulicConductivity', porewater.centimetresPerSecond(0.002)],
    ['1 h 30 min', 'Duration', porewater.minutes(90)],
    ['1h30min', 'Duration', porewater.minutes(90)],
    ['2 d 3 h 4 min 5.5 s', 'Duration', porewater.seconds(2 * 86400 + 3 * 3600 + 4 * 60 + 5.5)],
    ['5 ft 6 in', 'Length', porewater.inches(66)],
    ['6 lb 3 oz', 'Mass', porewater.ounces(99)],
  ] as [string, KindName, number][])('%s as %s is read', (text, kind, expected) => {
    expect(Math.abs(parseQuantity(text, kind) - expected)).toBeLessThanOrEqual(1e-12 * Math.abs(expected))
  })
  it.each([
    // A capital M is a million and a small one a thousandth: never taken for each other.
    ['3 Ml', 'Volume', /did you mean mL\?/],
    ['3 ML', 'Volume', /did you mean mL\?/],
    ['5 MS/cm', 'SolutionEC', /did you mean mS\/cm\?/],
    ['80 mhz', 'Frequency', /did you mean MHz\?/],
    ['2 Mm', 'Length', /did you mean mm\?/],
    ['3 CM', 'Length', /did you mean cm\?/],
    ['1 KPA/k', 'VapourPressureSlope', /did you mean kPa\/K\?/],
    ['5 liters/hour/day', 'Flow', /one of: L\/h/],
    ['5 litrs', 'Volume', /did you mean L\?/],
    ['5 galons', 'Volume', /did you mean US gal\?/],
    ['20 celcius', 'Temperature', /did you mean °C\?/],
    ['15 pecent', 'DrainFraction', /did you mean %\?/],
    ['3 ft', 'Volume', /"ft", which is one of Length/],
    ['2 m/s', 'Flow', /"m\/s", which is one of WindSpeed/],
    ['3 imp gal', 'Volume', /one of: L/],
    ['5 lightyears', 'Length', /one of: cm/],
    ['1 h 90 min', 'Duration', /do not get smaller/],
    ['30 min 1 h', 'Duration', /do not get smaller/],
    ['1 h 30', 'Duration', /unit|two numbers/],
    ['1 h -30 min', 'Duration', /unit/],
    ['1 L 300 mL', 'Volume', /unit/],
    ['20 °C 5 K', 'Temperature', /unit/],
    ['1:30 h', 'Duration', /unit/],
    ["1'200 mm", 'Length', /groups of three/],
    [`5'6"`, 'Length', /groups of three/],
    ['0·1 L', 'Volume', /groups of three/],
    ['5 1 L', 'Volume', /groups of three/],
    ['5 L·1', 'Volume', /unit/],
    ['5 1/10 m', 'Length', /unit/],
    ['4 m²/m²', 'WaterContent', /unit/],
    ['500 µmol/m² s', 'PhotonFluxDensity', /unit/],
  ] as [string, KindName, RegExp][])('%s as %s is refused with a hint', (text, kind, message) => {
    expectInputError(() => parseQuantity(text, kind), /from text/)
    expect(() => parseQuantity(text, kind)).toThrow(message)
  })
})

describe('writing text', () => {
  it.each(written)('%s in "%s" is read back to 1e-12, and through UCUM %s', (kind, shown, code) => {
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 1, noNaN: true }), (share) => {
        const value = KINDS[kind].make(kind === 'Permittivity' ? 1 + share : share) as never
        const text = formatQuantity(value, kind, { unit: shown === '' ? '1' : shown, digits: 17 })
        const scale = Math.max(Math.abs(value), kind === 'Temperature' ? 300 : 0)
        expect(Math.abs(parseQuantity(text, kind) - value)).toBeLessThanOrEqual(1e-12 * scale)
        const coded = JSON.parse(JSON.stringify(toUcum(value, kind, code)))
        expect(Math.abs(fromUcum(coded, kind) - value)).toBeLessThanOrEqual(1e-12 * scale)
      }),
      { numRuns: 30 },
    )
  })
  it('rounds to the second digit of the uncertainty (JCGM 100:2008, 7.2.6)', () => {
    expect(formatQuantity(porewater.litres(1.23456), 'Volume', { uncertainty: 0.0312 })).toBe('1.235 L')
    expect(formatQuantity(porewater.litres(1.23456), 'Volume', { uncertainty: 0.312 })).toBe('1.23 L')
    expect(formatQuantity(porewater.litres(1234.56), 'Volume', { uncertainty: 312 })).toBe('1230 L')
    expect(formatQuantity(porewater.fraction(0.1523), 'DrainFraction', { unit: '%', uncertainty: 0.01 })).toBe('15.2 %')
    expect(formatQuantity(porewater.celsius(20), 'Temperature', { unit: '°F', uncertainty: 0.5 })).toBe('68.00 °F')
  })
  it('refuses units of other kinds', () => {
    expectInputError(() => formatQuantity(porewater.litres(1), 'Volume', { unit: 'ft' }), 'unit')
    expectInputError(() => toUcum(porewater.litres(1), 'Volume', 'ft'), 'code')
    expectInputError(() => fromUcum({ value: Number.NaN, code: 'L' }, 'Volume'), 'coded.value')
    expectInputError(() => fromUcum({ value: 1, code: 'ft' }, 'Volume'), 'code')
  })
})
