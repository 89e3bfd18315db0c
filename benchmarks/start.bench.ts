/** How long the command of the built package takes from nothing to its answer, beside a bare start of Node. Needs `npm run build`. */
import { execFileSync } from 'node:child_process'
import { existsSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { compare, report } from './timing.js'

const bin = fileURLToPath(new URL('../dist/repl/bin.js', import.meta.url))

/** Runs Node with these words and this input; the length of what it printed. */
function node(words: readonly string[], input = ''): number {
  return execFileSync(process.execPath, words, { input, encoding: 'utf8' }).length
}

export function run(quick: boolean): void {
  if (!existsSync(bin)) {
    process.stdout.write('start of the command: needs npm run build\n\n')
    return
  }
  const timings = compare(
    [
      { name: 'node, nothing else', run: () => node(['-e', '0']) },
      { name: 'one function in a pipe', run: () => node([bin, 'litres'], '[2]') },
      { name: 'a session and its first line', run: () => node([bin], 'litres(2)\n') },
    ],
    quick ? 3 : 15,
  )
  report('start of the command', timings)
}
