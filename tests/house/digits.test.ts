import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { literalsIn, slipsOf } from '../../docs/tools/digits/literals.js'
import { isUnnoticeable, UNNOTICEABLE } from '../../docs/tools/digits/unnoticeable.js'

describe('slips of a number', () => {
  it.each([
    ['0.1138', ['0.1139', '(-0.1138)']],
    ['4.3e-6', ['4.4e-6', '(-4.3e-6)']],
    ['29_979_245_809', ['29_979_245_808', '(-29_979_245_809)']],
    // The last of seventeen digits is rounding, and zero has no other sign.
    ['0.06999999999999999', ['(-0.06999999999999999)']],
    ['0.0', ['0.1']],
  ])('%s', (text, slips) => {
    expect(slipsOf(text).map((slip) => slip.text)).toEqual(slips)
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
