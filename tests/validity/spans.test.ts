import type { Validity } from 'porewater'
import * as porewater from 'porewater'
import { describe, expect, it } from 'vitest'
import entries from '../../src/catalogue/entries.json' with { type: 'json' }

const records = Object.entries(porewater).filter(
  ([name]) => name.startsWith('validity') && name !== 'validityOf',
) as unknown as [string, Validity][]

/** What one of a unit is in the units that prose uses. */
const IN_PROSE: Readonly<Record<string, readonly number[]>> = {
  '1': [1, 100],
  cm: [1, 0.01],
  Hz: [1, 1e-9, 1e-12],
  kPa: [1, 1 / 101.325],
  'mol/L': [1, 1000],
  'mmol/L': [1],
}

/** The numbers of a text, thousands without their commas. */
const numbersIn = (text: string): number[] =>
  [
    ...text
      .replace(/(\d),(?=\d{3})/g, '$1')
      .replaceAll('−', '-')
      .matchAll(/-?\d+(?:\.\d+)?/g),
  ].map(([digits]) => Number(digits))

// The record is what a program is told, the documentation what a person reads: a slip in either shows.
describe('where an equation was measured', () => {
  it.each(records)('%s says what the documentation says', (_, { of, note, inputs }) => {
    const entry = entries.find(({ name }) => name === of)
    expect(entry, of).toBeDefined()
    const told = numbersIn(`${entry!.validity} ${note ?? ''} ${entry!.description}`)
    expect(Object.keys(inputs).length).toBeGreaterThan(0)
    for (const [input, span] of Object.entries(inputs)) {
      expect(span.min, input).toBeLessThan(span.max)
      for (const end of [span.min, span.max]) {
        const scales = IN_PROSE[span.unit] ?? [1]
        // Kelvins are told without their fractions; nothing lies below zero of most quantities, and prose leaves it out.
        const forms = [...scales.map((scale) => end * scale), ...(span.unit === '°C' ? [end + 273] : [])]
        const isTold = told.some((number) => forms.some((form) => Math.abs(form - number) <= 1e-9 * Math.abs(number)))
        if (!(end === 0 || end === Number.POSITIVE_INFINITY)) expect(isTold, `${input}: ${end} ${span.unit}`).toBe(true)
      }
    }
  })
})
