import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { chartReview, chartSeason, drawPanels } from 'porewater/chart'
import { describe, expect, it } from 'vitest'
import { CHROMIUM, inChromium } from '../support/chromium.js'
import { expectDomainError } from '../support/refusals.js'
import { GALLERY, reviewed, season } from './gallery.js'
import { badNumbers, every, parseXml } from './well-formed.js'

const screenshots = process.env.POREWATER_SCREENSHOTS
const WIDTHS = [360, 768, 1280]

interface Box {
  readonly text: string
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
}

/** The boxes of all lettering, of the inside of all axes, and of the picture, as a browser lays them out. */
const MEASURE = `(() => {
  const box = (one, text) => {
    const { left, right, top, bottom } = one.getBoundingClientRect()
    return { text, left, right, top, bottom }
  }
  const svg = document.querySelector('svg.pw')
  return {
    frame: box(svg, ''),
    texts: [...svg.querySelectorAll('text')].filter((one) => one.textContent !== '').map((one) => box(one, one.textContent)),
    plots: [...svg.querySelectorAll('svg')].map((one) => box(one, 'plot')),
    size: Math.min(...[...svg.querySelectorAll('text')].map((one) => Number.parseFloat(getComputedStyle(one).fontSize))),
  }
})()`

describe.skipIf(CHROMIUM === undefined)('pictures in Chromium (skipped where no Chromium is installed)', () => {
  it('have no label on another label, on a curve or bar, or outside the frame, at any width, light and dark', async () => {
    if (screenshots) mkdirSync(screenshots, { recursive: true })
    await inChromium(async (browser) => {
      const page = await browser.newPage()
      const wrong: string[] = []
      for (const [name, draw] of Object.entries(GALLERY))
        for (const width of WIDTHS) {
          const picture = draw(width)
          for (const colorScheme of ['light', 'dark'] as const)
            wrong.push(...(await faultsOf(page, name, width, colorScheme, picture)))
        }
      expect(wrong).toEqual([])
    })
  }, 120_000)
})

async function faultsOf(page: Page, name: string, width: number, colorScheme: 'light' | 'dark', picture: string) {
  await page.setViewportSize({ width, height: 900 })
  await page.emulateMedia({ colorScheme })
  await page.setContent(`<!doctype html><style>body{margin:0}</style>${picture}`)
  const { frame, texts, plots, size } = await page.evaluate<{ frame: Box; texts: Box[]; plots: Box[]; size: number }>(
    MEASURE,
  )
  if (screenshots)
    await page.screenshot({
      path: join(screenshots, `${name.replace(/ /g, '-')}-${width}-${colorScheme}.png`),
      fullPage: true,
    })
  const at = `${name} ${width} ${colorScheme}`
  const wrong = size < 12 ? [`${at}: lettering of ${size} px`] : []
  texts.forEach((one, i) => {
    if (
      one.left < frame.left - 0.5 ||
      one.right > frame.right + 0.5 ||
      one.top < frame.top ||
      one.bottom > frame.bottom + 0.5
    )
      wrong.push(`${at}: "${one.text}" leaves the frame`)
    for (const other of texts.slice(i + 1))
      if (meet(one, other, 1)) wrong.push(`${at}: "${one.text}" on "${other.text}"`)
    for (const plot of plots) if (meet(one, plot, 2)) wrong.push(`${at}: "${one.text}" inside the axes`)
  })
  return wrong
}

/** Boxes of lettering hold more than the letters, above and below: so much may be shared. */
function meet(a: Box, b: Box, shared: number): boolean {
  const across = Math.min(a.right, b.right) - Math.max(a.left, b.left)
  const down = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top)
  return across > shared && down > 3 + shared
}

describe('large pictures', () => {
  it('cut a title of 16,000 characters, with and without spaces, in no time', () => {
    for (const title of ['a long title '.repeat(1230), 'W'.repeat(16000), 'ab '.repeat(5333)]) {
      const before = performance.now()
      const svg = drawPanels({ ...large(2, 'line'), title })
      // Quadratic lettering took seconds for this.
      expect(performance.now() - before).toBeLessThan(300)
      expect(every(parseXml(svg)).find(({ name, text }) => name === 'text' && text.endsWith('…'))).toBeDefined()
    }
  })
  it.each(['line', 'points', 'bars', 'steps'] as const)(
    'hold half a million of %s in less than 200 kB, extremes and all',
    (draw) => {
      const svg = drawPanels(large(500_000, draw))
      expect(svg.length).toBeLessThan(200_000)
      const parsed = parseXml(svg)
      expect(badNumbers(parsed)).toEqual([])
      if (draw !== 'line') return
      // The one reading of 9 among the others below 2 is seen: the path reaches its height.
      const path = every(parsed).find(({ attributes }) => attributes.class === 'line c0')?.attributes.d ?? ''
      const heights = [...path.matchAll(/[ML]?[\d.-]+[, ]([\d.-]+)/g)].map((match) => Number(match[1]))
      expect(heights.filter((y) => y < Math.min(...heights) + 1)).toHaveLength(1)
    },
  )
  it('are the same as before where there is nothing to thin', () => {
    const few = drawPanels(large(1000, 'line'))
    expect(few.match(/L/g)?.length).toBeGreaterThan(900)
  })
})

function large(count: number, draw: 'line' | 'points' | 'bars' | 'steps') {
  const x = Float64Array.from({ length: count }, (_, i) => i)
  const y = Float64Array.from({ length: count }, (_, i) =>
    i === 250_001 ? 9 : 1 + Math.sin(i / 1000) + 0.1 * Math.sin(i * i),
  )
  const panels = [{ yTitle: 'y', series: [{ name: 'many', x, y, draw }] }]
  return {
    title: 'many (invented)',
    alternative: 'many',
    xTitle: 'x',
    xRange: [0, count] as const,
    panels,
    width: 960,
    height: 400,
  }
}

describe('a review and a season', () => {
  const description = (text: string) => every(parseXml(text)).find(({ name }) => name === 'desc')?.text ?? ''
  it('tell the numbers of the review', () => {
    const chart = reviewed()
    const words = description(chartReview(chart))
    for (const probe of chart.day.probes) expect(words).toContain(`${probe.shots.length} shots at ${probe.name}`)
    expect(words).toContain(chart.day.date)
    const none = { ...chart.day, probes: chart.day.probes.map((probe) => ({ ...probe, shots: [] })) }
    expect(chartReview({ ...chart, day: none })).not.toContain('rise, points')
    expect(() => chartReview({ ...chart, time: [], waterContent: [] })).toThrow(/at least two/)
    expect(() => chartReview({ ...chart, waterContent: [{ name: 'A', value: [1] }] })).toThrow(/1 values for/)
  })
  it('add up the water of the days, and leave out what nobody knows', () => {
    const days = season()
    const words = description(chartSeason({ title: 'a', days, hoursFromUtc: 0 }))
    const given = days.reduce((sum, { balance }) => sum + (balance.given.known ? balance.given.value : 0), 0)
    expect(words).toContain(`given ${given.toFixed(1)} L on`)
    const unknown = { known: false, reason: 'not-logged' } as const
    const bare = days.map((one) => ({
      ...one,
      balance: { ...one.balance, given: unknown, drained: unknown, use: unknown, feedEC: unknown, drainEC: unknown },
    }))
    const svg = chartSeason({ title: 'a', days: bare, hoursFromUtc: 0 })
    expect(description(svg)).toContain('given not known')
    expect(svg).not.toContain('EC, dS/m')
    expect(() => chartSeason({ title: 'a', days: [], hoursFromUtc: 0 })).toThrow(/at least one/)
  })
})

describe('a width that is no number', () => {
  // In a rehearsal it was worked with before panels looked at it: an error of the language, and no refusal.
  it.each(Object.entries(GALLERY))('is refused by name by the picture "%s"', (_, draw) => {
    for (const width of [null, '600', 600n, Symbol('600'), Number.NaN])
      expectDomainError(() => draw(width as never), { argument: 'width' })
  })
})
