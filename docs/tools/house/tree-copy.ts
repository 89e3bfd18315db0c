import { execFileSync, spawnSync } from 'node:child_process'
import { cpSync, mkdtempSync, rmSync, symlinkSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { root } from './source-files.js'

/** What sources, tests and tools need of the tree. */
const COPIED = [
  'src',
  'docs/tools',
  'docs/public-api.txt',
  'docs/how-known.md',
  'tests',
  '.gitignore',
  'package.json',
  'tsconfig.json',
]

/** A copy of the tree in which things may be changed. */
export interface TreeCopy {
  readonly folder: string
  readonly inCopy: (path: string) => string
  /** Runs a program of the copy, and gives what it wrote. */
  readonly run: (...words: string[]) => string
  /** Runs test files of the copy, which may fail. */
  readonly test: (...words: string[]) => readonly TestOutcome[]
}

/** What became of one test. A file that does not load has one outcome, of its own name. */
export interface TestOutcome {
  readonly name: string
  readonly passed: boolean
}

/** Works in a copy of the tree that is gone afterwards, however it ended. */
export function inTreeCopy(work: (copy: TreeCopy) => void): void {
  const folder = mkdtempSync(join(tmpdir(), 'porewater-copy-'))
  const inCopy = (path: string) => join(folder, path)
  const run = (...words: string[]) =>
    execFileSync(process.execPath, ['--import', 'tsx', ...words], { cwd: folder, encoding: 'utf8' })
  const test = (...words: string[]): TestOutcome[] => {
    const { stdout } = spawnSync(
      process.execPath,
      ['node_modules/vitest/vitest.mjs', 'run', '--config=tests/vitest.config.ts', '--reporter=json', ...words],
      { cwd: folder, encoding: 'utf8', maxBuffer: 2 ** 28 },
    )
    const { testResults } = JSON.parse(stdout.slice(stdout.indexOf('{"num'), stdout.lastIndexOf('}') + 1)) as Report
    return testResults.flatMap(({ name, status, assertionResults }) =>
      assertionResults.length === 0
        ? [{ name, passed: status === 'passed' }]
        : assertionResults
            .filter((one) => one.status === 'passed' || one.status === 'failed')
            .map((one) => ({ name: one.fullName, passed: one.status === 'passed' })),
    )
  }
  try {
    for (const path of COPIED) cpSync(join(root, path), inCopy(path), { recursive: true })
    symlinkSync(join(root, 'node_modules'), inCopy('node_modules'))
    work({ folder, inCopy, run, test })
  } finally {
    rmSync(folder, { recursive: true })
  }
}

interface Report {
  readonly testResults: readonly {
    readonly name: string
    readonly status: string
    readonly assertionResults: readonly { readonly fullName: string; readonly status: string }[]
  }[]
}
