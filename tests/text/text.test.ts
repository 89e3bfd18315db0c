import fc from 'fast-check'
import * as porewater from 'porewater'
import { formatQuantity, fromUcum, type KindName, quantity, toUcum } from 'porewater/text'
import { describe, expect, it } from 'vitest'
import { KINDS } from '../../src/text/kinds.js'
import { expectInputError } from '../support/refusals.js'

const kinds = Object.keys(KINDS) as KindName[]
const written = kinds.flatMap((kind) =>
  KINDS[kind].units.map((unit) => [kind, unit.shown === '1' ? '' : unit.shown, unit.ucum] as const),
)

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
  ] as [string, KindName, number][])('%s as %s', (text, kind, expected) => {
    expect(Math.abs(quantity(text, kind) - expected)).toBeLessThanOrEqual(1e-12 * Math.max(1, Math.abs(expected)))
  })

  it.each([
    ['3 ft', 'Volume', /L, mL, m³, US gal/],
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
  ] as [string, KindName, RegExp][])('refuses %s as %s and lists what it takes', (text, kind, message) => {
    expectInputError(() => quantity(text, kind), /from text/)
    expect(() => quantity(text, kind)).toThrow(message)
  })

  it('lets the kind refuse an impossible value', () => {
    expect(() => quantity('-2 L', 'Volume')).toThrow(expect.objectContaining({ code: 'outside-domain' }))
    expect(() => quantity('150 %', 'DrainFraction')).toThrow(expect.objectContaining({ code: 'outside-domain' }))
    expect(() => quantity('1e400 L', 'Volume')).toThrow(expect.objectContaining({ code: 'outside-domain' }))
    expectInputError(() => quantity('1 L', 'Bucket' as KindName), 'kind')
    expectInputError(() => quantity('1 L', '__proto__' as KindName), 'kind')
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
            expect(Number.isFinite(quantity(text, kind))).toBe(true)
          } catch (error) {
            expect((error as { code?: string }).code).toMatch(/^(bad-input|outside-domain)$/)
          }
        },
      ),
      { numRuns: 20_000 },
    )
  })
  it('refuses text without end at once', () => {
    for (const text of ['1'.repeat(10_000_000), `5 ${'m '.repeat(5_000_000)}`, `5 ${'('.repeat(1_000_000)}`]) {
      expectInputError(() => quantity(text, 'Volume'), /from text/)
    }
  })
})

describe('writing text', () => {
  it.each(written)('%s in "%s" is read back to 1e-12, and through UCUM %s', (kind, shown, code) => {
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 1, noNaN: true }), (share) => {
        const value = KINDS[kind].make(kind === 'Permittivity' ? 1 + share : share) as never
        const text = formatQuantity(value, kind, { unit: shown === '' ? '1' : shown, digits: 17 })
        const scale = Math.max(Math.abs(value), kind === 'Temperature' ? 300 : 0)
        expect(Math.abs(quantity(text, kind) - value)).toBeLessThanOrEqual(1e-12 * scale)
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
