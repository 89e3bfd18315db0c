import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { literalsIn, slipsOf } from '../../docs/tools/digits/literals.js'
import { isUnnoticeable, UNNOTICEABLE } from '../../docs/tools/digits/unnoticeable.js'

describe('slips of a number', () => {
  it.each([
    ['0.1138', ['0.1139', '(-0.1138)']],
    ['4.3e-6', ['4.4e-6', '(-4.3e-6)']],
    ['0x9e3779b9', ['0x9e3779b8', '(-0x9e3779b9)']],
    ['0xc2b2ae3f', ['0xc2b2ae3e', '(-0xc2b2ae3f)']],
    ['29_979_245_809', ['29_979_245_808', '(-29_979_245_809)']],
    // The last of seventeen digits is rounding, and zero has no other sign.
    ['0.06999999999999999', ['(-0.06999999999999999)']],
    ['0.0', ['0.1']],
  ])('%s', (text, slips) => {
    expect(slipsOf(text).map((slip) => slip.text)).toEqual(slips)
  })
})

describe('numbers that could have been copied wrongly', () => {
  const numbers = (code: string) => literalsIn('a.ts', code).map(({ text }) => text)
  it('are ends of a span that was measured, not those of what is taken or sought, nor where the search starts', () => {
    expect(numbers("const SPAN = { min: -20, max: 50, unit: '°C' }")).toEqual(['20', '50'])
    expect(numbers("const TAKEN = { min: -20, max: 50, ends: '[]' }")).toEqual([])
    expect(numbers("const SOUGHT = { name: 'n', role: 'exponent', max: 30, trials: [1.5] }")).toEqual([])
  })
  it('are not how much of a text is shown', () => {
    expect(numbers('show(text.slice(0, 40), list.slice(12), text.slice(1, 33))')).toEqual(['12', '33'])
  })
  it('are no settings of an algorithm, and nothing that everybody knows', () => {
    expect(numbers('solve({ maxSteps: 4000, tolerance: 1e-4, nodes: 121 }, [7, 10, 0.5, 1000, 0.001])')).toEqual([
      '121',
    ])
  })
})

describe('slips that no test can notice', () => {
  it.each(UNNOTICEABLE)('are slips of code that is there: $path', ({ path, line, numbers = [], kinds }) => {
    const code = readFileSync(path, 'utf8')
    expect(code.split('\n').filter((one) => one.trim() === line)).toHaveLength(1)
    for (const number of numbers) expect(line).toContain(number)
    expect(kinds).not.toEqual([])
  })
  it('are those of the named line, number and kind alone', () => {
    const path = 'src/dielectric/relations/ledieu-1986.ts'
    const code = readFileSync(path, 'utf8')
    const left = literalsIn(path, code).flatMap((literal) =>
      slipsOf(literal.text).filter((slip) => isUnnoticeable(code, literal, slip)),
    )
    expect(left).toEqual([{ kind: 'sign', text: '(-0.1138)' }])
  })
})
