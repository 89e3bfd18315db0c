import { createHash } from 'node:crypto'
import { appendFileSync, existsSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { build } from 'esbuild'
import type { History } from './histories.js'

/** Histories that were finished, by name; each is written down at once, so that a long run can be stopped and taken up again. */
export interface KeptHistories {
  /** What was kept of this code, in the order in which it was measured. */
  readonly all: () => readonly History[]
  /** The history of that name, measured only where it is not kept. */
  readonly take: (name: string, measure: () => History) => History
}

/** Reads a file of lines, or begins one. Lines of other code are passed over: a table of two states of the code would be of none. */
export async function keptHistories(file: string | undefined): Promise<KeptHistories> {
  const code = file === undefined ? '' : await codeNow()
  const known = new Map<string, History>()
  let old = 0
  if (file !== undefined && existsSync(file))
    for (const line of readFileSync(file, 'utf8').split('\n')) {
      if (line === '') continue
      const kept = JSON.parse(line) as { code: string; name: string; history: History }
      if (kept.code === code) known.set(kept.name, kept.history)
      else old++
    }
  if (old > 0) console.error(`${old} histories in ${file} are of other code, and are not counted`)
  return {
    all: () => [...known.values()],
    take: (name, measure) => {
      const before = known.get(name)
      if (before !== undefined) return before
      const history = measure()
      known.set(name, history)
      if (file !== undefined) appendFileSync(file, `${JSON.stringify({ code, name, history })}\n`)
      return history
    },
  }
}

/** What the histories rest on, as a short word: the code that simulates, waters and watches, without its comments. */
async function codeNow(): Promise<string> {
  const entry = fileURLToPath(new URL('./histories.ts', import.meta.url))
  const options = {
    bundle: true,
    minify: true,
    write: false,
    format: 'esm',
    platform: 'node',
    logLevel: 'error',
  } as const
  const { outputFiles } = await build({ ...options, entryPoints: [entry], treeShaking: true })
  return createHash('sha256').update(outputFiles[0]!.text).digest('hex').slice(0, 12)
}
