import { readFileSync } from 'node:fs'
import { createServer } from 'node:http'
import type { AddressInfo } from 'node:net'
import { fileURLToPath } from 'node:url'
import { build } from 'esbuild'
import { expect, it } from 'vitest'
import { CHROMIUM, inChromium, watchedPage } from '../support/chromium.js'

const dist = fileURLToPath(new URL('../../dist/', import.meta.url))

/** What an app may do with every entry, bundled as an app would be. */
const APP = `
import { litres, percent, planDay, shotVolume, waterContentChange } from './index.js'
import { parseQuantity } from './text/index.js'
import { chartRetention } from './chart/index.js'
import { parseDocument } from './schema/index.js'
import { catalogue } from './catalogue/index.js'
const shot = shotVolume({ substrateVolume: litres(10), rise: waterContentChange(0.03), drainFraction: percent(20) })
const refused = (() => { try { parseDocument('{}') } catch (error) { return error.code } })()
document.title = [shot.toFixed(6), parseQuantity('150 mL', 'Volume'), typeof chartRetention, typeof planDay, refused, catalogue.length > 500].join(' ')
`

it.skipIf(CHROMIUM === undefined)(
  "runs whole under default-src 'none'; script-src 'self', without eval (skipped without Chromium)",
  async () => {
    const bundle = await build({
      stdin: { contents: APP, resolveDir: dist },
      bundle: true,
      format: 'esm',
      write: false,
    })
    const files: Readonly<Record<string, string>> = {
      '/': '<!doctype html><html lang="en"><title>no</title><link rel="icon" href="data:,"><script src="porewater.iife.js"></script><script src="porewater-text-chart.iife.js"></script><script src="use.js"></script><script type="module" src="app.js"></script>',
      '/porewater.iife.js': readFileSync(`${dist}porewater.iife.js`, 'utf8'),
      '/porewater-text-chart.iife.js': readFileSync(`${dist}porewater-text-chart.iife.js`, 'utf8'),
      '/use.js':
        "document.documentElement.lang = [porewater.litres(2), porewaterTextChart.parseQuantity('3 mL', 'Volume')].join(' ')",
      '/app.js': bundle.outputFiles[0]?.text ?? '',
    }
    const server = createServer(({ url = '' }, response) => {
      response.setHeader('content-security-policy', "default-src 'none'; script-src 'self'; img-src data:")
      response.setHeader('content-type', url === '/' ? 'text/html' : 'text/javascript')
      response.statusCode = files[url] === undefined ? 404 : 200
      response.end(files[url])
    }).listen(0, '127.0.0.1')
    try {
      await inChromium(async (browser) => {
        const { page, complaints } = await watchedPage(browser)
        await page.goto(`http://127.0.0.1:${(server.address() as AddressInfo).port}/`)
        await page.waitForLoadState('load')
        expect(await page.title()).toBe('0.375000 0.15 function function bad-input true')
        expect(await page.locator('html').getAttribute('lang')).toBe('2 0.003')
        expect(complaints).toEqual([])
      })
    } finally {
      server.close()
    }
  },
  120_000,
)
