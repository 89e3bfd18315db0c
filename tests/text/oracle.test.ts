import fc from 'fast-check'
import * as porewater from 'porewater'
import { formatQuantity, fromUcum, type KindName, parseQuantity, toUcum } from 'porewater/text'
import { describe, expect, it } from 'vitest'
import { FAMILIES } from '../../src/quantity/kinds.table.js'
import { KINDS } from '../../src/text/generated/kinds.js'
import { KIND_ROWS, UNIT_ROWS } from '../quantity/generated/rows.js'
import { math, spelled } from '../support/mathjs-units.js'

/** Units that mathjs cannot compare, each with the reason. */
const UNKNOWN: Readonly<Record<string, string>> = {
  AnyShare: 'plain ratio',
  WaterContent: 'plain ratio',
  WaterContentChange: 'plain ratio',
  GravimetricWaterContent: 'plain ratio',
  Permittivity: 'plain ratio',
  LeafAreaIndex: 'plain ratio',
  CropCoefficient: 'plain ratio',
  OxygenSaturation: 'plain ratio',
  Salinity: 'plain ratio',
  TemperatureChange: 'mathjs takes a difference in °F for a temperature',
  'OxygenConcentration mmol/L': 'amount and mass need the molar mass of oxygen',
  'ChargeConcentration mmol(+)/L': 'the only unit of its kind',
}
const kindsOf = (family: string) => {
  const row = FAMILIES.find(({ name }) => name === family)
  return row?.kinds?.map(({ name }) => name) ?? [family]
}
const heads = (unit: string) => unit.replace(/\b(c?m)\b/g, '$1water')

const units = UNIT_ROWS.filter(
  (row) => row.text && !(row.family in UNKNOWN) && !(`${row.family} ${row.symbol}` in UNKNOWN),
)

describe('the factor of every unit', () => {
  it.each(units)('$symbol of $family is that of mathjs, which knows its own', ({ family, kind, symbol }) => {
    const first = UNIT_ROWS.find((row) => row.family === family) as { symbol: string }
    const own = (text: string) => (family === 'InverseSuction' ? heads(spelled(text)) : spelled(text))
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 1, noNaN: true }), (share) => {
        const number = Number((share * (/Wavelength m$|µm/.test(`${family} ${symbol}`) ? 1e-6 : 8)).toPrecision(6))
        const oracle = math.unit(number, own(symbol)).toNumber(own(first.symbol))
        const value = parseQuantity(`${number} ${symbol}`, kind as KindName)
        expect(Math.abs(value - oracle)).toBeLessThanOrEqual(
          1e-12 * Math.max(Math.abs(oracle), family === 'Temperature' ? 300 : 0),
        )
      }),
      { numRuns: 20 },
    )
  })
})

describe('the check of every kind', () => {
  const makers = porewater as unknown as Record<string, (value: number) => number>
  it.each(KIND_ROWS.filter(({ symbols }) => symbols.length > 0))(
    '$kind refuses what its constructor refuses, in its words',
    ({ kind }) => {
      const { make } = UNIT_ROWS.find((row) => kindsOf(row.family).includes(kind)) as { make: string }
      const outcome = (check: () => number) => {
        try {
          return check()
        } catch (error) {
          return { ...(error as object), message: (error as Error).message }
        }
      }
      const numbers = [
        Number.NaN,
        -Infinity,
        Infinity,
        -1e9,
        -300,
        -1,
        -0.5,
        0,
        0.5,
        1,
        1.5,
        15,
        60,
        100,
        300,
        5000,
        1e5,
        1e12,
      ]
      for (const number of numbers)
        expect(
          outcome(() => KINDS[kind as KindName].make(number)),
          String(number),
        ).toEqual(outcome(() => makers[make]?.(number) as number))
    },
  )
})

describe('every unit of every kind', () => {
  const written = KIND_ROWS.flatMap(({ kind, symbols }) => symbols.map((symbol) => [kind as KindName, symbol] as const))

  it.each(written)('%s in %s: what is written is read back', (kind, symbol) => {
    const { make } = KINDS[kind]
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 1, noNaN: true }), (share) => {
        const value = make(kind === 'Permittivity' ? 1 + share : share) as never
        const text = formatQuantity(value, kind, { unit: symbol, digits: 17 })
        const scale = Math.max(Math.abs(value), kind === 'Temperature' ? 300 : 0)
        expect(Math.abs(parseQuantity(text, kind) - value)).toBeLessThanOrEqual(1e-12 * scale)
        const coded = JSON.parse(
          JSON.stringify(toUcum(value, kind, KINDS[kind].units.find((one) => one.shown === symbol)?.ucum)),
        )
        expect(Math.abs(fromUcum(coded, kind) - value)).toBeLessThanOrEqual(1e-12 * scale)
      }),
      { numRuns: 20 },
    )
  })
  it.each(UNIT_ROWS.filter((row) => row.text && row.spellings.length > 0))(
    '$symbol of $family is read in its other spellings',
    (row) => {
      const kind = row.kind as KindName
      const value = parseQuantity(`0.5 ${row.symbol}`, kind)
      for (const spelling of row.spellings) {
        expect(parseQuantity(`0.5 ${spelling}`, kind), spelling).toBe(value)
        if (!spelling.startsWith('1')) expect(parseQuantity(`0.5${spelling}`, kind), spelling).toBe(value)
      }
    },
  )
})
