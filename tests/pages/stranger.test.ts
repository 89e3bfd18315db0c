import { execFileSync } from 'node:child_process'
import { mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath, pathToFileURL } from 'node:url'
import { expect, it } from 'vitest'
import { CHROMIUM, inChromium, watchedPage } from '../support/chromium.js'

const root = fileURLToPath(new URL('../../', import.meta.url))
/** The first block of a language on a page of the package. */
const blockOf = (page: string, language: string) =>
  new RegExp(`\`\`\`${language}\n([\\s\\S]*?)\`\`\``).exec(readFileSync(`${root}${page}`, 'utf8'))?.[1] ?? ''

it.skipIf(CHROMIUM === undefined)(
  'a stranger comes from the README to a sized shot, and to a form that puts a refusal beside its field (skipped without Chromium)',
  async () => {
    const folder = mkdtempSync(join(tmpdir(), 'porewater-stranger-'))
    try {
      mkdirSync(join(folder, 'node_modules'))
      symlinkSync(root, join(folder, 'node_modules/porewater'))
      // The ten lines of the README, saved and run as it says.
      writeFileSync(join(folder, 'shot.mjs'), blockOf('README.md', 'ts'))
      const printed = execFileSync('node', ['shot.mjs'], { cwd: folder, encoding: 'utf8' })
      expect(printed).toBe('397 mL in 227 s\nvolume is -1 L, outside [0, Infinity): give a volume of zero or more\n')
      // The README leads to the guide that has the form.
      expect(readFileSync(`${root}README.md`, 'utf8')).toMatch(
        /form[^\n]*\n?[^\n]*docs\/guides\/embedding\.md#in-a-form/,
      )
      writeFileSync(join(folder, 'form.html'), blockOf('docs/guides/embedding.md', 'html'))
      await inChromium(async (browser) => {
        const { page, complaints } = await watchedPage(browser)
        await page.goto(pathToFileURL(join(folder, 'form.html')).href)
        const said = (id: string) => page.locator(`#${id}`).textContent()
        expect(await said('answer')).toBe('397 mL')
        const medium = page.getByLabel('Medium, L')
        await medium.fill('-1')
        expect(await said('for-substrateVolume')).toBe(
          'volume is -1 L, outside [0, Infinity): give a volume of zero or more',
        )
        expect(await said('answer')).toBe('')
        const beside = await page.locator('#for-substrateVolume').boundingBox()
        const field = await medium.boundingBox()
        expect(Math.abs((beside?.y ?? 0) - (field?.y ?? 99))).toBeLessThan(20)
        await medium.fill('')
        expect(await said('for-substrateVolume')).toMatch(/NaN/)
        await medium.fill('12')
        expect(await said('for-substrateVolume')).toBe('')
        // A share of which the constructor knows nothing wrong, and the function does.
        await page.getByLabel('Drain, %').fill('100')
        expect(await said('for-drainFraction')).toMatch(/^drainFraction is 1/)
        expect(await said('answer')).toBe('')
        await page.getByLabel('Drain, %').fill('20')
        // 12 L × 3 points, and a quarter more that drains.
        expect(await said('answer')).toBe('450 mL')
        expect(complaints).toEqual([])
      })
    } finally {
      rmSync(folder, { recursive: true, force: true })
    }
  },
  120_000,
)
