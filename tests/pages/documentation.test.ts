import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import axe from 'axe-core'
import type { BrowserContext, Page } from 'playwright-core'
import { catalogue } from 'porewater/catalogue'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { searchIndex } from '../../docs/search/build.js'
import { writeDocumentation } from '../../docs/tools/documentation.js'
import { CHROMIUM, inChromium, watchedPage } from '../support/chromium.js'
import { FIREFOX, inFirefox } from '../support/firefox.js'

const TOPICS = ['irrigation', 'quantity']
let folder = ''
const read = (page: string) => readFileSync(join(folder, page), 'utf8')

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'porewater-pages-'))
  await writeDocumentation({ out: folder, topics: TOPICS })
}, 240_000)
afterAll(() => rmSync(folder, { recursive: true, force: true }))

describe('the pages of the documentation', () => {
  it('show what goes into a function as a table, what comes out, and what lies near', () => {
    const page = read('functions/irrigation.shotVolume.html')
    expect(page).toMatch(/<th scope="col">name<\/th>.*<th scope="col">default<\/th>/)
    expect(page).toMatch(/drainFraction<\/code>.*?DrainFraction<\/a>.*?\[0, 1\)/s)
    expect(page).toMatch(/id="see-also".*functions\/|id="see-also".*irrigation\.shotsPerDay\.html/s)
    expect(page).toContain('../../explorer/index.html#shotVolume')
    expect(page).toMatch(/import.*from.*porewater/)
  })
  it('show the units of a kind, what makes and reads it, and what takes and gives it', () => {
    const page = read('types/quantity.Volume.html')
    for (const words of ['quantity.litres.html', 'quantity.inLitres.html', 'US gal', 'id="given-by"', 'id="taken-by"'])
      expect(page).toContain(words)
    expect(page).toMatch(/id="given-by".*irrigation\.shotVolume\.html.*id="taken-by".*irrigation\.runTime\.html/s)
  })
  it('say once what a function does, and how it is called', () => {
    const page = read('functions/irrigation.planDay.html')
    expect(page.match(/class="tsd-signature /g)?.length).toBe(1)
    for (const once of ['id="input"', 'id="result"', 'id="see-also"']) expect(page.split(once)).toHaveLength(2)
  })
  it('let no script run but those beside them', () => {
    for (const page of ['index.html', 'functions/irrigation.shotVolume.html', 'documents/glossary.html'])
      expect(read(page)).toMatch(/Content-Security-Policy" content="default-src 'none'; script-src 'self'; /)
  })
  it('print the title of a guide once, and lead to the guides before and after', () => {
    const page = read('documents/drain-and-salts.html')
    expect(page.match(/<h1/g)).toHaveLength(1)
    expect(page).toMatch(/rel="prev" href="size-a-shot\.html">Previous: Size a shot/)
    expect(page).toMatch(/rel="next" href="plan-a-day\.html"/)
    expect(page).toMatch(/<a href="\.\.\/functions\/irrigation\.steadyDrainFraction\.html"><code>/)
  })
  it('are what the search leads to, with its anchors', () => {
    const known = searchIndex(catalogue).pages.filter(
      ({ url, kind }) => kind !== 'function' || TOPICS.some((topic) => url.startsWith(`functions/${topic}.`)),
    )
    expect(known.length).toBeGreaterThan(400)
    const wrong = known.filter(({ url }) => {
      const [page = '', anchor] = url.split('#')
      try {
        return anchor !== undefined && !read(page).includes(`id="${anchor}"`)
      } catch {
        return true
      }
    })
    expect(wrong.map(({ url }) => url)).toEqual([])
  })
})

describe.skipIf(CHROMIUM === undefined)(
  'the documentation in Chromium (skipped where no Chromium is installed)',
  () => {
    it('answers a question in the search, by keyboard, without a request beyond its own files', async () => {
      await opened('index.html', async (page) => {
        await page.keyboard.press('/')
        await page.keyboard.type('how much should drain')
        await page.locator('#find-found a').first().waitFor()
        expect(await page.locator('#find-said').textContent()).toMatch(/^\d+ functions and \d+ other pages$/)
        const found = await page.locator('#find-found a strong').allTextContents()
        expect(found.slice(0, 3)).toContain('steadyDrainFraction')
        expect(found.some((title) => title.startsWith('Drain and salts'))).toBe(true)
        for (let i = 0; i <= found.indexOf('steadyDrainFraction'); i++) await page.keyboard.press('ArrowDown')
        await page.keyboard.press('Enter')
        await page.waitForURL(/functions\/irrigation\.steadyDrainFraction\.html/)
        expect(await page.locator('h1').textContent()).toContain('steadyDrainFraction')
      })
    }, 60_000)
    it.each([
      [1280, 'light'],
      [360, 'dark'],
    ] as const)(
      'has no finding of axe and no sideways scroll at %i px, %s',
      async (width, colorScheme) => {
        const pages = [
          'index.html',
          'functions/irrigation.planDay.html',
          'types/quantity.Volume.html',
          'modules/irrigation.html',
        ]
        await opened([...pages, 'documents/drain-and-salts.html'], async (page, address) => {
          await page.setViewportSize({ width, height: 800 })
          await page.emulateMedia({ colorScheme })
          expect(await page.evaluate<number>('document.documentElement.scrollWidth'), address).toBeLessThanOrEqual(
            width,
          )
          await page.evaluate(axe.source)
          const { violations } = await page.evaluate<axe.AxeResults>('axe.run({ preload: false })')
          expect(violations.map(({ id, nodes }) => `${address} ${id}: ${nodes[0]?.html}`)).toEqual([])
        })
      },
      120_000,
    )
    it('keeps formulas and tables inside their boxes at 390 px', async () => {
      await opened(
        ['functions/irrigation.shotVolume.html', 'documents/glossary.html', 'documents/rehearsal-table.html'],
        async (page) => {
          await page.setViewportSize({ width: 390, height: 800 })
          const [all, out] = await page.evaluate<[number, string[]]>(`(() => {
          const boxes = [...document.querySelectorAll('math, table')].map((one) => one.closest('.scroll') ?? one)
          return [boxes.length, boxes.filter((box) => box.getBoundingClientRect().right > 391).map((box) => box.outerHTML.slice(0, 200))]
        })()`)
          expect(all).toBeGreaterThan(0)
          expect(out).toEqual([])
          expect(await page.evaluate<number>('document.documentElement.scrollWidth')).toBe(390)
        },
      )
    }, 60_000)
  },
)

/** Pages of the documentation in one browser, with everything that they asked for and complained about. */
async function opened(
  addresses: string | readonly string[],
  test: (page: Page, address: string) => Promise<void>,
): Promise<void> {
  await inChromium(async (browser: BrowserContext) => {
    const base = pathToFileURL(folder).href
    const { page, asked, complaints } = await watchedPage(browser)
    for (const address of [addresses].flat()) {
      await page.goto(`${base}/${address}`)
      await test(page, address)
    }
    expect(complaints).toEqual([])
    expect(asked.filter((url) => !url.startsWith(base) && !url.startsWith('data:'))).toEqual([])
  })
}

describe.skipIf(FIREFOX === undefined)('the documentation in Firefox (skipped where no Firefox is installed)', () => {
  it('finds the function that says how much should drain', async () => {
    const base = pathToFileURL(folder).href
    const { asked, complaints } = await inFirefox(
      `${base}/index.html?q=how%20much%20should%20drain`,
      360,
      async (page) => {
        await page.waitForSelector('#find-found a')
        const titles = await page.$$eval('#find-found a strong', (all) => all.map((one) => one.textContent))
        expect(titles.slice(0, 3)).toContain('steadyDrainFraction')
        // Its scroll bars take room of their own.
        expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(360)
        await page.evaluate(axe.source)
        const { violations } = (await page.evaluate('axe.run({ preload: false })')) as axe.AxeResults
        expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([])
      },
    )
    expect(complaints).toEqual([])
    expect(asked.filter((url) => !url.startsWith(base) && !url.startsWith('data:'))).toEqual([])
  }, 90_000)
})
