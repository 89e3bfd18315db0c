import { spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { findTimeBreaks, minutes } from 'porewater'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { check } from '../../docs/examples/one-day/check.js'
import { load } from '../../docs/examples/one-day/load.js'
import { readSetup } from '../../docs/examples/one-day/setup.js'

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

  it('runs through the main job with its clock seam reported', () => {
    for (const day of ['2020-01-15', '2020-03-29', '2020-04-20', '2020-05-20']) {
      const { status, stdout, stderr } = spawnSync(
        process.execPath,
        [
          '--import',
          'tsx',
          join(root, 'docs/examples/one-day.ts'),
          file(),
          '--setup',
          setupFile(),
          '--day',
          day,
          '--picture',
          join(folder, 'day.svg'),
        ],
        { cwd: root, encoding: 'utf8' },
      )
      expect(stderr).toBe('')
      expect(status).toBe(0)
      expect(stdout).toMatch(/At 2020-03-29 0\d:\d\d the clock is set back/)
    }
  }, 120_000)

  it('has no shot that reaches across a gap, a missing stretch or the clock change', () => {
    const setup = readSetup(setupFile())
    const loaded = load(file(), setup)
    const checked = check(loaded, setup)
    const seams = findTimeBreaks({ time: loaded.time, expectedStep: minutes(5) })
    expect(seams.length).toBeGreaterThan(0)
    for (const probe of checked.probes) {
      expect(probe.shots.length).toBeGreaterThan(300)
      const counted =
        probe.counts.pass + probe.counts.notEvaluated + probe.counts.suspect + probe.counts.fail + probe.counts.missing
      expect(counted).toBe(loaded.time.length)
      for (const shot of probe.shots) {
        for (const seam of seams) expect(seam.index > shot.startIndex && seam.index <= shot.peakIndex).toBe(false)
        let last = shot.startIndex
        for (let i = shot.startIndex; i <= shot.peakIndex; i++) {
          if (Number.isNaN(probe.content[i])) continue
          expect((loaded.time[i] as number) - (loaded.time[last] as number)).toBeLessThanOrEqual(660)
          last = i
        }
      }
    }
  })
})
