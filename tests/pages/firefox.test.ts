import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { pathToFileURL } from 'node:url'
import axe from 'axe-core'
import * as porewater from 'porewater'
import type { Page } from 'puppeteer-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { explorerPage } from '../../docs/tools/explorer.js'
import { landingPage } from '../../docs/tools/landing.js'
import { oneFileBuild } from '../../docs/tools/one-file-build.js'
import { FIREFOX, inFirefox } from '../support/firefox.js'

let folder = ''
const addressOf = (page: string) => pathToFileURL(join(folder, page)).href

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'porewater-firefox-'))
  const build = oneFileBuild()
  mkdirSync(join(folder, 'explorer'))
  writeFileSync(join(folder, 'index.html'), await landingPage(build))
  writeFileSync(join(folder, 'explorer/index.html'), (await explorerPage(build)).page)
}, 120_000)
afterAll(() => rmSync(folder, { recursive: true, force: true }))

describe.skipIf(FIREFOX === undefined)('the pages in Firefox (skipped where no Firefox is installed)', () => {
  it('size a shot and rehearse a week on the first page', async () => {
    await clean('index.html', '', async (page) => {
      await page.waitForSelector('#picture svg.pw', { timeout: 30_000 })
      const field = await page.$('#substrateVolume')
      await field?.evaluate((input) => {
        const box = input as unknown as { value: string; dispatchEvent(event: Event): void }
        box.value = '20'
        box.dispatchEvent(new Event('input', { bubbles: true }))
      })
      const { litres, percentagePoints, percent, litresPerHour, minutes, sizeShot } = porewater
      const shot = sizeShot({
        substrateVolume: litres(20),
        rise: percentagePoints(3),
        drainFraction: percent(20),
        emitterFlow: litresPerHour(2),
        emitters: 2,
        maxRunTime: minutes(15),
      })
      expect(await text(page, '#volume')).toBe(`${(shot.volume * 1000).toFixed(0)} mL`)
    })
  }, 90_000)
  it('show an equation with its curve in the explorer', async () => {
    await clean('explorer/index.html', '#waterContentTopp1980?apparent=31.7', async (page) => {
      const value = await page.$eval('#number', (one) => one.getAttribute('data-value'))
      expect(Number(value)).toBe(porewater.waterContentTopp1980(porewater.permittivity(31.7)))
      expect(await page.$$('#curve svg.pw')).toHaveLength(1)
    })
  }, 90_000)
})

async function text(page: Page, selector: string): Promise<string> {
  return page.$eval(selector, (one) => one.textContent ?? '')
}

/** Runs a test on a page and expects no finding of axe, no sideways scroll at 360 px, no request but its own and no complaint. */
async function clean(file: string, hash: string, test: (page: Page) => Promise<void>): Promise<void> {
  const address = addressOf(file)
  const { asked, complaints } = await inFirefox(address + hash, 360, async (page) => {
    await test(page)
    // Its scroll bars take room of their own.
    expect(await page.evaluate('document.documentElement.scrollWidth')).toBeLessThanOrEqual(360)
    await page.evaluate(axe.source)
    const { violations } = (await page.evaluate('axe.run({ preload: false })')) as axe.AxeResults
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html}`)).toEqual([])
  })
  expect(complaints).toEqual([])
  // Firefox does not count the file itself.
  const others = asked.filter((url) => !url.startsWith('data:') && url.replace(/#.*/, '') !== address)
  expect(others).toEqual([])
}
