/**
 * Random runs of the simulation of flow, each within a time: `npm run runs -- 10000 1` takes ten thousand with the seed 1. Prints what came of
 * them, and ends with 1 where one hangs or breaks off, loses water or salt, or more than one in a thousand is refused.
 */
import { type ChildProcess, fork } from 'node:child_process'
import { cpus } from 'node:os'
import { fileURLToPath } from 'node:url'
import { drawn, follow, type RunOutcome } from './random-runs.js'

/** Wall time after which a run hangs. Unit: s. */
const LIMIT = 600
/** Runs between two lines of print. */
const PART = 500

interface Told extends RunOutcome {
  readonly k: number
  readonly seconds: number
}

const [count, seed, job] = process.argv.slice(2).map(Number) as [number | undefined, number | undefined, number?]
const runs = count ?? 1000
if (process.send === undefined) report(runs, seed ?? 1)
else
  for (let k = job ?? 0; k < runs; k++) {
    const begun = process.cpuUsage()
    const outcome = follow(drawn(k, seed ?? 1))
    process.send({ ...outcome, k, seconds: process.cpuUsage(begun).user / 1e6 })
  }

/** Lets another process take the runs, and starts a new one behind a run that hangs. */
function report(runs: number, seed: number): void {
  const all: Told[] = []
  const hung: number[] = []
  const broken: number[] = []
  let next = 0
  const take = (): void => {
    const child = fork(fileURLToPath(import.meta.url), [runs, seed, next].map(String), {
      execArgv: ['--import', 'tsx'],
    })
    let late = watch(child)
    child.on('message', (told: Told) => {
      clearTimeout(late)
      all.push(told)
      next = told.k + 1
      if (all.length % PART === 0) print(all, hung, broken)
      late = watch(child)
    })
    child.on('exit', (code) => {
      clearTimeout(late)
      if (next >= runs) end()
      else {
        // Killed for its time, or broken off by what it printed above: either is a fault of this run.
        const tooLong = code === null
        if (tooLong) hung.push(next)
        else broken.push(next)
        process.stdout.write(`run ${next} ${tooLong ? 'took too long' : 'broke off'}\n`)
        next++
        take()
      }
    })
  }
  const watch = (child: ChildProcess) => setTimeout(() => child.kill('SIGKILL'), LIMIT * 1000)
  const end = (): void => {
    print(all, hung, broken)
    const refused = all.filter((it) => it.refused).length
    const bad = all.filter((it) => it.faults.length > 0 || !(it.water < 1e-9) || !(it.salt < 1e-9))
    for (const { k, faults, water, salt } of bad) process.stdout.write(`run ${k}: ${faults} ${water} ${salt}\n`)
    process.exitCode = hung.length + broken.length + bad.length > 0 || refused > Math.max(1, runs / 1000) ? 1 : 0
  }
  process.stdout.write(`${runs} runs, seed ${seed}, ${cpus()[0]?.model ?? ''}, Node ${process.version}\n`)
  take()
}

function print(all: readonly Told[], hung: readonly number[], broken: readonly number[]): void {
  const most = (of: (it: Told) => number) => all.reduce((max, it) => Math.max(max, of(it)), 0)
  const times = Float64Array.from(all, ({ seconds }) => seconds).sort()
  const at = (share: number) => (times[Math.floor(share * (times.length - 1))] ?? 0).toPrecision(2)
  const refused = all.filter((it) => it.refused).map(({ k }) => k)
  process.stdout.write(
    `${all.length} runs: ${hung.length} hung, ${broken.length} broken off, ${refused.length} refused (${refused.join(', ')}), ` +
      `worst miss of water ${most(({ water }) => water).toExponential(1)} and salt ${most(({ salt }) => salt).toExponential(1)}, ` +
      `${all.filter(({ faults }) => faults.length > 0).length} faulty; CPU ${at(0.5)} s in the median, ${at(0.99)} s of 99 %, ${at(1)} s at most\n`,
  )
}
