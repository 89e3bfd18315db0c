import { existsSync } from 'node:fs'
import puppeteer, { type Page } from 'puppeteer-core'

const PATHS = ['/usr/bin/firefox-esr', '/usr/bin/firefox']

/** A Firefox of this machine; undefined where there is none, and the tests that need one say so. */
export const FIREFOX = PATHS.find((path) => existsSync(path))

/** What a page asked for and complained about. */
export interface Seen {
  readonly asked: string[]
  readonly complaints: string[]
}

/** Opens a page in a Firefox with nothing remembered, and says what the page asked for and complained about. */
export async function inFirefox(address: string, width: number, test: (page: Page) => Promise<void>): Promise<Seen> {
  const browser = await puppeteer.launch({
    browser: 'firefox',
    executablePath: FIREFOX as string,
    headless: true,
    defaultViewport: { width, height: 900 },
  })
  const seen: Seen = { asked: [], complaints: [] }
  try {
    const page = await browser.newPage()
    page.on('request', (request) => seen.asked.push(request.url()))
    page.on('console', (message) => {
      if (['error', 'warn'].includes(message.type())) seen.complaints.push(message.text())
    })
    page.on('pageerror', (error) => seen.complaints.push(String(error)))
    await page.goto(address)
    await test(page)
  } finally {
    await browser.close()
  }
  return seen
}
