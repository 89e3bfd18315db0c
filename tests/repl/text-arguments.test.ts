import fc from 'fast-check'
import { isPorewaterError } from 'porewater'
import { catalogue } from 'porewater/catalogue'
import { describe, expect, it } from 'vitest'
import { kindOfType } from '../../src/repl/kind-of-field.js'
import { LIBRARY } from '../../src/repl/library.js'
import { numberFromText } from '../../src/repl/number-from-text.js'
import { typedArguments } from '../../src/repl/typed-arguments.js'
import { wrapped } from '../../src/repl/wrap.js'
import { KINDS } from '../../src/text/generated/kinds.js'

const numeric = catalogue.flatMap((entry) =>
  entry.arguments.filter((field) => field.shape !== 'other').map((field) => ({ entry, field })),
)

describe('text in place of numbers', () => {
  it('is either read to a finite number or refused with a typed error, whatever is typed', () => {
    const word = fc.oneof(
      fc.string(),
      fc
        .tuple(
          fc.double({ noNaN: true }),
          fc.constantFrom('', 'L', '%', 'cm', 'kPa', '°C', 'dS/m', 'mm/d', 'points', 's'),
        )
        .map(([number, unit]) => `${number} ${unit}`),
    )
    fc.assert(
      fc.property(word, fc.constantFrom(...numeric), (text, { entry, field }) => {
        try {
          expect(Number.isFinite(numberFromText(text, field, entry.result.type))).toBe(true)
        } catch (error) {
          if (!isPorewaterError(error)) throw error
        }
      }),
      { numRuns: 2000 },
    )
  })
  it('means the same as the constructor of its kind in every unit that the kind lists', () => {
    for (const { entry, field } of numeric) {
      const kind = kindOfType(field.type)
      if (kind === undefined) continue
      for (const { shown } of KINDS[kind].units) {
        // No permittivity is below 1, no share above it.
        const number = kind === 'Permittivity' ? 2 : 0.5
        const text = shown === '1' ? `${number}` : `${number} ${shown}`
        // The library's own reader of the kind, tested by itself against published factors.
        const expected = (LIBRARY.parseQuantity as (text: string, kind: string) => number)(text, kind)
        expect(numberFromText(text, field, entry.result.type), `${entry.name} ${field.path} ${text}`).toBe(expected)
      }
    }
  })
  it('changes nothing in arguments without text, not even which object it is', () => {
    const entry = catalogue.find((one) => one.name === 'shotVolume')
    const input = { substrateVolume: 11, rise: 0.03, drainFraction: 0.15 }
    expect(typedArguments(entry as NonNullable<typeof entry>, [input])[0]).toBe(input)
  })
})

describe('a finding that is given back', () => {
  const entryOf = (name: string) => catalogue.find((one) => one.name === name) as (typeof catalogue)[number]
  it('is taken with the properties of any finding of its topic, and with the code alone', () => {
    const whole = { code: 'fell-away', level: 'caution', probe: 'A', below: 0.1, others: 0 }
    for (const finding of [whole, { code: 'no-watering-log' }])
      expect(typedArguments(entryOf('explainZoneFinding'), [finding])[0]).toBe(finding)
    const validity = { code: 'outside-validity', level: 'caution', note: 'n', of: 'x', about: 'a', value: 1, unit: '1' }
    expect(typedArguments(entryOf('explainQuantityFinding'), [validity])[0]).toBe(validity)
  })
  it('is refused with a property that no finding of the topic has, and without its code', () => {
    expect(() => typedArguments(entryOf('explainZoneFinding'), [{ code: 'fell-away', bellow: 0.1 }])).toThrow(
      /bellow.*did you mean below/,
    )
    expect(() => typedArguments(entryOf('explainZoneFinding'), [{ level: 'note' }])).toThrow(/code.*is missing/)
  })
  it('has in the catalogue what only some have as optional, what all have as needed', () => {
    const optional = Object.fromEntries(
      entryOf('explainRecordFinding').arguments.map(({ path, optional = false }) => [path, optional]),
    )
    expect(optional).toMatchObject({ 'finding.code': false, 'finding.perDay': true, 'finding.about': true })
  })
})

describe('long lines at the terminal', () => {
  it('are broken between words, none longer than the terminal, and no word is lost', () => {
    fc.assert(
      fc.property(fc.array(fc.stringMatching(/^[a-z]{1,12}$/), { minLength: 1, maxLength: 60 }), (words) => {
        const text = wrapped(words.join(' '), 40)
        expect(text.split(/\s+/)).toEqual(words)
        for (const line of text.split('\n')) expect(line.length).toBeLessThan(40)
      }),
    )
  })
  it('stay as they are where they are drawn or short', () => {
    for (const text of [`${' '.repeat(50)}│⠤⠤`, 'short', 'one   two '.repeat(20)]) expect(wrapped(text, 40)).toBe(text)
  })
})
