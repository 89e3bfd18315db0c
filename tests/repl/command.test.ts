import { describe, expect, it } from 'vitest'
import { command, type Outcome } from '../../src/repl/command.js'
import { LIBRARY } from '../../src/repl/library.js'

const run = (words: readonly string[], input = ''): Outcome => command(words, LIBRARY, input)
const out = (words: readonly string[], input = '') => {
  const { code, out: text, error } = run(words, input)
  expect({ code, error }).toEqual({ code: 0, error: '' })
  return JSON.parse(text)
}
const SHOT = '{"substrateVolume":"11 L","rise":"3 points","drainFraction":"15 %"}'

describe('a function in a pipe', () => {
  it('reads JSON and writes JSON with the unit', () => {
    // 11 L times 0.03, of which 85 % stays: by hand.
    expect(out(['shotVolume'], SHOT)).toEqual({ result: (0.03 * 11) / (1 - 0.15), unit: 'L' })
    expect(out(['shotVolume', SHOT])).toEqual({ result: (0.03 * 11) / (1 - 0.15), unit: 'L' })
    expect(out(['waterContentTopp1980'], '20')).toEqual({ result: 0.3454, unit: 'm³/m³' })
    expect(run(['shotVolume'], SHOT).out).toMatch(/^[^\n]*\n$/)
  })
  it('takes several arguments in order or by name', () => {
    expect(out(['shiftTemperature'], '["20 °C", "9 °F"]')).toEqual({ result: 25, unit: '°C' })
    expect(out(['shiftTemperature'], '{"from": "20 °C", "change": "9 °F"}')).toEqual({ result: 25, unit: '°C' })
    expect(out(['parseQuantity'], '["150 mL", "Volume"]')).toEqual({ result: 0.15, unit: 'L' })
  })
  it('reads digits in groups as one number, and refuses a comma', () => {
    for (const space of [' ', '\u00a0', '\u2009', '\u202f']) {
      expect(out(['parseQuantity'], `["1${space}500 mL", "Volume"]`)).toEqual({ result: 1.5, unit: 'L' })
      expect(out(['shotVolume'], SHOT.replace('11 L', `11${space}000 mL`))).toEqual(out(['shotVolume'], SHOT))
    }
    expect(run(['shotVolume'], SHOT.replace('11 L', '11,000 mL')).code).not.toBe(0)
    expect(run(['shotVolume'], SHOT.replace('11 L', '11 Ml')).error).toMatch(/did you mean mL/)
  })
  it('gives units for the numbers in an object, and lists for series', () => {
    const pot = out(['cylinderContainer'], '{"diameter":"20 cm","height":"20 cm"}')
    expect(pot.units).toMatchObject({ height: 'cm', volume: 'L' })
    expect(pot.result.volume).toBeCloseTo(2 * Math.PI, 12)
  })
  it('says when an input lies outside the span where the formula was measured', () => {
    // Topp and others measured from 3 to 40.
    expect(out(['waterContentTopp1980'], '60').cautions).toMatchObject([{ code: 'outside-validity', value: 60 }])
    expect(out(['waterContentTopp1980'], '40')).not.toHaveProperty('cautions')
  })
  it('takes a list as the one argument it is', () => {
    expect(out(['sum'], '[1, 2]').result).toBe(3)
    expect(out(['sum'], '[1]').result).toBe(1)
    expect(out(['litres'], '[2]')).toEqual({ result: 2, unit: 'L' })
  })
  it('calls in place what another function makes', () => {
    const input = {
      container: { call: 'cylinderContainer', with: { diameter: '20 cm', height: '10 cm' } },
      // Invented curve.
      medium: {
        call: 'vanGenuchten1980',
        with: { saturated: '90 %', residual: '10 %', alpha: 0.1, n: 2 },
      },
    }
    const { result, unit } = out(['containerCapacity'], JSON.stringify(input))
    expect(unit).toBe('m³/m³')
    // Mean of 0.1 + 0.8 / sqrt(1 + (0.1 z)²) over 10 cm is 0.1 + 0.8 asinh(1).
    expect(result).toBeCloseTo(0.1 + 0.8 * Math.asinh(1), 9)
  })
})

describe('refusals', () => {
  it('of the library are typed JSON on standard error, and end with 1', () => {
    const wrongUnit = run(['shotVolume'], SHOT.replace('11 L', '11 cm'))
    expect(wrongUnit).toMatchObject({ code: 1, out: '' })
    expect(JSON.parse(wrongUnit.error).error).toMatchObject({ code: 'bad-input', name: 'InputError' })
    const outside = run(['shotVolume'], SHOT.replace('"3 points"', '3'))
    expect(outside.code).toBe(1)
    expect(JSON.parse(outside.error).error).toMatchObject({ code: 'outside-domain', value: 3, min: 0, max: 1 })
    expect(run(['shotVolume'], '').code).toBe(1)
    expect(run(['shotVolume'], SHOT.replace('rise', 'rize')).error).toMatch(/did you mean rise/)
  })
  it.each([
    [['nothing'], ''],
    [['shotVolum'], SHOT],
    [['--bogus'], ''],
    [['--find'], ''],
    [['--help', 'nothing'], ''],
    [['shotVolume', '{}', '{}'], ''],
    [['shotVolume'], '{"substrateVolume":'],
    [['shotVolume'], '{"substrateVolume":"11 L","rise":0.03,"drainFraction":0.1,"rise":0.3}'],
    [['containerCapacity'], '{"container":1,"medium":2}'],
    [['toString'], ''],
    [['__proto__'], ''],
  ])('of the command %j end with 1 or 2 and say why', (words, input) => {
    const { code, out: text, error } = run(words, input)
    expect(code).toBeGreaterThan(0)
    expect(text).toBe('')
    expect(JSON.parse(error).error.message.length).toBeGreaterThan(10)
  })
  it('survive hostile input', () => {
    const deep = `${'['.repeat(50_000)}${']'.repeat(50_000)}`
    const calls = `${'{"call":"litres","with":'.repeat(200)}1${'}'.repeat(200)}`
    for (const input of [
      deep,
      calls,
      '{"__proto__":{"polluted":true}}',
      '"'.concat('9'.repeat(1e6), '"'),
      '1e308',
      'null',
    ])
      expect([1, 2]).toContain(run(['shotVolume'], input).code)
    expect(({} as { polluted?: boolean }).polluted).toBeUndefined()
  })
})

describe('about itself', () => {
  it('tells its version and its usage', () => {
    expect(run(['--version']).out).toMatch(/^\d+\.\d+\.\d+\n$/)
    const { out: usage, code } = run(['--help'])
    expect(code).toBe(0)
    expect(usage).toMatch(/Exit codes: 0 done, 1 refused by the library, 2 not understood/)
    expect(run(['--help', 'runTime']).out).toMatch(/t = V \/ \(q n\) \+ t_fill/)
    expect(run(['--find', 'drain']).out).toMatch(/drainageAfterShot/)
  })
})
