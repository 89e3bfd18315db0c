import { existsSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { type BrowserContext, chromium, type Page } from 'playwright-core'

const PATHS = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome']

/** A browser of this machine; undefined where there is none, and the tests that need one say so. */
export const CHROMIUM = PATHS.find((path) => existsSync(path))

/** Opens a browser with nothing remembered and nothing to tell anyone, runs a test in it, and removes every trace. */
export async function inChromium<T>(test: (browser: BrowserContext) => Promise<T>): Promise<T> {
  const folder = mkdtempSync(join(tmpdir(), 'porewater-chromium-'))
  const browser = await chromium.launchPersistentContext(folder, {
    executablePath: CHROMIUM as string,
    viewport: { width: 1280, height: 900 },
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
      '--disable-component-update',
      '--disable-sync',
    ],
  })
  try {
    return await test(browser)
  } finally {
    await browser.close()
    rmSync(folder, { recursive: true, force: true })
  }
}

/** A new page, with everything that the browser asks for and the page complains about, in the order in which it came. */
export async function watchedPage(
  browser: BrowserContext,
): Promise<{ readonly page: Page; readonly asked: string[]; readonly complaints: string[] }> {
  const asked: string[] = []
  const complaints: string[] = []
  browser.on('request', (request) => asked.push(request.url()))
  const page = await browser.newPage()
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') complaints.push(message.text())
  })
  page.on('pageerror', (error) => complaints.push(String(error)))
  return { page, asked, complaints }
}
