import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { inWords, shareInWords } from '../../src/quantity/in-words.js'

describe('a number as people say it', () => {
  it.each([
    [-0.0525, 'm³/m³', '−5.25 points'],
    [0.0123, 'm³/m³/h', '1.23 points an hour'],
    [0.002, 'm³/m³/d', '0.2 points a day'],
    [0.001, 'm³/m³/°C', '0.1 points for 1 °C'],
    [0.004, 'm³/m³ per dS/m', '0.4 points for 1 dS/m'],
    [0.25, 'share of the flow', '25 % of the flow'],
    [119, 's', '119 s'],
    [1500, 's', '25 min'],
    [5400, 's', '90 min'],
    [7200, 's', '2 h'],
    [-86400, 's', '−24 h'],
    [259200, 's', '3 d'],
    [3, '1', '3'],
    [2.5, 'dS/m', '2.5 dS/m'],
  ])('%s %s is %s', (value, unit, words) => expect(inWords(value, unit)).toBe(words))
  it('is a level in per cent of the volume, and as it came where no water content can be', () => {
    expect(inWords(0.6234, 'm³/m³', { level: true })).toBe('62.3 %')
    expect(inWords(0.62346, 'm³/m³', { level: true, digits: 4 })).toBe('62.35 %')
    expect(inWords(-999, 'm³/m³', { level: true })).toBe('−999')
    expect(inWords(65535, 'm³/m³', { level: true })).toBe('65500')
    expect(shareInWords(0.4567)).toBe('45.7 %')
  })
  it('keeps its size: what is told of a time is within half a per cent of it', () => {
    const seconds = { s: 1, min: 60, h: 3600, d: 86400 }
    fc.assert(
      fc.property(fc.double({ min: 1, max: 1e7 }), (time) => {
        const [number, unit] = inWords(time, 's').split(' ') as [string, keyof typeof seconds]
        expect(Math.abs((Number(number) * seconds[unit]) / time - 1)).toBeLessThanOrEqual(0.005)
      }),
    )
  })
})
