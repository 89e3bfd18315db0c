import { mkdirSync, mkdtempSync, rmSync, utimesSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeEach, expect, it } from 'vitest'
import { oneFileBuild } from '../../docs/tools/one-file-build.js'

let folder = ''
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'porewater-build-'))
  mkdirSync(join(folder, 'src/water'), { recursive: true })
  mkdirSync(join(folder, 'dist'))
  written('src/index.ts', 10)
})
afterEach(() => rmSync(folder, { recursive: true, force: true }))

/** A file as it was written so many seconds after a beginning. */
function written(path: string, second: number): void {
  writeFileSync(join(folder, path), path)
  utimesSync(join(folder, path), 1e9, 1e9 + second)
}

it('is given where it is as new as every source', () => {
  written('src/water/density.ts', 20)
  written('dist/porewater.iife.js', 20)
  // What is generated beside the sources without going into the build does not count.
  written('src/water/entries.json', 30)
  expect(oneFileBuild(folder)).toBe('dist/porewater.iife.js')
})

it('is refused where a source is newer, with the command that mends it', () => {
  written('dist/porewater.iife.js', 20)
  written('src/water/density.ts', 21)
  expect(() => oneFileBuild(folder)).toThrow(
    'dist/porewater.iife.js is older than src/water/density.ts: run `npm run build` first',
  )
})

it('is refused where it is missing, with the command that makes it', () => {
  expect(() => oneFileBuild(folder)).toThrow('dist/porewater.iife.js is missing: run `npm run build` first')
})
