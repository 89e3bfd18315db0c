/** Runs every benchmark of this folder in one process: `npm run bench`, `npm run bench -- --quick`, `npm run bench -- shot`. */
import { readdirSync } from 'node:fs'
import { fileURLToPath } from 'node:url'

const here = fileURLToPath(new URL('.', import.meta.url))
const quick = process.argv.includes('--quick')
const words = process.argv.slice(2).filter((word) => !word.startsWith('--'))

process.stdout.write(`Node ${process.version}; medians, and ratios to the first line, of runs in turn.\n\n`)
for (const file of readdirSync(here).sort()) {
  if (!file.endsWith('.bench.ts')) continue
  if (words.length > 0 && !words.some((word) => file.includes(word))) continue
  const { run } = (await import(`./${file}`)) as { run: (quick: boolean) => void | Promise<void> }
  await run(quick)
}
