import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { oneDay } from '../../docs/examples/one-day.js'

/**
 * The main job on a real record: Hemming, S. and others (2020), Autonomous Greenhouse Challenge, second edition, 4TU.ResearchData,
 * doi:10.4121/uuid:88d22c60-21b3-4ea8-90db-20249a5be2a7, as tidied CSV files that are not part of this project.
 */
const data = process.env.POREWATER_DATA
const root = fileURLToPath(new URL('../../', import.meta.url))
let folder = ''

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'porewater-measured-'))
})
afterAll(() => rmSync(folder, { recursive: true, force: true }))

describe.skipIf(data === undefined).each([2, 5])('the open record of compartment %i', (compartment) => {
  const file = () => join(data as string, '01_greenhouse_tomato_slab_5min', `slab_5min_compartment_${compartment}.csv`)
  const setupFile = () => {
    const path = join(folder, `setup-${compartment}.json`)
    const text = readFileSync(join(root, 'docs/examples/open-record/compartment.json'), 'utf8')
    writeFileSync(path, text.replace('daily_compartment_2', `daily_compartment_${compartment}`))
    return path
  }
  it('runs through the main job, also on the day of the clock change', () => {
    for (const day of ['2020-01-15', '2020-03-29', '2020-04-20', '2020-05-20']) {
      const text = oneDay([file(), '--setup', setupFile(), '--day', day, '--picture', join(folder, 'day.svg')])
      expect(text).toContain(`Tomato on slabs, an open record, ${day}`)
      expect(text).toMatch(day === '2020-03-29' ? /276 rows on the day/ : /2[78]\d rows on the day/)
      expect(text).not.toMatch(/NaN|undefined|Infinity/)
    }
  }, 120_000)
})
