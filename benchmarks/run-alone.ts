import { execFileSync } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { buildSync } from 'esbuild'

/** What the job on a record took in a process of its own. */
export interface Alone {
  /** Days reviewed and shots proposed. */
  readonly checked: number
  /** Largest resident size before the job and in all. Unit: KiB. */
  readonly before: number
  readonly peak: number
  /** Unit: ms. */
  readonly wall: number
  readonly cpu: number
}

/** The job in a child process without compiler and test tools, as it runs where it is embedded. */
export function runAlone(days: number): Alone {
  const folder = mkdtempSync(join(tmpdir(), 'porewater-year-'))
  try {
    const outfile = join(folder, 'year-alone.mjs')
    const entry = fileURLToPath(new URL('./year-alone.ts', import.meta.url))
    buildSync({ entryPoints: [entry], bundle: true, platform: 'node', format: 'esm', outfile, logLevel: 'silent' })
    return JSON.parse(execFileSync(process.execPath, ['--expose-gc', outfile, String(days)], { encoding: 'utf8' }))
  } finally {
    rmSync(folder, { recursive: true, force: true })
  }
}
