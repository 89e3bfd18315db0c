import { existsSync } from 'node:fs'
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core'
import { afterAll } from 'vitest'

const PATHS = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome']

/** A browser of this machine; undefined where there is none, and the tests that need one say so. */
export const CHROMIUM = PATHS.find((path) => existsSync(path))

// One browser for all tests of a file: to start one takes longer than most of what is done in it.
let started: Promise<Browser> | undefined
afterAll(async () => {
  await (await started)?.close()
  started = undefined
})

/** Runs a test in a context of its own, with nothing remembered and nothing to tell anyone, and removes every trace. */
export async function inChromium<T>(test: (browser: BrowserContext) => Promise<T>): Promise<T> {
  started ??= chromium.launch({
    executablePath: CHROMIUM as string,
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
  const context = await (await started).newContext({ viewport: { width: 1280, height: 900 } })
  try {
    return await test(context)
  } finally {
    await context.close()
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
