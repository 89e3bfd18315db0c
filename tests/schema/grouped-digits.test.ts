import { parseDocument } from 'porewater/schema'
import { describe, expect, it } from 'vitest'

describe('digits in groups, in a document', () => {
  const box = (length: string) =>
    parseDocument('container', JSON.stringify({ version: 1, shape: 'box', length, width: '15 cm', height: '75 mm' }))

  it.each([' ', '\u00a0', '\u2007', '\u2009', '\u202f'])('are one number with a space of %j', (space) => {
    expect(box(`1${space}000${space}mm`)).toEqual(box('100 cm'))
  })
  it.each(['1,000 mm', '1.000,0 mm', "1'000 mm", '10 00 mm', '1 000 000 0 mm'])(
    '%s is refused at its place',
    (length) => {
      expect(() => box(length)).toThrow(
        expect.objectContaining({ problems: [expect.objectContaining({ path: 'length' })] }),
      )
    },
  )
  it('"3 Ml" is no million litres', () => {
    const stack = { version: 1, shape: 'box', length: '1 Mm', width: '15 cm', height: '75 mm' }
    expect(() => parseDocument('container', JSON.stringify(stack))).toThrow(/did you mean mm\?/)
  })
})
