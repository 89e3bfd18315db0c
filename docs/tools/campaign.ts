/**
 * Calls every public function inside, at and outside the documented ranges of its numbers, for some minutes and with new seeds:
 * `npm run campaign -- --minutes 30`. A call that ends in an untyped error, in NaN, in an answer to a number outside its range, or not
 * at all is printed and kept in `out/campaign.jsonl`; `--seed S --function sizeShot --from T` makes the trials of one function again.
 */
import { fork } from 'node:child_process'
import { appendFileSync, mkdirSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { parseArgs } from 'node:util'
import type { Find } from './campaign/trial.js'

const { values: asked } = parseArgs({
  options: {
    minutes: { type: 'string', default: '30' },
    seed: { type: 'string', default: String(Date.now() % 1e9) },
    from: { type: 'string', default: '0' },
    function: { type: 'string' },
  },
})
const [minutes, seed] = [Number(asked.minutes), Number(asked.seed)]
const HANGS_AFTER = 60
/** Loading the package may take long beside other work; that is no fault of a function. */
const STARTS_WITHIN = 600

const folder = fileURLToPath(new URL('../../out', import.meta.url))
mkdirSync(folder, { recursive: true })
const seen = new Map<string, number>()
let calls = 0
const called = new Set<string>()
let first = Number(asked.from)
const until = Date.now() + 60_000 * minutes
process.stdout.write(`seed ${seed}, ${minutes} minutes\n`)
while (Date.now() < until) {
  await untilItHangs()
  first += 1_000_000
}
process.stdout.write(`${calls} calls of ${called.size} functions, ${seen.size} kinds of faults\n`)
process.exit(seen.size > 0 ? 1 : 0)

function untilItHangs(): Promise<void> {
  const worker = fork(
    fileURLToPath(new URL('campaign/worker.ts', import.meta.url)),
    [String(seed), String(first), ...(asked.function === undefined ? [] : [asked.function])],
    { execArgv: ['--import', 'tsx'] },
  )
  let last = { name: 'the start', trial: 0, at: Date.now() + 1000 * (STARTS_WITHIN - HANGS_AFTER) }
  worker.on('message', (message: { name?: string; trial?: number; find?: Find }) => {
    if (message.find) return keep(message.find)
    calls++
    called.add(message.name!)
    last = { name: message.name!, trial: message.trial!, at: Date.now() }
  })
  return new Promise((resolve) => {
    const watch = setInterval(() => {
      const hangs = Date.now() - last.at > 1000 * HANGS_AFTER
      if (hangs) keep({ ...last, what: `does not end within ${HANGS_AFTER} s`, changed: [] })
      if (!hangs && Date.now() <= until) return
      clearInterval(watch)
      worker.kill('SIGKILL')
    }, 500)
    worker.once('exit', () => {
      clearInterval(watch)
      resolve()
    })
  })
}

/** Each kind of fault of a function is printed three times; all are kept. */
function keep(find: Find): void {
  appendFileSync(`${folder}/campaign.jsonl`, `${JSON.stringify({ seed, ...find })}\n`)
  const kind = `${find.name}: ${find.what.slice(0, 40)}`
  const times = (seen.get(kind) ?? 0) + 1
  seen.set(kind, times)
  if (times <= 3)
    process.stdout.write(`${find.name}, trial ${find.trial}: ${find.what}\n  ${find.changed.join('\n  ')}\n`)
}
