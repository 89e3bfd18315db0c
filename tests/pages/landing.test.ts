import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import axe from 'axe-core'
import type { Page } from 'playwright-core'
import * as porewater from 'porewater'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { landingPage } from '../../docs/tools/landing.js'
import { oneFileBuild } from '../../docs/tools/one-file-build.js'
import { CHROMIUM, inChromium, watchedPage } from '../support/chromium.js'

const screenshots = process.env.POREWATER_SCREENSHOTS
let folder = ''
let address = ''

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'porewater-landing-'))
  writeFileSync(join(folder, 'index.html'), await landingPage(oneFileBuild()))
  address = pathToFileURL(join(folder, 'index.html')).href
  if (screenshots) mkdirSync(screenshots, { recursive: true })
}, 60_000)
afterAll(() => rmSync(folder, { recursive: true, force: true }))

describe.skipIf(CHROMIUM === undefined)('the first page in Chromium (skipped where no Chromium is installed)', () => {
  it('sizes a shot as the package does, and shows code that holds the same numbers', async () => {
    await opened(async (page) => {
      const { litres, percentagePoints, percent, litresPerHour, minutes, sizeShot, inMillilitres } = porewater
      await page.getByLabel('Volume of medium').fill('11.25')
      await page.getByLabel('Share that should drain').fill('15')
      const shot = sizeShot({
        substrateVolume: litres(11.25),
        rise: percentagePoints(3),
        drainFraction: percent(15),
        emitterFlow: litresPerHour(2),
        emitters: 2,
        maxRunTime: minutes(15),
      })
      expect(await page.locator('#volume').textContent()).toBe(`${inMillilitres(shot.volume).toFixed(0)} mL`)
      expect(await page.locator('#code').textContent()).toContain('substrateVolume: litres(11.25),')
      // The code as it stands, but for the line that imports it, is run with the package.
      const code = (await page.locator('#code').textContent()) ?? ''
      const printed: unknown[] = []
      const body = code.replace(/^import[\s\S]*?from 'porewater'\n/, '')
      new Function('console', ...Object.keys(porewater), body)(
        { log: (one: unknown) => printed.push(one) },
        ...Object.values(porewater),
      )
      expect(printed).toEqual([inMillilitres(shot.volume)])
      await page.getByLabel('Valve opens for at most').fill('2')
      expect(await page.locator('#findings li').count()).toBeGreaterThan(0)
    })
  }, 60_000)
  it('puts what is wrong with a field beside the field, and recovers', async () => {
    await opened(async (page) => {
      const field = page.getByLabel('Volume of medium')
      for (const [text, words] of [
        ['-1', /volume is -1 L, outside/],
        ['', /^Give a number/],
        ['0', /substrateVolume is 0 L/],
      ] as const) {
        await field.fill(text)
        expect(await page.locator('#substrateVolume-error').textContent()).toMatch(words)
        expect(await field.getAttribute('aria-invalid')).toBe('true')
        expect(await page.locator('#volume').textContent()).toBe('–')
      }
      await field.fill('11,25')
      expect(await page.locator('#substrateVolume-error').textContent()).toBe('')
      expect(await page.locator('#volume').textContent()).toMatch(/mL$/)
    })
  }, 60_000)
  it('rehearses a week of a medium with a fault, and lets it be watched by keyboard', async () => {
    await opened(async (page) => {
      await page.locator('#picture svg.pw').waitFor()
      expect(await page.locator('#picture').textContent()).toContain('invented')
      expect(await page.locator('#alarms').textContent()).toContain('flow while closed')
      const before = await page.locator('#picture').innerHTML()
      await page.getByLabel('Fault').selectOption('')
      await page.getByText('Nothing goes wrong this week').waitFor()
      expect(await page.locator('#picture').innerHTML()).not.toBe(before)
      const hour = page.getByLabel('Hour of the week')
      await hour.focus()
      const start = await page.locator('#now').textContent()
      for (let i = 0; i < 60; i++) await page.keyboard.press('ArrowRight')
      expect(await page.locator('#now').textContent()).not.toBe(start)
      expect(await page.locator('#now').textContent()).toContain('day 1, 15:00')
      await page.getByRole('button', { name: 'Watch the week' }).press('Enter')
      // Not by a function in the page: its policy lets nothing be evaluated.
      await expect.poll(async () => Number(await hour.inputValue()), { timeout: 30_000 }).toBeGreaterThan(18)
      await page.getByRole('button', { name: 'Pause' }).press('Enter')
      expect(await page.getByRole('button', { name: 'Watch the week' }).count()).toBe(1)
    })
  }, 60_000)
  it('lets no script run but its own, and fetches nothing', async () => {
    const page = readFileSync(join(folder, 'index.html'), 'utf8')
    const [, policy = ''] = /Content-Security-Policy" content="([^"]*)"/.exec(page) ?? []
    expect(policy).toMatch(/^default-src 'none'; script-src 'sha256-[^;]*; style-src 'sha256-/)
    expect(policy).not.toContain('unsafe')
    writeFileSync(
      join(folder, 'injected.html'),
      page.replace('</body>', "<script>document.title = 'injected'</script></body>"),
    )
    await inChromium(async (browser) => {
      const { page: other, complaints } = await watchedPage(browser)
      await other.goto(pathToFileURL(join(folder, 'injected.html')).href)
      expect(await other.title()).toMatch(/^porewater: /)
      expect(complaints.join()).toMatch(/Content Security Policy/)
    })
  }, 60_000)
  it.each([
    [1280, 'light'],
    [768, 'dark'],
    [360, 'light'],
    [360, 'dark'],
  ] as const)(
    'has no finding of axe and no sideways scroll at %i px, %s',
    async (width, colorScheme) => {
      await opened(async (page) => {
        await page.setViewportSize({ width, height: 900 })
        await page.emulateMedia({ colorScheme })
        await page.locator('#picture svg.pw').waitFor()
        expect(await page.evaluate<number>('document.documentElement.scrollWidth')).toBe(width)
        await page.evaluate(axe.source)
        const { violations } = await page.evaluate<axe.AxeResults>('axe.run({ preload: false })')
        expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([])
        if (screenshots)
          await page.screenshot({ path: join(screenshots, `first-${width}-${colorScheme}.png`), fullPage: true })
      })
    },
    60_000,
  )
})

/** The page, which asks for nothing but itself and complains about nothing. */
async function opened(test: (page: Page) => Promise<void>): Promise<void> {
  await inChromium(async (browser) => {
    const { page, asked, complaints } = await watchedPage(browser)
    await page.goto(address)
    await test(page)
    expect(complaints).toEqual([])
    expect(asked.filter((url) => !url.startsWith('data:'))).toEqual([address])
  })
}
