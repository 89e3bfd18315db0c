import fc from 'fast-check'
import { drawPanels, type PanelChart, type PanelSeries } from 'porewater/chart'
import { describe, expect, it } from 'vitest'
import { cutText, textWidth, wrapText } from '../../src/chart/lettering.js'
import { logarithmicTicks, tickText } from '../../src/chart/number-ticks.js'
import { clock, timeTicks } from '../../src/chart/time-axis.js'
import { expectDomainError } from '../support/refusals.js'
import { badNumbers, every, parseXml } from './well-formed.js'

const chart = (series: PanelSeries[], more: Partial<PanelChart> = {}): PanelChart => ({
  title: 'a picture',
  alternative: 'what it shows',
  xTitle: 'time, h',
  xRange: [0, 10],
  panels: [{ yTitle: 'share', series }],
  width: 600,
  height: 300,
  ...more,
})
const line = (x: number[], y: number[], name = 'curve'): PanelSeries => ({ name, x, y, draw: 'line' })
const anyNumber = fc.oneof(
  fc.double({ min: -1e6, max: 1e6, noNaN: true }),
  fc.constantFrom(Number.NaN, Infinity, -Infinity, 0, 1e308, -1e308, 5e-324, 1e-300, -1e-323),
)

describe('a picture of panels', () => {
  it('is well-formed XML with finite places, whatever numbers and names it is given', () => {
    const names = fc.string({ unit: 'binary', maxLength: 80 })
    fc.assert(
      fc.property(
        fc.array(
          fc.record({
            name: names,
            x: fc.array(anyNumber, { maxLength: 12 }),
            y: fc.array(anyNumber, { maxLength: 12 }),
            draw: fc.constantFrom('line', 'points', 'bars', 'steps', 'region' as const),
          }),
          { maxLength: 9 },
        ),
        fc.array(fc.record({ name: names, y: anyNumber }), { maxLength: 4 }),
        fc.array(fc.record({ name: names, x: anyNumber }), { maxLength: 4 }),
        fc.array(fc.record({ name: names, from: anyNumber, to: anyNumber }), { maxLength: 3 }),
        fc.tuple(anyNumber, anyNumber),
        names,
        (series, rules, marks, spans, pair, title) => {
          const text = drawPanels({
            ...chart([], { title, alternative: title, xTitle: title, marks, spans, gaps: [pair] }),
            panels: [{ yTitle: title, series, rules, band: pair, yRange: pair }],
          })
          expect(badNumbers(parseXml(text))).toEqual([])
        },
      ),
      { numRuns: 150 },
    )
  })
  it('wraps a title as wide as it is in bold letters', () => {
    // Measured in a browser: 366 px in bold and 324 px in common letters, where 348 px are free.
    const svg = parseXml(drawPanels({ ...chart([]), title: 'waterContentTopp1980 over apparent', width: 380 }))
    const lines = every(svg).filter(({ attributes }) => attributes['font-weight'] === '600')
    expect(lines.map(({ text }) => text)).toEqual(['waterContentTopp1980 over', 'apparent'])
  })
  it('breaks a line where a value is missing', () => {
    const svg = parseXml(drawPanels(chart([line([0, 1, 2, 3, 4], [1, 2, Number.NaN, 3, 4])])))
    const [path] = every(svg).filter(({ attributes }) => attributes.class === 'line c0')
    expect(path?.attributes.d?.match(/M/g)).toHaveLength(2)
    expect(path?.attributes.d?.match(/L/g)).toHaveLength(2)
  })
  it('shows hostile names as text and nothing else', () => {
    const name = `</title><script>alert(1)</script>"'&\u0000\ud800`
    const text = drawPanels({
      ...chart([line([0, 1], [0, 1], name), line([0, 1], [1, 0], name)], {
        title: name,
        alternative: name,
        xTitle: name,
      }),
      marks: [{ name, x: 3 }],
    })
    expect(every(parseXml(text)).some((element) => element.name === 'script')).toBe(false)
    expect(text).toContain('&lt;script&gt;')
  })
  it('puts a point where a ruler would', () => {
    // The plot runs from 84 px to 576 px over 0 to 10: half of it is 330 px.
    const svg = parseXml(drawPanels(chart([{ ...line([5], [0]), draw: 'points' }])))
    expect(every(svg).find(({ name }) => name === 'circle')?.attributes.cx).toBe('330')
    const log = parseXml(
      drawPanels(chart([{ ...line([10], [0]), draw: 'points' }], { xScale: 'logarithmic', xRange: [1, 100] })),
    )
    expect(every(log).find(({ name }) => name === 'circle')?.attributes.cx).toBe('330')
  })
  it('lets no two names of a legend overlap, cuts long ones and keeps the whole name', () => {
    fc.assert(
      fc.property(fc.array(fc.string({ minLength: 1, maxLength: 120 }), { minLength: 2, maxLength: 14 }), (names) => {
        const svg = parseXml(
          drawPanels(
            chart(
              names.map((name) => line([0, 1], [0, 1], `n${name}`)),
              { width: 480, height: 500 },
            ),
          ),
        )
        const marks = every(svg)
          .filter(({ name, attributes }) => name === 'line' && /^line c/.test(attributes.class ?? ''))
          .map(({ attributes }) => ({ x: Number(attributes.x1), y: Number(attributes.y1) }))
        const texts = every(svg)
          .filter(({ name, attributes }) => name === 'text' && attributes['font-size'] === '12')
          .map(({ attributes, text }) => ({
            x: Number(attributes.x),
            y: Number(attributes.y) - 4,
            end: Number(attributes.x) + textWidth(plain(text), 12),
          }))
        for (const text of texts) {
          expect(text.end).toBeLessThanOrEqual(480)
          for (const mark of marks) if (mark.y === text.y && mark.x > text.x) expect(text.end).toBeLessThan(mark.x)
        }
      }),
      { numRuns: 60 },
    )
    const long = 'a probe with a very long name '.repeat(9)
    const text = drawPanels(chart([line([0, 1], [0, 1], long), line([0, 1], [1, 0])]))
    expect(text).toContain('…')
    expect(text).toContain(`<title>${long}</title>`)
  })
  it('keeps names of rules that lie together apart and inside the panel', () => {
    const rules = Array.from({ length: 5 }, (_, i) => ({ name: `rule ${i}`, y: 0.001 * i }))
    const svg = parseXml(drawPanels({ ...chart([]), panels: [{ yTitle: 'y', series: [line([0, 1], [0, 1])], rules }] }))
    const heights = every(svg)
      .filter(({ text }) => /^rule /.test(text))
      .map(({ attributes }) => Number(attributes.y))
      .sort((a, b) => a - b)
    expect(heights).toHaveLength(5)
    for (let i = 1; i < 5; i++) expect(heights[i]! - heights[i - 1]!).toBeGreaterThanOrEqual(15)
    expect(heights[4]).toBeLessThanOrEqual(300 - 52)
  })
  it('refuses what cannot be a picture', () => {
    expectDomainError(() => drawPanels(chart([], { width: 10 })), { quantity: 'width of the picture' })
    expectDomainError(() => drawPanels(chart([], { height: Number.NaN })), { quantity: 'height of the picture' })
    expect(() => drawPanels(chart([], { panels: [] }))).toThrow(/at least one panel/)
    for (const xRange of [
      [1, 1],
      [2, 1],
      [Number.NaN, 1],
      [0, Infinity],
      [-1e308, 1e308],
    ] as const)
      expect(() => drawPanels(chart([], { xRange }))).toThrow(/xRange/)
    expect(() => drawPanels(chart([], { xRange: [0, 1], xScale: 'logarithmic' }))).toThrow(/above zero/)
  })
})

describe('lettering', () => {
  it('never is wider than its room', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 200 }), fc.integer({ min: 20, max: 600 }), (text, room) => {
        expect(textWidth(cutText(text, 12, room), 12)).toBeLessThanOrEqual(room)
        const lines = wrapText(text, 12, room, 2)
        expect(lines.length).toBeLessThanOrEqual(2)
        for (const one of lines) expect(textWidth(cutText(one, 12, room), 12)).toBeLessThanOrEqual(room)
      }),
    )
  })
  it('keeps text that fits', () => {
    expect(cutText('refill point', 12, 200)).toBe('refill point')
    expect(wrapText('a day of readings', 12, 400, 2)).toEqual(['a day of readings'])
  })
})

describe('axes', () => {
  it('write numbers without a locale', () => {
    expect(tickText(1200, 200)).toBe('1200')
    expect(tickText(0.5, 0.05)).toBe('0.50')
    expect(tickText(-0.01, 0.01)).toBe('−0.01')
    expect(tickText(2.5e7, 5e6)).toBe('2.5·10⁷')
    expect(tickText(1e-7, 1e-7)).toBe('10⁻⁷')
    expect(tickText(0, 0.1)).toBe('0')
  })
  it('tick powers of ten on a logarithmic axis', () => {
    expect(logarithmicTicks(1, 16000).map(({ x }) => x)).toEqual([1, 10, 100, 1000, 10000])
    expect(logarithmicTicks(0.9, 110).map(({ text }) => text)).toEqual(['1', '2', '5', '10', '20', '50', '100'])
  })
  it('tick whole local hours and name the day at midnight', () => {
    const noon = Date.UTC(2026, 4, 19, 12) / 1000
    expect(timeTicks(noon, noon + 86400, 2).map(({ text }) => text)).toEqual([
      '15:00',
      '18:00',
      '21:00',
      '20 May',
      '03:00',
      '06:00',
      '09:00',
      '12:00',
    ])
    expect(clock(3660)).toBe('01:01')
    // A long span ends, and a missing end is refused instead of running for ever.
    expect(timeTicks(0, 86400 * 365 * 40, 0).length).toBeLessThan(12)
    expect(() => timeTicks(0, Infinity, 0)).toThrow(/universal time/)
    expect(() => timeTicks(Number.NaN, 1, 0)).toThrow(/universal time/)
  })
})

function plain(text: string): string {
  const named: Record<string, string> = { '&amp;': '&', '&lt;': '<', '&gt;': '>', '&quot;': '"', '&#39;': "'" }
  return text.replace(/&(?:amp|lt|gt|quot|#39);/g, (entity) => named[entity]!)
}
